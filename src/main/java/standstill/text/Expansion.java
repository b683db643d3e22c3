package standstill.text;

import java.util.ArrayDeque;
import java.util.Deque;

/**
 * Counts what a regular expression becomes when its counted repetitions are written out, without
 * writing them out.
 *
 * <p>An engine that runs in linear time does so times the size of the written out expression:
 * {@code x{0,999}} is a thousand parts that are all tried at each character, and three of them
 * nested are a thousand million. Every character, escape and class counts as one part, which is
 * never too few.
 */
final class Expansion {
  private final String source;
  private int at;

  private Expansion(String source) {
    this.source = source;
  }

  /**
   * Parts that writing out adds to the expression.
   *
   * @param mostTimes most that a part may be repeated by one count
   * @param mostParts most parts that may be added
   * @throws Pattern.SyntaxException at the repetition that goes beyond one of the bounds
   */
  static int repeated(String source, int mostTimes, int mostParts) throws Pattern.SyntaxException {
    return new Expansion(source).count(mostTimes, mostParts);
  }

  private int count(int mostTimes, int mostParts) throws Pattern.SyntaxException {
    Deque<Long> outer = new ArrayDeque<>();
    long added = 0;
    long sum = 0;
    long last = 0;
    while (at < source.length()) {
      int start = at;
      int times = times();
      if (times > 0) {
        if (times > mostTimes) {
          throw new Pattern.SyntaxException(
              "repeats a part " + times + " times; at most " + mostTimes + " are allowed", start);
        }
        long more = last * (times - 1);
        added += more;
        sum += more;
        last *= times;
        if (added > mostParts) {
          throw new Pattern.SyntaxException(
              "repetitions add " + added + " parts; at most " + mostParts + " are allowed", start);
        }
        continue;
      }
      char c = source.charAt(at);
      if (c == '(') {
        outer.push(sum);
        sum = 0;
        at++;
        skipKindOfGroup();
        continue;
      }
      if (c == ')' && !outer.isEmpty()) {
        last = sum;
        sum += outer.pop();
        at++;
        continue;
      }
      skipOne();
      last = 1;
      sum++;
    }
    return (int) added;
  }

  /** The most that a count at this place asks for, at least 1; 0 when none stands here. */
  private int times() {
    int end = source.charAt(at) == '{' ? source.indexOf('}', at) : -1;
    if (end < 0 || !source.substring(at + 1, end).matches("\\d{1,9}(,\\d{0,9})?")) {
      return 0;
    }
    int times = 1;
    for (String bound : source.substring(at + 1, end).split(",", -1)) {
      times = bound.isEmpty() ? times : Math.max(times, Integer.parseInt(bound));
    }
    at = end + 1;
    return times;
  }

  /** Goes past {@code ?:}, flags or a name; flags alone end as an empty group. */
  private void skipKindOfGroup() {
    if (source.startsWith("?", at)) {
      while (at < source.length() && ":>)".indexOf(source.charAt(at)) < 0) {
        at++;
      }
      at += at < source.length() && source.charAt(at) != ')' ? 1 : 0;
    }
  }

  /** Goes past a character, an escape or a class. */
  private void skipOne() {
    char c = source.charAt(at++);
    if (c == '\\' && at < source.length()) {
      char what = source.charAt(at++);
      // \p{Greek} and \x{10FFFF} are no repetitions.
      if ("pPx".indexOf(what) >= 0 && at < source.length() && source.charAt(at) == '{') {
        int end = source.indexOf('}', at);
        at = end < 0 ? source.length() : end + 1;
      }
    } else if (c == '[') {
      skipClass();
    }
  }

  private void skipClass() {
    int first = source.startsWith("^", at) ? at + 1 : at;
    for (; at < source.length(); at++) {
      char c = source.charAt(at);
      if (c == '\\') {
        at++;
      } else if (source.startsWith("[:", at) && source.indexOf(":]", at) > 0) {
        at = source.indexOf(":]", at) + 1;
      } else if (c == ']' && at > first) {
        at++;
        return;
      }
    }
  }
}
