package standstill.base;

import java.util.List;

/**
 * What a class number of a bus means.
 *
 * @param code hexadecimal digits with which the number begins
 * @param sort what such a device is
 * @param title in words, for people
 * @param disks whether disks hang on it
 * @param drivers names under which its drivers announce what hangs on it, where that is known
 */
public record DeviceClass(
    String code, ThingSort sort, String title, boolean disks, List<String> drivers) {
  public DeviceClass {
    drivers = List.copyOf(drivers);
  }
}
