package standstill.base;

import java.util.List;

/**
 * What a family's programs print between and around their messages, so that a reader can tell the
 * one from the other. All are matched at the beginning: of a line, or of a stamp in its middle.
 *
 * @param stamps the time stamp of the kernel, where its lines may cut into those of others
 * @param waiting lines that come again and again while something is waited for; their group {@code
 *     job} says for what
 * @param separators what a journal prints between boots
 * @param headings what a journal prints above its first line
 * @param kernelTag the tag that a journal gives to lines of the kernel, or empty
 */
public record Marks(
    List<Example> stamps,
    List<Example> waiting,
    List<Example> separators,
    List<Example> headings,
    String kernelTag) {
  /** Those of a family that has none. */
  public static final Marks NONE = new Marks(List.of(), List.of(), List.of(), List.of(), "");

  /** The group of {@link #waiting} that names what is waited for. */
  public static final String JOB = "job";

  public Marks {
    stamps = List.copyOf(stamps);
    waiting = List.copyOf(waiting);
    separators = List.copyOf(separators);
    headings = List.copyOf(headings);
  }

  /** What several families have, one after the other; the last kernel's tag counts. */
  public static Marks joined(List<Marks> all) {
    return new Marks(
        all.stream().flatMap(marks -> marks.stamps.stream()).distinct().toList(),
        all.stream().flatMap(marks -> marks.waiting.stream()).distinct().toList(),
        all.stream().flatMap(marks -> marks.separators.stream()).distinct().toList(),
        all.stream().flatMap(marks -> marks.headings.stream()).distinct().toList(),
        all.stream()
            .map(Marks::kernelTag)
            .filter(tag -> !tag.isEmpty())
            .reduce((first, second) -> second)
            .orElse(""));
  }
}
