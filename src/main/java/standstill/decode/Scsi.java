package standstill.decode;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import standstill.text.Pattern;

/** Sense keys and additional sense of drives, and the block layer's words for errors. */
final class Scsi implements Codes {
  private static final String SOURCE =
      "SCSI Primary Commands (SPC), sense keys; Linux drivers/scsi/constants.c";
  private static final String ADDITIONAL = "SCSI Primary Commands (SPC), additional sense codes";
  private static final String BLOCK = "Linux block/blk-core.c";
  private static final Table KEYS = Table.named("sense-key");
  private static final Table MORE = Table.named("sense-additional");
  private static final Table WORDS = Table.named("block-status");

  private static final Pattern KEY =
      Pattern.known("Sense Key ?: (?P<code>[A-Z][A-Za-z]+(?: [A-Z][A-Za-z]+)?(?:\\(9\\))?)");
  private static final Pattern KEY_NUMBER = Pattern.known("Sense Key ?: (?P<code>0x[0-9a-f])\\b");
  private static final Pattern ASC =
      Pattern.known(
          "(?:ASC|asc)[=:] ?(?P<code>(?:0x)?(?P<asc>[0-9a-f]{1,2})[ ,]+(?:ASCQ|ascq)?[=:]? ?(?:0x)?(?P<ascq>[0-9a-f]{1,2}))\\b");
  private static final Pattern WORD =
      Pattern.known(
          "(?P<code>"
              + WORDS.rows().stream().map(Table.Row::name).collect(Collectors.joining("|"))
              + ") error, dev (?P<dev>[\\w-]+)");
  private static final Pattern PAIR =
      Pattern.known("^(?:(?P<key>[0-9a-f])/)?(?P<asc>[0-9a-f]{2})/(?P<ascq>[0-9a-f]{2})$");

  @Override
  public void inLine(Findings line) {
    line.each(
        KEY,
        p ->
            KEYS.name(p.get("code"))
                .ifPresent(
                    r ->
                        line.add(
                            p,
                            Kind.SCSI_SENSE,
                            "key " + hex(r.number()) + ": " + r.text(),
                            SOURCE)));
    line.each(
        KEY_NUMBER,
        p ->
            key(Bits.hex(p.get("code").substring(2)))
                .ifPresent(m -> line.add(p, Kind.SCSI_SENSE, m, SOURCE)));
    line.each(
        ASC,
        p ->
            additional(p.get("asc"), p.get("ascq"))
                .ifPresent(m -> line.add(p, Kind.SCSI_SENSE, m, ADDITIONAL)));
    line.each(
        WORD,
        p ->
            WORDS
                .name(p.get("code"))
                .ifPresent(
                    r ->
                        line.add(
                            p,
                            Kind.BLOCK_ERROR,
                            "on "
                                + p.get("dev")
                                + ": "
                                + r.text()
                                + "; "
                                + Errno.linux(r.number()).orElse(""),
                            BLOCK)));
  }

  @Override
  public void alone(Number number, Findings code) {
    KEYS.name(number.text())
        .ifPresent(
            r -> code.whole(Kind.SCSI_SENSE, "key " + hex(r.number()) + ": " + r.text(), SOURCE));
    if (number.known() && number.digits().length() == 1 && !number.text().startsWith("-")) {
      key(number.asHex()).ifPresent(m -> code.whole(Kind.SCSI_SENSE, "sense " + m, SOURCE));
    }
    code.each(
        PAIR,
        p ->
            additional(p.get("asc"), p.get("ascq"))
                .ifPresent(
                    m ->
                        code.whole(
                            Kind.SCSI_SENSE,
                            (p.has("key") ? key(Bits.hex(p.get("key"))).orElse("") + "; " : "") + m,
                            ADDITIONAL)));
    inLine(code);
  }

  private static Optional<String> key(long number) {
    return KEYS.number(number).map(r -> "key " + hex(number) + ", " + r.name() + ": " + r.text());
  }

  private static Optional<String> additional(String asc, String ascq) {
    return MORE.number(Bits.hex(asc) << 8 | Bits.hex(ascq)).map(Table.Row::text);
  }

  private static String hex(long number) {
    return Long.toHexString(number).toLowerCase(Locale.ROOT);
  }
}
