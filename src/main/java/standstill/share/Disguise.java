package standstill.share;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import standstill.log.BootLog;

/**
 * Replaces what names a person, a machine, a network or a disk: host and user names, IP and
 * hardware addresses, serial numbers, UUID, PARTUUID, LABEL and other disk names, WWNs, machine
 * ids, names of wireless networks and of iSCSI targets.
 *
 * <p>It reads the whole text first, because a name that is said once ("Hostname set to ...") stands
 * unmarked elsewhere. It replaces too much rather than too little: a four-part version number may
 * be taken for an address. What it can't know is a name that no line marks as one; a person should
 * read the result before sharing it. Not safe for use by several threads at a time.
 */
public final class Disguise {
  private static final int LONGEST_LINE = 20_000;
  private static final String HEX = "[0-9A-Fa-f]";
  private static final String NAME = "[A-Za-z0-9][A-Za-z0-9_.-]{0,62}";

  private static final List<Pattern> HOSTS =
      List.of(
          Pattern.compile("[Hh]ostname set to <(" + NAME + ")>"),
          Pattern.compile("Set hostname to <(" + NAME + ")>"),
          Pattern.compile(
              "^(?:<\\d+>)?[A-Z][a-z]{2} [ \\d]\\d [\\d:.]{8,15} (" + NAME + ") [\\w(]"),
          Pattern.compile("^\\d{4}-\\d\\d-\\d\\d[T ][\\d:.,]{8,15}\\S{0,6} (" + NAME + ") \\S+?: "),
          Pattern.compile("(?:^|\\s)(" + NAME + ") login: ?"),
          Pattern.compile("\\b[Hh]ost-?name[=:] ?\"?(" + NAME + ")"),
          Pattern.compile("^_HOSTNAME=(" + NAME + ")"));
  private static final Pattern BUILT_BY =
      Pattern.compile("Linux version \\S+ \\((" + NAME + ")@(" + NAME + ")\\)");
  private static final List<Pattern> USERS =
      List.of(
          Pattern.compile("\\bfor user (" + NAME + ")"),
          Pattern.compile("\\bof user (" + NAME + ")"),
          Pattern.compile("\\b(?:ruser|user|USER|acct|logname)=\"?(" + NAME + ")"),
          Pattern.compile("/home/(" + NAME + ")"),
          Pattern.compile(" login: (" + NAME + ")\\s*$"),
          Pattern.compile("\\bsudo(?:\\[\\d+\\])?: +(" + NAME + ") :"),
          Pattern.compile("(?:Accepted|Failed) \\w+ for (?:invalid user )?(" + NAME + ") from"));
  private static final List<Pattern> SERIALS =
      List.of(
          Pattern.compile("\\bSerialNumber: (\\S{3,64})"),
          Pattern.compile(
              "(?i)\\bserial[ -]?(?:number|no\\.?)[:=] *\"?([A-Za-z0-9][\\w./-]{3,63})"),
          Pattern.compile("\\b(?:ID_SERIAL|ID_SERIAL_SHORT|ID_SCSI_SERIAL)=(\\S{3,80})"),
          Pattern.compile("\\bS/N:? *([A-Za-z0-9][\\w-]{3,63})"));

  /** Accounts that a system makes for itself, and builders of kernels; they name nobody. */
  private static final Set<String> NOBODY =
      Set.of(
          "root",
          "nobody",
          "daemon",
          "messagebus",
          "dbus",
          "gdm",
          "sddm",
          "lightdm",
          "polkitd",
          "systemd-network",
          "systemd-resolve",
          "systemd-timesync",
          "gnome-initial-setup",
          "user",
          "debian-kernel",
          "buildd",
          "mockbuild",
          "geeko",
          "builder",
          "linux",
          "uid",
          "unknown");

  /** Names of hosts that are no names, and words that a log uses in other senses. */
  private static final Set<String> NO_HOST =
      Set.of(
          "localhost",
          "kernel",
          "systemd",
          "none",
          "linux",
          "last",
          "message",
          "dracut",
          "initramfs",
          "rootfs",
          "buildhost",
          "archlinux",
          "fedora",
          "debian",
          "ubuntu",
          "boot",
          "root",
          "disk",
          "live",
          "the");

  private static final Pattern UUID =
      Pattern.compile(
          "(?<!"
              + HEX
              + ")"
              + HEX
              + "{8}(-|\\\\x2d)"
              + HEX
              + "{4}\\1"
              + HEX
              + "{4}\\1"
              + HEX
              + "{4}\\1"
              + HEX
              + "{12}(?!"
              + HEX
              + ")");

  /** Identifiers that are the same on every machine: UEFI Specification 2.10, sections 3.3, 5.3. */
  private static final Set<String> COMMON_UUIDS =
      Set.of(
          "8be4df61-93ca-11d2-aa0d-00e098032b8c",
          "c12a7328-f81f-11d2-ba4b-00a0c93ec93b",
          "00000000-0000-0000-0000-000000000000");

  private static final String DISK_WORD = "[^\\s\"'<>|;,()\\]]{1,80}";
  private static final Pattern TAGGED =
      Pattern.compile(
          "\\b(PARTLABEL|PARTUUID|LABEL|UUID|ID_FS_UUID|ID_FS_LABEL)=(\"[^\"]{1,80}\"|"
              + DISK_WORD
              + ")");
  private static final Pattern BY =
      Pattern.compile(
          "\\b(by(?:-|\\\\x2d)(?:label|partlabel|uuid|partuuid|id|path|diskseq))(/|-)("
              + DISK_WORD
              + ")");
  private static final Pattern MAC =
      Pattern.compile(
          "(?<![0-9A-Fa-f:-])("
              + HEX
              + "{2})([:-])(?:"
              + HEX
              + "{2}\\2){4}"
              + HEX
              + "{2}(?![0-9A-Fa-f]|[:-]"
              + HEX
              + "{2}\\b)");
  private static final Pattern NAMED_MAC = Pattern.compile("\\b(enx|wlx|wwx)(" + HEX + "{12})\\b");
  private static final Pattern WIDE_NAME =
      Pattern.compile(
          "\\b(0x|wwn-0x|naa\\.|eui\\.|t10\\.)([0-9A-Fa-f]{16}(?:" + HEX + "{16})?)\\b");
  private static final Pattern WIDE_PAIRS =
      Pattern.compile("(?<![0-9A-Fa-f:])(?:" + HEX + "{2}:){7}" + HEX + "{2}(?![0-9A-Fa-f:])");
  private static final Pattern LONG_ID =
      Pattern.compile("(?<![0-9A-Za-z])[0-9a-f]{32}(?![0-9A-Za-z])");
  private static final Pattern IPV4 =
      Pattern.compile(
          "(?<![\\w.])(\\d{1,3})\\.(\\d{1,3})\\.(\\d{1,3})\\.(\\d{1,3})(?![\\w]|\\.\\d)");
  private static final Pattern IPV6 =
      Pattern.compile(
          "(?<![\\w:.])(?:(?:"
              + HEX
              + "{1,4}:){7}"
              + HEX
              + "{1,4}|"
              + HEX
              + "{1,4}(?::"
              + HEX
              + "{1,4}){0,5}::(?:"
              + HEX
              + "{1,4}(?::"
              + HEX
              + "{1,4}){0,5})?)(?![\\w:])");
  private static final Pattern SSID =
      Pattern.compile("(?i)\\b(e?ssid[=:] ?)(?:'([^']{1,64})'|\"([^\"]{1,64})\")");
  private static final Pattern TARGET = Pattern.compile("\\biqn\\.\\d{4}-\\d\\d\\.[\\w.:-]{1,200}");

  private static final Pattern MADE_PART = Pattern.compile("^" + HEX + "{8}(-" + HEX + "{2})$");
  private static final Pattern FAT = Pattern.compile("^" + HEX + "{4}-" + HEX + "{4}$");
  private static final Pattern BUS =
      Pattern.compile("^(ata|nvme|usb|scsi|mmc|dm-name|dm-uuid|md-name|lvm-pv-uuid|virtio|wwn)-");
  private static final Pattern PART =
      Pattern.compile("(?:-|\\\\x2d)part\\d+(?:\\.\\w+)?$|\\.(?:device|swap|mount)$");

  private static final Pattern END = Pattern.compile("[.:]+$");

  private final StandIns standIns = new StandIns();
  private final Set<String> hosts = new LinkedHashSet<>();
  private final Set<String> users = new LinkedHashSet<>();
  private final Set<String> serials = new LinkedHashSet<>();

  private Disguise() {}

  /** A disguise for a log and for what is said about it. */
  public static Disguise of(BootLog log) {
    return of(log.rawLines());
  }

  /** A disguise for lines. */
  public static Disguise of(Collection<String> lines) {
    Disguise disguise = new Disguise();
    lines.forEach(disguise::learn);
    return disguise;
  }

  private void learn(String whole) {
    String line = cut(whole);
    for (Pattern pattern : HOSTS) {
      for (String name : all(pattern, line, 1)) {
        if (name.length() > 1
            && !NO_HOST.contains(name.toLowerCase(Locale.ROOT))
            && !name.chars().allMatch(Character::isDigit)) {
          hosts.add(stripped(name));
          int dot = name.indexOf('.');
          if (dot > 2) {
            hosts.add(name.substring(0, dot));
          }
        }
      }
    }
    Matcher built = BUILT_BY.matcher(line);
    if (built.find() && !NOBODY.contains(built.group(1))) {
      users.add(built.group(1));
      if (!NO_HOST.contains(built.group(2))) {
        hosts.add(built.group(2));
      }
    }
    for (Pattern pattern : USERS) {
      for (String name : all(pattern, line, 1)) {
        String plain = stripped(name);
        if (!NOBODY.contains(plain) && !plain.chars().allMatch(Character::isDigit)) {
          users.add(plain);
        }
      }
    }
    for (Pattern pattern : SERIALS) {
      serials.addAll(all(pattern, line, 1));
    }
  }

  private static String stripped(String name) {
    return name.replaceFirst("[._-]+$", "");
  }

  private static List<String> all(Pattern pattern, String line, int group) {
    List<String> found = new ArrayList<>();
    Matcher matcher = pattern.matcher(line);
    while (matcher.find()) {
      found.add(matcher.group(group));
    }
    return found;
  }

  private static String cut(String line) {
    return line.length() > LONGEST_LINE ? line.substring(0, LONGEST_LINE) : line;
  }

  /** All lines, disguised. */
  public List<String> apply(List<String> lines) {
    return lines.stream().map(this::apply).toList();
  }

  /**
   * A line or a short text, disguised; what is longer than a line may be is cut, because nobody
   * could check it by eye.
   */
  public String apply(String whole) {
    String text = cut(whole);
    for (String serial : longestFirst(serials)) {
      text = word(text, serial, standIns.name("serial", serial));
    }
    text = replace(UUID, text, this::uuid);
    text = replace(TAGGED, text, m -> m.group(1) + "=" + disk(m.group(1), m.group(2)));
    text = replace(BY, text, m -> m.group(1) + m.group(2) + disk(m.group(1), m.group(3)));
    text = replace(TARGET, text, m -> "iqn.2001-01.example:" + standIns.name("target", m.group()));
    text = replace(WIDE_NAME, text, m -> wide(m.group(1), m.group(2)));
    text =
        replace(WIDE_PAIRS, text, m -> pairs(standIns.digits("wwn", m.group().replace(":", ""))));
    text = replace(MAC, text, this::mac);
    text = replace(NAMED_MAC, text, m -> m.group(1) + standIns.mac(m.group(2), ""));
    text = replace(LONG_ID, text, m -> standIns.digits("id", m.group()));
    text = replace(IPV6, text, this::ipv6);
    text = replace(IPV4, text, this::ipv4);
    text =
        replace(
            SSID,
            text,
            m ->
                m.group(1) + "'" + standIns.name("network", nonNull(m.group(2), m.group(3))) + "'");
    for (String host : longestFirst(hosts)) {
      String made = standIns.name("host", host);
      text = word(text, host, made);
      text = text.replace(host + "-vg", made + "-vg").replace(host + "--vg", made + "--vg");
    }
    for (String user : longestFirst(users)) {
      text = word(text, user, standIns.name("user", user));
    }
    return text;
  }

  private static String nonNull(String first, String second) {
    return first == null ? second : first;
  }

  private static List<String> longestFirst(Set<String> names) {
    return names.stream()
        .sorted(Comparator.comparingInt(String::length).reversed().thenComparing(n -> n))
        .toList();
  }

  private static String replace(Pattern pattern, String text, Function<MatchResult, String> by) {
    return pattern.matcher(text).replaceAll(m -> Matcher.quoteReplacement(by.apply(m)));
  }

  /** Replaces a name where it stands as a word; {@code my-name-2} holds no word {@code name}. */
  private static String word(String text, String name, String made) {
    int at = text.indexOf(name);
    if (at < 0) {
      return text;
    }
    StringBuilder out = new StringBuilder();
    int from = 0;
    while (at >= 0) {
      int end = at + name.length();
      boolean begins = at == 0 || !isName(text.charAt(at - 1), "._-");
      boolean ends = end == text.length() || !isName(text.charAt(end), "_-");
      out.append(text, from, at).append(begins && ends ? made : name);
      from = end;
      at = text.indexOf(name, end);
    }
    return out.append(text.substring(from)).toString();
  }

  private static boolean isName(char c, String others) {
    return Character.isLetterOrDigit(c) || others.indexOf(c) >= 0;
  }

  private String uuid(MatchResult m) {
    String dash = m.group(1);
    String plain = m.group().replace(dash, "-").toLowerCase(Locale.ROOT);
    // What this class has made itself stays: a text may be disguised twice.
    return COMMON_UUIDS.contains(plain) || plain.startsWith("00000000-0000-4000-8000-")
        ? m.group()
        : standIns.uuid(plain, dash);
  }

  /** The value of a disk's tag or of a name under /dev/disk. */
  private String disk(String key, String quoted) {
    boolean quotes = quoted.startsWith("\"");
    String value = quotes ? quoted.substring(1, quoted.length() - 1) : quoted;
    String made;
    String tail = "";
    Matcher end = END.matcher(value);
    if (end.find()) {
      tail = end.group();
      value = value.substring(0, end.start());
    }
    Matcher part = PART.matcher(value);
    if (part.find()) {
      tail = part.group() + tail;
      value = value.substring(0, part.start());
    }
    String low = key.toLowerCase(Locale.ROOT);
    Matcher bus = BUS.matcher(value);
    Matcher number = MADE_PART.matcher(value);
    if (value.contains("00000000-0000-4000-8000-")
        || value.contains("00000000\\x2d0000")
        || low.endsWith("path")
        || low.endsWith("diskseq")) {
      made = value;
    } else if (low.contains("label")) {
      made = standIns.name("label", value);
    } else if (number.matches()) {
      made = standIns.digits("partuuid", value.substring(0, 8)) + number.group(1);
    } else if (FAT.matcher(value).matches()) {
      String digits = standIns.digits("fat", value.replace("-", ""));
      made = digits.substring(0, 4) + "-" + digits.substring(4);
    } else if (low.endsWith("id") && !low.endsWith("uuid")) {
      made = (bus.find() ? bus.group(1) + "-" : "") + standIns.name("disk", value);
    } else {
      made = standIns.name("id", value);
    }
    return quotes ? "\"" + made + tail + "\"" : made + tail;
  }

  /** Wide names start with 5, 6, c or e (SPC, NAA formats); kernel addresses start with f. */
  private String wide(String before, String digits) {
    boolean address = before.equals("0x") && !digits.matches("(?i)[56ce].*");
    return before + (address ? digits : standIns.digits("wwn", digits));
  }

  private static String pairs(String digits) {
    return String.join(":", digits.split("(?<=\\G..)"));
  }

  private String mac(MatchResult m) {
    String digits = m.group().replace(m.group(2), "").toLowerCase(Locale.ROOT);
    return digits.equals("000000000000")
            || digits.equals("ffffffffffff")
            || digits.startsWith("0200")
        ? m.group()
        : standIns.mac(digits, m.group(2));
  }

  private String ipv6(MatchResult m) {
    String value = m.group().toLowerCase(Locale.ROOT);
    return value.startsWith("2001:db8:") || value.length() < 6 ? m.group() : standIns.ipv6(value);
  }

  private String ipv4(MatchResult m) {
    for (int i = 1; i <= 4; i++) {
      if (Integer.parseInt(m.group(i)) > 255) {
        return m.group();
      }
    }
    String value = m.group();
    boolean everywhere =
        value.startsWith("127.")
            || value.startsWith("0.")
            || value.startsWith("255.")
            || value.startsWith("192.0.2.")
            || value.startsWith("198.51.100.")
            || value.startsWith("203.0.113.");
    return everywhere ? value : standIns.ipv4(value);
  }
}
