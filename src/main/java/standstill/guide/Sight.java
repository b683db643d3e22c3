package standstill.guide;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Stage;
import standstill.base.Symptom;

/**
 * What is seen on the screen where a boot stops: the first question to somebody without a log. It
 * tells the stage.
 *
 * @param stage the stage that it tells; empty when it tells none
 * @param symptom id of the symptom that it is; empty when more has to be asked
 * @param text what is seen
 */
public record Sight(Optional<Stage> stage, String symptom, String text) {
  private Sight(Optional<Stage> stage, String text) {
    this(stage, "", text);
  }

  private static final List<Sight> ALL =
      List.of(
          new Sight(
              Optional.of(Stage.FIRMWARE),
              "no-picture-at-all",
              "Nothing at all: the screen stays dark from power-on"),
          new Sight(
              Optional.of(Stage.FIRMWARE),
              "The maker's picture and no more, or a message that there is nothing to start from"),
          new Sight(
              Optional.of(Stage.LOADER),
              "The menu or a prompt of the boot loader, an error of it, or the menu and then black"),
          new Sight(
              Optional.of(Stage.KERNEL),
              "Some lines of text that soon stop, or a crash report such as “Kernel panic”"),
          new Sight(
              Optional.of(Stage.DEVICES),
              "Text that stops or goes black while disks, USB, network or graphics are set up"),
          new Sight(
              Optional.of(Stage.ROOT),
              "A prompt that begins with (initramfs), dracut or rootfs, a wait for the root disk, or the"
                  + " passphrase of the disk"),
          new Sight(
              Optional.of(Stage.USERLAND),
              "Lines with [ OK ] or [FAILED] that stop, a start job that waits, or “emergency mode”"),
          new Sight(
              Optional.of(Stage.DONE),
              "A login or a desktop comes, and something is wrong with it"),
          new Sight(
              Optional.empty(), "Something else, it starts over again and again, or I can't tell"));

  /** All of them, in the order of a boot. */
  public static List<Sight> all() {
    return ALL;
  }

  /** The symptom that it is, if the base has it. */
  public Set<String> symptoms(Base base) {
    return base.symptom(symptom).map(s -> Set.of(s.id())).orElse(Set.of());
  }

  /** Symptoms that belong to a stage, those of this stage alone first; all when there is none. */
  public static List<Symptom> symptoms(Base base, Optional<Stage> stage) {
    return base.symptoms().stream()
        .filter(s -> stage.isEmpty() || s.stages().contains(stage.get()))
        .sorted(
            java.util.Comparator.comparingInt(
                s -> stage.isPresent() && s.stages().get(0) == stage.get() ? 0 : 1))
        .toList();
  }
}
