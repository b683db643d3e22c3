package standstill.base;

/**
 * A probability that somebody wrote as a word.
 *
 * @param word the word of {@code kb/scale.yaml}
 * @param value between 0 and 1, exclusive
 */
public record Chance(String word, double value) {
  public Chance {
    if (!(value > 0 && value < 1)) {
      throw new IllegalArgumentException("a chance lies between 0 and 1: " + value);
    }
  }
}
