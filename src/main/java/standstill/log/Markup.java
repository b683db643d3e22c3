package standstill.log;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Undoes what web pages and forums make of a log: character entities, tags around it.
 *
 * <p>Only tags that a log can't contain are taken out; a host name in angle brackets stays.
 */
final class Markup {
  private static final Map<String, String> ENTITIES =
      Map.ofEntries(
          Map.entry("lt", "<"),
          Map.entry("gt", ">"),
          Map.entry("amp", "&"),
          Map.entry("quot", "\""),
          Map.entry("apos", "'"),
          Map.entry("nbsp", " "),
          Map.entry("hellip", "..."),
          Map.entry("ndash", "-"),
          Map.entry("mdash", "-"),
          Map.entry("lsquo", "'"),
          Map.entry("rsquo", "'"),
          Map.entry("ldquo", "\""),
          Map.entry("rdquo", "\""),
          Map.entry("lsqb", "["),
          Map.entry("rsqb", "]"));

  private static final Set<String> TAGS =
      Set.of(
          "pre", "code", "span", "div", "samp", "blockquote", "font", "strong", "p", "tt", "kbd");

  private static final Set<String> BRACKETED =
      Set.of("code", "quote", "spoiler", "pre", "noparse", "color", "size", "font", "codebox");

  private static final int LONGEST_ENTITY = 10;
  private static final int LONGEST_TAG = 200;

  private Markup() {}

  /** The text as one line, or as several where it had line breaks in markup. */
  static List<String> undo(String text) {
    if (text.indexOf('&') < 0 && text.indexOf('<') < 0 && text.indexOf('[') < 0) {
      return List.of(text);
    }
    List<String> lines = new ArrayList<>(1);
    StringBuilder line = new StringBuilder(text.length());
    int at = 0;
    while (at < text.length()) {
      char c = text.charAt(at);
      int end = c == '<' ? tagEnd(text, at) : c == '[' ? bracketEnd(text, at) : -1;
      if (end > 0) {
        if (isBreak(text, at)) {
          lines.add(line.toString());
          line.setLength(0);
        }
        at = end;
      } else if (c == '&') {
        at = entity(text, at, line);
      } else {
        line.append(c);
        at++;
      }
    }
    lines.add(line.toString());
    return lines;
  }

  private static int entity(String text, int at, StringBuilder out) {
    int end = next(text, ';', at, LONGEST_ENTITY);
    if (end > at + 1) {
      String name = text.substring(at + 1, end);
      String known = ENTITIES.get(name);
      String shown = known != null ? known : numeric(name);
      if (shown != null) {
        out.append(shown);
        return end + 1;
      }
    }
    out.append('&');
    return at + 1;
  }

  private static @Nullable String numeric(String name) {
    if (name.charAt(0) != '#') {
      return null;
    }
    try {
      boolean hex = name.startsWith("#x") || name.startsWith("#X");
      int code =
          hex ? Integer.parseInt(name.substring(2), 16) : Integer.parseInt(name.substring(1));
      boolean whole = Character.isValidCodePoint(code) && (code < 0xd800 || code > 0xdfff);
      return whole ? Character.toString(code) : null;
    } catch (NumberFormatException e) {
      return null;
    }
  }

  private static boolean isBreak(String text, int at) {
    return text.regionMatches(true, at, "<br", 0, 3);
  }

  /** Offset after a tag of a web page, or -1. */
  private static int tagEnd(String text, int at) {
    int from = at + 1;
    boolean closing = from < text.length() && text.charAt(from) == '/';
    from += closing ? 1 : 0;
    int nameEnd = letters(text, from);
    String name = text.substring(from, nameEnd).toLowerCase(Locale.ROOT);
    boolean lineBreak = name.equals("br");
    if (!lineBreak && !TAGS.contains(name)) {
      return -1;
    }
    int end = next(text, '>', nameEnd, LONGEST_TAG - (nameEnd - at));
    if (end < 0) {
      return -1;
    }
    String rest = text.substring(nameEnd, end).strip();
    boolean plain = rest.isEmpty() || rest.equals("/");
    return plain || rest.indexOf('=') > 0 ? end + 1 : -1;
  }

  /** Offset after a tag of a forum, or -1. */
  private static int bracketEnd(String text, int at) {
    int from = at + 1;
    from += from < text.length() && text.charAt(from) == '/' ? 1 : 0;
    int nameEnd = letters(text, from);
    if (nameEnd == from || nameEnd >= text.length()) {
      return -1;
    }
    if (!BRACKETED.contains(text.substring(from, nameEnd).toLowerCase(Locale.ROOT))) {
      return -1;
    }
    if (text.charAt(nameEnd) == ']') {
      return nameEnd + 1;
    }
    if (text.charAt(nameEnd) != '=') {
      return -1;
    }
    int end = next(text, ']', nameEnd, LONGEST_TAG - 1 - (nameEnd - at));
    return end < 0 ? -1 : end + 1;
  }

  /** Offset of a character at most so far behind an offset, or -1: a line may hold many tags. */
  private static int next(String text, char c, int from, int most) {
    int end = Math.min(text.length() - 1, from + most);
    for (int i = from; i <= end; i++) {
      if (text.charAt(i) == c) {
        return i;
      }
    }
    return -1;
  }

  private static int letters(String text, int from) {
    int at = from;
    while (at < text.length() && at < from + 12 && Character.isLetter(text.charAt(at))) {
      at++;
    }
    return at;
  }
}
