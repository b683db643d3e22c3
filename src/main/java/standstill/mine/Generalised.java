package standstill.mine;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import standstill.text.Pattern;

/**
 * A line turned into the pattern of a sign: numbers, ids and paths become named groups, words and
 * error numbers stay.
 *
 * <p>It is a proposal. The pattern matches the line that it was made of, and the machine can't know
 * which of its words tell the cause; a person shortens it to those.
 *
 * @param pattern matches the message
 * @param captures what the named groups catch in the message, in order
 */
public record Generalised(Pattern pattern, List<Capture> captures) {
  /** Longest beginning of a message that the pattern is made of, in characters. */
  public static final int LONGEST = 300;

  /** Most named groups; further values are matched and not caught. */
  private static final int MOST_GROUPS = 9;

  private static final Set<String> KEYS =
      Set.of(
          "sector", "block", "inode", "cpu", "irq", "queue", "slot", "line", "port", "task", "pid",
          "node", "bus", "tag", "qid", "offset", "size", "len", "lba", "tty", "uid");
  private static final Pattern KEY_BEFORE =
      Pattern.known(
          "(?:^|[^A-Za-z])(?:(?P<assigned>[A-Za-z]{2,12})=|(?P<named>[A-Za-z]{2,8})[ #]{0,2})$");
  private static final Pattern SECONDS_AFTER =
      Pattern.known(" ?(?:s|secs?|seconds?|ms|jiffies)\\b");

  public Generalised {
    captures = List.copyOf(captures);
  }

  /**
   * What a named group catches.
   *
   * @param name of the group
   * @param value in the line that the pattern was made of
   */
  public record Capture(String name, String value) {}

  /**
   * The pattern of a line.
   *
   * @param message the message without time stamp, level, host and process tag, as {@code
   *     LogLine.message} has it; only its first {@link #LONGEST} characters are used
   */
  public static Generalised of(String message) {
    return of(List.of(message));
  }

  /**
   * The pattern of messages of one template, which have equally many tokens. Where their words
   * differ, a group catches the word.
   */
  static Generalised of(List<String> messages) {
    List<List<Token>> all = messages.stream().map(m -> Token.of(beginning(m))).toList();
    return new Generalised(Pattern.known(new Source().of(laidOver(all))), messages.get(0));
  }

  private static List<Part> laidOver(List<List<Token>> messages) {
    int length = messages.stream().mapToInt(List::size).min().orElse(0);
    List<Part> parts = new ArrayList<>();
    StringBuilder words = new StringBuilder();
    for (int i = 0; i < length; i++) {
      int place = i;
      List<Token> tokens = messages.stream().map(m -> m.get(place)).distinct().toList();
      if (i > 0) {
        words.append(tokens.stream().anyMatch(Token::wide) ? "  " : " ");
      }
      boolean alike = tokens.stream().allMatch(tokens.get(0)::isLike);
      List<Part> common =
          alike
              ? tokens.get(0).parts()
              : List.of(Part.value(joined(tokens.stream().map(Token::text)), Kind.WORD));
      for (int p = 0; p < common.size(); p++) {
        int part = p;
        Optional<Kind> kind = common.get(p).kind();
        if (kind.isEmpty()) {
          words.append(common.get(p).text());
        } else {
          parts.add(Part.words(words.toString()));
          words.setLength(0);
          parts.add(
              alike
                  ? Part.value(
                      joined(tokens.stream().map(t -> t.parts().get(part).text())), kind.get())
                  : common.get(p));
        }
      }
    }
    parts.add(Part.words(words.toString()));
    return parts;
  }

  private static String joined(Stream<String> texts) {
    return texts.distinct().collect(Collectors.joining());
  }

  private Generalised(Pattern pattern, String message) {
    this(pattern, captures(pattern, message));
  }

  private static List<Capture> captures(Pattern pattern, String message) {
    return pattern.find(message).orElseThrow().values().entrySet().stream()
        .map(caught -> new Capture(caught.getKey(), caught.getValue()))
        .toList();
  }

  /**
   * Whether the pattern has a word of three characters or more, as a sign must; a line of numbers
   * alone gives none.
   */
  public boolean tells() {
    return !pattern.literals().isEmpty();
  }

  private static String beginning(String message) {
    String text = message.strip();
    if (text.length() <= LONGEST) {
      return text;
    }
    int end = LONGEST;
    while (end > 0 && !Character.isWhitespace(text.charAt(end))) {
      end--;
    }
    return end == 0 ? text.substring(0, LONGEST) : text.substring(0, end);
  }

  /** Writes a pattern from parts. */
  private static final class Source {
    private static final String SPECIAL = "\\.+*?()|[]{}^$";

    private final Map<String, Integer> used = new HashMap<>();
    private int groups;

    String of(List<Part> parts) {
      StringBuilder out = new StringBuilder();
      for (int i = 0; i < parts.size(); i++) {
        Part part = parts.get(i);
        String before = i == 0 ? "" : parts.get(i - 1).text();
        String after = i + 1 == parts.size() ? "" : parts.get(i + 1).text();
        if (part.kind().isEmpty()) {
          words(part.text(), out);
        } else {
          value(part.text(), part.kind().get(), before, after, out);
        }
      }
      return out.toString();
    }

    private void value(String text, Kind kind, String before, String after, StringBuilder out) {
      String regex = kind.regex().isEmpty() ? upTo(text, after) : kind.regex();
      if (groups == MOST_GROUPS) {
        out.append(regex);
      } else {
        groups++;
        out.append("(?P<").append(unique(name(kind, before, after))).append('>');
        out.append(regex).append(')');
      }
    }

    /** Everything up to the character that follows; that much is known of a name or a path. */
    private static String upTo(String text, String after) {
      char next = after.isEmpty() ? ' ' : after.charAt(0);
      boolean blanks = text.chars().anyMatch(Character::isWhitespace);
      // Names and paths may hold stops, so a stop that follows doesn't bound them.
      if (next == '.' || Character.isWhitespace(next) || text.indexOf(next) >= 0) {
        return blanks ? "\\S.*?" : "\\S+";
      }
      return (blanks ? "[^" : "[^\\s") + (SPECIAL.indexOf(next) >= 0 ? "\\" : "") + next + "]+";
    }

    private static String name(Kind kind, String before, String after) {
      if (kind == Kind.TAG) {
        return before.contains("LABEL=") && !before.contains("UUID=") ? "label" : "id";
      }
      if (!kind.group().equals("n")) {
        return kind.group();
      }
      if (SECONDS_AFTER.findAtStart(after).isPresent()) {
        return "seconds";
      }
      return KEY_BEFORE
          .find(before.substring(Math.max(0, before.length() - 16)))
          .map(match -> key(match.values()))
          .orElse("n");
    }

    private static String key(Map<String, String> caught) {
      String assigned = caught.get("assigned");
      if (assigned != null) {
        return assigned.toLowerCase(Locale.ROOT);
      }
      String named = caught.getOrDefault("named", "").toLowerCase(Locale.ROOT);
      return KEYS.contains(named) ? named : "n";
    }

    private String unique(String name) {
      int times = used.merge(name, 1, Integer::sum);
      return times == 1 ? name : name + times;
    }

    private static void words(String text, StringBuilder out) {
      boolean blank = false;
      for (int i = 0; i < text.length(); i++) {
        char c = text.charAt(i);
        if (Character.isWhitespace(c)) {
          if (!blank) {
            boolean more = i + 1 < text.length() && Character.isWhitespace(text.charAt(i + 1));
            out.append(more || c != ' ' ? "\\s+" : " ");
          }
          blank = true;
        } else {
          blank = false;
          if (SPECIAL.indexOf(c) >= 0) {
            out.append('\\');
          }
          out.append(c);
        }
      }
    }
  }
}
