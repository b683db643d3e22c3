package standstill.log;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Joins lines that were broken at the width of a window.
 *
 * <p>A wrong join is worse than none, so the paste as a whole must show a width. Where lines have
 * stamps: broken anywhere, when lines of exactly the greatest length are followed by lines without
 * a stamp; broken between words, when each line without a stamp begins with a word that had no room
 * above. Where no line has a stamp, only lines of exactly the greatest length that end and go on in
 * the middle of a word are joined.
 */
final class Wrapping {
  private static final int NARROWEST = 40;
  private static final int WIDEST = 250;
  private static final int WIDEST_FOR_WORDS = 132;
  private static final int FEWEST_UNSTAMPED = 4;
  private static final int LONGEST = 20_000;

  private final List<Piece> pieces;
  private final boolean[] timed;
  private final boolean[] formed;
  private int width;
  private int stamps;

  private Wrapping(List<Piece> pieces, Prefixes prefixes) {
    this.pieces = pieces;
    timed = new boolean[pieces.size()];
    formed = new boolean[pieces.size()];
    for (int i = 0; i < pieces.size(); i++) {
      width = Math.max(width, pieces.get(i).text().length());
    }
    if (width > WIDEST) {
      return;
    }
    for (int i = 0; i < pieces.size(); i++) {
      Prefix prefix = prefixes.read(pieces.get(i).text());
      timed[i] = prefix.isTimed();
      formed[i] = prefix.isPresent();
      stamps += timed[i] ? 1 : 0;
    }
  }

  static List<Piece> join(List<Piece> pieces, Prefixes prefixes) {
    Wrapping wrapping = new Wrapping(pieces, prefixes);
    if (wrapping.width < NARROWEST || wrapping.width > WIDEST) {
      return pieces;
    }
    if (wrapping.stamps == 0) {
      return wrapping.brokenInWords() ? wrapping.joined(Way.IN_WORDS) : pieces;
    }
    if (wrapping.brokenAnywhere()) {
      return wrapping.joined(Way.ANYWHERE);
    }
    return wrapping.brokenBetweenWords() ? wrapping.joined(Way.BETWEEN_WORDS) : pieces;
  }

  private enum Way {
    ANYWHERE,
    BETWEEN_WORDS,
    IN_WORDS
  }

  /** Whether a line could be the rest of the one above. */
  private boolean mayContinue(int i) {
    String text = text(i);
    boolean sameLine = pieces.get(i).number() == pieces.get(i - 1).last();
    return !formed[i]
        && !sameLine
        && text.charAt(0) != '['
        && text.charAt(0) != '*'
        && !text.startsWith("  ")
        && !text.startsWith("-- ");
  }

  private boolean brokenAnywhere() {
    int full = 0;
    int continued = 0;
    boolean within = false;
    for (int i = 0; i + 1 < pieces.size(); i++) {
      within = timed[i] || (within && !formed[i]);
      if (within && text(i).length() == width) {
        full++;
        continued += mayContinue(i + 1) ? 1 : 0;
      }
    }
    return full >= 2 && continued * 10 >= full * 9;
  }

  private boolean brokenBetweenWords() {
    if (width > WIDEST_FOR_WORDS) {
      return false;
    }
    int rests = 0;
    for (int i = 1; i < pieces.size(); i++) {
      if (!formed[i]) {
        if (!mayContinue(i) || !hadNoRoom(i)) {
          return false;
        }
        rests++;
      }
    }
    return rests >= 2 && stamps >= rests && formed[0];
  }

  private boolean hadNoRoom(int i) {
    String text = text(i);
    int end = text.indexOf(' ');
    int word = end < 0 ? text.length() : end;
    return text(i - 1).length() + 1 + word > width;
  }

  private boolean brokenInWords() {
    if (width < 72 || width > WIDEST_FOR_WORDS) {
      return false;
    }
    Set<String> full = new HashSet<>();
    Set<String> inWord = new HashSet<>();
    for (int i = 0; i + 1 < pieces.size(); i++) {
      if (text(i).length() == width) {
        full.add(text(i));
        if (goesOnInWord(i + 1)) {
          inWord.add(text(i));
        }
      }
    }
    // One line that is printed again and again is as long as itself; that proves no width.
    return full.size() >= FEWEST_UNSTAMPED
        && inWord.size() >= 3
        && inWord.size() * 2 >= full.size();
  }

  private boolean goesOnInWord(int i) {
    char last = text(i - 1).charAt(text(i - 1).length() - 1);
    char first = text(i).charAt(0);
    boolean lower = Character.isLowerCase(first) || Character.isDigit(first);
    return mayContinue(i) && Character.isLetterOrDigit(last) && lower;
  }

  private List<Piece> joined(Way way) {
    List<Piece> out = new ArrayList<>(pieces.size());
    boolean stamped = false;
    int from = 0;
    while (from < pieces.size()) {
      stamped |= timed[from];
      Piece first = pieces.get(from);
      StringBuilder text = new StringBuilder(first.text());
      List<Piece.Seam> seams = new ArrayList<>();
      seams.add(new Piece.Seam(0, first.number(), first.last()));
      int next = from + 1;
      String glue = glue(next, way, stamped);
      while (glue != null && text.length() <= LONGEST) {
        Piece piece = pieces.get(next);
        text.append(glue);
        seams.add(new Piece.Seam(text.length(), piece.number(), piece.last()));
        text.append(piece.text());
        stamped |= timed[next];
        next++;
        glue = glue(next, way, stamped);
      }
      int last = pieces.get(next - 1).last();
      out.add(
          next == from + 1
              ? first
              : new Piece(first.number(), last, text.toString(), first.afterClear(), seams));
      from = next;
    }
    return out;
  }

  /** What to put between a line and the one above; null when they are two lines. */
  private @Nullable String glue(int i, Way way, boolean stamped) {
    if (i >= pieces.size()) {
      return null;
    }
    int above = text(i - 1).length();
    return switch (way) {
      case ANYWHERE -> {
        boolean full = above == width;
        boolean blankLost = above == width - 1 && text(i).charAt(0) != ' ';
        yield stamped && mayContinue(i) && (full || blankLost) ? (full ? "" : " ") : null;
      }
      case BETWEEN_WORDS -> !formed[i] ? " " : null;
      case IN_WORDS -> above == width && goesOnInWord(i) ? "" : null;
    };
  }

  private String text(int i) {
    return pieces.get(i).text();
  }
}
