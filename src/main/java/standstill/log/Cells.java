package standstill.log;

/**
 * The cells of a screen that one text may have drawn on its behalf.
 *
 * <p>A code of six characters can move the cursor over hundreds of cells or erase as many. A
 * capture that holds such codes among its text needs a few cells for each character; a text that
 * needs many more than any screen did is no capture. So the cells that are gone through without a
 * character of the text being put there are counted over the whole text, and once they are spent,
 * codes that move the cursor are only taken to part the text.
 */
final class Cells {
  /** Measured over labelled boots and healthy logs, the greatest need was 1.6. */
  private static final int FOR_EACH_CHARACTER = 8;

  private static final long FOR_ANY_TEXT = 200_000;

  private long left;
  private int spentOn;

  private Cells(long left) {
    this.left = left;
  }

  /** The cells for a text of so many characters. */
  static Cells forText(int length) {
    return new Cells(FOR_ANY_TEXT + (long) length * FOR_EACH_CHARACTER);
  }

  /** Uses cells up, for a code on an input line. */
  void use(long count, int line) {
    left -= count;
    if (left < 0 && spentOn == 0) {
      spentOn = line;
    }
  }

  boolean areSpent() {
    return spentOn > 0;
  }

  /** The input line on which the last cell was used; 0 while there are some left. */
  int spentOn() {
    return spentOn;
  }
}
