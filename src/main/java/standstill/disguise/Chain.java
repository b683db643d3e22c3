package standstill.disguise;

import java.util.ArrayList;
import java.util.List;

/**
 * Groups of hexadecimal digits with the same separator between them, such as {@code 3c:aa:bb}.
 *
 * @param start offset of the first digit
 * @param groups the groups
 * @param separator between them; a blank when there is one group
 */
record Chain(int start, List<String> groups, char separator) {
  private static final int MOST_GROUPS = 40;
  private static final String SEPARATORS = ":-._";

  /** The chain that begins at a word; no groups when the word isn't hexadecimal. */
  static Chain at(String text, int start) {
    List<String> groups = new ArrayList<>();
    char separator = ' ';
    int at = start;
    while (groups.size() < MOST_GROUPS) {
      int end = Hex.wordEnd(text, at);
      if (!Hex.isAll(text, at, end)) {
        break;
      }
      groups.add(text.substring(at, end));
      if (end >= text.length()
          || SEPARATORS.indexOf(text.charAt(end)) < 0
          || groups.size() > 1 && text.charAt(end) != separator) {
        break;
      }
      separator = text.charAt(end);
      at = end + 1;
    }
    return new Chain(start, groups, separator);
  }

  int size() {
    return groups.size();
  }

  /** Whether every group has so many digits. */
  boolean isOf(int digits) {
    return groups.stream().allMatch(g -> g.length() == digits);
  }

  /** Whether the groups begin with groups of these lengths. */
  boolean begins(int... lengths) {
    if (groups.size() < lengths.length) {
      return false;
    }
    for (int i = 0; i < lengths.length; i++) {
      if (groups.get(i).length() != lengths[i]) {
        return false;
      }
    }
    return true;
  }

  /** The offset after so many groups. */
  int end(int groupsTaken) {
    int end = start;
    for (int i = 0; i < groupsTaken; i++) {
      end += groups.get(i).length() + (i > 0 ? 1 : 0);
    }
    return end;
  }

  /** The digits of so many groups. */
  String digits(int from, int to) {
    return String.join("", groups.subList(from, to));
  }
}
