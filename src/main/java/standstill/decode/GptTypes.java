package standstill.decode;

import standstill.text.Pattern;

/** Types of GPT partitions. */
final class GptTypes implements Codes {
  private static final String SOURCE =
      "UEFI 2.10 section 5.3; Discoverable Partitions Specification (UAPI group)";
  private static final Table TYPES = Table.named("gpt-type");
  private static final Pattern GUID =
      Pattern.known(
          "\\b[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}\\b");

  @Override
  public void inLine(Findings line) {
    // Most identifiers in a log name one partition, not a type: those that are in no table say
    // nothing.
    line.each(
        GUID,
        p ->
            TYPES
                .name(line.text().substring(p.start(), p.end()))
                .ifPresent(r -> line.add(p, Kind.PARTITION_TYPE, r.text(), SOURCE)));
  }

  @Override
  public void alone(Number number, Findings code) {
    inLine(code);
  }
}
