package standstill.disguise;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import standstill.text.Pattern;

/** What each kind of value in the table of marks becomes. */
final class Kinds {
  /** What firmware says where a maker has set nothing. */
  private static final KnownWords NOTHING = KnownWords.named("no-serials");

  /** Host controllers of USB carry their own address as a serial number. */
  private static final Pattern PCI = Pattern.known("[0-9a-f]{4}:[0-9a-f]{2}:[0-9a-f]{2}\\.[0-7]");

  private static final Set<String> ENDINGS = Set.of("device", "swap", "mount", "service");

  private final Register register;
  private final HostNames hosts;
  private final UserNames users;
  private final VolumeNames volumes;

  Kinds(Register register, HostNames hosts, UserNames users, VolumeNames volumes) {
    this.register = register;
    this.hosts = hosts;
    this.users = users;
    this.volumes = volumes;
  }

  Map<String, UnaryOperator<String>> namings() {
    Map<String, UnaryOperator<String>> namings = new HashMap<>();
    namings.put("host", value -> Trade.isOfWords(value) ? value : hosts.standIn(value));
    namings.put("host!", hosts::standIn);
    namings.put("domain", value -> Trade.isOfWords(value) ? value : hosts.domain(value));
    namings.put("user", value -> Trade.isOfWords(value) ? value : users.standIn(value));
    namings.put("user!", users::standIn);
    namings.put("person", value -> named("user", Sort.USER, value));
    namings.put("label", value -> beforeEnding(value, volumes::volume));
    namings.put("volume", value -> beforeEnding(value, volumes::volume));
    namings.put("mapped", value -> beforeEnding(value, volumes::mapped));
    namings.put("number", value -> beforeEnding(value, volumes::number));
    namings.put("disk", value -> beforeEnding(value, volumes::disk));
    namings.put("network", value -> named("network", Sort.NETWORK, value));
    namings.put("serial", this::serial);
    namings.put("machine", this::machine);
    namings.put("target", this::target);
    namings.put("secret", value -> register.named("secret", Sort.SECRET, value));
    namings.put("hex-address", this::hexAddress);
    namings.put("id", value -> digits(Sort.ID, value));
    namings.put("decimal", this::decimal);
    namings.put("wide", value -> digits(Sort.WIDE_NAME, value));
    return namings;
  }

  private String named(String word, Sort sort, String value) {
    return Trade.isOfWords(value) || Interfaces.isKernels(value)
        ? value
        : register.named(word, sort, value.replace('\u00a0', ' '));
  }

  /** Partition numbers and the endings of units stay behind a name. */
  private static String beforeEnding(String value, UnaryOperator<String> naming) {
    String tail = "";
    String name = value;
    int dot = name.lastIndexOf('.');
    if (dot > 0 && ENDINGS.contains(name.substring(dot + 1))) {
      tail = name.substring(dot);
      name = name.substring(0, dot);
    }
    int part = name.lastIndexOf("-part");
    if (part > 0 && Trade.isNumber(name.substring(part + 5))) {
      tail = name.substring(part) + tail;
      name = name.substring(0, part);
    }
    return naming.apply(name) + tail;
  }

  private String serial(String value) {
    boolean nothing =
        NOTHING.has(value)
            || !Hex.hasDigit(value)
            || PCI.foundIn(value)
            || StandIns.isZeroes(value)
            || value.chars().allMatch(c -> c == '0' || !Character.isLetterOrDigit(c));
    return nothing ? value : register.named("serial", Sort.SERIAL, value);
  }

  private String machine(String value) {
    return NOTHING.has(value) || Trade.isOfWords(value)
        ? value
        : register.named("mark", Sort.MACHINE, value);
  }

  /** Names of targets as RFC 3720, 3.2.6.3 and the NVM Express base specification form them. */
  private String target(String value) {
    if (value.contains("target-")
        || value.endsWith(":nvme:discovery")
        || value.endsWith("discovery")) {
      return value;
    }
    String before =
        value.startsWith("iqn") ? "iqn.2001-01.example:" : "nqn.2014-08.org.nvmexpress:";
    return before + register.standIns().name("target", Sort.NETWORK, value);
  }

  /** An IPv4 address as eight hexadecimal digits, as network loaders name files. */
  private String hexAddress(String value) {
    long number = Long.parseLong(value, 16);
    String dotted =
        (number >> 24)
            + "."
            + (number >> 16 & 255)
            + "."
            + (number >> 8 & 255)
            + "."
            + (number & 255);
    if (dotted.startsWith("192.0.2.")) {
      return value;
    }
    String made = register.standIns().ipv4(dotted);
    StringBuilder out = new StringBuilder();
    for (String part : made.split("\\.")) {
      out.append(String.format(Locale.ROOT, "%02X", Integer.parseInt(part)));
    }
    return out.toString();
  }

  private String decimal(String value) {
    String digits = register.standIns().digits(Sort.WIDE_NAME, value);
    if (digits.equals(value)) {
      return value;
    }
    String number = String.valueOf(Long.parseLong(digits, 16));
    return "0".repeat(Math.max(0, value.length() - number.length())) + number;
  }

  private String digits(Sort sort, String value) {
    return VolumeNames.spread(
        register.standIns().digits(sort, value.replaceAll("[^0-9A-Za-z]", "")), value);
  }
}
