package standstill.base;

import java.util.List;
import standstill.text.Position;

/**
 * Words and short phrases that people use for one thing.
 *
 * @param words two or more, in no order
 * @param where its place in the file
 */
public record Synonyms(List<String> words, Position where) {
  public Synonyms {
    words = List.copyOf(words);
  }
}
