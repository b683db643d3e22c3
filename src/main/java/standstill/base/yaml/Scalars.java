package standstill.base.yaml;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.DumperOptions.ScalarStyle;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import standstill.text.Pattern;
import standstill.text.Position;

/**
 * Texts, words and numbers.
 *
 * <p>A plain scalar is what the core schema of YAML 1.2.2, section 10.3.2, makes of it, as editors
 * have it; the library resolves by YAML 1.1, in which {@code off} is no text.
 */
final class Scalars {
  private static final int LONGEST_ID = 60;
  private static final int LONGEST_TITLE = 90;

  static final String ID_FORM =
      "lower-case words joined by hyphens, at most " + LONGEST_ID + " characters";
  private static final Pattern NUMBER =
      Pattern.known(
          "^(?:[-+]?[0-9]+|0o[0-7]+|0x[0-9a-fA-F]+|[-+]?(?:\\.[0-9]+|[0-9]+(?:\\.[0-9]*)?)(?:[eE][-+]?[0-9]+)?"
              + "|[-+]?\\.(?:inf|Inf|INF)|\\.(?:nan|NaN|NAN))$");
  private static final Pattern TRUTH = Pattern.known("^(?:true|True|TRUE|false|False|FALSE)$");
  private static final Pattern NOTHING = Pattern.known("^(?:null|Null|NULL|~)?$");
  private static final Pattern ID = Pattern.known("^[a-z0-9](?:[a-z0-9-]*[a-z0-9])?$");

  private static final Pattern FIX =
      Pattern.known("^[a-z0-9][a-z0-9-]{0,59}/fix/[a-z0-9][a-z0-9-]{0,59}$");

  private static final Pattern VERSION = Pattern.known("^[0-9]{1,6}(?:\\.[0-9]{1,6}){0,5}$");
  private static final Pattern CONDITION =
      Pattern.known("^(?:not )?[a-z0-9][a-z0-9-]{0,59}(?:/[a-z0-9][a-z0-9-]{0,59})?$");

  private Scalars() {}

  /** A text that is not blank. */
  static Value text() {
    return new Text();
  }

  /** A short sentence without a full stop. */
  static Value title() {
    return new Title();
  }

  /** Lower-case words joined by hyphens. */
  static Value id() {
    return new Id();
  }

  /** Names a fix: a fault's id, {@code /fix/}, the fix's own id. */
  static Value fix() {
    return new Formed(FIX, "the name of a fix", "the fault's id, /fix/, the id of the fix");
  }

  /** A version: numbers joined by dots. */
  static Value version() {
    return new Formed(VERSION, "a version", "numbers joined by dots, such as '6.12'");
  }

  /** The name of a case, a fact or an answer, alone or behind {@code not}. */
  static Value condition() {
    return new Formed(
        CONDITION, "a condition", "a word, or check/answer, each alone or behind not");
  }

  /** A regular expression in RE2 syntax. */
  static Value pattern() {
    return new Regex();
  }

  /** A day, written as 2026-01-31. */
  static Value day() {
    return new Day();
  }

  /** A word out of a few. */
  static Value word(Collection<String> allowed) {
    return new Word(List.copyOf(allowed));
  }

  /** A whole number within bounds. */
  static Value whole(int least, int most) {
    return new Number(true, least, most);
  }

  /** A number within bounds. */
  static Value number(double least, double most) {
    return new Number(false, least, most);
  }

  private static ObjectNode typed(String type) {
    return JsonNodeFactory.instance.objectNode().put("type", type);
  }

  private static ObjectNode matching(String pattern) {
    return typed("string").put("pattern", pattern);
  }

  /** The text at a node; null, with a problem, when there is none. */
  private static @Nullable String textAt(String key, Node node, Sink sink) {
    if (!(node instanceof ScalarNode scalar)) {
      sink.error(node.getStartMark(), "'" + key + "' is not a text", "");
      return null;
    }
    String value = scalar.getValue();
    if (scalar.isPlain() && (NUMBER.foundIn(value) || TRUTH.foundIn(value))) {
      sink.error(
          node.getStartMark(),
          "'" + key + "' is not a text",
          "put quotes around it: '" + value + "'");
      return null;
    }
    if (value.isBlank() || (scalar.isPlain() && NOTHING.foundIn(value))) {
      sink.error(node.getStartMark(), "'" + key + "' is empty", "");
      return null;
    }
    return read(scalar);
  }

  /**
   * The text of a scalar. Quotes keep blanks at the ends on purpose; block texts end in a line
   * break that nobody means.
   */
  static String read(ScalarNode scalar) {
    boolean quoted =
        scalar.getScalarStyle() == ScalarStyle.SINGLE_QUOTED
            || scalar.getScalarStyle() == ScalarStyle.DOUBLE_QUOTED;
    return quoted ? scalar.getValue() : scalar.getValue().strip();
  }

  private record Text() implements Value {
    @Override
    public void check(String key, Node node, Sink sink) {
      textAt(key, node, sink);
    }

    @Override
    public ObjectNode schema() {
      return matching("\\S");
    }
  }

  private record Title() implements Value {
    @Override
    public void check(String key, Node node, Sink sink) {
      String text = textAt(key, node, sink);
      if (text != null && (text.length() > LONGEST_TITLE || text.strip().endsWith("."))) {
        sink.error(
            node.getStartMark(),
            "title is not a short sentence without a full stop",
            "allowed: at most " + LONGEST_TITLE + " characters");
      }
    }

    @Override
    public ObjectNode schema() {
      return matching("[^.\\s]\\s*$").put("maxLength", LONGEST_TITLE);
    }
  }

  private record Id() implements Value {
    @Override
    public void check(String key, Node node, Sink sink) {
      String text = textAt(key, node, sink);
      if (text != null && !isId(text)) {
        sink.error(node.getStartMark(), "'" + text + "' is not an id", "allowed: " + ID_FORM);
      }
    }

    @Override
    public ObjectNode schema() {
      return matching(ID.source()).put("maxLength", LONGEST_ID);
    }
  }

  private record Formed(Pattern form, String what, String allowed) implements Value {
    @Override
    public void check(String key, Node node, Sink sink) {
      String text = textAt(key, node, sink);
      if (text != null && !form.foundIn(text)) {
        sink.error(node.getStartMark(), "'" + text + "' is not " + what, "allowed: " + allowed);
      }
    }

    @Override
    public ObjectNode schema() {
      return matching(form.source());
    }
  }

  /** Whether a text is numbers joined by dots. */
  static boolean isVersion(String text) {
    return VERSION.foundIn(text);
  }

  /** Whether a text is lower-case words joined by hyphens. */
  static boolean isId(String text) {
    return text.length() <= LONGEST_ID && ID.foundIn(text);
  }

  private record Regex() implements Value {
    @Override
    public void check(String key, Node node, Sink sink) {
      String source = textAt(key, node, sink);
      if (source == null) {
        return;
      }
      try {
        Pattern.of(source);
      } catch (Pattern.SyntaxException e) {
        Position start = sink.position(node.getStartMark());
        // Inside quotes the pattern's own offset is one to the right of the quote; a doubled quote
        // shifts it, rarely.
        int quote = node instanceof ScalarNode s && !s.isPlain() ? 1 : 0;
        boolean oneLine = node.getStartMark().getLine() == node.getEndMark().getLine();
        int column = oneLine ? start.column() + quote + e.offset() : start.column();
        sink.error(
            new Position(start.file(), start.line(), column),
            "pattern " + e.getMessage(),
            "look-around and back-references are not there; groups are (?P<name>...)");
      }
    }

    @Override
    public ObjectNode schema() {
      return matching("\\S");
    }
  }

  private record Day() implements Value {
    @Override
    public void check(String key, Node node, Sink sink) {
      String text = textAt(key, node, sink);
      if (text != null && day(text).isEmpty()) {
        sink.error(node.getStartMark(), "'" + text + "' is not a date", "write it as 2026-01-31");
      }
    }

    @Override
    public ObjectNode schema() {
      return matching("^[0-9]{4}-[0-9]{2}-[0-9]{2}$").put("format", "date");
    }
  }

  /** The day that a text names, if it is one. */
  static Optional<LocalDate> day(String text) {
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  private record Word(List<String> allowed) implements Value {
    @Override
    public void check(String key, Node node, Sink sink) {
      String text = textAt(key, node, sink);
      if (text != null && !allowed.contains(text)) {
        sink.error(
            node.getStartMark(),
            "unknown word '" + text + "' for " + key,
            Words.advice(text, allowed));
      }
    }

    @Override
    public ObjectNode schema() {
      ObjectNode schema = JsonNodeFactory.instance.objectNode();
      var words = schema.putArray("enum");
      allowed.forEach(words::add);
      return schema;
    }
  }

  private record Number(boolean whole, double least, double most) implements Value {
    @Override
    public void check(String key, Node node, Sink sink) {
      if (node instanceof ScalarNode scalar
          && scalar.isPlain()
          && NUMBER.foundIn(scalar.getValue())) {
        try {
          double number =
              whole ? Integer.parseInt(scalar.getValue()) : Double.parseDouble(scalar.getValue());
          if (number >= least && number <= most) {
            return;
          }
        } catch (NumberFormatException e) {
          // Reported below, together with numbers out of bounds.
        }
      }
      sink.error(
          node.getStartMark(),
          "'"
              + key
              + (whole ? "' is not a whole number from " : "' is not a number from ")
              + shown(least)
              + " to "
              + shown(most),
          "");
    }

    private static String shown(double bound) {
      return bound == Math.rint(bound) ? Long.toString((long) bound) : Double.toString(bound);
    }

    @Override
    public ObjectNode schema() {
      ObjectNode schema = typed(whole ? "integer" : "number");
      bound(schema, "minimum", least);
      bound(schema, "maximum", most);
      return schema;
    }

    private static void bound(ObjectNode schema, String name, double bound) {
      if (bound == Math.rint(bound)) {
        schema.put(name, (long) bound);
      } else {
        schema.put(name, bound);
      }
    }
  }
}
