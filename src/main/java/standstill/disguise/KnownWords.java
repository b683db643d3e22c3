package standstill.disguise;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * A table of words of the trade, one a line; {@code #} and a blank begin a comment. Words are found
 * whatever their case. Within a word {@code #} stands for digits; at its end {@code *} stands for
 * anything.
 */
final class KnownWords {
  private final Set<String> words = new HashSet<>();
  private final Set<String> beginnings = new HashSet<>();
  private int longestBeginning;

  private KnownWords() {}

  /** The table of that name; it is part of the program, so a missing one is a broken build. */
  static KnownWords named(String name) {
    KnownWords known = new KnownWords();
    for (String line : lines(name)) {
      String word = line.strip().toLowerCase(Locale.ROOT);
      if (word.endsWith("*")) {
        known.beginnings.add(word.substring(0, word.length() - 1));
        known.longestBeginning = Math.max(known.longestBeginning, word.length() - 1);
      } else {
        known.words.add(word);
      }
    }
    return known;
  }

  /** The lines of a table that are no comments. */
  static List<String> lines(String name) {
    String file = name + ".txt";
    try (InputStream in = KnownWords.class.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its table " + file);
      }
      return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
          .lines()
          .filter(line -> !line.startsWith("# ") && !line.isBlank())
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  boolean has(String word) {
    String low = word.toLowerCase(Locale.ROOT);
    if (words.contains(low)) {
      return true;
    }
    String numbered = numbered(low);
    if (words.contains(numbered)) {
      return true;
    }
    for (int i = Math.min(low.length(), longestBeginning); i > 0; i--) {
      if (beginnings.contains(low.substring(0, i))) {
        return true;
      }
    }
    for (int i = Math.min(numbered.length(), longestBeginning); i > 0; i--) {
      if (beginnings.contains(numbered.substring(0, i))) {
        return true;
      }
    }
    return false;
  }

  private static String numbered(String word) {
    StringBuilder out = new StringBuilder();
    boolean inNumber = false;
    for (int i = 0; i < word.length(); i++) {
      boolean digit = word.charAt(i) >= '0' && word.charAt(i) <= '9';
      if (!digit) {
        out.append(word.charAt(i));
      } else if (!inNumber) {
        out.append('#');
      }
      inNumber = digit;
    }
    return out.toString();
  }
}
