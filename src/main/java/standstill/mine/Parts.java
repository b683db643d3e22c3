package standstill.mine;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.text.Pattern;

/**
 * Parts a message into words that stay and values that vary from machine to machine.
 *
 * <p>Values are looked for at beginnings of words only, so that {@code ext4} or {@code i915} stay
 * words. Numbers that tell causes apart stay too: negative error numbers, and what follows a word
 * such as <i>error</i>, <i>status</i> or <i>signal</i>. Time grows with the message and not faster.
 */
final class Parts {
  /** Longest value that is recognised, in characters. */
  private static final int LONGEST_VALUE = 300;

  /** The kernel's largest error number, MAX_ERRNO in include/linux/err.h of Linux 6.1. */
  private static final int LARGEST_ERROR = 4_095;

  private static final int LOOK_BACK = 24;

  private static final Pattern TELLS_CAUSE =
      Pattern.known(
          "(?i)(?:^|[^a-z])(?:err(?:or|no)?|e?rc|ret|retval|status|code|exitcode|result|signal|sig)"
              + "(?: code| number)?[ =:#(]{0,3}$");
  private static final Pattern TAGGED = Pattern.known("(?:^|[^A-Z])(?:PART)?(?:UUID|LABEL)=\"?$");
  private static final Pattern TAG_VALUE =
      Pattern.known("[^\\s\"'<>|;,()\\]]*[^\\s\"'<>|;,()\\].:]");
  private static final Pattern BUS = Pattern.known("(?:^|\\W)(?:usb|hub) $");
  private static final Pattern COLUMN =
      Pattern.known(
          "\\s*(?:\\[(?: *OK *|FAILED|DEPEND| *TIME *| *WARN *| *INFO *| *SKIP *|LOCKED|ABORT|FAIL|ok|warn|\\.{4}|[ *]+)\\]\\s+)?");

  /** Words before a number that say which of several it is: {@code tty1}, {@code CPU2}. */
  private static final Pattern NUMBERED =
      Pattern.known(
          "(?:v?cpu|v?CPU|tty[SO]?|ttyUSB|ttyACM|hci|phy|card|fb|input|event|hwmon|rtc|i2c|port|host|target|slot|node|con|bus|irq"
              + "|thermal_zone|cooling_device|serio|watchdog|tpm|kworker|pipe|ring|queue|drive|disk)");

  /** Endings of numbers that are units of measure. */
  private static final Set<String> UNITS =
      Set.of(
          "s", "sec", "secs", "ms", "us", "ns", "min", "h", "k", "K", "M", "G", "T", "kB", "KB",
          "MB", "GB", "TB", "KiB", "MiB", "GiB", "TiB", "Hz", "kHz", "MHz", "GHz", "bit", "bits",
          "b", "B", "mA", "mV", "mW", "W", "V", "C", "x", "p", "st", "nd", "rd", "th", "GT", "Gbps",
          "Mbps");

  private final String message;
  private final List<Part> parts = new ArrayList<>();
  private int from;

  private Parts(String message) {
    this.message = message;
  }

  /** The parts of a message in order; put together they are the message without status column. */
  static List<Part> of(String message) {
    Parts parts = new Parts(message);
    parts.read();
    return parts.parts;
  }

  private void read() {
    int at = COLUMN.findAtStart(message).map(Pattern.Match::end).orElse(0);
    from = at;
    while (at < message.length()) {
      char c = message.charAt(at);
      int quoted = quoted(at);
      if (quoted > 0) {
        at = quote(at, quoted);
      } else if (begins(at) && (isWord(c) || c == '/' || c == '\\')) {
        at = word(at);
      } else {
        at++;
      }
    }
    words(message.length());
  }

  /** Whether a value may begin here: at the beginning, or after something that is no word. */
  private boolean begins(int at) {
    if (at == 0) {
      return true;
    }
    char before = message.charAt(at - 1);
    boolean slash = message.charAt(at) == '/' || message.charAt(at) == '\\';
    return slash ? !isWord(before) && ".)]}*".indexOf(before) < 0 : !isWord(before);
  }

  private static boolean isWord(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }

  /** Reads the word at a place, as a value where it is one; returns where to go on. */
  private int word(int at) {
    String ahead = message.substring(at, Math.min(message.length(), at + LONGEST_VALUE));
    String behind = message.substring(Math.max(from, at - LOOK_BACK), at);
    if (TAGGED.foundIn(behind)) {
      Optional<Pattern.Match> value = TAG_VALUE.findAtStart(ahead);
      if (value.isPresent()) {
        return value(at, at + value.get().end(), Kind.TAG);
      }
    }
    for (Kind kind : Kind.values()) {
      int length = kind.lengthAt(ahead);
      if (length > 0
          && isWhole(kind, ahead, length)
          && fits(kind, ahead.substring(0, length), at)) {
        int end = at + length;
        return tellsCause(kind, at, end, behind) ? cause(at, end) : value(at, end, kind);
      }
    }
    int end = at + 1;
    while (end < message.length() && isWord(message.charAt(end))) {
      end++;
    }
    return numbered(at, end);
  }

  /** A word that ends in a number of its own, such as {@code tty1}. */
  private int numbered(int at, int end) {
    int digits = end;
    while (digits > at && isDigit(message.charAt(digits - 1))) {
      digits--;
    }
    if (digits == at || digits == end) {
      return end;
    }
    String name = message.substring(at, digits);
    boolean known = NUMBERED.findAtStart(name).map(m -> m.end() == name.length()).orElse(false);
    return known ? value(digits, end, Kind.INTEGER) : end;
  }

  private static boolean isWhole(Kind kind, String ahead, int length) {
    if (length == ahead.length()) {
      return true;
    }
    boolean number = kind == Kind.INTEGER || kind == Kind.NUMBER;
    char next = ahead.charAt(length);
    if (number && next == '.' && length + 1 < ahead.length()) {
      return !isDigit(ahead.charAt(length + 1));
    }
    return !isWord(next) || (number && UNITS.contains(unit(ahead, length)));
  }

  private static String unit(String text, int from) {
    int end = from;
    while (end < text.length() && isWord(text.charAt(end))) {
      end++;
    }
    return text.substring(from, end);
  }

  /** What the shape alone can't tell. */
  private boolean fits(Kind kind, String value, int at) {
    int end = at + value.length();
    char next = end < message.length() ? message.charAt(end) : ' ';
    switch (kind) {
      case USB_PORT:
        return value.contains(":")
            || next == ':'
            || BUS.foundIn(message.substring(Math.max(0, at - LOOK_BACK), at));
      case FAT_ID:
        return value.chars().anyMatch(Character::isLetter);
      case PATH:
        return value.length() > 1;
      case BARE_HEX:
        return value.chars().anyMatch(c -> isDigit((char) c))
            && value.chars().anyMatch(c -> !isDigit((char) c) || value.length() >= 16);
      case IPV6:
        return value.length() > 3;
      default:
        return true;
    }
  }

  private boolean tellsCause(Kind kind, int at, int end, String behind) {
    if (kind != Kind.INTEGER && kind != Kind.HEX) {
      return false;
    }
    if (kind == Kind.INTEGER && behind.endsWith("-") && end - at <= 4) {
      boolean sign = at < 2 || " \t([{=:,<".indexOf(message.charAt(at - 2)) >= 0;
      if (sign && Integer.parseInt(message.substring(at, end)) <= LARGEST_ERROR) {
        return true;
      }
    }
    return TELLS_CAUSE.foundIn(behind);
  }

  private int value(int at, int end, Kind kind) {
    words(at);
    parts.add(Part.value(message.substring(at, end), kind));
    from = end;
    return end;
  }

  private int cause(int at, int end) {
    // The sign of a negative number belongs to it.
    int start = at > from && message.charAt(at - 1) == '-' ? at - 1 : at;
    words(start);
    parts.add(Part.cause(message.substring(start, end)));
    from = end;
    return end;
  }

  private void words(int end) {
    if (end > from) {
      parts.add(Part.words(message.substring(from, end)));
      from = end;
    }
  }

  /** The place of the closing quote when one opens here; 0 when none does. */
  private int quoted(int at) {
    char open = message.charAt(at);
    if ((open != '\'' && open != '"' && open != '`')
        || (at > 0 && isWord(message.charAt(at - 1)))) {
      return 0;
    }
    char close = open == '`' ? '\'' : open;
    int end = message.indexOf(close, at + 1);
    boolean apart =
        end > at + 1
            && end - at <= LONGEST_VALUE
            && (end + 1 == message.length() || !isWord(message.charAt(end + 1)));
    return apart ? end : 0;
  }

  private int quote(int at, int end) {
    String behind = message.substring(Math.max(from, at - LOOK_BACK), at);
    if (TELLS_CAUSE.foundIn(behind)) {
      return cause(at + 1, end) + 1;
    }
    String inside = message.substring(at + 1, end);
    Kind whole = Kind.NAME;
    for (Kind kind : Kind.values()) {
      if (kind.lengthAt(inside) == inside.length() && fits(kind, inside, at + 1)) {
        whole = kind;
        break;
      }
    }
    value(at + 1, end, whole);
    return end + 1;
  }
}
