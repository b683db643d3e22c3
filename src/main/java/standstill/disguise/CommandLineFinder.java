package standstill.disguise;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/**
 * Words of the kernel's command line, by a list of what is known to be harmless: the value of a
 * word that is not on it is replaced. The list stands in the table {@code command-line-words}.
 */
final class CommandLineFinder implements Finder {
  private static final List<Pattern> MARKS =
      KnownWords.lines("command-line-marks").stream().map(Pattern::known).toList();
  private static final PatternSet MARK_SET = new PatternSet(MARKS);
  private static final KnownWords HARMLESS = KnownWords.named("harmless-values");
  private static final Map<String, String> RULES = rules();
  private static final Pattern NUMBERS =
      Pattern.known(
          "^-?(?:0x[0-9a-fA-F]{1,16}|\\d{1,10}(?:\\.\\d+)?[kKmMgGsuh%]?(?:min|ms|sec)?)$");
  private static final Pattern FLAG = Pattern.known("^[a-z][a-z_.-]{1,24}$");
  private static final Pattern KERNEL_FILE =
      Pattern.known(
          "^\\(?[\\w/\\\\(),.+-]*(?:vmlinuz|bzImage|Image|initrd|initramfs|linux)[\\w.+-]*\\)?$");

  private final Register register;
  private final VolumeNames volumes;
  private final HostNames hosts;

  CommandLineFinder(Register register, VolumeNames volumes, HostNames hosts) {
    this.register = register;
    this.volumes = volumes;
    this.hosts = hosts;
  }

  private static Map<String, String> rules() {
    Map<String, String> rules = new HashMap<>();
    for (String line : KnownWords.lines("command-line-words")) {
      int at = line.indexOf('=');
      String key = normal(at < 0 ? line.strip() : line.substring(0, at));
      String rule = at < 0 ? "flag" : line.substring(at + 1).strip();
      // A word may stand both alone and with a value; the value's rule says more.
      rules.merge(key, rule, (old, now) -> old.equals("flag") ? now : old);
      if (at < 0) {
        rules.put(key + " ", "flag");
      }
    }
    return rules;
  }

  /** The kernel takes hyphens and underscores for the same. */
  private static String normal(String key) {
    return key.toLowerCase(Locale.ROOT).replace('-', '_');
  }

  @Override
  public void find(Claims claims) {
    String text = claims.text();
    int[] begin = {text.length()};
    MARK_SET.candidates(
        text,
        false,
        (pattern, place) ->
            pattern
                .find(text)
                .ifPresent(
                    match -> {
                      String before = match.values().getOrDefault("before", "");
                      begin[0] = Math.min(begin[0], match.start() + before.length());
                    }));
    words(claims, text, begin[0]);
  }

  private void words(Claims claims, String text, int from) {
    int at = from;
    while (at < text.length()) {
      while (at < text.length() && isBetween(text.charAt(at))) {
        at++;
      }
      int start = at;
      boolean quoted = false;
      while (at < text.length() && (quoted || !isBetween(text.charAt(at)))) {
        quoted ^= text.charAt(at) == '"' && (quoted || at > start && text.charAt(at - 1) == '=');
        at++;
      }
      int end = at;
      while (end > start && "\",;\\}".indexOf(text.charAt(end - 1)) >= 0) {
        end--;
      }
      while (start < end && text.charAt(start) == '"') {
        start++;
      }
      if (start < end) {
        word(claims, text, start, end);
      }
    }
  }

  private static boolean isBetween(char c) {
    return c <= ' ';
  }

  private void word(Claims claims, String text, int start, int end) {
    int equals = start;
    while (equals < end && text.charAt(equals) != '=') {
      equals++;
    }
    if (equals == end) {
      flag(claims, text, start, end);
      return;
    }
    String key = normal(text.substring(start, equals));
    int from = equals + 1;
    if (from < end && text.charAt(from) == '"') {
      from++;
    }
    if (from >= end) {
      return;
    }
    String rule = RULES.getOrDefault(key, "");
    boolean known = RULES.containsKey(key) && !rule.equals("flag");
    if (rule.endsWith("!") || !known && SecretWords.isSecret(key)) {
      if (!StandIns.isMade(text.substring(from, end))) {
        claims.takeOver(
            from, end, register.named("secret", Sort.SECRET, text.substring(from, end)));
      }
      return;
    }
    switch (known ? rule : "unknown") {
      case "" -> {}
      case "device" -> pieces(claims, text, from, end, true);
      case "net" -> pieces(claims, text, from, end, false);
      case "#", "list" -> value(claims, text, from, end, rule.equals("list"));
      default -> unknown(claims, text, key, from, end);
    }
  }

  private void unknown(Claims claims, String text, String key, int from, int end) {
    String value = text.substring(from, end);
    boolean number = NUMBERS.foundIn(value) && (key.indexOf('.') > 0 || value.length() < 3);
    if (!number && !HARMLESS.has(value)) {
      replace(claims, from, end);
    }
  }

  private void value(Claims claims, String text, int from, int end, boolean words) {
    for (String part : text.substring(from, end).split("[,:;+|@()-]")) {
      boolean harmless =
          part.isEmpty()
              || NUMBERS.foundIn(part)
              || HARMLESS.has(part)
              || words && Trade.isOfWords(part);
      if (!harmless) {
        replace(claims, from, end);
        return;
      }
    }
  }

  private void replace(Claims claims, int from, int end) {
    String value = claims.text().substring(from, end);
    if (!StandIns.isMade(value) && claims.isFree(from, end)) {
      claims.take(from, end, register.named("value", Sort.OPTION, value));
    }
  }

  private void flag(Claims claims, String text, int start, int end) {
    String word = text.substring(start, end);
    if (RULES.containsKey(normal(word) + " ")
        || KERNEL_FILE.foundIn(word)
        || Trade.isOfWords(word)
        || HARMLESS.has(word)
        || RULES.containsKey(normal(word))) {
      return;
    }
    if (FLAG.foundIn(word)) {
      register.lookAt(word, "a word of the command line that is not on the list of harmless ones");
    } else {
      replace(claims, start, end);
    }
  }

  /** Names within a value that is made of several. */
  private void pieces(Claims claims, String text, int from, int end, boolean device) {
    int at = from;
    while (at < end) {
      int start = at;
      while (at < end && isName(text.charAt(at))) {
        at++;
      }
      if (at > start) {
        piece(claims, text, start, at, device);
      }
      at = Math.max(at, start + 1);
    }
  }

  private static boolean isName(char c) {
    return Character.isLetterOrDigit(c) || c == '_' || c == '-' || c == '.' || c == '\u00a0';
  }

  private void piece(Claims claims, String text, int start, int end, boolean device) {
    String piece = text.substring(start, end);
    if (!claims.isFree(start, end)
        || NUMBERS.foundIn(piece)
        || HARMLESS.has(piece)
        || Trade.isOfWords(piece)
        || Trade.DEVICES.has(piece)
        || Interfaces.isKernels(piece)
        || StandIns.isMade(piece)) {
      return;
    }
    boolean path = start > 0 && text.charAt(start - 1) == '/';
    String standIn = device ? deviceName(text, start, piece) : hosts.standIn(piece);
    if (!device && path) {
      standIn = register.named("path", Sort.URL, piece);
    }
    claims.take(start, end, standIn);
  }

  private String deviceName(String text, int start, String piece) {
    if (text.startsWith("/dev/mapper/", start - 12)) {
      return volumes.mapped(piece);
    }
    String number = volumes.number(piece);
    return number.equals(piece) ? volumes.volume(piece) : number;
  }
}
