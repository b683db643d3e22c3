package standstill.edit;

import java.util.List;
import java.util.stream.Collectors;

/** Texts of new entries and signs, to be filled in: they fail the check until they are true. */
public final class Skeleton {
  private Skeleton() {}

  /**
   * The text of a new fault.
   *
   * @param pattern of its first sign
   * @param seen the line that the pattern was made of
   */
  public static String fault(
      EntryName entry,
      String title,
      String family,
      String part,
      String pattern,
      String seen,
      String on,
      String by) {
    String stage = entry.path().split("/", -1)[1];
    return """
    id: %s
    title: %s
    kind: specific
    family: [%s]
    stage: %s
    stops-in: [%s]
    part: %s
    how-common: rarely
    about: ''
    symptoms: []
    signs:
      - %s
    leads-to: []
    told-apart-by: []
    fixes:
      - id: ''
        title: ''
        steps:
          - ''
        minutes: 10
        cures: sometimes
        risk: settings
        needs: []
        prove: ''
        undo: ''
        cautions: []
    prevent: ''
    sources:
      - {title: 'common practice, no source'}
    reviewed: {on: %s, by: %s}
    aliases: []
    """
        .formatted(
            entry.id(),
            quoted(title),
            family,
            stage,
            stage,
            part,
            sign(pattern, seen).strip().replace("\n", "\n    "),
            on,
            by);
  }

  /** A sign from its first key on. */
  static String sign(String pattern, String seen) {
    return """
    id: ''
    line: %s
    shows: usually
    elsewhere: hardly-ever
    says: ''
    seen: [%s]
    unlike: []
    """
        .formatted(quoted(pattern), quoted(seen));
  }

  /**
   * The label of a new boot.
   *
   * @param also ids; anything else is a problem that the check names
   * @param general ids, likewise
   */
  public static String label(
      EntryName entry,
      String label,
      List<String> also,
      List<String> general,
      String stage,
      String cut,
      String made,
      String licence) {
    return """
    log: %s.log
    label: %s
    also: [%s]
    general: [%s]
    stage: %s
    cut: %s
    made: %s
    licence: %s
    """
        .formatted(
            entry.id(),
            quoted(label),
            list(also),
            list(general),
            quoted(stage),
            quoted(cut),
            quoted(made),
            quoted(licence));
  }

  private static String list(List<String> ids) {
    return ids.stream().map(Skeleton::quoted).collect(Collectors.joining(", "));
  }

  private static String quoted(String value) {
    return "'" + value.replaceAll("[\\p{Cntrl}]", " ").replace("'", "''") + "'";
  }
}
