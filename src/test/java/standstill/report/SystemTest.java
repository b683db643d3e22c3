package standstill.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.TestBase;
import standstill.log.Boot;
import standstill.match.Hit;
import standstill.match.Seen;
import standstill.match.Surroundings;
import standstill.rank.Cause;
import standstill.rank.Factor;
import standstill.store.BaseFolder;

/** What a log tells of the system and of names, for the steps of repairs. */
class SystemTest {
  private static Base base;

  @BeforeAll
  static void read() throws Exception {
    base = BaseFolder.builtIn().base();
  }

  private static Map<String, Set<String>> shown(String log) {
    Diagnoser diagnoser = new Diagnoser(base);
    List<Boot> boots =
        diagnoser.read(log.getBytes(java.nio.charset.StandardCharsets.UTF_8)).boots();
    return new Surroundings(base).of(boots.get(boots.size() - 1));
  }

  @Test
  void aLogShowsItsDistributionItsLoaderAndWhatBuiltItsInitramfs() {
    // Kernel's first lines as in the Linux banner (init/version.c) with Debian's builder, and as
    // initramfs-tools 0.142 prints (scripts/functions).
    Map<String, Set<String>> shown =
        shown(
            """
            [    0.000000] Linux version 6.1.0-18-amd64 (debian-kernel@lists.debian.org) (gcc-12)
            [    0.000000] Command line: BOOT_IMAGE=/boot/vmlinuz-6.1.0-18-amd64 root=UUID=0b6e ro quiet
            [    0.000000] efi: EFI v2.7 by EDK II
            Begin: Loading essential drivers ... done.
            """);
    assertEquals(Set.of("debian"), shown.get("distribution"));
    assertEquals(Set.of("grub"), shown.get("loader"));
    assertEquals(Set.of("uefi"), shown.get("firmware-mode"));
    assertEquals(Set.of("initramfs-tools"), shown.get("initramfs"));
    assertFalse(shown.containsKey("init"));
  }

  private static Cause cause(List<Map<String, String>> values) {
    Base small = new TestBase().fault("disk-gone", 1).sign("gone", 0.7, 0.01).add().build();
    List<Hit> hits = values.stream().map(v -> new Hit(0, 1, "gone", v)).toList();
    var fault = small.faults().get(0);
    Seen seen = new Seen(fault, fault.signs().get(0), hits, hits.size());
    return new Cause(fault, 0.9, List.of(new Factor(Factor.Kind.SEEN, 9, "gone", List.of(seen))));
  }

  @Test
  void aValueIsTakenWhereTheLogNamesOne() {
    assertEquals(
        Map.of("disk", "sda"),
        Captured.of(cause(List.of(Map.of("disk", "sda"), Map.of("disk", "sda")))));
    assertEquals(
        Map.of(), Captured.of(cause(List.of(Map.of("disk", "sda"), Map.of("disk", "sdb")))));
  }

  @Test
  void aValueThatAShellWouldReadOtherwiseIsNotTaken() {
    for (String evil :
        List.of(
            "a; rm -rf /",
            "$(reboot)",
            "`x`",
            "a|b",
            "-rf",
            "a b",
            "../etc",
            "a'b",
            "a\"b",
            "*",
            "a\\x",
            "a>b",
            "é",
            "a\nb",
            "")) {
      assertTrue(Captured.of(cause(List.of(Map.of("disk", evil)))).isEmpty(), evil);
    }
    for (String good :
        List.of("UUID=0b6e-1f", "/dev/mapper/vg-root", "home.mount", "getty@tty1.service", "0:1")) {
      assertEquals(Map.of("x", good), Captured.of(cause(List.of(Map.of("x", good)))), good);
    }
  }

  @Test
  void aUnitIsItsNameAndNotItsDescription() {
    assertEquals(
        Map.of("unit", "foo.service"),
        Captured.of(cause(List.of(Map.of("unit", "Foo Daemon"), Map.of("unit", "foo.service")))));
    assertEquals(Map.of(), Captured.of(cause(List.of(Map.of("unit", "Foo")))));
  }
}
