package standstill.decode;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static standstill.decode.Readings.alone;
import static standstill.decode.Readings.inLine;
import static standstill.decode.Readings.says;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Codes of firmware: UEFI status, boot files, ACPI, GPT. */
class FirmwareCodesTest {
  /**
   * UEFI Specification 2.10, appendix D, table D.1 (ranges), and edk2 2022.11 MdePkg/Include/Base.h
   * (numbers); the signed forms are arithmetic on them.
   */
  @ParameterizedTest
  @CsvSource({
    "0x800000000000000E, 'error, EFI_NOT_FOUND (14)'",
    "0x8000000E, 'error, EFI_NOT_FOUND (14)'",
    "0x8000000000000003, EFI_UNSUPPORTED",
    "0x800000000000001A, EFI_SECURITY_VIOLATION",
    "0x8000000000000001, EFI_LOAD_ERROR",
    "-9223372036854775807, EFI_LOAD_ERROR",
    "-9223372036854775794, EFI_NOT_FOUND",
    "9223372036854775822, EFI_NOT_FOUND",
    "0x0000000000000005, 'warning, EFI_WARN_STALE_DATA (5)'",
    "0xA000000000000001, platform initialisation",
    "0xC000000000000001, OEM",
    "0x0, EFI_SUCCESS",
    "EFI_NOT_FOUND, error 14",
    "Security Violation, EFI_SECURITY_VIOLATION (26)",
  })
  void efiStatus(String code, String expected) {
    says(expected, alone(Kind.EFI_STATUS, code));
  }

  /** edk2 2022.11 MdePkg/Library/BasePrintLib/PrintLibInternal.c: the words of %r. */
  @ParameterizedTest
  @CsvSource({
    "Volume Corrupt, EFI_VOLUME_CORRUPTED (10)",
    "Media changed, EFI_MEDIA_CHANGED (13)",
    "Not Found, EFI_NOT_FOUND (14)",
    "Access Denied, EFI_ACCESS_DENIED (15)",
    "No mapping, EFI_NO_MAPPING (17)",
    "Time out, EFI_TIMEOUT (18)",
    "Out of Resources, EFI_OUT_OF_RESOURCES (9)",
    "Security Violation, EFI_SECURITY_VIOLATION (26)",
  })
  void wordsOfTheFirmware(String words, String expected) {
    // The line is that of edk2 OvmfPkg/Library/PlatformBmPrintScLib/StatusCodeHandler.c.
    says(
        expected,
        inLine(
            Kind.EFI_STATUS,
            "BdsDxe: failed to load Boot0001 \"UEFI Misc Device\" from PciRoot(0x0)/Pci(0x3,0x0): "
                + words));
  }

  @Test
  void statusNumbersAreFoundInLines() {
    says("EFI_NOT_FOUND", inLine(Kind.EFI_STATUS, "Verification failed: 0x800000000000000e"));
    says("EFI_LOAD_ERROR", inLine(Kind.EFI_STATUS, "StartImage failed, status 0x80000001"));
    says("EFI_NOT_FOUND", inLine(Kind.EFI_STATUS, "EFI stub: error -9223372036854775794"));
  }

  @Test
  void addressesAreNoStatus() {
    assertTrue(
        Readings.none(Kind.EFI_STATUS, Decoder.explain("[mem 0x80000000-0x8fffffff] reserved")));
  }

  /**
   * UEFI Specification section 3.5.1.1; edk2 MdePkg/Include/Uefi/UefiSpec.h and Linux
   * include/linux/pe.h.
   */
  @ParameterizedTest
  @CsvSource({
    "BOOTIA32.EFI, 0x014c",
    "BOOTX64.EFI, 0x8664",
    "BOOTIA64.EFI, 0x0200",
    "BOOTARM.EFI, 0x01c2",
    "BOOTAA64.EFI, 0xaa64",
    "BOOTRISCV64.EFI, 0x5064",
    "BOOTLOONGARCH64.EFI, 0x6264",
  })
  void bootFiles(String file, String machine) {
    says(machine, inLine(Kind.BOOT_FILE, "no file \\EFI\\BOOT\\" + file + " on this medium"));
    says("PE machine", alone(Kind.BOOT_FILE, machine));
  }

  /** systemd 252.39 docs/AUTOMATIC_BOOT_ASSESSMENT.md. */
  @Test
  void triesOfABootEntry() {
    says("3 tries left", alone(Kind.BOOT_FILE, "foo+3-0.conf"));
    says("counts as bad", alone(Kind.BOOT_FILE, "foo+0-3.conf"));
  }

  /** Linux 6.1 include/acpi/acexcep.h. */
  @ParameterizedTest
  @CsvSource({
    "AE_OK, 0x0000",
    "AE_ERROR, 0x0001",
    "AE_NOT_FOUND, 0x0005",
    "AE_ALREADY_EXISTS, 0x0007",
    "AE_TYPE, 0x0008",
    "AE_SUPPORT, 0x000f",
    "AE_TIME, 0x0011",
    "AE_BAD_PARAMETER, 0x1001",
    "AE_BAD_SIGNATURE, 0x2001",
    "AE_BAD_CHECKSUM, 0x2003",
    "AE_AML_BAD_OPCODE, 0x3001",
    "AE_AML_LOOP_TIMEOUT, 0x3021",
    "AE_AML_BUFFER_LIMIT, 0x300a",
    "AE_AML_PACKAGE_LIMIT, 0x300b",
    "AE_CTRL_TERMINATE, 0x4003",
  })
  void acpiStatus(String name, String number) {
    says(number, alone(Kind.ACPI_STATUS, name));
    says(name, alone(Kind.ACPI_STATUS, number));
    says(
        number,
        inLine(
            Kind.ACPI_STATUS,
            "ACPI Error: Aborting method \\_SB.PCI0._INI due to previous error ("
                + name
                + ") (20220331/psparse-529)"));
  }

  @Test
  void controlCodesOfAcpiAreNoFailure() {
    says("not a failure", alone(Kind.ACPI_STATUS, "AE_CTRL_TERMINATE"));
  }

  /** Linux 6.1 include/acpi/actbl.h, actbl2.h: the printed signature and the table's usual name. */
  @ParameterizedTest
  @CsvSource({"APIC, MADT", "FACP, FADT", "DMAR, DMA remapping", "MCFG, PCI Express"})
  void acpiTables(String signature, String expected) {
    says(expected, alone(Kind.ACPI_TABLE, signature));
    says(
        expected,
        inLine(
            Kind.ACPI_TABLE,
            "ACPI: "
                + signature
                + " 0x000000007FFE23C2 000078 (v03 BOCHS  BXPC     00000001 BXPC 00000001)"));
  }

  /**
   * Discoverable Partitions Specification (UAPI group, 2025-11-14), Linux block/partitions/efi.h,
   * and util-linux 2.38.1 include/pt-gpt-partnames.h.
   */
  @ParameterizedTest
  @CsvSource({
    "c12a7328-f81f-11d2-ba4b-00a0c93ec93b, EFI System Partition",
    "bc13c2ff-59e6-4262-a352-b275fd6f7172, XBOOTLDR",
    "4f68bce3-e8cd-4db1-96e7-fbcaf984b709, 'Linux root, x86-64'",
    "44479540-f297-41b2-9af7-d131d5f0458a, 'Linux root, x86 (32-bit)'",
    "b921b045-1df0-41c3-af44-4c6f280d3fae, 'Linux root, arm64'",
    "72ec70a6-cf74-40e6-bd49-4bda08e8f224, 'Linux root, riscv64'",
    "8484680c-9521-48c6-9c11-b0720656f69e, /usr",
    "2c7357ed-ebd2-46d9-aec1-23d437ec2bf5, verity",
    "933ac7e1-2eb4-4f13-b844-0e14e2aef915, home",
    "3b8f8425-20e0-4f3b-907f-1a25a76f98e8, /srv",
    "4d21b016-b534-45c2-a9fb-5c16e091fd2d, /var",
    "0657fd6d-a4ab-43c4-84e5-0933c84b4f4f, swap",
    "0fc63daf-8483-4772-8e79-3d69d8477de4, Linux data",
    "a19d880f-05fc-4d3b-a006-743f0f84911e, RAID",
    "e6d6d379-f507-44c2-a23c-238f2a3df928, LVM",
    "ebd0a0a2-b9e5-4433-87c0-68b6b72699c7, basic data",
    "e3c9e316-0b5c-4db8-817d-f92df00215ae, reserved",
    "21686148-6449-6e6f-744e-656564454649, BIOS boot",
    "516e7cb6-6ecf-11d6-8ff8-00022d09712b, UFS",
    "516e7cba-6ecf-11d6-8ff8-00022d09712b, ZFS",
    "83bd6b9d-7f41-11dc-be0b-001560b84f0f, FreeBSD boot",
    "516e7cb5-6ecf-11d6-8ff8-00022d09712b, FreeBSD swap",
  })
  void partitionTypes(String guid, String expected) {
    says(expected, alone(Kind.PARTITION_TYPE, guid));
    says(expected, inLine(Kind.PARTITION_TYPE, "type=" + guid.toUpperCase(java.util.Locale.ROOT)));
  }

  @Test
  void aPartitionsOwnIdentifierIsNoType() {
    assertFalse(
        Decoder.explain("ALERT!  UUID=11111111-2222-3333-4444-555555555555 does not exist.")
            .stream()
            .anyMatch(m -> m.kind() == Kind.PARTITION_TYPE));
  }
}
