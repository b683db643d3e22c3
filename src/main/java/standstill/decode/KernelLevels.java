package standstill.decode;

import java.util.List;
import java.util.Locale;
import standstill.text.Pattern;

/** Kernel levels, syslog priorities, the record form of the kernel's device, and loglevel=. */
final class KernelLevels implements Codes {
  private static final String SOURCE =
      "RFC 5424 section 6.2.1, tables 1 and 2; Linux include/linux/kern_levels.h";
  private static final String RECORD = "Linux Documentation/ABI/testing/dev-kmsg";
  private static final List<String> LEVELS =
      List.of("emerg", "alert", "crit", "err", "warning", "notice", "info", "debug");
  private static final List<String> FACILITIES =
      List.of(
          "kern",
          "user",
          "mail",
          "daemon",
          "auth",
          "syslog",
          "lpr",
          "news",
          "uucp",
          "cron",
          "authpriv",
          "ftp",
          "ntp",
          "audit",
          "console",
          "clock",
          "local0",
          "local1",
          "local2",
          "local3",
          "local4",
          "local5",
          "local6",
          "local7");
  private static final Pattern PREFIX = Pattern.known("^<(?P<code>\\d{1,3})>");
  private static final Pattern KMSG =
      Pattern.known(
          "^(?P<code>(?P<pri>\\d{1,3}),(?P<seq>\\d{1,19}),(?P<time>\\d{1,18}),[-c+])[^;]{0,100};");
  private static final Pattern LOGLEVEL = Pattern.known("\\bloglevel=(?P<code>\\d{1,2})\\b");

  @Override
  public void inLine(Findings line) {
    line.each(
        PREFIX,
        p -> {
          int pri = Integer.parseInt(p.get("code"));
          if (pri < FACILITIES.size() * 8) {
            line.add(p, Kind.KERNEL_LEVEL, priority(pri), SOURCE);
          }
        });
    line.each(
        KMSG,
        p -> {
          int pri = Integer.parseInt(p.get("pri"));
          if (pri < FACILITIES.size() * 8) {
            line.add(
                p,
                Kind.KERNEL_LEVEL,
                String.format(
                    Locale.ROOT,
                    "%s; record %s, %.6f s after the start",
                    priority(pri),
                    p.get("seq"),
                    Long.parseLong(p.get("time")) / 1e6),
                RECORD);
          }
        });
    line.each(
        LOGLEVEL,
        p -> {
          int level = Integer.parseInt(p.get("code"));
          String shown =
              level == 0
                  ? "the console shows no message"
                  : level > 7
                      ? "the console shows all messages"
                      : "the console shows levels 0 to " + (level - 1) + " only";
          line.add(p, Kind.KERNEL_LEVEL, shown, "Linux kernel/printk/printk.c");
        });
  }

  @Override
  public void alone(Number number, Findings code) {
    inLine(code);
  }

  /** Facility times eight plus severity. */
  private static String priority(int pri) {
    return FACILITIES.get(pri / 8)
        + "."
        + LEVELS.get(pri % 8)
        + ": facility "
        + pri / 8
        + ", level "
        + pri % 8;
  }
}
