package standstill.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import standstill.base.ThingSort;
import standstill.base.ThingState;
import standstill.base.WishKind;

class MachineReaderTest {
  @Test
  void aDeviceGetsItsSortAndTitleFromItsClass() {
    Machine machine = Machines.of(Machines.START, Machines.SATA, Machines.RAMDISK, Machines.AHCI);
    Thing controller = machine.thing(ThingSort.CONTROLLER, "0000:00:1f.2").orElseThrow();
    assertEquals("SATA controller", controller.title());
    assertEquals(ThingState.DRIVEN, controller.state());
    assertEquals("ahci", controller.value("driver"));
    assertEquals(List.of(4, 9), controller.mentions().stream().map(Mention::line).toList());
  }

  @Test
  void oneLineMayNameSeveralPartitions() {
    Machine machine =
        Machines.of(
            Machines.START, "[    3.0]  sda: sda1 sda2 < sda5 >\n[    4.0]  nvme0n1: p1 p2\n");
    assertEquals(
        List.of("sda1", "sda2", "sda5", "nvme0n1p1", "nvme0n1p2"),
        machine.things(ThingSort.PARTITION).stream().map(Thing::name).toList());
    assertEquals("nvme0n1", machine.thing(ThingSort.PARTITION, "nvme0n1p2").orElseThrow().on());
  }

  @Test
  void theDeviceThatWasGivenUpIsTheRootOfTheCommandLine() {
    Machine machine = Machines.of(Machines.START, Machines.RAMDISK, Machines.GAVE_UP);
    assertEquals(1, machine.wishes(WishKind.ROOT).size());
    assertTrue(machine.wishes(WishKind.VOLUME).isEmpty());
    Wish root = machine.wishes(WishKind.ROOT).get(0);
    assertTrue(root.isById());
    assertTrue(root.isUnmet());
    assertEquals(2, root.mentions().get(0).line());
  }

  @Test
  void everyConsoleOfTheCommandLineIsAWish() {
    String start = Machines.START.replace(" ro\n", " ro console=tty0 console=ttyS0,115200\n");
    assertEquals(
        List.of("tty0", "ttyS0"),
        Machines.of(start).wishes(WishKind.CONSOLE).stream().map(Wish::name).toList());
  }

  @Test
  void aLineThatOnlyNamesAThingTakesNothingBack() {
    assertEquals(ThingState.READY, ThingState.READY.then(ThingState.SEEN));
    assertEquals(ThingState.READY, ThingState.READY.then(ThingState.DRIVEN));
    assertEquals(ThingState.DRIVEN, ThingState.SEEN.then(ThingState.DRIVEN));
    assertEquals(ThingState.GONE, ThingState.READY.then(ThingState.GONE));
    assertEquals(ThingState.READY, ThingState.DOWN.then(ThingState.READY));
  }

  @Test
  void namesFitWhenOneWasShortenedInItsMiddle() {
    assertTrue(Names.same("dev-d...1b0c4e7f21", "dev-disk-by-uuid-6a1b0c4e7f21"));
    assertFalse(Names.same("dev-d...1b0c4e7f99", "dev-disk-by-uuid-6a1b0c4e7f21"));
    assertFalse(Names.same("d...1", "dev-disk-by-uuid-6a1b0c4e7f21"));
    assertFalse(Names.same("sda", "sdb"));
  }

  @Test
  void aPathInAUnitsNameIsReadAsThePath() {
    assertEquals(
        "/dev/disk/by-uuid/4C1A-B07E",
        UnitName.unescaped("dev-disk-by\\x2duuid-4C1A\\x2dB07E.device"));
    assertEquals("/boot/efi", UnitName.unescaped("boot-efi.mount"));
    assertEquals("dbus.service", UnitName.unescaped("dbus.service"));
  }

  @Test
  void hostileTextStaysBounded() {
    StringBuilder text = new StringBuilder(Machines.START);
    for (int i = 0; i < 6_000; i++) {
      text.append("[    3.0] usb 1-").append(i).append(": USB disconnect, device number 2\n");
    }
    text.append("[    4.0]  sda: ").append("sda1 ".repeat(5_000)).append('\n');
    Machine machine = Machines.of(text.toString());
    assertTrue(machine.things().size() <= 6_000, machine.things().size() + " things");
  }
}
