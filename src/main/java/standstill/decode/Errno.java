package standstill.decode;

import java.util.List;
import java.util.Optional;
import standstill.text.Pattern;

/**
 * Error numbers of the kernels.
 *
 * <p>Up to 34 they agree but for 11; from 35 on each system has its own. Which one counts shows in
 * the form of the line: Linux prints the negative number, FreeBSD's and Darwin's messages for the
 * root file system have wordings of their own.
 */
final class Errno implements Codes {
  private static final Table LINUX = Table.named("errno-linux");
  private static final Table FREEBSD = Table.named("errno-freebsd");
  private static final Table DARWIN = Table.named("errno-darwin");
  private static final String LINUX_SOURCE =
      "Linux include/uapi/asm-generic/errno-base.h, errno.h; include/linux/errno.h";
  private static final String FREEBSD_SOURCE = "FreeBSD sys/sys/errno.h";
  private static final String DARWIN_SOURCE = "Darwin bsd/sys/errno.h";
  private static final int LARGEST = 4_095;

  private static final Pattern NEGATIVE =
      Pattern.known(
          "(?i)\\b(?:errors?|err|errno|ret|retval|rc|result|status|failed|failure|fails?|returned|returns|code|timed out|r)"
              + "(?: with| error| err| code| errno| status| value| was| is| ret| in [\\w.]{1,40}){0,3}"
              + ",?[ =:(\\[]{1,4}(?P<code>-\\d{1,4})\\b");
  private static final Pattern TRAILING =
      Pattern.known(
          "(?i)\\b(?:error|fail(?:ed|ure)?|unable|can.?not|could not|can't)\\b.{0,80}[:(\\[] ?(?P<code>-\\d{1,4})[)\\]]?\\.?$");
  private static final Pattern ERRNO = Pattern.known("\\berrno[ :=]{1,3}(?P<code>\\d{1,3})\\b");
  private static final Pattern XFS =
      Pattern.known("\\bXFS\\b.{0,160}\\berror (?P<code>\\d{1,3})\\b");
  private static final Pattern INIT =
      Pattern.known(
          "(?:Failed to execute|Requested init|couldn't execute it).{0,80}\\(?error (?P<code>-?\\d{1,3})\\)");
  private static final Pattern NAME = Pattern.known("(?P<code>-?\\bE[A-Z0-9_]{2,15})\\b");
  private static final Pattern FREEBSD_LINE =
      Pattern.known(
          "(?:Mounting from \\S+ failed with error (?P<code>\\d{1,3})|\\bexec \\S+: error (?P<exec>\\d{1,3})"
              + "|zio_read error: (?P<zio>\\d{1,3})|g_vfs_done\\(\\).{0,120}error = (?P<vfs>\\d{1,3}))\\b");
  private static final Pattern DARWIN_LINE =
      Pattern.known(
          "(?:cannot mount root, errno = (?P<code>\\d{1,3})|bsd_init: .{0,80}error (?P<bsd>\\d{1,3}))\\b");

  @Override
  public void inLine(Findings line) {
    system(line, FREEBSD_LINE, FREEBSD, Kind.ERRNO_FREEBSD, FREEBSD_SOURCE);
    system(line, DARWIN_LINE, DARWIN, Kind.ERRNO_DARWIN, DARWIN_SOURCE);
    for (Pattern pattern : List.of(NEGATIVE, TRAILING, ERRNO, XFS, INIT)) {
      line.each(
          pattern,
          p ->
              linux(Long.parseLong(p.get("code").replace("-", "")))
                  .ifPresent(m -> line.add(p, Kind.ERRNO_LINUX, m, LINUX_SOURCE)));
    }
    line.each(
        NAME,
        p ->
            LINUX
                .name(p.get("code").replace("-", ""))
                .filter(r -> r.name().equals(p.get("code").replace("-", "")))
                .ifPresent(
                    r ->
                        line.add(
                            p,
                            Kind.ERRNO_LINUX,
                            "error " + r.number() + ": " + r.text(),
                            LINUX_SOURCE)));
  }

  private static void system(
      Findings line, Pattern pattern, Table table, Kind kind, String source) {
    line.each(
        pattern,
        p -> {
          // Each branch has a group of its own, and the number ends the match.
          String digits = p.has("code") ? p.get("code") : p.values().values().iterator().next();
          row(table, Long.parseLong(digits))
              .ifPresent(m -> line.add(p.end() - digits.length(), p.end(), kind, m, source));
        });
  }

  @Override
  public void alone(Number number, Findings code) {
    String name = number.text().replaceFirst("^-", "");
    named(code, LINUX, name, Kind.ERRNO_LINUX, LINUX_SOURCE);
    named(code, FREEBSD, name, Kind.ERRNO_FREEBSD, FREEBSD_SOURCE);
    named(code, DARWIN, name, Kind.ERRNO_DARWIN, DARWIN_SOURCE);
    if (!number.decimal() || number.value() == 0 || Math.abs(number.value()) > LARGEST) {
      inLine(code);
      return;
    }
    long n = Math.abs(number.value());
    linux(n).ifPresent(m -> code.whole(Kind.ERRNO_LINUX, m, LINUX_SOURCE));
    if (number.value() > 0) {
      row(FREEBSD, n).ifPresent(m -> code.whole(Kind.ERRNO_FREEBSD, m, FREEBSD_SOURCE));
      row(DARWIN, n).ifPresent(m -> code.whole(Kind.ERRNO_DARWIN, m, DARWIN_SOURCE));
    }
  }

  private static void named(Findings code, Table table, String name, Kind kind, String source) {
    table
        .name(name)
        .ifPresent(r -> code.whole(kind, "error " + r.number() + ": " + r.text(), source));
  }

  /** The name of a Linux error. */
  static String name(long number) {
    return LINUX.number(number).map(Table.Row::name).orElse("error " + number);
  }

  /** A Linux error in words; empty for a number that is not assigned. */
  static Optional<String> linux(long number) {
    return row(LINUX, number);
  }

  private static Optional<String> row(Table table, long number) {
    return table.number(number).map(r -> r.name() + " (" + number + "): " + r.text());
  }
}
