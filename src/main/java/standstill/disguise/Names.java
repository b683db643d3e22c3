package standstill.disguise;

import java.util.HashMap;
import java.util.Map;

/**
 * Names that a mark in some line has told, found as words wherever they stand. A name that is also
 * a word of the trade is not kept: it would be found where it is no name.
 */
final class Names implements Finder {
  private static final int SHORTEST = 3;
  private static final int LONGEST = 120;

  private final Map<String, String> standIns = new HashMap<>();
  private final Map<String, Integer> wordsAfter = new HashMap<>();

  /** Remembers a name. Gives whether it will be found where no mark stands. */
  boolean learn(String value, String standIn) {
    String name = trimmed(normal(value));
    if (name.length() < SHORTEST
        || name.length() > LONGEST
        || Trade.isOfWords(name)
        || Trade.isNumber(name) && name.length() < 8
        || StandIns.isMade(name)) {
      return false;
    }
    standIns.putIfAbsent(name, standIn);
    int words = 1;
    int end = wordEnd(name, 0);
    String first = name.substring(0, end);
    for (int at = end; at < name.length(); ) {
      int start = wordStart(name, at);
      at = wordEnd(name, start);
      words += start < name.length() ? 1 : 0;
    }
    wordsAfter.merge(first, words, Math::max);
    return true;
  }

  /** Whether a name was learnt. */
  boolean knows(String name) {
    return standIns.containsKey(trimmed(normal(name)));
  }

  private static String normal(String text) {
    char[] all = text.toCharArray();
    for (int i = 0; i < all.length; i++) {
      char c = all[i];
      // One character for one, so that places in the one are places in the other.
      all[i] = c == '\u00a0' ? ' ' : c == '\u2019' ? '\'' : Character.toLowerCase(c);
    }
    return new String(all);
  }

  private static String trimmed(String name) {
    int from = wordStart(name, 0);
    int to = name.length();
    while (to > from && !Character.isLetterOrDigit(name.charAt(to - 1))) {
      to--;
    }
    return name.substring(from, to);
  }

  private static int wordStart(String text, int from) {
    int at = from;
    while (at < text.length() && !Character.isLetterOrDigit(text.charAt(at))) {
      at++;
    }
    return at;
  }

  private static int wordEnd(String text, int from) {
    int at = from;
    while (at < text.length() && Character.isLetterOrDigit(text.charAt(at))) {
      at++;
    }
    return at;
  }

  @Override
  public void find(Claims claims) {
    String text = normal(claims.text());
    if (standIns.isEmpty()) {
      return;
    }
    int at = wordStart(text, 0);
    while (at < text.length()) {
      int end = wordEnd(text, at);
      Integer words = end - at > LONGEST ? null : wordsAfter.get(text.substring(at, end));
      int next = end;
      if (words != null) {
        next = Math.max(next, longest(claims, text, at, words));
      }
      at = wordStart(text, next);
    }
  }

  /** Claims the longest name that begins here; gives where it ends. */
  private int longest(Claims claims, String text, int start, int words) {
    int best = start;
    String standIn = "";
    int end = start;
    for (int i = 0; i < words && end < text.length(); i++) {
      int begin = i == 0 ? start : wordStart(text, end);
      end = wordEnd(text, begin);
      if (end - start > LONGEST) {
        break;
      }
      String found = standIns.get(text.substring(start, end));
      if (found != null) {
        best = end;
        standIn = found;
      }
    }
    if (best > start) {
      claims.take(start, best, standIn);
    }
    return best;
  }
}
