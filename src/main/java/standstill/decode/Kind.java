package standstill.decode;

/** What sort of code it is. */
public enum Kind {
  EFI_STATUS("efi-status", "UEFI status"),
  BOOT_FILE("boot-file", "boot file of a removable medium"),
  ERRNO_LINUX("errno-linux", "Linux error number"),
  ERRNO_FREEBSD("errno-freebsd", "FreeBSD error number"),
  ERRNO_DARWIN("errno-darwin", "Darwin error number"),
  USB_ERROR("usb-error", "USB error"),
  USB_SPEED("usb-speed", "USB speed"),
  XHCI_COMPLETION("xhci-completion", "USB controller completion code"),
  WAIT_STATUS("wait-status", "wait status of a process"),
  EXIT_CODE("exit-code", "exit code"),
  UNIT_RESULT("unit-result", "result of a unit or job"),
  SIGNAL("signal", "signal"),
  DEVICE_NUMBER("device-number", "block device number"),
  TAINT("taint", "taint of the kernel"),
  PAGE_FAULT("page-fault", "page fault error code"),
  EXCEPTION("exception", "processor exception"),
  MACHINE_CHECK("machine-check", "machine check status"),
  ATA_STATUS("ata-status", "ATA status"),
  ATA_ERROR("ata-error", "ATA error"),
  ATA_MASK("ata-emask", "ATA error mask"),
  SATA_LINK("sata-link", "SATA link status"),
  SCSI_SENSE("scsi-sense", "SCSI sense"),
  BLOCK_ERROR("block-error", "error of the block layer"),
  NVME_STATUS("nvme-status", "NVMe status"),
  NVME_CONTROLLER("nvme-csts", "NVMe controller status"),
  PCI_CLASS("pci-class", "PCI class"),
  PCI_ADDRESS("pci-address", "PCI address"),
  PCI_ID("pci-id", "PCI vendor and device"),
  ACPI_STATUS("acpi-status", "ACPI status"),
  ACPI_TABLE("acpi-table", "ACPI table"),
  PARTITION_TYPE("partition-type", "GPT partition type"),
  KERNEL_LEVEL("kernel-level", "priority of a message");

  private final String word;
  private final String title;

  Kind(String word, String title) {
    this.word = word;
    this.title = title;
  }

  /** The word used in JSON. */
  public String word() {
    return word;
  }

  /** The words used on pages. */
  public String title() {
    return title;
  }
}
