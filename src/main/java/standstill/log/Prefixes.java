package standstill.log;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import standstill.base.Family;
import standstill.base.LineForm;
import standstill.text.Pattern;

/**
 * Takes the beginnings of lines apart, with the line forms of the base.
 *
 * <p>Forms can stand in a row: a syslog stamp, then a kernel stamp, then a process tag. A further
 * form counts only when it says something that the ones before didn't. Lines of one paste look
 * alike, so the form that fitted last is tried first; forms that the base puts before it and that
 * would take its lines as well keep their precedence.
 */
final class Prefixes {
  private static final int LONGEST_ROW = 5;

  /** Beginnings are short; the engine needn't look at the rest of a long line. */
  private static final int LONGEST_PREFIX = 400;

  private final List<LineForm> forms;
  private final int[][] orders;
  private final int[] lastFitting = new int[LONGEST_ROW];

  private Prefixes(Prefixes other) {
    forms = other.forms;
    orders = other.orders;
  }

  Prefixes(List<Family> families) {
    List<LineForm> all = new ArrayList<>();
    families.forEach(family -> all.addAll(family.lineForms()));
    forms = List.copyOf(all);
    orders = new int[forms.size()][];
    for (int i = 0; i < forms.size(); i++) {
      orders[i] = orderAfter(i);
    }
  }

  /** The same forms, for another text; one instance reads one text. */
  Prefixes fresh() {
    return new Prefixes(this);
  }

  /** Order of trial after form {@code last} has fitted: its rivals before it, itself, the rest. */
  private int[] orderAfter(int last) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < last; i++) {
      if (takesLinesOf(forms.get(last), forms.get(i))) {
        order.add(i);
      }
    }
    order.add(last);
    for (int i = 0; i < forms.size(); i++) {
      if (!order.contains(i)) {
        order.add(i);
      }
    }
    return order.stream().mapToInt(Integer::intValue).toArray();
  }

  private static boolean takesLinesOf(LineForm form, LineForm other) {
    return other.seen().stream().anyMatch(s -> form.prefix().findAtStart(s).isPresent());
  }

  /** What the beginning of a line says; {@link Prefix#NONE} when no form fits. */
  Prefix read(String line) {
    return readAt(line, 0);
  }

  /** The same for the line that begins at an offset. */
  Prefix readAt(String line, int from) {
    String text = line.substring(from, Math.min(line.length(), from + LONGEST_PREFIX));
    Map<String, String> values = new HashMap<>();
    int end = 0;
    boolean record = false;
    for (int depth = 0; depth < LONGEST_ROW && end < text.length(); depth++) {
      String rest = end == 0 ? text : text.substring(end);
      Optional<Pattern.Match> match = fit(rest, depth, values);
      if (match.isEmpty()) {
        break;
      }
      match.get().values().forEach(values::putIfAbsent);
      record |= forms.get(lastFitting[depth]).record();
      end += match.get().end();
    }
    return end == 0 ? Prefix.NONE : interpret(end, record, values);
  }

  private Optional<Pattern.Match> fit(String rest, int depth, Map<String, String> known) {
    if (forms.isEmpty()) {
      return Optional.empty();
    }
    for (int index : orders[lastFitting[depth]]) {
      Pattern prefix = forms.get(index).prefix();
      if (!prefix.mayBeginWith(rest.charAt(0))) {
        continue;
      }
      Optional<Pattern.Match> match = prefix.findAtStart(rest);
      if (match.isPresent() && match.get().end() > 0 && saysMore(match.get(), depth, known)) {
        lastFitting[depth] = index;
        return match;
      }
    }
    return Optional.empty();
  }

  private static boolean saysMore(Pattern.Match match, int depth, Map<String, String> known) {
    return depth == 0
        || (!match.values().isEmpty()
            && match.values().keySet().stream().noneMatch(known::containsKey));
  }

  private static Prefix interpret(int end, boolean record, Map<String, String> values) {
    String seconds = values.getOrDefault("seconds", "");
    OptionalInt level = level(values);
    return new Prefix(
        end,
        seconds(seconds, record),
        seconds.startsWith("+"),
        Clock.read(values.getOrDefault("clock", "")),
        level,
        // A syslog message without a program has a dash there (RFC 5424 section 6.2, NILVALUE).
        "-".equals(values.get("process")) ? "" : values.getOrDefault("process", ""),
        record);
  }

  private static OptionalDouble seconds(String value, boolean record) {
    if (value.isEmpty()) {
      return OptionalDouble.empty();
    }
    try {
      double number = Double.parseDouble(value);
      return OptionalDouble.of(record ? number / 1e6 : number);
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }

  private static OptionalInt level(Map<String, String> values) {
    String pri = values.getOrDefault("pri", "");
    if (!pri.isEmpty() && pri.length() <= 4 && pri.chars().allMatch(c -> c >= '0' && c <= '9')) {
      return OptionalInt.of(Severity.ofPriority(Integer.parseInt(pri)));
    }
    return Severity.ofWord(values.getOrDefault("level", ""));
  }
}
