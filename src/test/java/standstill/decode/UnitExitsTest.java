package standstill.decode;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static standstill.decode.Readings.alone;
import static standstill.decode.Readings.inLine;
import static standstill.decode.Readings.says;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** systemd 252.39 src/shared/exit-status.c, src/core/service.c; systemd.exec(5). */
class UnitExitsTest {
  @ParameterizedTest
  @CsvSource({
    "203/EXEC, missing or can't be run",
    "217/USER, user",
    "216/GROUP, group",
    "200/CHDIR, working directory",
    "226/NAMESPACE, private view",
    "78/CONFIG, configuration error",
    "69/UNAVAILABLE, not available",
    "1/FAILURE, exit code 1",
  })
  void exitCodes(String code, String expected) {
    says(expected, alone(Kind.EXIT_CODE, code));
    says(expected, alone(Kind.EXIT_CODE, code.substring(0, code.indexOf('/'))));
    says(
        expected,
        inLine(Kind.EXIT_CODE, "foo.service: Main process exited, code=exited, status=" + code));
  }

  @Test
  void killedProcesses() {
    says(
        "SIGSEGV",
        inLine(Kind.SIGNAL, "foo.service: Main process exited, code=dumped, status=11/SEGV"));
    says(
        "SIGKILL",
        inLine(Kind.SIGNAL, "foo.service: Main process exited, code=killed, status=9/KILL"));
  }

  @Test
  void results() {
    says(
        "consequence",
        inLine(Kind.UNIT_RESULT, "foo.service: Failed with result 'start-limit-hit'."));
    says(
        "consequence",
        inLine(
            Kind.UNIT_RESULT, "home.mount: Job home.mount/start failed with result 'dependency'."));
    says(
        "longer than allowed",
        inLine(Kind.UNIT_RESULT, "foo.service: Failed with result 'timeout'."));
  }

  /** POSIX Shell Command Language, section 2.8.2. */
  @Test
  void exitCodesOfShells() {
    says("not found", inLine(Kind.EXIT_CODE, "udev: process exited with exit code 127"));
    says("SIGSEGV", alone(Kind.EXIT_CODE, "139"));
  }

  /** Linux 6.1 include/uapi/asm-generic/signal.h. */
  @ParameterizedTest
  @CsvSource({"9, SIGKILL", "11, SIGSEGV", "4, SIGILL", "7, SIGBUS", "15, SIGTERM"})
  void signals(String number, String name) {
    says(name, alone(Kind.SIGNAL, number));
    says("signal " + number, alone(Kind.SIGNAL, name));
    says(name, inLine(Kind.SIGNAL, "init: process 212 killed by signal " + number));
  }

  /** Lines of FreeBSD sys/kern/kern_sig.c and Darwin bsd/kern/kern_exit.c. */
  @Test
  void theBsdFamilyCountsSignalsItsOwnWay() {
    says(
        "SIGKILL",
        inLine(
            Kind.SIGNAL,
            "initproc exited -- no exit reason available -- (signal 9, exit status 0 )"));
    String bus = inLine(Kind.SIGNAL, "pid 848 (automount), jid 0, uid 0: exited on signal 10");
    assertFalse(bus.contains("SIGUSR1"), bus);
  }
}
