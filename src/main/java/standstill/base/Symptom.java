package standstill.base;

import java.util.List;
import standstill.text.Position;

/**
 * What a person sees.
 *
 * @param id name
 * @param title in a few words
 * @param stages the stages in which it is seen
 * @param look what it looks like
 * @param words other words that people use for it
 * @param reviewed when somebody last looked at the entry
 * @param where its place in the file
 */
public record Symptom(
    String id,
    String title,
    List<Stage> stages,
    String look,
    List<String> words,
    Reviewed reviewed,
    Position where) {
  public Symptom {
    stages = List.copyOf(stages);
    words = List.copyOf(words);
  }
}
