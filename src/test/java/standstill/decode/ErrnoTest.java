package standstill.decode;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static standstill.decode.Readings.alone;
import static standstill.decode.Readings.inLine;
import static standstill.decode.Readings.none;
import static standstill.decode.Readings.says;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Error numbers: Linux 6.1 include/uapi/asm-generic/errno-base.h, errno.h and
 * include/linux/errno.h; FreeBSD sys/sys/errno.h; Darwin bsd/sys/errno.h.
 */
class ErrnoTest {
  @ParameterizedTest
  @CsvSource({
    "-2, 'ENOENT (2): No such file or directory'",
    "-5, EIO",
    "-6, ENXIO",
    "-8, ENOEXEC",
    "-12, ENOMEM",
    "-13, EACCES",
    "-16, EBUSY",
    "-19, ENODEV",
    "-22, EINVAL",
    "-28, ENOSPC",
    "-30, EROFS",
    "-61, ENODATA",
    "-62, ETIME",
    "-71, EPROTO",
    "-84, EILSEQ",
    "-110, ETIMEDOUT",
    "-117, 'EUCLEAN (117): Structure needs cleaning'",
    "-121, EREMOTEIO",
    "-123, ENOMEDIUM",
    "-126, ENOKEY",
    "-129, EKEYREJECTED",
    "-512, ERESTARTSYS",
    "-517, EPROBE_DEFER",
    "-524, ENOTSUPP",
  })
  void linuxNumbers(String code, String expected) {
    says(expected, alone(Kind.ERRNO_LINUX, code));
    says(expected, inLine(Kind.ERRNO_LINUX, "foo: probe of bar failed with error " + code));
  }

  /** The numbers on which the three kernels differ. */
  @ParameterizedTest
  @CsvSource({
    "11, EAGAIN, EDEADLK, EDEADLK",
    "35, EDEADLK, EAGAIN, EAGAIN",
    "36, ENAMETOOLONG, EINPROGRESS, EINPROGRESS",
    "38, ENOSYS, ENOTSOCK, ENOTSOCK",
    "60, ENOSTR, ETIMEDOUT, ETIMEDOUT",
    "62, ETIME, ELOOP, ELOOP",
    "71, EPROTO, EREMOTE, EREMOTE",
    "78, EREMCHG, ENOSYS, ENOSYS",
    "84, EILSEQ, EOVERFLOW, EOVERFLOW",
  })
  void theKernelsDiffer(String number, String linux, String freeBsd, String darwin) {
    says(linux + " (", alone(Kind.ERRNO_LINUX, number));
    says(freeBsd + " (", alone(Kind.ERRNO_FREEBSD, number));
    says(darwin + " (", alone(Kind.ERRNO_DARWIN, number));
  }

  @ParameterizedTest
  @ValueSource(strings = {"41", "58"})
  void gapsInTheListStayGaps(String number) {
    assertTrue(none(Kind.ERRNO_LINUX, Decoder.explainCode(number)));
  }

  @ParameterizedTest
  @CsvSource({
    "19, 'ENODEV (19): Operation not supported by device'",
    "2, ENOENT",
    "5, EIO",
    "22, EINVAL",
    "45, EOPNOTSUPP",
  })
  void freeBsdLinesAreReadWithItsOwnNumbers(String number, String expected) {
    // FreeBSD sys/kern/vfs_mountroot.c prints this line.
    says(
        expected,
        inLine(
            Kind.ERRNO_FREEBSD, "Mounting from ufs:/dev/da0s1a failed with error " + number + "."));
  }

  @Test
  void aMissingFileSystemModuleOfFreeBsd() {
    says(
        "ENOENT",
        inLine(
            Kind.ERRNO_FREEBSD,
            "Mounting from zfs:zroot/ROOT/default failed with error 2: unknown file system."));
    says("EIO", inLine(Kind.ERRNO_FREEBSD, "zio_read error: 5"));
  }

  @ParameterizedTest
  @CsvSource({"19, ENODEV", "82, EPWROFF", "83, EDEVERR", "92, EILSEQ"})
  void darwinLinesAreReadWithItsOwnNumbers(String number, String expected) {
    // Darwin bsd/kern/bsd_init.c prints this line.
    says(expected, inLine(Kind.ERRNO_DARWIN, "cannot mount root, errno = " + number));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "VFS: Cannot open root device \"sda1\" or unknown-block(0,0): error -6|ENXIO",
        "Failed to execute /init (error -2)|ENOENT",
        "Starting init: /bin/sh exists but couldn't execute it (error -8)|ENOEXEC",
        "tpm tpm0: A TPM error occurred, ret = -62|ETIME",
        "mmc0: error -110 whilst initialising SD card|ETIMEDOUT",
        "BTRFS error (device sda2): open_ctree failed: -5|EIO",
        "XFS (sda2): log mount/recovery failed: error -117|EUCLEAN",
        "initcall foo_init+0x0/0x10 returned -19 after 3 usecs|ENODEV",
        "ahci 0000:00:1f.2: probe with driver ahci failed (err=-12)|ENOMEM",
        "Loading of module rejected: -EKEYREJECTED|129",
      })
  void linesThatPrintAnError(String line, String expected) {
    says(expected, inLine(Kind.ERRNO_LINUX, line));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "usb 1-1: new device number 5",
        "[    0.000000] BIOS-e820: usable 0-10",
        "EXT4-fs (sda1): mounted filesystem",
        "Linux version 6.1.0-18-amd64",
        "sd 2:0:0:0: [sdb] 12-34 error-free",
      })
  void otherNumbersAreNoErrors(String line) {
    assertEquals(
        List.of(),
        Decoder.explain(line).stream().filter(m -> m.kind() == Kind.ERRNO_LINUX).toList());
  }
}
