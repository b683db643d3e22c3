package standstill.base.yaml;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Chance;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Risk;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Stage;
import standstill.text.Pattern;

/** Reads one file of {@code kb/faults/}. */
final class FaultReader {
  private static final int LONGEST_TITLE = 90;
  private static final List<String> KINDS = List.of("specific", "general");

  private final EntryReader entries;

  FaultReader(EntryReader entries) {
    this.entries = entries;
  }

  /** The fault; empty when something is wrong with it, and the sink then knows what. */
  Optional<Fault> read(BaseText file, Sink sink) {
    Optional<Fields> root = EntryReader.root(sink, "a fault");
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    String id = EntryReader.id(fields, file);
    String title = fields.text("title");
    if (title.length() > LONGEST_TITLE || title.endsWith(".")) {
      fields.error(
          "title",
          "title is not a short sentence without a full stop",
          "allowed: at most " + LONGEST_TITLE + " characters");
    }
    boolean general =
        fields.has("kind") && fields.word("kind", KINDS).map("general"::equals).orElse(false);
    List<String> families = fields.texts("family", true);
    Stage stage = EntryReader.stage(fields);
    if (!file.folder().endsWith("/" + stage.word())) {
      fields.error(
          "stage",
          "stage '" + stage.word() + "' is not the file's folder",
          "move the file to faults/" + stage.word());
    }
    Set<Stage> stopsIn = EnumSet.of(stage);
    if (fields.has("stops-in")) {
      List<Stage> listed = EntryReader.stages(fields, "stops-in", true);
      if (!listed.isEmpty()) {
        stopsIn = EnumSet.copyOf(listed);
      }
    }
    String part = fields.word("part", entries.scale().parts().keySet()).orElse("");
    String frequency = fields.word("how-common", entries.scale().frequencies().keySet()).orElse("");
    double weight = entries.scale().frequencies().getOrDefault(frequency, 1.0);
    String about = fields.text("about");
    List<String> symptoms = fields.texts("symptoms", true);
    List<Sign> signs = signs(fields, id);
    List<String> leadsTo = fields.texts("leads-to", false);
    Map<String, Map<String, Chance>> toldApartBy = toldApartBy(fields);
    List<Fix> fixes = fixes(fields, id);
    String prevent = fields.text("prevent");
    var sources = EntryReader.sources(fields);
    Fields reviewed = fields.map("reviewed", true).orElse(null);
    java.time.LocalDate on = java.time.LocalDate.EPOCH;
    String by = "";
    if (reviewed != null) {
      on = EntryReader.date(reviewed, "on");
      by = reviewed.text("by");
      reviewed.done();
    }
    List<String> aliases = fields.texts("aliases", false);
    fields.done();
    proof(fields, general, signs);
    if (sink.hasErrors()) {
      return Optional.empty();
    }
    return Optional.of(
        new Fault(
            id,
            title,
            general,
            families,
            stage,
            stopsIn,
            part,
            new Fault.Frequency(frequency, weight),
            about,
            symptoms,
            signs,
            leadsTo,
            toldApartBy,
            fixes,
            prevent,
            sources,
            on,
            by,
            aliases,
            fields.position("id")));
  }

  private List<Sign> signs(Fields fields, String faultId) {
    List<Sign> signs = new ArrayList<>();
    for (Fields sign : fields.maps("signs", true, "a sign")) {
      String id = faultId + "/" + (signs.size() + 1);
      Optional<SignForm> form = form(sign);
      Chance shows = entries.chance(sign, "shows");
      Chance elsewhere = entries.chance(sign, "elsewhere");
      String event = sign.has("event") ? faultId + "/" + sign.text("event") : id;
      String says = sign.text("says", "");
      boolean onLine = form.map(f -> f instanceof SignForm.OnLine).orElse(true);
      List<String> seen = sign.texts("seen", onLine && form.isPresent());
      List<String> unlike = sign.texts("unlike", onLine && form.isPresent());
      Optional<Sign.PrintedBy> printedBy = EntryReader.printedBy(sign);
      sign.done();
      if (form.isPresent()) {
        checkSays(sign, form.get(), says);
        signs.add(
            new Sign(
                id,
                form.get(),
                shows,
                elsewhere,
                event,
                says,
                seen,
                unlike,
                printedBy,
                sign.position()));
      }
    }
    return signs;
  }

  private static Optional<SignForm> form(Fields sign) {
    if (sign.has("without")) {
      String milestone = sign.text("without");
      return milestone.isEmpty() ? Optional.empty() : Optional.of(new SignForm.Without(milestone));
    }
    int atEnd = sign.number("at-end", 0, 1, 10_000);
    int repeats = sign.number("repeats", 1, 2, 10_000);
    double afterGap = sign.has("after-gap") ? sign.decimal("after-gap", 1, 86_400) : 0;
    Optional<Pattern> line = sign.pattern("line");
    line.ifPresent(pattern -> checkPattern(sign, pattern));
    return line.map(pattern -> new SignForm.OnLine(pattern, atEnd, repeats, afterGap));
  }

  /** Holds the editorial rules for patterns; they keep matching fast and captures sensible. */
  static void checkPattern(Fields sign, Pattern pattern) {
    String source = pattern.source();
    if (source.startsWith(".*") || source.endsWith(".*")) {
      sign.error(
          "line",
          "pattern has '.*' at an end",
          "leave it out; a pattern matches anywhere in the message");
    }
    if (pattern.literals().isEmpty()) {
      sign.error(
          "line",
          "pattern has no literal of three characters that every match contains",
          "name a word of the message");
    }
    if (pattern.foundIn("")) {
      sign.error("line", "pattern matches the empty text", "");
    }
  }

  private static void checkSays(Fields sign, SignForm form, String says) {
    List<String> groups =
        form instanceof SignForm.OnLine onLine ? onLine.line().groups() : List.of();
    int at = says.indexOf('{');
    while (at >= 0) {
      int end = says.indexOf('}', at);
      String group = end < 0 ? says.substring(at + 1) : says.substring(at + 1, end);
      if (!groups.contains(group)) {
        sign.error(
            "says", "'{" + group + "}' is no group of the pattern", Words.advice(group, groups));
      }
      at = end < 0 ? -1 : says.indexOf('{', end);
    }
  }

  private Map<String, Map<String, Chance>> toldApartBy(Fields fields) {
    Map<String, Map<String, Chance>> all = new LinkedHashMap<>();
    for (Fields entry : fields.maps("told-apart-by", false, "an entry of told-apart-by")) {
      String check = entry.text("check");
      Map<String, Chance> answers = new LinkedHashMap<>();
      entry
          .map("answers", true)
          .ifPresent(
              map -> {
                for (String answer : List.copyOf(map.keys())) {
                  answers.put(answer, entries.chance(map, answer));
                }
              });
      entry.done();
      if (!check.isEmpty()) {
        all.put(check, answers);
      }
    }
    return all;
  }

  private List<Fix> fixes(Fields fields, String faultId) {
    List<Fix> fixes = new ArrayList<>();
    for (Fields fix : fields.maps("fixes", true, "a fix")) {
      String id = faultId + "/fix/" + (fixes.size() + 1);
      Fix read =
          new Fix(
              id,
              fix.text("title"),
              fix.texts("steps", true),
              fix.number("minutes", 10, 1, 2_000),
              entries.chance(fix, "cures"),
              EntryReader.risk(fix),
              entries.needs(fix),
              fix.text("prove"),
              fix.text("undo"),
              fix.texts("cautions", false));
      if (!fix.has("minutes") || !fix.has("cautions")) {
        fix.error(
            "title",
            "a fix says how long it takes and what to beware of",
            "add minutes: and cautions: (which may be [])");
      }
      cautions(fix, read);
      fix.done();
      fixes.add(read);
    }
    return fixes;
  }

  /** A dangerous fix carries the usual caution, in words that can be checked. */
  private static void cautions(Fields fix, Fix read) {
    String all = String.join(" ", read.cautions()).toLowerCase(java.util.Locale.ROOT);
    if (read.risk() == Risk.DATA && !(all.contains("backup") || all.contains("back up"))) {
      fix.error(
          "risk", "fix that can lose data has no caution about a backup", "add one to cautions");
    }
    if (read.risk() == Risk.FIRMWARE && !all.contains("power")) {
      fix.error(
          "risk",
          "fix that writes firmware has no caution about losing power",
          "add one to cautions");
    }
    if (read.risk() == Risk.HANDS_INSIDE
        && !(all.contains("static") && (all.contains("unplug") || all.contains("mains")))) {
      fix.error(
          "risk",
          "fix inside the case has no caution about mains and static",
          "add both to cautions");
    }
  }

  private static void proof(Fields fields, boolean general, List<Sign> signs) {
    if (signs.isEmpty()) {
      return;
    }
    boolean decisive =
        signs.stream()
            .anyMatch(
                s ->
                    s.elsewhere().word().equals("never")
                        || s.elsewhere().word().equals("hardly-ever"));
    if (general && decisive) {
      fields.error(
          "signs",
          "general fault with a sign that is rarer elsewhere than 'rarely'",
          "a general fault claims no more than its part");
    } else if (!general && signs.size() < 2 && !decisive) {
      fields.error(
          "signs",
          "one sign, and it is common elsewhere",
          "add a second sign, or one that is 'never' or 'hardly-ever' elsewhere");
    }
  }
}
