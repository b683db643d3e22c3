package standstill.machine;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import standstill.base.ThingSort;
import standstill.base.ThingState;

/**
 * Devices that no driver has taken.
 *
 * <p>A driver shows itself in two ways: by a line with the device's place on the bus, or by a host
 * that carries only the driver's name. A host whose name is not one of a known class may belong to
 * any of the controllers left, so then none of them is said to be without a driver.
 */
final class Undriven {
  private static final String VIRTIO = "virtio";

  private Undriven() {}

  static Said storage(Machine machine) {
    return absence(machine, c -> true);
  }

  static Said ofClass(Machine machine, List<String> codes) {
    return absence(
        machine,
        c ->
            c.value(VIRTIO).isEmpty()
                && codes.stream().anyMatch(code -> c.value("class").startsWith(code)));
  }

  static Said virtio(Machine machine) {
    if (!isCovered(machine)) {
      return Said.NOT_COVERED;
    }
    return servesVirtio(machine)
        ? Said.ABSENT
        : Said.of(
            machine.things().stream()
                .filter(t -> t.sort().isOnBus() && t.value(VIRTIO).equals("disk"))
                .map(Undriven::found)
                .toList());
  }

  /** Their own driver takes the bus; the disk's is told by the disk. */
  private static boolean servesVirtio(Machine machine) {
    return machine.things(ThingSort.PORT).stream()
            .anyMatch(p -> p.value("driver").startsWith(VIRTIO))
        || machine.disks().stream()
            .anyMatch(d -> d.value("driver").startsWith(VIRTIO) || d.name().startsWith("vd"));
  }

  static Said usbStorage(Machine machine) {
    if (!isCovered(machine)) {
      return Said.NOT_COVERED;
    }
    boolean served =
        machine.things(ThingSort.PORT).stream().anyMatch(p -> p.value("driver").equals("uas"));
    return served
        ? Said.ABSENT
        : Said.of(usbStorageLeft(machine).stream().map(Undriven::found).toList());
  }

  private static List<Thing> usbStorageLeft(Machine machine) {
    return machine.things().stream()
        .filter(t -> t.sort().isOnBus() && t.value("kind").equals("storage"))
        .filter(t -> !t.ever(ThingState.DRIVEN) && !t.ever(ThingState.GONE))
        .filter(t -> !carriesPort(machine, t))
        .toList();
  }

  static Said raidMode(Machine machine) {
    return Said.seenOnly(
        machine.things().stream()
            .filter(t -> t.sort().isOnBus() && t.value("mode").equals("RAID"))
            .map(
                t ->
                    new Found(
                        values(t),
                        t.mentions().stream()
                            .filter(m -> "RAID".equals(m.values().get("mode")))
                            .toList()))
            .toList());
  }

  /** Graphics and network: their drivers come with the installed system at the latest. */
  static Said later(Machine machine, ThingSort sort) {
    if (!machine.listsDevices() || !machine.driversAreLoaded()) {
      return Said.NOT_COVERED;
    }
    boolean unplaced =
        machine.things(sort).stream()
            .anyMatch(t -> t.ever(ThingState.DRIVEN) && !t.ever(ThingState.SEEN));
    List<Thing> left = machine.things(sort).stream().filter(Thing::isWithoutDriver).toList();
    return unplaced && !left.isEmpty()
        ? Said.NOT_COVERED
        : Said.of(left.stream().map(Undriven::found).toList());
  }

  private static Said absence(Machine machine, Predicate<Thing> which) {
    if (!isCovered(machine)) {
      return Said.NOT_COVERED;
    }
    return Said.of(left(machine).stream().filter(which).map(Undriven::found).toList());
  }

  private static boolean isCovered(Machine machine) {
    return machine.listsDevices() && machine.devicesAreOver();
  }

  /** Storage controllers that no line shows a driver of. */
  static List<Thing> left(Machine machine) {
    List<Thing> left = new ArrayList<>();
    List<String> hosts =
        machine.things(ThingSort.PORT).stream()
            .filter(p -> p.on().isEmpty())
            .map(p -> p.value("driver"))
            .filter(d -> !d.isEmpty())
            .toList();
    List<String> known =
        machine.storageControllers().stream()
            .flatMap(c -> List.of(c.value("drivers").split(" ")).stream())
            .toList();
    boolean strange = hosts.stream().anyMatch(h -> !known.contains(h) && !h.startsWith("usb"));
    for (Thing controller : machine.storageControllers()) {
      List<String> own = List.of(controller.value("drivers").split(" "));
      boolean served =
          hosts.stream().anyMatch(own::contains)
              || carriesPort(machine, controller)
              || hasDiskNamedAfter(machine, own);
      boolean perhaps = strange && (own.equals(List.of("")) || own.contains("*"));
      if (!controller.value(VIRTIO).isEmpty()) {
        served |= servesVirtio(machine);
      }
      if (controller.isWithoutDriver() && !served && !perhaps) {
        left.add(controller);
      }
    }
    return left;
  }

  /** Old drivers print nothing but their disks, which bear the driver's name. */
  private static boolean hasDiskNamedAfter(Machine machine, List<String> drivers) {
    return machine.things().stream()
        .filter(t -> t.sort() == ThingSort.DISK || t.sort() == ThingSort.PARTITION)
        .anyMatch(t -> drivers.stream().anyMatch(d -> d.length() > 2 && t.name().startsWith(d)));
  }

  private static boolean carriesPort(Machine machine, Thing controller) {
    return machine.things().stream()
        .anyMatch(
            t ->
                (t.sort() == ThingSort.PORT || t.sort() == ThingSort.DISK)
                    && t.on().equals(controller.name()));
  }

  static boolean anyLeft(Machine machine) {
    return !left(machine).isEmpty() || !usbStorageLeft(machine).isEmpty();
  }

  private static Found found(Thing device) {
    return new Found(
        values(device),
        device.mentions().stream().filter(m -> m.state() == ThingState.SEEN).limit(2).toList());
  }

  private static Map<String, String> values(Thing device) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("device", device.name());
    values.put("id", device.value("id"));
    values.put("class", device.what());
    values.put("model", device.value("model"));
    return values;
  }
}
