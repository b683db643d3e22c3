package standstill.machine;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import standstill.base.Stage;
import standstill.base.ThingSort;
import standstill.base.WishKind;

/** What was asked for, against what came. */
final class Wanted {
  private Wanted() {}

  static Said idOnNoDisk(Machine machine) {
    return missing(machine, true);
  }

  static Said deviceMissing(Machine machine) {
    return missing(machine, false);
  }

  /**
   * A wish before the installed system runs, given up while disks with something on them are there,
   * and every controller that could carry another disk has its driver.
   */
  private static Said missing(Machine machine, boolean byId) {
    boolean asked =
        machine.wishes().stream().anyMatch(w -> isStorage(w) && w.isUnmet() && w.isById() == byId);
    boolean past = machine.trace().stage().isAfter(Stage.ROOT);
    if (past || (!asked && machine.listsDevices())) {
      return Said.ABSENT;
    }
    List<Thing> parts =
        machine.things().stream()
            .filter(t -> t.sort() == ThingSort.PARTITION || t.sort() == ThingSort.FILE_SYSTEM)
            .filter(t -> !t.value("by").equals("firmware"))
            .toList();
    boolean covered = machine.listsDevices() && machine.devicesAreOver();
    if (!asked || !covered) {
      return Said.NOT_COVERED;
    }
    if (parts.isEmpty() || Undriven.anyLeft(machine) || Disks.gone(machine).holds()) {
      return Said.ABSENT;
    }
    String disks =
        machine.disks().stream().map(Thing::name).limit(6).collect(Collectors.joining(", "));
    List<Found> found = new ArrayList<>();
    for (Wish wish : machine.wishes()) {
      if (isStorage(wish) && wish.isUnmet() && wish.isById() == byId && !isThere(machine, wish)) {
        found.add(
            new Found(
                Map.of("id", wish.shown(), "device", wish.shown(), "disk", disks),
                List.of(wish.mentions().get(0))));
      }
    }
    return Said.of(found);
  }

  /** Volumes that something else has to open first are told by statements of their own. */
  private static boolean isStorage(Wish wish) {
    boolean kind =
        wish.kind() == WishKind.ROOT
            || wish.kind() == WishKind.VOLUME
            || wish.kind() == WishKind.MOUNT
            || wish.kind() == WishKind.SWAP;
    return kind
        && !wish.name().isEmpty()
        && !wish.name().contains("/")
        && !Names.isCut(wish.name())
        && wish.value("needs").isEmpty();
  }

  private static boolean isThere(Machine machine, Wish wish) {
    int equals = wish.name().indexOf('=');
    String id = equals < 0 ? wish.name() : wish.name().substring(equals + 1);
    return machine.things().stream()
        .filter(t -> t.sort() != ThingSort.UNIT)
        .anyMatch(
            t -> t.name().equals(id) || t.value("uuid").equals(id) || t.value("label").equals(id));
  }

  static Said rootNotAskedFor(Machine machine) {
    List<Found> found =
        machine.wishes(WishKind.ROOT).stream()
            .filter(w -> w.value("asked").equals("no"))
            .map(
                w ->
                    new Found(
                        Map.of(),
                        w.mentions().stream()
                            .filter(m -> "no".equals(m.values().get("asked")))
                            .toList()))
            .toList();
    if (!found.isEmpty()) {
      return Said.of(found);
    }
    Optional<Wish> commandLine = machine.wishes(WishKind.COMMAND_LINE).stream().findFirst();
    boolean named = machine.wishes(WishKind.ROOT).stream().anyMatch(w -> !w.name().isEmpty());
    boolean failed = machine.wishes(WishKind.ROOT).stream().anyMatch(Wish::isUnmet);
    if (commandLine.isEmpty()) {
      return Said.NOT_COVERED;
    }
    return failed && !named
        ? Said.of(List.of(new Found(Map.of(), List.of(commandLine.get().mentions().get(0)))))
        : Said.ABSENT;
  }
}
