package standstill.text;

import java.util.BitSet;

/**
 * Finds, for a regular expression, the characters with which a match can begin.
 *
 * <p>A careful over-approximation, made for skipping patterns that can't match at the beginning of
 * a line: whatever it doesn't understand may begin with anything. Characters outside ASCII count as
 * one.
 */
final class FirstCharacters {
  /** Stands for every character outside ASCII. */
  private static final int OTHER = 128;

  private final String source;
  private int at;

  private FirstCharacters(String source) {
    this.source = source;
  }

  /** The characters, with bit 128 for all outside ASCII. */
  static BitSet of(String source) {
    try {
      FirstCharacters parser = new FirstCharacters(source);
      Part part = parser.alternation();
      return part.empty() || parser.at < source.length() ? any() : part.first();
    } catch (GaveUp e) {
      return any();
    }
  }

  static boolean contains(BitSet set, char c) {
    return set.get(Math.min(c, OTHER));
  }

  /** The expression was not understood; see the class comment. */
  private static final class GaveUp extends RuntimeException {
    GaveUp() {
      super(null, null, false, false);
    }
  }

  /**
   * A part of the expression.
   *
   * @param first characters with which it can begin
   * @param empty whether it can match nothing
   */
  private record Part(BitSet first, boolean empty) {}

  private static BitSet any() {
    BitSet set = new BitSet(OTHER + 1);
    set.set(0, OTHER + 1);
    return set;
  }

  private Part alternation() {
    Part part = concatenation();
    while (at < source.length() && source.charAt(at) == '|') {
      at++;
      Part other = concatenation();
      part.first().or(other.first());
      part = new Part(part.first(), part.empty() || other.empty());
    }
    return part;
  }

  private Part concatenation() {
    BitSet first = new BitSet(OTHER + 1);
    boolean empty = true;
    while (at < source.length() && source.charAt(at) != '|' && source.charAt(at) != ')') {
      Part part = repetition();
      if (empty) {
        first.or(part.first());
      }
      empty &= part.empty();
    }
    return new Part(first, empty);
  }

  private Part repetition() {
    Part part = atom();
    while (at < source.length()) {
      char c = source.charAt(at);
      boolean optional = c == '*' || c == '?';
      if (c == '{') {
        int end = source.indexOf('}', at);
        if (end < 0 || !source.substring(at + 1, end).matches("\\d+(,\\d*)?")) {
          throw new GaveUp();
        }
        optional = source.charAt(at + 1) == '0';
        at = end;
      } else if (!optional && c != '+') {
        break;
      }
      at++;
      part = optional ? new Part(part.first(), true) : part;
    }
    return part;
  }

  private Part atom() {
    char c = source.charAt(at++);
    return switch (c) {
      case '(' -> group();
      case '[' -> new Part(characterClass(), false);
      case '.' -> new Part(any(), false);
      case '^', '$' -> new Part(new BitSet(OTHER + 1), true);
      case '\\' -> escape();
      case '*', '+', '?', '{' -> throw new GaveUp();
      default -> new Part(single(c), false);
    };
  }

  private Part group() {
    if (source.startsWith("?", at)) {
      boolean named = source.startsWith("?P<", at) || source.startsWith("?<", at);
      int end = named ? source.indexOf('>', at) : source.startsWith("?:", at) ? at + 1 : -1;
      if (end < 0) {
        throw new GaveUp();
      }
      at = end + 1;
    }
    Part part = alternation();
    if (at >= source.length()) {
      throw new GaveUp();
    }
    at++;
    return part;
  }

  private Part escape() {
    if (at >= source.length()) {
      throw new GaveUp();
    }
    char c = source.charAt(at++);
    if (c == 'b' || c == 'B' || c == 'A' || c == 'z') {
      return new Part(new BitSet(OTHER + 1), true);
    }
    return new Part(escaped(c), false);
  }

  /** What an escape stands for, inside or outside a class. */
  private BitSet escaped(char c) {
    return switch (c) {
      case 'd' -> range('0', '9');
      case 'w' -> words();
      case 's' -> blanks();
      case 'D' -> complement(range('0', '9'));
      case 'W' -> complement(words());
      case 'S' -> complement(blanks());
      case 't' -> single('\t');
      case 'n' -> single('\n');
      case 'r' -> single('\r');
      case 'p' -> property();
      default -> {
        if (Character.isLetterOrDigit(c)) {
          throw new GaveUp();
        }
        yield single(c);
      }
    };
  }

  /** Letters, the one Unicode property that is understood. */
  private BitSet property() {
    if (!source.startsWith("L", at)) {
      throw new GaveUp();
    }
    at++;
    BitSet set = range('a', 'z');
    set.or(range('A', 'Z'));
    set.set(OTHER);
    return set;
  }

  private BitSet characterClass() {
    BitSet set = new BitSet(OTHER + 1);
    boolean negated = source.startsWith("^", at);
    at += negated ? 1 : 0;
    boolean first = true;
    while (at < source.length() && (first || source.charAt(at) != ']')) {
      first = false;
      char from = source.charAt(at++);
      if (from == '[' && source.startsWith(":", at)) {
        throw new GaveUp();
      }
      boolean dash = at + 1 < source.length() && source.charAt(at) == '-';
      if (from == '\\') {
        set.or(escaped(source.charAt(at++)));
      } else if (dash && source.charAt(at + 1) != ']') {
        char to = source.charAt(at + 1);
        if (to == '\\') {
          throw new GaveUp();
        }
        at += 2;
        set.or(range(from, to));
      } else {
        set.or(single(from));
      }
    }
    if (at >= source.length()) {
      throw new GaveUp();
    }
    at++;
    return negated ? complement(set) : set;
  }

  private static BitSet single(char c) {
    BitSet set = new BitSet(OTHER + 1);
    set.set(Math.min(c, OTHER));
    return set;
  }

  private static BitSet range(char from, char to) {
    BitSet set = new BitSet(OTHER + 1);
    set.set(Math.min(from, OTHER), Math.min(to, OTHER) + 1);
    return set;
  }

  private static BitSet words() {
    BitSet set = range('a', 'z');
    set.or(range('A', 'Z'));
    set.or(range('0', '9'));
    set.or(single('_'));
    return set;
  }

  private static BitSet blanks() {
    BitSet set = single(' ');
    set.or(range('\t', '\r'));
    return set;
  }

  /** Everything else; what lies outside ASCII is never ruled out. */
  private static BitSet complement(BitSet set) {
    BitSet other = any();
    other.andNot(set);
    other.set(OTHER);
    return other;
  }
}
