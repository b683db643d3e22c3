package standstill.base;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.text.Pattern;

/**
 * A family of kernels: how their logs look. A family may be a part that others include, such as the
 * firmware and loaders that every PC has; then it needs no kernel.
 *
 * @param id for example {@code linux}
 * @param title for people
 * @param include ids of the families that it is made of, over any number of links, itself left out
 * @param notDiagnosed why its boots are recognised and not diagnosed; empty when they are diagnosed
 * @param recognise its own lines that show that a text is a boot log of this family; those of the
 *     families that it includes show those
 * @param mayBe lines of its own that other families print as well
 * @param begins lines of firmware and loader at which a new boot starts, in the order of a boot
 * @param kernelBegins the kernel's own first lines
 * @param ramdisk lines that show that the init program is the one in the initial ramdisk
 * @param lineForms beginnings of lines, tried in order
 * @param milestones lines that prove a stage, in order of the boot
 * @param facts what its lines say of the machine
 * @param marks what stands between and around messages
 */
public record Family(
    String id,
    String title,
    List<String> include,
    String notDiagnosed,
    List<Example> recognise,
    List<Example> mayBe,
    List<Example> begins,
    List<Example> kernelBegins,
    List<Pattern> ramdisk,
    List<LineForm> lineForms,
    List<Milestone> milestones,
    Facts facts,
    Marks marks) {
  public Family {
    include = List.copyOf(include);
    recognise = List.copyOf(recognise);
    mayBe = List.copyOf(mayBe);
    begins = List.copyOf(begins);
    kernelBegins = List.copyOf(kernelBegins);
    ramdisk = List.copyOf(ramdisk);
    lineForms = List.copyOf(lineForms);
    milestones = List.copyOf(milestones);
  }

  /**
   * This family with everything that the ones it includes hold before its own. What two of them
   * have in common stands there once.
   */
  public Family with(List<Family> included) {
    Set<String> ids = new LinkedHashSet<>();
    Set<Example> first = new LinkedHashSet<>();
    Set<Example> kernels = new LinkedHashSet<>();
    Set<Pattern> ramdisks = new LinkedHashSet<>();
    Set<LineForm> forms = new LinkedHashSet<>();
    Set<Milestone> proofs = new LinkedHashSet<>();
    List<Family> all = new ArrayList<>(included);
    all.add(this);
    for (Family each : all) {
      ids.addAll(each.include);
      ids.add(each.id);
      first.addAll(each.begins);
      kernels.addAll(each.kernelBegins);
      ramdisks.addAll(each.ramdisk);
      forms.addAll(each.lineForms);
      proofs.addAll(each.milestones);
    }
    ids.remove(id);
    return new Family(
        id,
        title,
        List.copyOf(ids),
        notDiagnosed,
        recognise,
        mayBe,
        List.copyOf(first),
        List.copyOf(kernels),
        List.copyOf(ramdisks),
        List.copyOf(forms),
        List.copyOf(proofs),
        Facts.joined(all.stream().map(Family::facts).toList()),
        Marks.joined(all.stream().map(Family::marks).toList()));
  }

  /** Whether an entry that names these families speaks of this one or of one that it includes. */
  public boolean isAmong(Collection<String> families) {
    return families.contains(id) || include.stream().anyMatch(families::contains);
  }

  /** The milestone of that name. */
  public Optional<Milestone> milestone(String id) {
    return milestones.stream().filter(m -> m.id().equals(id)).findFirst();
  }
}
