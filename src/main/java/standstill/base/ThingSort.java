package standstill.base;

import java.util.Locale;
import java.util.Optional;

/** The sorts of things that a log tells of. Closed: what belongs to which sort is data. */
public enum ThingSort {
  /** Something on a bus whose class is not known, or is none of the other sorts. */
  DEVICE("device"),
  /** What disks or further devices hang on. */
  CONTROLLER("controller"),
  /** A network interface's device. */
  NETWORK_DEVICE("network device"),
  /** What drives a screen. */
  GRAPHICS_DEVICE("graphics device"),
  /** A place at a controller for one disk, or for one bus of them. */
  PORT("port"),
  /** A disk, stick or card that holds data. */
  DISK("disk"),
  /** A part of a disk. */
  PARTITION("partition"),
  /** Several disks that act as one. */
  ARRAY("array"),
  /** A logical volume or a group of them. */
  VOLUME("volume"),
  /** A volume that has to be unlocked. */
  ENCRYPTED_VOLUME("encrypted volume"),
  /** A file system on some device, or a type of it that the kernel was asked for. */
  FILE_SYSTEM("file system"),
  /** The machine's memory. */
  MEMORY("memory"),
  /** A processor. */
  PROCESSOR("processor"),
  /** The initial ramdisk. */
  RAMDISK("initial ramdisk"),
  /** Something that the init program starts: a service, a mount, a target, a device to wait for. */
  UNIT("unit"),
  /** Where messages go and where a person types. */
  TERMINAL("terminal");

  private final String title;

  ThingSort(String title) {
    this.title = title;
  }

  /** Name for people. */
  public String title() {
    return title;
  }

  /** The word used in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /**
   * Whether it is something on a bus, which lines may name before they tell its sort: those have
   * one name space.
   */
  public boolean isOnBus() {
    return this == DEVICE
        || this == CONTROLLER
        || this == NETWORK_DEVICE
        || this == GRAPHICS_DEVICE;
  }

  /** The sort with that word. */
  public static Optional<ThingSort> of(String word) {
    for (ThingSort sort : values()) {
      if (sort.word().equals(word)) {
        return Optional.of(sort);
      }
    }
    return Optional.empty();
  }
}
