package standstill.base;

import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * Places in a text that a value goes into: a lower-case name in braces. Braces behind a dollar sign
 * are the shell's own, those behind a capital letter the device manager's.
 */
public final class Placeholders {
  private Placeholders() {}

  /** The names in a text. */
  public static Set<String> in(String text) {
    Set<String> names = new LinkedHashSet<>();
    replaced(
        text,
        name -> {
          names.add(name);
          return "";
        });
    return names;
  }

  /** The text with values in their places; what has no value stays as it is. */
  public static String filled(String text, Map<String, String> values) {
    return replaced(text, name -> values.getOrDefault(name, "{" + name + "}"));
  }

  private static String replaced(String text, UnaryOperator<String> value) {
    StringBuilder out = new StringBuilder();
    int at = 0;
    while (at < text.length()) {
      int open = text.indexOf('{', at);
      if (open < 0) {
        break;
      }
      String name = open > 0 && isOthers(text.charAt(open - 1)) ? null : name(text, open + 1);
      if (name == null) {
        out.append(text, at, open + 1);
        at = open + 1;
      } else {
        out.append(text, at, open).append(value.apply(name));
        at = open + name.length() + 2;
      }
    }
    return out.append(text.substring(Math.min(at, text.length()))).toString();
  }

  private static @Nullable String name(String text, int from) {
    int to = from;
    while (to < text.length() && isPart(text.charAt(to), to == from)) {
      to++;
    }
    return to > from && to < text.length() && text.charAt(to) == '}'
        ? text.substring(from, to)
        : null;
  }

  private static boolean isOthers(char before) {
    return before == '$' || before >= 'A' && before <= 'Z';
  }

  private static boolean isPart(char c, boolean first) {
    return c >= 'a' && c <= 'z' || !first && (c == '_' || c == '-' || c >= '0' && c <= '9');
  }
}
