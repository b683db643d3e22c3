package standstill.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import standstill.base.Statement;
import standstill.base.ThingSort;
import standstill.base.ThingState;

class WaitingTest {
  private static final String MOUNTED =
      "[   20.000000] EXT4-fs (sda2): mounted filesystem with ordered data mode.\n";

  private static List<String> units(Machine machine) {
    return machine.things(ThingSort.UNIT).stream().map(Thing::name).toList();
  }

  @Test
  void whatFailedForADependencyHangsBehindWhatFailedOfItself() {
    Machine machine =
        Machines.of(
            Machines.START,
            MOUNTED,
            """
            [ TIME ] Timed out waiting for device ...f0c1e-3333-4b7a-9d3e-6a1b0c4e7f99.
            [DEPEND] Dependency failed for systemd-cryptsetup@vault.service - Cryptography Setup for vault.
            [DEPEND] Dependency failed for dev-mapper-vault.device - /dev/mapper/vault.
            [DEPEND] Dependency failed for data.mount - /data.
            """);
    assertEquals(
        Set.of("systemd-cryptsetup@vault.service", "mapper/vault", "/data"),
        machine.waiting().hangBehind("...f0c1e-3333-4b7a-9d3e-6a1b0c4e7f99"));
  }

  @Test
  void aUnitBehindAnotherHoldsNothing() {
    Machine machine =
        Machines.of(
            Machines.START,
            MOUNTED,
            """
            [DEPEND] Dependency failed for lantern-b.service - Behind.
                     Starting lantern-b.service - Behind...
            [***   ] (1 of 2) Job lantern-a.service/start running (2min / no limit)
            [***   ] (2 of 2) Job lantern-b.service/start running (2min / no limit)
            """);
    assertEquals(
        List.of("lantern-a.service"),
        machine.says(Statement.UNIT_STARTED_AND_NEVER_FINISHED).found().stream()
            .map(f -> f.values().get("unit"))
            .toList());
  }

  @Test
  void oneUnitIsKnownByItsNameItsDescriptionAndEitherShortened() {
    Machine machine =
        Machines.of(
            Machines.START,
            MOUNTED,
            """
                     Starting lantern-scan.service - Scan all the shelves of the workshop...
            [***   ] Job lantern-scan.se...tart running (31s / no limit)
            [***   ] A start job is running for Scan all the shelves of the workshop (41s / no limit)
            [FAILED] Failed to start lantern-sc...an all the shelves of the workshop.
            """);
    assertEquals(List.of("lantern-scan.service"), units(machine));
    assertEquals(ThingState.FAILED, machine.things(ThingSort.UNIT).get(0).state());
    assertEquals(41, machine.waiting().longest());
  }

  @Test
  void aDeviceIsOneUnitHoweverItsPathIsWritten() {
    Machine machine =
        Machines.of(
            Machines.START,
            MOUNTED,
            """
                     Expecting device dev-disk-by\\x2duuid-0b8f0c1e\\x2d1111.device - /dev/disk/by-uuid/0b8f0c1e-1111...
            [***   ] (1 of 2) Job dev-disk-by\\x2duuid-0b....device/start running (29s / 1min)
            [ TIME ] Timed out waiting for device /dev/disk/by-uuid/0b8f0c1e-1111.
            """);
    assertEquals(List.of("UUID=0b8f0c1e-1111"), units(machine));
    assertTrue(machine.says(Statement.WAITED_FOR_DEVICE_NEVER_CAME).holds());
  }

  @Test
  void spansAreReadAsTheInitProgramWritesThem() {
    assertEquals(OptionalInt.of(90), Waiting.seconds("1min 30s"));
    assertEquals(OptionalInt.of(7_380), Waiting.seconds("2h 3min"));
    assertEquals(OptionalInt.of(12), Waiting.seconds("12s"));
    assertEquals(OptionalInt.empty(), Waiting.seconds("no limit"));
    assertEquals(OptionalInt.empty(), Waiting.seconds(""));
  }
}
