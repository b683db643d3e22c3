package standstill.disguise;

import java.util.Locale;
import java.util.Set;

/** Which keys name a secret. */
final class SecretWords {
  private static final KnownWords WORDS = KnownWords.named("secret-words");

  /** Words that mean other things as well: only what is set with an equals sign is secret. */
  private static final Set<String> UNSURE =
      Set.of("key", "auth", "pass", "pin", "pw", "cred", "cookie", "authkey");

  private SecretWords() {}

  /** Whether a key names a secret even in prose, as in {@code password: x}. */
  static boolean isSure(String key) {
    String low = key.toLowerCase(Locale.ROOT);
    return UNSURE.stream().noneMatch(low::endsWith);
  }

  /** Whether a part of the key, such as the last of {@code rd.luks.key}, is a word for secrets. */
  static boolean isSecret(String key) {
    StringBuilder part = new StringBuilder();
    char before = ' ';
    for (int i = 0; i <= key.length(); i++) {
      char c = i < key.length() ? key.charAt(i) : ' ';
      boolean hump = Character.isUpperCase(c) && Character.isLowerCase(before);
      if (!Character.isLetterOrDigit(c) || hump) {
        if (WORDS.has(part.toString())) {
          return true;
        }
        part.setLength(0);
      }
      if (Character.isLetterOrDigit(c)) {
        part.append(Character.toLowerCase(c));
      }
      before = c;
    }
    return WORDS.has(key.toLowerCase(Locale.ROOT));
  }
}
