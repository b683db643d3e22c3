package standstill.disguise;

import java.util.Locale;

/** Which keys name a secret. */
final class SecretWords {
  private static final KnownWords WORDS = KnownWords.named("secret-words");

  private SecretWords() {}

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
