package standstill.machine;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import standstill.base.Statement;
import standstill.base.ThingSort;

/** The reading of each statement. */
final class Readings {
  private static final Map<Statement, Reading> ALL = new EnumMap<>(Statement.class);

  static {
    ALL.put(Statement.STORAGE_CONTROLLER_WITHOUT_DRIVER, Undriven::storage);
    ALL.put(Statement.NVME_CONTROLLER_WITHOUT_DRIVER, Undriven::nvme);
    ALL.put(Statement.VIRTIO_DEVICE_WITHOUT_DRIVER, Undriven::virtio);
    ALL.put(Statement.USB_STORAGE_WITHOUT_DRIVER, Undriven::usbStorage);
    ALL.put(Statement.RAID_MODE_CONTROLLER, Undriven::raidMode);
    ALL.put(
        Statement.GRAPHICS_DEVICE_WITHOUT_DRIVER,
        machine -> Undriven.later(machine, ThingSort.GRAPHICS_DEVICE));
    ALL.put(
        Statement.NETWORK_DEVICE_WITHOUT_DRIVER,
        machine -> Undriven.later(machine, ThingSort.NETWORK_DEVICE));
    ALL.put(Statement.NO_DISK_AT_ALL, Disks::none);
    ALL.put(Statement.PORT_LINK_DOWN_WHERE_ROOT_SHOULD_BE, Disks::noPortAnswers);
    ALL.put(Statement.WANTED_ID_NOT_AMONG_VOLUMES, Wanted::idOnNoDisk);
    ALL.put(Statement.WANTED_DEVICE_MISSING_BUT_OTHER_DISKS_PRESENT, Wanted::deviceMissing);
    ALL.put(Statement.DISK_SEEN_WITHOUT_PARTITIONS, Disks::empty);
    ALL.put(Statement.DISK_SEEN_AND_GONE, Disks::gone);
    ALL.put(Statement.USB_DISK_LATE, Disks::lateOnUsb);
    ALL.put(Statement.ROOT_NOT_ASKED_FOR, Wanted::rootNotAskedFor);
    ALL.put(Statement.NO_RAMDISK_LOADED, Ramdisk::none);
    ALL.put(Statement.RAMDISK_LOADED, Ramdisk::loaded);
    ALL.put(Statement.ARRAY_MEMBER_MISSING, Volumes::memberMissing);
    ALL.put(Statement.ENCRYPTED_VOLUME_NEVER_OPENED, Volumes::neverOpened);
    ALL.put(Statement.VOLUME_GROUP_NEVER_FOUND, Volumes::groupNeverFound);
    ALL.put(Statement.FILE_SYSTEM_MODULE_MISSING, Volumes::moduleMissing);
    ALL.put(Statement.UNIT_STARTED_AND_NEVER_FINISHED, Units::neverFinished);
    ALL.put(Statement.UNIT_FAILS_AGAIN_AND_AGAIN, Units::failsAgainAndAgain);
    ALL.put(Statement.WAITED_FOR_DEVICE_NEVER_CAME, Units::deviceNeverCame);
    ALL.put(Statement.CONSOLE_ELSEWHERE, Terminals::elsewhere);
    ALL.put(Statement.STARTED_AGAIN_BY_ITSELF, Restart::byItself);
  }

  private Readings() {}

  static Reading of(Statement statement) {
    return Objects.requireNonNull(ALL.get(statement), statement::word);
  }
}
