package standstill.machine;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Family;
import standstill.base.Statement;
import standstill.log.Boot;
import standstill.log.BootLog;
import standstill.log.LogReader;
import standstill.store.BaseFolder;
import standstill.trace.Tracer;

/**
 * Machines read out of small texts with the fact lines of the base. The lines are those of the
 * kernel, of init programs and of ramdisks, as the fact lines' own texts are; machines and
 * identifiers are invented.
 */
final class Machines {
  /** A kernel's first lines, with what it was told. */
  static final String START =
      """
      [    0.000000] Linux version 6.1.0-18-amd64 (lantern@bench) #1 SMP
      [    0.000000] Command line: BOOT_IMAGE=/vmlinuz root=UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21 ro
      [    0.100000] Memory: 260916K/1048052K available (14343K kernel code)
      """;

  /** It has a ramdisk. */
  static final String RAMDISK =
      """
      [    1.180540] Trying to unpack rootfs image as initramfs...
      [    5.828009] Freeing initrd memory: 34064K
      [    7.989944] Run /init as init process
      Loading, please wait...
      """;

  static final String SATA =
      "[    1.733114] pci 0000:00:1f.2: [8086:2922] type 00 class 0x010601\n";
  static final String NVME =
      "[    1.733114] pci 0000:01:00.0: [1b36:0010] type 00 class 0x010802\n";
  static final String AHCI =
      """
      [   11.000000] ahci 0000:00:1f.2: AHCI 0001.0000 32 slots 2 ports 1.5 Gbps 0x3 impl SATA mode
      [   11.100000] scsi host0: ahci
      [   11.200000] ata1: SATA max UDMA/133 abar m4096@0xfebd9000 port 0xfebd9100 irq 27
      """;
  static final String SDA =
      """
      [   12.000000] ata1: SATA link up 1.5 Gbps (SStatus 113 SControl 300)
      [   12.100000] ata1.00: ATA-7: LANTERN DISK, 2.5+, max UDMA/100
      [   12.200000] sd 0:0:0:0: [sda] 41943040 512-byte logical blocks: (21.5 GB/20.0 GiB)
      [   12.400000] sd 0:0:0:0: [sda] Attached SCSI disk
      """;
  static final String SDA_PARTS = "[   12.300000]  sda: sda1 sda2\n";

  /** The ramdisk gives up on the root device. */
  static final String GAVE_UP =
      """
      Begin: Waiting for root file system ... done.
      Gave up waiting for root file system device.  Common problems:
      ALERT!  UUID=8f2a6c1e-52d4-4b7a-9d3e-6a1b0c4e7f21 does not exist.  Dropping to a shell!
      (initramfs)
      """;

  /** The installed system comes to a login prompt. */
  static final String UP =
      """
      [   20.000000] EXT4-fs (sda2): mounted filesystem with ordered data mode. Quota mode: none.
      [  OK  ] Reached target sysinit.target - System Initialization.
      [  OK  ] Reached target multi-user.target - Multi-User System.
      lantern-bench login:
      """;

  private static final Base BASE = base();
  static final Family LINUX = BASE.family("linux").orElseThrow();
  private static final MachineReader READER = new MachineReader(LINUX);
  private static final LogReader LOGS = new LogReader(BASE.families());
  private static final Tracer TRACER = new Tracer(LINUX);

  private Machines() {}

  private static Base base() {
    try {
      return BaseFolder.read(Path.of("kb")).base();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The first boot of a text. */
  static Machine of(String... parts) {
    BootLog log = LOGS.read(String.join("", parts));
    Boot boot = log.boots().get(0);
    return READER.read(boot, TRACER.trace(boot));
  }

  static Said.Verdict verdict(Statement statement, String... parts) {
    return of(parts).says(statement).verdict();
  }

  /** The values of all that a statement holds of. */
  static List<Map<String, String>> values(Statement statement, String... parts) {
    return of(parts).says(statement).found().stream().map(Found::values).toList();
  }

  /** Numbers of the lines that show it. */
  static List<Integer> lines(Statement statement, String... parts) {
    return of(parts).says(statement).found().stream()
        .flatMap(f -> f.lines().stream())
        .map(Mention::line)
        .toList();
  }
}
