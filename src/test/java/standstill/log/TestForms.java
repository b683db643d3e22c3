package standstill.log;

import java.util.List;
import standstill.base.Example;
import standstill.base.Facts;
import standstill.base.Family;
import standstill.base.LineForm;
import standstill.base.Marks;
import standstill.base.Milestone;
import standstill.base.Stage;
import standstill.text.Pattern;

/** The line forms of a real family, so that the reader is tested with what it is used with. */
final class TestForms {
  private TestForms() {}

  static final Family LINUX =
      new Family(
          "linux",
          "Linux",
          List.of(),
          "",
          recognise(),
          List.of(),
          begins().subList(0, begins().size() - 1),
          begins().subList(begins().size() - 1, begins().size()),
          List.of(),
          lineForms(),
          milestones(),
          Facts.NONE,
          marks());

  static LogReader reader() {
    return new LogReader(List.of(LINUX));
  }

  private static Marks marks() {
    return new Marks(
        List.of(example("\\[ {0,7}\\d{1,7}\\.\\d{6}\\]", "[    1.234567] usb")),
        List.of(
            example(
                " *\\[(?: {0,9}\\*[* ]{1,10}| {1,10}\\*)\\] *(?:\\([^)]{0,19}\\) *)?(?P<job>[^(].*?)(?: *\\([^()]*\\)?)?$",
                "[ ***  ] A start job is running for /dev/sda3 (5s / 1min 30s)")),
        List.of(example("(?:-{1,2} Boot |-- Reboot -|- Reboot )[^\\n]{0,70}-$", "-- Reboot --")),
        List.of(example("-- (?:Logs begin|Journal begins) at ", "-- Logs begin at Mon --")),
        "kernel");
  }

  private static List<Example> recognise() {
    return List.of(
        example(
            "Linux version \\d",
            "[    0.000000] Linux version 6.1.0-18-amd64 (debian-kernel@lists.debian.org)"),
        example(
            "^\\s*(?:<\\d+>)?\\[ {0,6}\\d{1,6}\\.\\d{6}\\](?:\\[ *[TC]\\d+\\])? ",
            "[    1.234567] usb 1-1: new high-speed USB device number 2 using xhci_hcd",
            "<6>[    0.000000] x",
            "[    1.234567][    T1] x"),
        example(
            "^ {0,6}\\d{0,6}\\.?\\d{2,6}\\] (?:usb|ata|sd|scsi|pci|nvme|ACPI|hub|EXT4|random|systemd|e1000|input)",
            "    3.123456] usb 1-1: new high-speed USB device number 2 using xhci_hcd"),
        example(
            "^\\[\\w{3} \\w{3} +\\d+ \\d\\d:\\d\\d:\\d\\d \\d{4}\\] ",
            "[Tue Jan 20 10:17:58 2026] random: crng init done"),
        example(
            "(?:^|\\S )kernel: ",
            "Nov 25 10:00:00 bench kernel: usb 1-1: new high-speed USB device number 2 using xhci_hcd"),
        example("systemd(?:-\\w+)?\\[\\d+\\]: ", "systemd[1]: Reached target Basic System."),
        example(
            "^\\s*\\[(?:  OK  |FAILED|DEPEND| TIME | SKIP | INFO | WARN |[ *]*\\*[ *]*)\\] ?\\w",
            "[  OK  ] Started udev Kernel Device Manager.",
            "[FAILED] Failed to mount /home.",
            "[ TIME ] Timed out waiting for device /dev/sda3.",
            "[ ***  ] A start job is running for /dev/sda3 (5s / 1min 30s)"),
        example(
            "^\\s*(?:Starting|Started|Stopping|Stopped|Mounting|Mounted|Listening on|Reached target|Created slice|Finished|Activating swap) .*(?:\\.\\.\\.|\\.)$",
            "         Starting Load/Save Random Seed...",
            "Reached target Basic System."),
        example(
            "A (?:start|stop) job is running for ",
            "A start job is running for /dev/sda3 (5s / 1min 30s)"),
        example(
            "Dependency failed for |Timed out waiting for device |You are in (?:emergency|rescue) mode|Give root password for (?:maintenance|system)|Press Enter for maintenance|Cannot open access to console",
            "Dependency failed for Local File Systems.",
            "Give root password for maintenance",
            "You are in emergency mode. After logging in, type \"journalctl -xb\" to view"),
        example(
            "\\(initramfs\\)|^mountroot>|^Loading, please wait|^Begin: \\w|^:: (?:running|Triggering|performing)|\\[rootfs ]#|sh: can.t access tty; job control turned off|BusyBox v\\d",
            "(initramfs) ",
            "Begin: Running /scripts/local-block ... done.",
            ":: running early hook [udev]",
            "[rootfs ]#",
            "/bin/sh: can't access tty; job control turned off"),
        example(
            "Gave up waiting for (?:root|suspend)|ALERT!  ?\\S+ does not exist|Dropping to a shell!|ropped (?:in)?to (?:an emergency|a recovery) shell|ERROR: (?:device|resume|root device|Failed to mount)",
            "Gave up waiting for root file system device.  Common problems:",
            "ALERT!  UUID=0b6e1f0a does not exist.  Dropping to a shell!",
            "ERROR: device 'UUID=0b6e' not found. Skipping fsck.",
            "You are being dropped to a recovery shell"),
        example(
            "dracut(?:-\\w+)*(?:\\[\\d+\\])?(?::| Warning:| FATAL:)|rdsosreport\\.txt|Entering emergency mode\\. Exit the shell to continue",
            "dracut-initqueue[345]: Warning: dracut-initqueue timeout",
            "dracut Warning: Could not boot.",
            "Generating \"/run/initramfs/rdsosreport.txt\""),
        example(
            "Kernel panic - not syncing|end Kernel panic|Attempted to kill init|not syncing: VFS|Unable to mount root fs|Cannot open root device|Please append a correct",
            "Kernel panic - not syncing: VFS: Unable to mount root fs on unknown-block(0,0)"),
        example(
            "^(?:Call Trace:|RIP: 00|Code: (?:[0-9a-f]{2} ){4}|CPU: \\d+ (?:UID: \\d+ )?PID: \\d+ Comm: |Hardware name: |RAX: [0-9a-f]{16}|Modules linked in:|\\s?(?:\\? )?\\w+\\+0x[0-9a-f]+/0x[0-9a-f]+)",
            "CPU: 1 PID: 1 Comm: swapper/0 Not tainted 6.1.0-18-amd64 #1",
            " dump_stack_lvl+0x44/0x5c"),
        example(
            "BUG: (?:unable|kernel|soft lockup|workqueue)|Oops: [0-9a-f]{4}|general protection fault|---\\[ (?:end|cut here)|soft lockup - CPU#|blocked for more than \\d+ seconds|rcu: INFO: rcu|Machine Check",
            "BUG: unable to handle page fault for address: 0000000000000010",
            "INFO: task mount:212 blocked for more than 120 seconds."),
        example(
            "\\b(?:usb \\d+-[\\d.]+: |ata\\d+(?:\\.\\d+)?: [A-Za-z]|sd \\d+:\\d+:\\d+:\\d+: |scsi \\d+:\\d+:|pci(?:_bus)? [0-9a-f]{4}:[0-9a-f]{2}|pcieport 0000:|hub \\d+-\\d+|usbcore: |usb-storage )",
            "usb 1-1: new high-speed USB device number 2 using xhci_hcd",
            "ata1: SATA link up 6.0 Gbps (SStatus 133 SControl 300)",
            "sd 0:0:0:0: [sda] Attached SCSI disk"),
        example(
            "\\bnvme nvme\\d|\\bnvme\\d: [A-Z]|\\bnvme\\dn\\d|\\bmmc\\d: |\\bmmcblk\\d|\\b(?:i915|nouveau|amdgpu|radeon|ahci|xhci_hcd|ehci-pci|e1000e|r8169) [0-9a-f]{4}:[0-9a-f]{2}:",
            "nvme nvme0: I/O 12 QID 0 timeout, disable controller",
            "nvme0: Identify NS List failed",
            "i915 0000:00:02.0: [drm] GPU HANG",
            "mmc0: error -110 whilst initialising SD card"),
        example(
            "EXT[234]-fs |XFS \\(|BTRFS(?: \\w+)? \\(|BTRFS: |squashfs: |SQUASHFS |FAT-fs |I/O error, dev |Buffer I/O error|EDAC |mce: \\[|md/raid|device-mapper: |F2FS-fs|blk_update_request|VFS: |random: crng|Freeing unused kernel",
            "EXT4-fs (sda1): mounted filesystem with ordered data mode.",
            "BTRFS error (device sda2): open_ctree failed",
            "blk_update_request: I/O error, dev sda, sector 2048"),
        example(
            "^(?:calling  \\w|initcall \\w+\\+0x)|^Run /\\S+ as init process|^Starting (?:version|systemd-udevd version) ?\\d+|^Freeing (?:unused|initrd)|^Booting the kernel|^Decompressing Linux|^EFI stub:|^early console in|^Probing EDD",
            "calling  pci_init+0x0/0x40 @ 1",
            "Run /init as init process",
            "Starting version 252.22-1~deb12u1",
            "EFI stub: Loaded initrd from LINUX_EFI_INITRD_MEDIA_GUID device path"),
        example(
            "Welcome to GRUB!|GNU GRUB +version|GRUB loading|^grub(?: rescue)?>|Entering rescue mode|Minimal BASH-like line editing|you need to load the kernel first|^error: (?:no such|unknown filesystem|file `|disk `|symbol|out of memory|attempt|failure|invalid|bad|premature|cannot|couldn|hd\\d|can.t)|^GRUB(?: Hard Disk Error| _)?$",
            "Welcome to GRUB!",
            "grub rescue> ",
            "error: no such device: 0b6e1f0a-77aa-4b55-9a3e-3c9d8a1b2c3d.",
            "error: unknown filesystem."),
        example(
            "^Loading (?:Linux \\S|initial ramdisk)|^Booting [`.]|^(?:SYS|ISO|PXE|EXT)LINUX \\d|^Could not find kernel image|^Failed to load (?:ldlinux|COM32)|^Invalid or corrupt kernel image|^No DEFAULT or UI|^boot: *$|Error loading \\\\|Failed to open \\\\EFI|start_image\\(\\) returned|bad shim signature|Verification failed: \\(0x|systemd-boot",
            "Loading Linux 6.1.0-18-amd64 ...",
            "Loading initial ramdisk ...",
            "ISOLINUX 6.04 20191223 ETCD",
            "error: bad shim signature."),
        example(
            "SeaBIOS \\(|^Booting from (?:Hard Disk|DVD|CD|Floppy|ROM|\\d)|BdsDxe: |>>Start (?:PXE|HTTP)|>>Checking Media|X64 Exception Type|UEFI Interactive Shell|iPXE |^U-Boot (?:SPL )?20|Boot Failed\\. EFI|UEFI BIOS Setup",
            "SeaBIOS (version 1.16.2-debian-1.16.2-1)",
            "BdsDxe: loading Boot0001 \"UEFI QEMU HARDDISK QM00013 \""),
        example(
            "No bootable (?:device|option|media|medium)|No boot(?:able)? dis[ck]|Reboot and [Ss]elect proper|[Oo]perating [Ss]ystem not found|Missing operating system|No boot device|Insert boot media|Secure Boot [Vv]iolation|Invalid signature detected|Press (?:F2|DEL|F12|<DEL>|<F2>)",
            "Reboot and Select proper Boot device",
            "No bootable device."),
        example(
            "PXE-[EM]\\w\\d|American Megatrends|AMIBIOS|Award Modular BIOS|PhoenixBIOS|CMOS (?:[Cc]hecksum|[Bb]attery)|[Kk]eyboard (?:error|not found)|Security Violation|Boot Manager",
            "PXE-E61: Media test failure, check cable",
            "American Megatrends Inc."),
        example(
            "^INIT: |^\\[(?:ok|\\.\\.\\.\\.|warn|FAIL)\\] \\w|^ \\* (?:Starting|Mounting|Checking|Loading|Setting|Remounting) .*\\.\\.\\.|OpenRC [\\d.]+ is starting|^fsck(?:\\.\\w+)?(?: from| \\d)|UNEXPECTED INCONSISTENCY|RUN fsck MANUALLY|^/dev/\\S+: clean, \\d",
            "INIT: version 3.06 booting",
            "[ok] Starting hotplug events dispatcher: systemd-udevd.",
            " * Mounting local filesystems ...",
            "/dev/sda2: clean, 41210/1222992 files, 512000/4883712 blocks",
            "fsck from util-linux 2.38.1"),
        example(
            "error while loading shared libraries: |modprobe: (?:FATAL|ERROR|module)|mount: (?:mounting )?/\\S+|[Cc]annot (?:process|find) volume group|Volume group \"\\S+\" not found|Please (?:unlock disk|enter passphrase)|Enter passphrase for |cryptsetup[:(]|mdadm: (?:No arrays|/dev)",
            "/sbin/init: error while loading shared libraries: libc.so.6: cannot open shared object file",
            "modprobe: FATAL: Module raid1 not found in directory /lib/modules/6.1.0-18-amd64",
            "mount: mounting /dev/sda2 on /root failed: Invalid argument",
            "Please unlock disk sda3_crypt:"),
        example(
            "^[A-Za-z0-9][A-Za-z0-9-]* login: ?\\w*$|GNU/Linux .*\\btty\\w+$",
            "lantern-bench login:",
            "Debian GNU/Linux 12 lantern-bench ttyS0"));
  }

  private static List<Example> begins() {
    return List.of(
        example("^SeaBIOS \\(version", "SeaBIOS (version 1.16.2-debian-1.16.2-1)"),
        example(
            "^BdsDxe: loading Boot",
            "BdsDxe: loading Boot0001 \"UEFI QEMU HARDDISK QM00013 \" from PciRoot(0x0)/Pci(0x2,0x0)/Sata(0x0,0xFFFF,0x0)"),
        example(
            "^coreboot-\\S+ .*(?:bootblock|romstage) starting",
            "coreboot-4.13 Mon Jan 11 10:00:00 UTC 2021 bootblock starting (log level: 7)..."),
        example(
            "^U-Boot (?:SPL )?20\\d\\d\\.\\d\\d",
            "U-Boot SPL 2023.01 (Jan 11 2023 - 10:00:00 +0000)",
            "U-Boot 2023.01 (Jan 11 2023 - 10:00:00 +0000)"),
        example(
            "^American Megatrends|^AMIBIOS|^Phoenix(?:BIOS| SecureCore)|Award Modular BIOS",
            "American Megatrends Inc.",
            "Award Modular BIOS v6.00PG, An Energy Star Ally"),
        example(
            "^Welcome to GRUB!|^GRUB loading|^GRUB Loading stage",
            "Welcome to GRUB!",
            "GRUB loading."),
        example(
            "^(?:SYS|ISO|PXE|EXT)LINUX \\d",
            "ISOLINUX 6.04 20191223 ETCD Copyright (C) 1994-2015 H. Peter Anvin et al"),
        example("^iPXE initialising devices", "iPXE initialising devices...ok"),
        example(
            "^Linux version \\d", "Linux version 6.1.0-18-amd64 (debian-kernel@lists.debian.org)"));
  }

  private static List<LineForm> lineForms() {
    return List.of(
        form(
            "kmsg-device",
            "(?P<pri>\\d{1,3}),\\d+,(?P<seconds>\\d+),[^;]{1,80};",
            "6,339,5140900,-;NET: Registered protocol family 10",
            "30,340,5690716,-;udevd[80]: starting version 181",
            "6,1,0,-,caller=T0;Linux version 6.1.0"),
        form(
            "syslog-5424",
            "<(?P<pri>\\d{1,3})>[1-9] (?:(?P<clock>\\d{4}-\\d\\d-\\d\\dT[\\d:.]+(?:Z|[+-]\\d\\d:\\d\\d))|-) (?P<host>\\S+) (?P<process>\\S+) (?P<pid>\\S+) \\S+ (?:-|(?:\\[(?:[^\"\\]]|\"(?:[^\"\\\\]|\\\\.)*\")*\\])+)(?: |$)",
            "<165>1 2003-10-11T22:14:15.003Z host app 123 ID47 [exampleSDID@32473 iut=\"3\"] msg",
            "<34>1 2003-10-11T22:14:15.003Z mymachine.example.com su - ID47 - 'su root' failed for lonvick on /dev/pts/8"),
        form(
            "priority",
            "\\s*<(?P<pri>\\d{1,3})>",
            "<6>[    0.000000] Linux version 6.1.0",
            "<34>Oct 11 22:14:15 mymachine su: 'su root' failed for lonvick on /dev/pts/8",
            "<5>NET: Registered protocol family 10"),
        form(
            "decoded-level",
            "(?P<facility>kern|user|mail|daemon|auth|syslog|lpr|news|uucp|cron|authpriv|ftp|local[0-7]) {0,8}:(?P<level>emerg|alert|crit|err|warn|notice|info|debug) {0,7}: ",
            "kern  :info  : [    0.000000] Linux version 6.1.0",
            "daemon:notice: [    3.141592] systemd[1]: Detected architecture x86-64.",
            "kern  :err   : [    1.500000] ata1: SRST failed (errno=-16)"),
        form(
            "ring-buffer-caller",
            "\\s*\\[ *(?P<seconds>\\d+\\.\\d{6})\\]\\[ *(?P<context>[TC]\\d+)\\] ?",
            "[    0.000000][    T0] Linux version 6.1.0",
            "[    1.234567][    C1] hrtimer: interrupt took 21310 ns"),
        form(
            "monotonic-kernel",
            "\\s*\\[ *(?P<seconds>\\d+\\.\\d{2,9})\\] (?P<host>[A-Za-z0-9][\\w.-]*) (?P<process>kernel): ?",
            "[    4.869565] host.example kernel: usb 1-1: new high-speed USB device number 2 using xhci_hcd"),
        form(
            "monotonic-process",
            "\\s*\\[ *(?P<seconds>\\d+\\.\\d{2,9})\\] (?P<host>[A-Za-z0-9][\\w.-]*) (?P<process>[A-Za-z(][^\\s:\\[\\]]{0,63})\\[(?P<pid>\\d+)\\]: ?",
            "[    5.012345] bench systemd[1]: Reached target local-fs.target - Local File Systems.",
            "[   12.700001] bench (udev-worker)[301]: sda: Process failed"),
        form(
            "ring-buffer",
            "\\s*\\[ *(?P<seconds>\\d+\\.\\d{2,9})\\] ?",
            "[    0.000000] Linux version 6.1.0",
            "[12345.678901] reboot: Restarting system",
            "[    6.98] systemd[1]: Starting Journal Service..."),
        form(
            "ring-buffer-delta",
            "\\s*\\[ *(?P<seconds>\\d+\\.\\d{6}) *< *\\+?[\\d.]+ *>\\] ?",
            "[    0.104123 <    0.000012>] smp: Bringing up secondary CPUs ..."),
        form(
            "delta-only",
            "\\s*\\[< *[\\d.]+ *>\\] ?",
            "[<    0.000012>] smp: Bringing up secondary CPUs ..."),
        form(
            "calendar",
            "\\s*\\[(?P<clock>\\pL{2,4}\\.? \\pL{3,4}\\.? +\\d{1,2} \\d\\d:\\d\\d:\\d\\d(?:\\.\\d+)? \\d{4})(?: *< *[\\d.]+ *>)?\\] ?",
            "[Tue Jan 20 10:17:58 2026] Linux version 6.12.16",
            "[Tue Jan 20 10:17:58 2026 <    0.000012>] smp: Bringing up secondary CPUs ..."),
        form(
            "relative-minute",
            "\\s*\\[(?P<clock>\\pL{3,4}\\.? ?\\d{1,2} \\d\\d:\\d\\d)\\] ?",
            "[Jan20 10:17] Linux version 6.12.16"),
        form(
            "relative-step",
            "\\s*\\[ *(?P<seconds>\\+\\d+\\.\\d{6})\\] ?",
            "[  +0.000012] smp: Bringing up secondary CPUs ..."),
        form(
            "iso-kernel",
            "(?P<clock>\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d,\\d{6}[+-]\\d\\d:\\d\\d) ",
            "2026-11-25T10:00:00,123456+00:00 Linux version 6.1.0"),
        form(
            "journal-iso",
            "(?P<clock>\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d(?:[.,]\\d+)?(?:Z|[+-]\\d\\d:?\\d\\d)) (?P<host>\\S+) (?P<process>[^\\s:\\[\\]]{1,64})(?:\\[(?P<pid>\\d+)\\])?: ?",
            "2026-11-25T10:00:00+0000 bench kernel: Linux version 6.1.0",
            "2026-11-25T10:00:00.123456+01:00 bench systemd[1]: Started cron.service."),
        form(
            "journal-full",
            "\\pL{2,4} (?P<clock>\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d:\\d\\d(?:\\.\\d+)?) (?:[A-Z]{2,5}|[+-]\\d\\d(?:\\d\\d)?) (?P<host>\\S+) (?P<process>[^\\s:\\[\\]]{1,64})(?:\\[(?P<pid>\\d+)\\])?: ?",
            "Wed 2026-11-25 10:00:00 UTC bench kernel: Linux version 6.1.0",
            "Wed 2026-11-25 10:00:00.123456 CET bench systemd[1]: Started cron.service."),
        form(
            "journal-epoch",
            "(?P<clock>\\d{10}\\.\\d{6}) (?P<host>\\S+) (?P<process>[^\\s:\\[\\]]{1,64})(?:\\[(?P<pid>\\d+)\\])?: ?",
            "1764064800.123456 bench kernel: Linux version 6.1.0"),
        form(
            "syslog",
            "(?P<clock>\\pL{3,4}\\.? {1,2}\\d{1,2} \\d\\d:\\d\\d:\\d\\d(?:\\.\\d+)?) (?P<host>\\S+) (?P<process>[^\\s:\\[\\]]{1,64})(?:\\[(?P<pid>\\d+)\\])?: ?",
            "Nov 25 10:00:00 bench kernel: Linux version 6.1.0",
            "Nov  5 10:00:00.123456 bench systemd[1]: Reached target Basic System.",
            "Jun 14 15:16:01 combo sshd(pam_unix)[19939]: authentication failure"),
        form(
            "syslog-bare",
            "(?P<clock>\\pL{3,4}\\.? {1,2}\\d{1,2} \\d\\d:\\d\\d:\\d\\d(?:\\.\\d+)?) (?P<host>[A-Za-z0-9][\\w.-]*) ",
            "Jun 14 15:16:02 combo last message repeated 2 times"),
        form(
            "console-tag",
            "\\s*(?P<process>systemd(?:-[a-z0-9-]+)?|\\(udev-worker\\)|\\(sd-[a-z-]+\\)|udevd|kernel)(?:\\[(?P<pid>\\d+)\\]): ?",
            "systemd[1]: Reached target Basic System.",
            "(udev-worker)[301]: sda: Process failed",
            "systemd-fsck[312]: /dev/sda2: clean, 41210/1222992 files"),
        form(
            "kernel-tag",
            "\\s*(?P<process>kernel): ?",
            "kernel: usb 1-1: new high-speed USB device number 2 using xhci_hcd"),
        form(
            "cut-stamp",
            " +(?P<seconds>\\d{1,5}\\.\\d{6})\\](?: |$)",
            "    3.123456] usb 1-1: new high-speed USB device number 2 using xhci_hcd"),
        form(
            "cut-decimals",
            " *(?:\\d{1,5}\\.\\d{6}|\\.?\\d{2,6})\\](?: |$)",
            "23456] usb 1-1: new high-speed USB device number 2 using xhci_hcd",
            "3.123456] usb 1-1: new high-speed USB device",
            "  .123456] usb 1-1: new high-speed USB device"),
        form(
            "cut-calendar",
            "[\\d:]{2,8} \\d{4}\\] ",
            "17:58 2026] usb 1-1: new high-speed USB device number 2 using xhci_hcd"));
  }

  private static List<Milestone> milestones() {
    return List.of(
        new Milestone(
            "services-start",
            Stage.USERLAND,
            Milestone.Proves.WITHIN,
            "Services start",
            Pattern.known("Reached target|Started .{3,}\\.|login: ?$"),
            List.of()));
  }

  private static Example example(String line, String... seen) {
    return new Example(Pattern.known(line), List.of(seen));
  }

  private static LineForm form(String id, String prefix, String... seen) {
    return new LineForm(id, Pattern.known(prefix), id.equals("kmsg-device"), List.of(seen));
  }
}
