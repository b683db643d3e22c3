package standstill.machine;

import java.util.Map;

/** Texts with places for values. */
final class Template {
  private Template() {}

  /** The text with its {@code {name}} places filled; a value that was not caught is empty. */
  static String fill(String template, Map<String, String> values) {
    int open = template.indexOf('{');
    if (open < 0) {
      return template;
    }
    StringBuilder out = new StringBuilder();
    int at = 0;
    while (open >= 0) {
      int close = template.indexOf('}', open);
      if (close < 0) {
        break;
      }
      out.append(template, at, open);
      out.append(values.getOrDefault(template.substring(open + 1, close), ""));
      at = close + 1;
      open = template.indexOf('{', at);
    }
    return out.append(template.substring(at)).toString();
  }
}
