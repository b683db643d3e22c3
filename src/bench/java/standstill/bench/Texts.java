package standstill.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.store.BaseFolder;

/** What the benchmarks work on: the base that the program carries, and invented texts. */
final class Texts {
  private static final String[] BEGINNING = {
    "Linux version 6.1.0-18-amd64 (debian-kernel@lists.debian.org) (gcc-12 (Debian 12.2.0-14) 12.2.0)",
    "Command line: BOOT_IMAGE=/boot/vmlinuz-6.1.0-18-amd64 root=/dev/sda2 ro",
    "BIOS-e820: [mem 0x0000000000000000-0x000000000009ffff] usable",
    "Memory: 8032112K/8257536K available",
    "smp: Brought up 1 node, 4 CPUs",
    "Run /init as init process",
    "EXT4-fs (sda2): mounted filesystem with ordered data mode. Quota mode: none.",
    "systemd[1]: Detected architecture x86-64.",
  };

  private static final String[] ONGOING = {
    "usb 1-%d: new high-speed USB device number %d using xhci_hcd",
    "usb 1-%d: New USB device found, idVendor=1d6b, idProduct=%04d, bcdDevice= 6.01",
    "input: USB Keyboard as /devices/pci0000:00/0000:00:14.0/usb1/1-%d/input/input%d",
    "sd %d:0:0:0: [sdb] %d 512-byte logical blocks: (500 GB/466 GiB)",
    "ata%d: SATA link up 6.0 Gbps (SStatus 133 SControl %d)",
    "pci 0000:00:1f.%d: reg 0x10: [mem 0xf7d0%04d-0xf7d03fff 64bit]",
    "thermal thermal_zone%d: registered as cooling_device%d",
    "ACPI: PCI: Interrupt link LNK%d configured for IRQ %d",
    "systemd[1]: Started session-%d.scope - Session %d of User lantern.",
    "systemd[1]: Starting cleanup-%d.service - Cleanup of Temporary Directories %d...",
    "audit: type=1400 audit(1700000%03d.10%d:2): apparmor=\"STATUS\" operation=\"profile_load\"",
    "e1000e 0000:00:19.0 eno%d: NIC Link is Up %d Mbps Full Duplex, Flow Control: Rx/Tx",
  };

  private Texts() {}

  static Base base() {
    try {
      return BaseFolder.builtIn().base();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A healthy boot of that many lines: a beginning, then ordinary lines with other numbers. */
  static String healthy(int lines) {
    StringBuilder out = new StringBuilder(lines * 90);
    for (int i = 0; i < lines; i++) {
      String message =
          i < BEGINNING.length
              ? BEGINNING[i]
              : String.format(Locale.ROOT, ONGOING[i % ONGOING.length], i % 8, i);
      out.append(String.format(Locale.ROOT, "[%12.6f] %s%n", i * 0.002, message));
    }
    return out.toString();
  }

  /** All near misses of the base as a log: lines that nearly match, the worst case for a filter. */
  static String nearMisses(Base base) {
    List<String> misses = new ArrayList<>(List.of(BEGINNING));
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        misses.addAll(sign.unlike());
      }
    }
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < misses.size(); i++) {
      out.append(String.format(Locale.ROOT, "[%12.6f] %s%n", i * 0.002, misses.get(i)));
    }
    return out.toString();
  }
}
