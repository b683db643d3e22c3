package standstill.decode;

import java.util.ArrayList;
import java.util.List;
import standstill.text.Pattern;

/** What a drive on an ATA port answers, and the state of a SATA link. */
final class Ata implements Codes {
  private static final String SOURCE =
      "Linux include/linux/ata.h, drivers/ata/libata-eh.c; ATA command set (ACS)";
  private static final String LINK =
      "Serial ATA specification, SStatus register; Linux drivers/ata/libata-core.c";
  private static final Pattern STATUS = Pattern.known("\\bstatus: \\{ (?P<code>[A-Za-z ]+?) \\}");
  private static final Pattern ERROR = Pattern.known("\\berror: \\{ (?P<code>[A-Z0-9 ]+?) \\}");
  private static final Pattern RES =
      Pattern.known("\\bres (?P<code>(?P<status>[0-9a-f]{2})/(?P<error>[0-9a-f]{2})):");
  private static final Pattern EMASK = Pattern.known("\\bEmask (?P<code>0x[0-9a-f]{1,3})\\b");
  private static final Pattern SSTATUS = Pattern.known("\\bSStatus (?P<code>[0-9A-F]{1,3})\\b");
  private static final Pattern OLD_STATUS =
      Pattern.known("\\b(?:status=|stat(?:us)? )(?P<code>0x[0-9a-f]{2})\\b");
  private static final Pattern OLD_ERROR = Pattern.known("\\berror=(?P<code>0x[0-9a-f]{2}) ?\\{");
  private static final Pattern PORT = Pattern.known("\\b(?:ata\\d|hd[a-z]: |ada\\d|\\{ ?Drive)");

  @Override
  public void inLine(Findings line) {
    line.each(STATUS, p -> line.add(p, Kind.ATA_STATUS, statusWords(p.get("code")), SOURCE));
    line.each(ERROR, p -> line.add(p, Kind.ATA_ERROR, errorWords(p.get("code")), SOURCE));
    line.each(
        RES,
        p ->
            line.add(
                p,
                Kind.ATA_STATUS,
                "status "
                    + status(Bits.hex(p.get("status")))
                    + "; error "
                    + error(Bits.hex(p.get("error"))),
                SOURCE));
    line.each(EMASK, p -> line.add(p, Kind.ATA_MASK, mask(number(p)), SOURCE));
    line.each(SSTATUS, p -> line.add(p, Kind.SATA_LINK, link(Bits.hex(p.get("code"))), LINK));
    if (PORT.foundIn(line.text())) {
      line.each(OLD_STATUS, p -> line.add(p, Kind.ATA_STATUS, status(number(p)), SOURCE));
      line.each(OLD_ERROR, p -> line.add(p, Kind.ATA_ERROR, error(number(p)), SOURCE));
    }
  }

  private static long number(Findings.Place place) {
    return Bits.hex(place.get("code").substring(2));
  }

  @Override
  public void alone(Number number, Findings code) {
    boolean byteInHex = number.text().startsWith("0x") && number.digits().length() == 2;
    if (byteInHex) {
      code.whole(Kind.ATA_STATUS, status(number.value()), SOURCE);
      code.whole(Kind.ATA_ERROR, error(number.value()), SOURCE);
    }
    if (number.text().startsWith("0x") && number.value() > 0 && number.value() <= 0x1ff) {
      code.whole(Kind.ATA_MASK, mask(number.value()), SOURCE);
    }
    if (number.decimal() && number.text().matches("[1-8][1-4][34]")) {
      code.whole(Kind.SATA_LINK, link(number.asHex()), LINK);
    }
    inLine(code);
  }

  /** The kernel shows Busy alone, otherwise five of the bits. */
  private static String status(long value) {
    if (Bits.set(value, 7)) {
      return "{ Busy }: the drive is busy (BSY), its other bits don't count";
    }
    String shown =
        String.join(" ", Bits.names(value, 6, "DRDY", 5, "DF", 3, "DRQ", 1, "SENSE", 0, "ERR"));
    List<String> all =
        Bits.names(
            value,
            6,
            "ready",
            5,
            "device fault",
            4,
            "seek complete (DSC)",
            3,
            "wants to move data",
            2,
            "corrected",
            1,
            "sense data available",
            0,
            "error");
    return "{ " + shown + " }: " + (all.isEmpty() ? "no bit set" : String.join(", ", all));
  }

  private static String error(long value) {
    String shown =
        String.join(" ", Bits.names(value, 7, "ICRC", 6, "UNC", 0, "AMNF", 4, "IDNF", 2, "ABRT"));
    List<String> all =
        Bits.names(
            value,
            7,
            "transfer error on the cable or link",
            6,
            "unreadable sector (media)",
            5,
            "medium changed",
            4,
            "sector not found",
            3,
            "medium change requested",
            2,
            "command aborted",
            1,
            "track 0 not found",
            0,
            "address mark not found");
    return "{ " + shown + " }: " + (all.isEmpty() ? "no bit set" : String.join(", ", all));
  }

  private static String statusWords(String words) {
    List<String> said = new ArrayList<>();
    for (String word : words.split(" ")) {
      switch (word) {
        case "Busy" -> said.add("the drive is busy and doesn't answer");
        case "DRDY" -> said.add("ready");
        case "DF" -> said.add("device fault");
        case "DRQ" -> said.add("wants to move data");
        case "SENSE" -> said.add("sense data available");
        case "ERR" -> said.add("error, see the error bits");
        default -> {}
      }
    }
    return said.isEmpty() ? "status of the drive" : String.join(", ", said);
  }

  private static String errorWords(String words) {
    List<String> said = new ArrayList<>();
    for (String word : words.split(" ")) {
      switch (word) {
        case "ICRC" -> said.add("transfer error on the cable or link");
        case "UNC" -> said.add("unreadable sector (media)");
        case "AMNF" -> said.add("address mark not found");
        case "IDNF" -> said.add("sector not found");
        case "ABRT" -> said.add("command aborted");
        default -> {}
      }
    }
    return said.isEmpty() ? "error of the drive" : String.join(", ", said);
  }

  /** The kernel prints one word for the mask, the gravest; all bits are named after it. */
  private static String mask(long value) {
    List<String> gravestFirst =
        Bits.names(
            value,
            5,
            "host bus error",
            4,
            "ATA bus error",
            2,
            "timeout",
            1,
            "HSM violation",
            6,
            "internal error",
            3,
            "media error",
            7,
            "invalid argument",
            0,
            "device error",
            8,
            "unknown error");
    return gravestFirst.isEmpty()
        ? "no error"
        : gravestFirst.get(0)
            + (gravestFirst.size() > 1
                ? ", with " + String.join(", ", gravestFirst.subList(1, gravestFirst.size()))
                : "");
  }

  private static String link(long value) {
    long detected = value & 15;
    long speed = value >>> 4 & 15;
    long power = value >>> 8 & 15;
    if (detected == 0) {
      return "no device on the link";
    }
    if (detected == 4) {
      return "the port is switched off";
    }
    String rate =
        speed >= 1 && speed <= 3
            ? List.of("1.5", "3.0", "6.0").get((int) speed - 1) + " Gbps"
            : "no speed agreed";
    String state = detected == 3 ? "link up, " + rate : "a device is there, but there is no link";
    return state + (power == 1 ? ", active" : power == 0 ? "" : ", saving power");
  }
}
