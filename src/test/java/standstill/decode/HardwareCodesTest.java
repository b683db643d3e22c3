package standstill.decode;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static standstill.decode.Readings.alone;
import static standstill.decode.Readings.inLine;
import static standstill.decode.Readings.none;
import static standstill.decode.Readings.says;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Codes of processors, drives and buses. */
class HardwareCodesTest {
  /**
   * Bit positions from Linux 6.1 arch/x86/include/asm/mce.h, codes from rasdaemon mce-intel.c,
   * which both follow the processor manual, vol. 3B, chapter "Machine-Check Architecture"; the
   * values are arithmetic on these.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "be00000000800400|flags VAL UC EN MISCV ADDRV PCC",
        "be00000000800400|fatal",
        "be00000000800400|internal timer error (code 0x0400, model code 0x0080)",
        "b200000000070005|internal parity error (code 0x0005, model code 0x0007); flags VAL UC EN PCC",
        "8c00004000010091|corrected, count 1; memory controller error, read, channel 1 (code 0x0091",
        "8c00004000010091|flags VAL MISCV ADDRV",
        "bd80000000100134|action required (SRAR); cache error, data, data read, L0 (code 0x0134",
        "bd80000000100134|flags VAL UC EN MISCV ADDRV S AR",
        "ee0000000040110a|flags VAL OVER UC MISCV ADDRV PCC",
        "ee0000000040110a|cache error, generic, generic, L2",
        "8800004000310e0f|corrected, count 1; bus or interconnect error",
      })
  void machineChecks(String status, String expected) {
    says(expected, alone(Kind.MACHINE_CHECK, status));
    assertTrue(
        Decoder.explain("mce: [Hardware Error]: CPU 0: Machine Check: 0 Bank 4: " + status).stream()
            .anyMatch(m -> m.code().equals(status) && m.meaning().contains(expected)));
  }

  @ParameterizedTest
  @CsvSource({
    "0x009f, 'memory controller error, read, channel not specified'",
    "0x00c1, 'scrub, channel 1'",
    "0x0150, 'cache error, instruction, instruction fetch, L0'",
    "0x017a, 'cache error, generic, eviction, L2'",
  })
  void machineCheckCodes(String code, String expected) {
    says(expected, alone(Kind.MACHINE_CHECK, code));
  }

  @ParameterizedTest
  @CsvSource({"5, 'RIPV', MCIP", "4, MCIP, MCIP", "0, no flag, no flag"})
  void globalStatus(String code, String one, String other) {
    String said =
        inLine(
            Kind.MACHINE_CHECK,
            "mce: [Hardware Error]: CPU 1: Machine Check Exception: "
                + code
                + " Bank 4: b200000000070005");
    says(one, said);
    says(other, said);
    assertTrue(said.contains("RIPV") == code.equals("5"), said);
  }

  /** Linux 6.1 include/linux/ata.h and the printing in drivers/ata/libata-eh.c. */
  @ParameterizedTest
  @CsvSource({
    "0x51, { DRDY ERR }",
    "0x51, seek complete",
    "0x41, { DRDY ERR }",
    "0x50, { DRDY }",
    "0x58, { DRDY DRQ }",
    "0x80, { Busy }",
    "0xd0, { Busy }",
  })
  void ataStatus(String code, String expected) {
    says(expected, alone(Kind.ATA_STATUS, code));
  }

  @ParameterizedTest
  @CsvSource({
    "0x40, { UNC }",
    "0x84, { ICRC ABRT }",
    "0x10, { IDNF }",
    "0x14, { IDNF ABRT }",
    "0x04, { ABRT }",
  })
  void ataError(String code, String expected) {
    says(expected, alone(Kind.ATA_ERROR, code));
  }

  @Test
  void ataLines() {
    says("ready, error", inLine(Kind.ATA_STATUS, "ata1.00: status: { DRDY ERR }"));
    says("unreadable sector", inLine(Kind.ATA_ERROR, "ata1.00: error: { UNC }"));
    String res = "         res 51/40:00:08:08:00/00:00:00:00:00/40 Emask 0x9 (media error)";
    says("status { DRDY ERR }", inLine(Kind.ATA_STATUS, res));
    says("error { UNC }", inLine(Kind.ATA_STATUS, res));
    says("media error, with device error", inLine(Kind.ATA_MASK, res));
    says(
        "timeout",
        inLine(Kind.ATA_MASK, "res 40/00:00:00:4f:c2/00:00:00:00:00/00 Emask 0x4 (timeout)"));
  }

  /** Linux 6.1 drivers/ata/libata-core.c prints SStatus in hexadecimal. */
  @ParameterizedTest
  @CsvSource({"113, 'link up, 1.5 Gbps'", "123, 'link up, 3.0 Gbps'", "133, 'link up, 6.0 Gbps'"})
  void sataLink(String code, String expected) {
    says(expected, alone(Kind.SATA_LINK, code));
    says(
        expected, inLine(Kind.SATA_LINK, "ata1: SATA link up (SStatus " + code + " SControl 300)"));
    says("no device", inLine(Kind.SATA_LINK, "ata2: SATA link down (SStatus 0 SControl 300)"));
  }

  /** Linux 6.1 drivers/scsi/constants.c (wording of the keys). */
  @ParameterizedTest
  @CsvSource({
    "2, Not Ready",
    "3, Medium Error",
    "4, Hardware Error",
    "5, Illegal Request",
    "6, Unit Attention",
    "0xb, Aborted Command",
  })
  void senseKeys(String number, String name) {
    says(name, alone(Kind.SCSI_SENSE, number));
    says(
        "key ",
        inLine(Kind.SCSI_SENSE, "sd 0:0:0:0: [sda] tag#3 Sense Key : " + name + " [current] "));
  }

  /** The keys' wording is that of drivers/scsi/constants.c; additional codes are those of SPC. */
  @ParameterizedTest
  @CsvSource({
    "3/11/04, Medium Error, unreadable sector",
    "2/3a/00, Not Ready, normal for an empty",
    "6/29/00, Unit Attention, reset",
  })
  void senseWithItsAddition(String code, String key, String more) {
    says(key, alone(Kind.SCSI_SENSE, code));
    says(more, alone(Kind.SCSI_SENSE, code));
  }

  /** Linux 6.1 block/blk-core.c, the table of words and errors. */
  @Test
  void errorsOfTheBlockLayer() {
    String medium =
        inLine(
            Kind.BLOCK_ERROR,
            "critical medium error, dev sda, sector 2048 op 0x0:(READ) flags 0x0 phys_seg 1 prio class 2");
    says("on sda", medium);
    says("ENODATA (61)", medium);
    String io = inLine(Kind.BLOCK_ERROR, "I/O error, dev sdb, sector 0 op 0x0:(READ) flags 0x0");
    says("on sdb", io);
    says("EIO (5)", io);
    says("ETIMEDOUT", inLine(Kind.BLOCK_ERROR, "timeout error, dev sda, sector 1 op 0x0:(READ)"));
    says(
        "EREMOTEIO",
        inLine(Kind.BLOCK_ERROR, "critical target error, dev sda, sector 1 op 0x0:(READ)"));
  }

  /** Linux 6.1 include/linux/nvme.h and drivers/nvme/host/constants.c. */
  @ParameterizedTest
  @CsvSource({
    "0x0281, 'Unrecovered Read Error (type 2 media and data integrity, code 0x81); may be retried'",
    "0x6281, MORE",
    "0x6281, DNR",
    "0x4002, 'Invalid Field in Command (type 0 generic, code 0x02); DNR'",
    "0x0286, Access Denied",
    "0x0080, LBA Out of Range",
    "0x0082, Namespace Not Ready",
    "0x0301, 'Persistent Loss (type 3 path'",
  })
  void nvmeStatus(String code, String expected) {
    says(expected, alone(Kind.NVME_STATUS, code));
  }

  @Test
  void nvmeLines() {
    says(
        "Unrecovered Read Error",
        inLine(
            Kind.NVME_STATUS,
            "nvme0n1: Read(0x2) @ LBA 2048, 8 blocks, Unrecovered Read Error (sct 0x2 / sc 0x81) MORE DNR "));
    says(
        "Internal Error",
        inLine(
            Kind.NVME_STATUS,
            "nvme0n1: Read(0x2) @ LBA 0, 8 blocks, Internal Error (sct 0x0 / sc 0x6) "));
    says(
        "gone from the bus",
        inLine(
            Kind.NVME_CONTROLLER,
            "nvme nvme0: controller is down; will reset: CSTS=0xffffffff, PCI_STATUS=0xffff"));
    says(
        "Invalid Field",
        inLine(Kind.NVME_STATUS, "nvme nvme0: Identify Descriptors failed (16386)"));
  }

  /** Linux 6.1 Documentation/driver-api/usb/error-codes.rst; lines of drivers/usb/core/hub.c. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "usb 1-1: device descriptor read/64, error -71|EPROTO",
        "usb 1-1: device descriptor read/64, error -110|ETIMEDOUT",
        "usb 1-1: device not accepting address 5, error -62|ETIME (62)",
        "usb 2-3: device descriptor read/8, error -84|EILSEQ",
      })
  void usbErrors(String line, String expected) {
    says(expected, inLine(Kind.USB_ERROR, line));
    assertTrue(none(Kind.ERRNO_LINUX, Decoder.explain(line)), "one code, one meaning");
  }

  /** Linux 6.1 drivers/usb/host/xhci.h. */
  @ParameterizedTest
  @CsvSource({
    "4, Transaction Error",
    "6, Stall",
    "13, not an error",
    "25, Command Aborted",
    "12, Endpoint Not Enabled",
    "10, Invalid Stream Type",
  })
  void completionCodes(String code, String expected) {
    says(expected, alone(Kind.XHCI_COMPLETION, code));
  }

  /** The words are those of Linux 6.1 drivers/usb/core/hub.c. */
  @Test
  void usbSpeeds() {
    says(
        "USB 2.0",
        inLine(Kind.USB_SPEED, "usb 1-1: new high-speed USB device number 2 using xhci_hcd"));
    says(
        "USB 3",
        inLine(Kind.USB_SPEED, "usb 2-1: new SuperSpeed USB device number 2 using xhci_hcd"));
  }

  /** Class list of pci.ids 2023.04.11; Linux 6.1 include/linux/pci_ids.h. */
  @ParameterizedTest
  @CsvSource({
    "0x010601, SATA controller, AHCI",
    "0x010802, Non-Volatile memory controller, NVM Express",
    "0x010400, RAID, RAID",
    "0x010700, Serial Attached SCSI, Serial Attached SCSI",
    "0x010100, IDE, IDE",
    "0x010000, SCSI, SCSI",
    "0x0c0330, USB, XHCI",
    "0x0c0320, USB, EHCI",
    "0x0c0310, USB, OHCI",
    "0x0c0300, USB, UHCI",
    "0x030000, VGA, VGA",
    "0x020000, Ethernet, Ethernet",
    "0x060400, PCI bridge, PCI bridge",
    "0x060100, ISA bridge, ISA bridge",
    "0x060000, Host bridge, Host bridge",
    "0x040300, Audio, Audio",
  })
  void pciClasses(String code, String name, String inside) {
    says(name, alone(Kind.PCI_CLASS, code));
    // The line is that of Linux 6.1 drivers/pci/probe.c.
    String line = "pci 0000:00:1f.2: [8086:2922] type 00 class " + code;
    says(inside, inLine(Kind.PCI_CLASS, line));
    says("domain 0, bus 0, device 31, function 2", inLine(Kind.PCI_ADDRESS, line));
    says("vendor 8086, device 2922", inLine(Kind.PCI_ID, line));
  }

  /** Linux 6.1 drivers/pci/probe.c: the device has five bits, the function three. */
  @ParameterizedTest
  @CsvSource({"0000:00:20.0, above 1f", "0000:00:1f.8, above 7"})
  void addressesThatNoDeviceHas(String address, String expected) {
    says(expected, alone(Kind.PCI_ADDRESS, address));
    assertFalse(alone(Kind.PCI_ADDRESS, "0000:00:1f.2").contains("not a valid"));
  }
}
