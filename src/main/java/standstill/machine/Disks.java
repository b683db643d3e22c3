package standstill.machine;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.ThingSort;
import standstill.base.ThingState;
import standstill.base.WishKind;

/** Which disks came, and what became of them. */
final class Disks {
  private Disks() {}

  private static boolean isCovered(Machine machine) {
    return machine.listsDevices() && machine.devicesAreOver();
  }

  static Said none(Machine machine) {
    if (machine.hasDisk()) {
      return Said.ABSENT;
    }
    if (!isCovered(machine) || machine.trace().stage() == standstill.base.Stage.DONE) {
      return Said.NOT_COVERED;
    }
    Optional<Wish> wanted = machine.wanted();
    return Said.of(
        List.of(
            new Found(
                Map.of("wanted", wanted.map(Wish::shown).orElse("(not named)")),
                asked(machine).map(List::of).orElse(List.of()))));
  }

  /** The line that asks for the root: the command line where there is one. */
  static Optional<Mention> asked(Machine machine) {
    return machine.wanted().map(w -> w.mentions().get(0));
  }

  static Said noPortAnswers(Machine machine) {
    if (machine.hasDisk()) {
      return Said.ABSENT;
    }
    if (!isCovered(machine) || Undriven.anyLeft(machine)) {
      return Said.NOT_COVERED;
    }
    List<Thing> silent =
        machine.things(ThingSort.PORT).stream()
            .filter(p -> p.state() == ThingState.DOWN || p.state() == ThingState.FAILED)
            .toList();
    List<Found> found = new ArrayList<>();
    silent.stream()
        .limit(8)
        .forEach(p -> found.add(new Found(Map.of("port", p.name()), List.of(p.last()))));
    return Said.of(found);
  }

  static Said empty(Machine machine) {
    if (!isCovered(machine) || !machine.gaveUp()) {
      return Said.NOT_COVERED;
    }
    List<Found> found = new ArrayList<>();
    for (Thing disk : machine.disks()) {
      if (disk.ever(ThingState.READY) && !disk.value("size").isEmpty() && !isUsed(machine, disk)) {
        found.add(
            new Found(
                Map.of("disk", disk.name(), "size", disk.value("size")),
                disk.first(ThingState.READY).map(List::of).orElse(List.of())));
      }
    }
    return Said.of(found);
  }

  /** Whether anything was found on a disk, or on a part of it. */
  private static boolean isUsed(Machine machine, Thing disk) {
    return disk.state() == ThingState.FAILED
        || machine.things().stream()
            .filter(t -> t.sort() != ThingSort.DISK && t.sort() != ThingSort.UNIT)
            .anyMatch(t -> t.on().equals(disk.name()) || t.name().equals(disk.name()));
  }

  static Said gone(Machine machine) {
    List<Found> found = new ArrayList<>();
    for (Thing disk : machine.disks()) {
      Optional<Mention> gone = disk.first(ThingState.GONE);
      if (gone.isEmpty()) {
        gone = carrier(machine, disk).flatMap(t -> t.first(ThingState.GONE));
      }
      gone.filter(m -> m.index() > disk.first().index())
          .ifPresent(m -> found.add(new Found(Map.of("disk", disk.name()), List.of(m))));
    }
    return Said.seenOnly(found);
  }

  /** What a disk hangs on in the end: the device on the bus, over its ports. */
  static Optional<Thing> carrier(Machine machine, Thing disk) {
    String on = disk.on();
    Optional<Thing> last = Optional.empty();
    for (int i = 0; i < 4 && !on.isEmpty(); i++) {
      String name = on;
      Optional<Thing> next =
          machine.things().stream()
              .filter(t -> t.sort() == ThingSort.PORT || t.sort().isOnBus())
              .filter(t -> t.name().equals(name))
              .findFirst();
      if (next.isEmpty()) {
        return last;
      }
      last = next;
      on = next.get().on();
    }
    return last;
  }

  static Said lateOnUsb(Machine machine) {
    Optional<Wish> wanted =
        machine.wishes().stream()
            .filter(w -> w.kind() == WishKind.ROOT || w.kind() == WishKind.VOLUME)
            .filter(w -> w.givenUp().isPresent())
            .findFirst();
    if (wanted.isEmpty()) {
      return machine.listsDevices() ? Said.ABSENT : Said.NOT_COVERED;
    }
    int givenUp = wanted.get().givenUp().orElseThrow().index();
    List<Found> found = new ArrayList<>();
    for (Thing disk : machine.disks()) {
      boolean onUsb =
          carrier(machine, disk).map(t -> t.value("bus").equals("usb")).orElse(false)
              || disk.value("bus").equals("usb");
      if (onUsb && disk.first().index() > givenUp) {
        found.add(
            new Found(
                Map.of("disk", disk.name(), "wanted", wanted.get().shown()),
                List.of(disk.first())));
      }
    }
    return found.isEmpty() && machine.listsDevices() ? Said.ABSENT : Said.seenOnly(found);
  }
}
