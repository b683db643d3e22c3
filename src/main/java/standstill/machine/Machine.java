package standstill.machine;

import java.util.List;
import java.util.Optional;
import standstill.base.Milestone;
import standstill.base.Stage;
import standstill.base.Statement;
import standstill.base.ThingSort;
import standstill.base.ThingState;
import standstill.base.WishKind;
import standstill.log.Boot;
import standstill.trace.Reached;
import standstill.trace.Trace;

/**
 * What a boot's lines say of the machine.
 *
 * @param boot the boot
 * @param trace how far it came and what the paste covers
 * @param things what it has and starts, in the order of their first lines within each sort
 * @param wishes what it asks for, in the order of their first lines
 * @param waiting who waits for whom among its units
 */
public record Machine(
    Boot boot, Trace trace, List<Thing> things, List<Wish> wishes, Waiting waiting) {
  private static final List<Statement> WITHOUT_DRIVER =
      List.of(
          Statement.STORAGE_CONTROLLER_WITHOUT_DRIVER,
          Statement.USB_STORAGE_WITHOUT_DRIVER,
          Statement.GRAPHICS_DEVICE_WITHOUT_DRIVER,
          Statement.NETWORK_DEVICE_WITHOUT_DRIVER);

  /** Seconds of waiting after which a device that is there would have been found. */
  private static final int LONG_ENOUGH = 60;

  /** Lines of a paste that nobody has picked out one by one. */
  private static final int FEWEST_OF_A_LIST = 100;

  public Machine {
    things = List.copyOf(things);
    wishes = List.copyOf(wishes);
  }

  /** What the log says to a statement. */
  public Said says(Statement statement) {
    return Readings.of(statement).read(this);
  }

  /**
   * Whether a device has no driver although the paste shows enough of the boot to say so: disks'
   * controllers and USB disks, graphics and network devices.
   */
  public boolean lacksDriver(Thing device) {
    return WITHOUT_DRIVER.stream()
        .flatMap(statement -> says(statement).found().stream())
        .anyMatch(found -> device.name().equals(found.values().get("device")));
  }

  /** Things of a sort. */
  public List<Thing> things(ThingSort sort) {
    return things.stream().filter(t -> t.sort() == sort).toList();
  }

  /** The thing of that sort and name. */
  public Optional<Thing> thing(ThingSort sort, String name) {
    return things.stream().filter(t -> t.sort() == sort && t.name().equals(name)).findFirst();
  }

  /** Wishes of a kind. */
  public List<Wish> wishes(WishKind kind) {
    return wishes.stream().filter(w -> w.kind() == kind).toList();
  }

  /** What was asked for as root, or else what somebody waited for in vain. */
  public Optional<Wish> wanted() {
    Optional<Wish> root = wishes(WishKind.ROOT).stream().filter(Wish::isUnmet).findFirst();
    return root.or(() -> wishes(WishKind.VOLUME).stream().filter(Wish::isUnmet).findFirst())
        .or(() -> wishes(WishKind.ROOT).stream().findFirst());
  }

  /** Whether the root, or a volume that was waited for, was given up. */
  public boolean gaveUp() {
    return wishes.stream()
        .anyMatch(w -> w.isUnmet() && (w.kind() == WishKind.ROOT || w.kind() == WishKind.VOLUME));
  }

  /** Disks that the kernel found. */
  public List<Thing> disks() {
    return things(ThingSort.DISK).stream().filter(Machine::isTheKernels).toList();
  }

  /** Whether the kernel found any disk, or a part of one, or heard one at a port. */
  public boolean hasDisk() {
    return !disks().isEmpty()
        || things(ThingSort.PARTITION).stream().anyMatch(Machine::isTheKernels)
        || things(ThingSort.PORT).stream().anyMatch(p -> p.value("holds").equals("disk"));
  }

  /** What the firmware or the loader saw says nothing of what the kernel found. */
  private static boolean isTheKernels(Thing thing) {
    return !thing.value("by").equals("firmware");
  }

  /** Controllers that disks hang on, of which the list of devices tells. */
  public List<Thing> storageControllers() {
    return things(ThingSort.CONTROLLER).stream()
        .filter(t -> t.value("disks").equals("yes"))
        .toList();
  }

  /**
   * Whether the paste shows the kernel listing what it finds, from the beginning. A few lines that
   * somebody has picked out look like a beginning too.
   */
  public boolean listsDevices() {
    boolean pickedOut =
        !trace.complete().contains(Stage.KERNEL) && boot.lines().size() < FEWEST_OF_A_LIST;
    return boot.cuts().isEmpty()
        && !pickedOut
        && trace.complete().contains(Stage.DEVICES)
        && things.stream().anyMatch(t -> t.sort().isOnBus() && t.ever(ThingState.SEEN));
  }

  /**
   * Whether devices have been looked for as long as they ever are: somebody gave up waiting, waited
   * long, or the boot went on to the installed system.
   */
  public boolean devicesAreOver() {
    boolean notAsked = wishes(WishKind.ROOT).stream().anyMatch(w -> w.value("asked").equals("no"));
    if (notAsked && !hasDisk()) {
      // A ramdisk that is not told what to look for may stop before it looks at all.
      return false;
    }
    return gaveUp()
        || trace.stage().isAfter(Stage.ROOT)
        || trace.milestones().stream()
            .map(Reached::milestone)
            .anyMatch(
                m ->
                    m.stage() == Stage.ROOT
                        && (m.proves() == Milestone.Proves.ENDS
                            || m.proves() == Milestone.Proves.STOPS))
        || waiting.longest() >= LONG_ENOUGH;
  }

  /** Whether the installed system's services have loaded the drivers that no ramdisk has. */
  public boolean driversAreLoaded() {
    if (!trace.stage().isAfter(Stage.ROOT)) {
      return false;
    }
    return trace.stage() == Stage.DONE
        || trace.milestones().stream()
            .anyMatch(
                r ->
                    r.stage() == Stage.USERLAND && r.milestone().proves() == Milestone.Proves.ENDS);
  }
}
