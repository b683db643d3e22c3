package standstill.text;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Finds, for a regular expression, a set of literals one of which every matching text must contain.
 *
 * <p>A careful under-approximation: it understands literal characters, escapes, classes, groups,
 * alternation and repetition, and gives up (returns the empty list: "can't tell") on anything else.
 * Giving up costs time, never an answer: the caller then always runs the engine. Case-insensitive
 * parts give no literal.
 */
final class Literals {
  private static final int SHORTEST = 3;
  private static final int MOST_EXACT = 32;
  private static final int MOST = 128;

  private final String source;
  private int at;

  private Literals(String source) {
    this.source = source;
  }

  static List<String> of(String source) {
    if (source.contains("(?i") || source.contains("(?s") || source.contains("\\Q")) {
      return List.of();
    }
    try {
      Need need = new Literals(source).alternation();
      return need.best();
    } catch (GaveUp e) {
      return List.of();
    }
  }

  /** The expression was not understood; see the class comment. */
  private static final class GaveUp extends RuntimeException {
    GaveUp() {
      super(null, null, false, false);
    }
  }

  /**
   * What a part of the expression needs.
   *
   * @param exact every text that the part can match, when these are few; null when they are not
   * @param needed literals of which one is in every match; empty when none is known
   */
  private record Need(@Nullable List<String> exact, List<String> needed) {
    static final Need ANYTHING = new Need(null, List.of());
    static final Need EMPTY = new Need(List.of(""), List.of());

    List<String> best() {
      List<String> own = exact == null ? List.of() : exact;
      return score(own) >= score(needed) ? (score(own) > 0 ? own : List.of()) : needed;
    }

    /** The length of the shortest literal; 0 when the set is of no use. */
    static int score(List<String> set) {
      if (set.isEmpty() || set.size() > MOST) {
        return 0;
      }
      int shortest = set.stream().mapToInt(String::length).min().orElse(0);
      return shortest < SHORTEST ? 0 : shortest;
    }

    static List<String> better(List<String> a, List<String> b) {
      return score(a) >= score(b) ? a : b;
    }
  }

  private Need alternation() {
    List<Need> branches = new ArrayList<>();
    branches.add(concatenation());
    while (at < source.length() && source.charAt(at) == '|') {
      at++;
      branches.add(concatenation());
    }
    if (branches.size() == 1) {
      return branches.get(0);
    }
    List<String> exact = new ArrayList<>();
    List<String> needed = new ArrayList<>();
    boolean allExact = true;
    boolean allNeeded = true;
    for (Need branch : branches) {
      if (branch.exact() == null) {
        allExact = false;
      } else {
        exact.addAll(branch.exact());
      }
      List<String> best = branch.best();
      allNeeded &= !best.isEmpty();
      needed.addAll(best);
    }
    return new Need(
        allExact && exact.size() <= MOST_EXACT ? exact : null,
        allNeeded && needed.size() <= MOST ? needed : List.of());
  }

  private Need concatenation() {
    List<String> needed = List.of();
    List<String> run = List.of("");
    boolean whole = true;
    while (at < source.length() && source.charAt(at) != '|' && source.charAt(at) != ')') {
      Need item = repetition();
      List<String> product = item.exact() == null ? null : product(run, item.exact());
      if (product != null) {
        run = product;
      } else {
        whole = false;
        needed = Need.better(Need.better(needed, item.best()), run);
        run = item.exact() == null ? List.of("") : item.exact();
      }
    }
    return new Need(whole ? run : null, whole ? needed : Need.better(needed, run));
  }

  private static @Nullable List<String> product(List<String> left, List<String> right) {
    if (left.size() * right.size() > MOST_EXACT) {
      return null;
    }
    List<String> all = new ArrayList<>();
    for (String a : left) {
      for (String b : right) {
        if (a.length() + b.length() > 80) {
          return null;
        }
        all.add(a + b);
      }
    }
    return all;
  }

  private Need repetition() {
    Need item = atom();
    while (at < source.length()) {
      char c = source.charAt(at);
      if (c == '?') {
        at++;
        item = item.exact() == null ? Need.ANYTHING : optional(item.exact());
      } else if (c == '*') {
        at++;
        item = Need.ANYTHING;
      } else if (c == '+') {
        at++;
        item = new Need(null, item.best());
      } else if (c == '{') {
        int end = source.indexOf('}', at);
        if (end < 0 || !source.substring(at + 1, end).matches("\\d+(,\\d*)?")) {
          throw new GaveUp();
        }
        boolean zero = source.charAt(at + 1) == '0';
        at = end + 1;
        item = zero ? Need.ANYTHING : new Need(null, item.best());
      } else {
        break;
      }
    }
    return item;
  }

  private static Need optional(List<String> exact) {
    List<String> all = new ArrayList<>(exact);
    all.add("");
    return all.size() > MOST_EXACT ? Need.ANYTHING : new Need(all, List.of());
  }

  private Need atom() {
    char c = source.charAt(at++);
    return switch (c) {
      case '(' -> group();
      case '[' -> charClass();
      case '.' -> Need.ANYTHING;
      case '^', '$' -> Need.EMPTY;
      case '\\' -> escape();
      case '*', '+', '?', '{' -> throw new GaveUp();
      default -> new Need(List.of(String.valueOf(c)), List.of());
    };
  }

  private Need group() {
    if (source.startsWith("?", at)) {
      if (source.startsWith("?:", at)) {
        at += 2;
      } else if (source.startsWith("?P<", at) || source.startsWith("?<", at)) {
        int end = source.indexOf('>', at);
        if (end < 0) {
          throw new GaveUp();
        }
        at = end + 1;
      } else {
        throw new GaveUp();
      }
    }
    Need inside = alternation();
    if (at >= source.length() || source.charAt(at) != ')') {
      throw new GaveUp();
    }
    at++;
    return inside;
  }

  /**
   * A class is exact when it lists a few single characters; ranges and negations match anything.
   */
  private Need charClass() {
    int end = at;
    if (end < source.length() && source.charAt(end) == '^') {
      end++;
    }
    if (end < source.length() && source.charAt(end) == ']') {
      end++;
    }
    while (end < source.length() && source.charAt(end) != ']') {
      if (source.startsWith("[:", end)) {
        end = source.indexOf(":]", end) + 1;
        if (end <= 0) {
          throw new GaveUp();
        }
      } else if (source.charAt(end) == '\\') {
        end++;
      }
      end++;
    }
    if (end >= source.length()) {
      throw new GaveUp();
    }
    String body = source.substring(at, end);
    at = end + 1;
    if (body.isEmpty() || body.length() > 4 || !body.chars().allMatch(Literals::plainInClass)) {
      return Need.ANYTHING;
    }
    return new Need(body.chars().mapToObj(c -> String.valueOf((char) c)).toList(), List.of());
  }

  private static boolean plainInClass(int c) {
    return c != '\\' && c != '-' && c != '^' && c != '[' && c != ':';
  }

  private Need escape() {
    if (at >= source.length()) {
      throw new GaveUp();
    }
    char c = source.charAt(at++);
    if (c == 'b' || c == 'B' || c == 'A' || c == 'z') {
      return Need.EMPTY;
    }
    if (c == 't') {
      return new Need(List.of("\t"), List.of());
    }
    if ("dDsSwW".indexOf(c) >= 0) {
      return Need.ANYTHING;
    }
    if (Character.isLetterOrDigit(c)) {
      throw new GaveUp();
    }
    return new Need(List.of(String.valueOf(c)), List.of());
  }
}
