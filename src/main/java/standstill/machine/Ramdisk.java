package standstill.machine;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.Stage;
import standstill.base.ThingSort;
import standstill.base.ThingState;

/** Whether the kernel got an initial ramdisk. */
final class Ramdisk {
  private Ramdisk() {}

  static Said loaded(Machine machine) {
    Optional<Mention> line = line(machine);
    if (line.isPresent()) {
      return Said.of(List.of(new Found(Map.of(), List.of(line.get()))));
    }
    return isCovered(machine) ? Said.ABSENT : Said.NOT_COVERED;
  }

  static Said none(Machine machine) {
    if (line(machine).isPresent()) {
      return Said.ABSENT;
    }
    return isCovered(machine)
        ? Said.of(
            List.of(new Found(Map.of(), Disks.asked(machine).map(List::of).orElse(List.of()))))
        : Said.NOT_COVERED;
  }

  /** What the kernel itself says of it; that a loader began to read it says less. */
  private static Optional<Mention> line(Machine machine) {
    return machine.things(ThingSort.RAMDISK).stream()
        .flatMap(t -> t.mentions().stream())
        .filter(m -> m.state() == ThingState.SEEN || m.state() == ThingState.READY)
        .findFirst();
  }

  /** The kernel's own start is shown whole, and it went on to look for the root file system. */
  private static boolean isCovered(Machine machine) {
    return machine.boot().cuts().isEmpty()
        && machine.trace().complete().contains(Stage.KERNEL)
        && machine.things().stream().anyMatch(t -> t.sort() == ThingSort.MEMORY)
        && machine.listsDevices()
        && (machine.gaveUp() || machine.trace().stage().isAfter(Stage.DEVICES));
  }
}
