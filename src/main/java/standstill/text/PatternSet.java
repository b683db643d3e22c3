package standstill.text;

import java.util.List;
import java.util.function.ObjIntConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Many patterns that are tried on one text after the other.
 *
 * <p>A line that somebody typed from a photograph often has lost its capitals. Such a line can be
 * read blind to case: only one without any capital is, since elsewhere case tells texts apart.
 */
public final class PatternSet {
  private final List<Pattern> patterns;
  private final Prefilter exact;
  private volatile @Nullable Prefilter blind;

  /** A set of patterns, which are known by their places in the list from then on. */
  public PatternSet(List<Pattern> patterns) {
    this.patterns = List.copyOf(patterns);
    this.exact = new Prefilter(patterns);
  }

  /** Made when the first line asks for it: most texts have none. */
  private Prefilter blind() {
    Prefilter made = blind;
    if (made == null) {
      made = Prefilter.ofLowerCase(patterns);
      blind = made;
    }
    return made;
  }

  /**
   * Hands over the patterns that may match a text, with their places, in ascending order.
   *
   * @param typed whether a text without capitals may have lost them
   */
  public void candidates(String text, boolean typed, ObjIntConsumer<Pattern> taker) {
    if (typed && hasNoCapital(text)) {
      for (int place : blind().candidates(text)) {
        taker.accept(patterns.get(place).blindToCase(), place);
      }
    } else {
      for (int place : exact.candidates(text)) {
        taker.accept(patterns.get(place), place);
      }
    }
  }

  /** Hands over all patterns, in the manner of {@link #candidates}: slower, and never fewer. */
  public void all(String text, boolean typed, ObjIntConsumer<Pattern> taker) {
    boolean blindly = typed && hasNoCapital(text);
    for (int place = 0; place < patterns.size(); place++) {
      Pattern pattern = patterns.get(place);
      taker.accept(blindly ? pattern.blindToCase() : pattern, place);
    }
  }

  private static boolean hasNoCapital(String text) {
    return text.chars().noneMatch(Character::isUpperCase);
  }
}
