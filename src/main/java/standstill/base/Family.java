package standstill.base;

import java.util.List;
import java.util.Optional;
import standstill.text.Pattern;

/**
 * A family of kernels: how their logs look.
 *
 * @param id for example {@code linux}
 * @param title for people
 * @param recognise lines that show that a text is a boot log of this family
 * @param begins lines at which a new boot starts
 * @param ramdisk lines that show that the init program is the one in the initial ramdisk
 * @param lineForms beginnings of lines, tried in order
 * @param milestones lines that prove a stage, in order of the boot
 * @param marks what stands between and around messages
 */
public record Family(
    String id,
    String title,
    List<Example> recognise,
    List<Example> begins,
    List<Pattern> ramdisk,
    List<LineForm> lineForms,
    List<Milestone> milestones,
    Marks marks) {
  public Family {
    recognise = List.copyOf(recognise);
    begins = List.copyOf(begins);
    ramdisk = List.copyOf(ramdisk);
    lineForms = List.copyOf(lineForms);
    milestones = List.copyOf(milestones);
  }

  /** A family without marks. */
  public Family(
      String id,
      String title,
      List<Example> recognise,
      List<Example> begins,
      List<Pattern> ramdisk,
      List<LineForm> lineForms,
      List<Milestone> milestones) {
    this(id, title, recognise, begins, ramdisk, lineForms, milestones, Marks.NONE);
  }

  /** The milestone of that name. */
  public Optional<Milestone> milestone(String id) {
    return milestones.stream().filter(m -> m.id().equals(id)).findFirst();
  }
}
