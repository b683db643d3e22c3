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
import standstill.base.Statement;
import standstill.text.Pattern;

/** Reads one file of {@code kb/faults/}. */
final class FaultReader {
  private final EntryReader entries;
  private final Shape shape;

  FaultReader(EntryReader entries) {
    this.entries = entries;
    this.shape = new Shapes(entries.scale()).fault();
  }

  /** The fault; empty when something is wrong with it, and the sink then knows what. */
  Optional<Fault> read(BaseText file, Sink sink) {
    Optional<Fields> root = Fields.root(sink, shape);
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    String id = EntryReader.id(fields, file);
    boolean general = fields.text("kind").equals("general");
    Stage stage = EntryReader.stage(fields);
    if (!file.folder().endsWith("/" + stage.word())) {
      fields.error(
          "stage",
          "stage '" + stage.word() + "' is not the file's folder",
          "move the file to faults/" + stage.word());
    }
    Set<Stage> stopsIn = EnumSet.of(stage);
    if (fields.has("stops-in")) {
      stopsIn.clear();
      stopsIn.addAll(EntryReader.stages(fields, "stops-in"));
    }
    String frequency = fields.text("how-common");
    List<Sign> signs = signs(fields, id);
    Map<String, Map<String, Chance>> toldApartBy = toldApartBy(fields);
    List<Fix> fixes = fixes(fields, id);
    var sources = EntryReader.sources(fields);
    proof(fields, general, signs);
    if (sink.hasErrors()) {
      return Optional.empty();
    }
    return Optional.of(
        new Fault(
            id,
            fields.text("title"),
            general,
            fields.names("family", "family"),
            stage,
            stopsIn,
            fields.text("part"),
            new Fault.Frequency(
                frequency, entries.scale().frequencies().getOrDefault(frequency, 1.0)),
            fields.text("about"),
            fields.names("symptoms", "symptom"),
            signs,
            fields.names("leads-to", "fault in leads-to"),
            toldApartBy,
            fixes,
            fields.text("prevent"),
            sources,
            EntryReader.reviewed(fields),
            fields.texts("aliases"),
            fields.position("id")));
  }

  private List<Sign> signs(Fields fields, String faultId) {
    List<Sign> signs = new ArrayList<>();
    for (Fields sign : fields.maps("signs")) {
      String id = faultId + "/" + (signs.size() + 1);
      Optional<SignForm> form = form(sign);
      if (form.isPresent()) {
        boolean onLine = form.get() instanceof SignForm.OnLine;
        String says = form.get() instanceof SignForm.Without ? "" : sign.text("says");
        checkSays(sign, form.get(), says);
        signs.add(
            new Sign(
                id,
                form.get(),
                entries.chance(sign, "shows"),
                entries.chance(sign, "elsewhere"),
                sign.has("event") ? faultId + "/" + sign.text("event") : id,
                says,
                onLine ? sign.texts("seen") : List.of(),
                onLine ? sign.texts("unlike") : List.of(),
                onLine ? EntryReader.printedBy(sign) : Optional.empty(),
                sign.position()));
      }
    }
    return signs;
  }

  private static Optional<SignForm> form(Fields sign) {
    if (sign.keys().contains("without")) {
      return Optional.of(new SignForm.Without(sign.text("without")));
    }
    if (sign.keys().contains("fact")) {
      return Statement.of(sign.text("fact")).map(SignForm.OfFact::new);
    }
    Optional<Pattern> line = sign.pattern("line");
    line.ifPresent(pattern -> checkPattern(sign, "line", pattern));
    return line.map(
        pattern ->
            new SignForm.OnLine(
                pattern,
                sign.number("at-end", 0),
                sign.number("repeats", 1),
                sign.decimal("after-gap", 0),
                joins(sign)));
  }

  private static List<SignForm.Join> joins(Fields sign) {
    List<SignForm.Join> joins = new ArrayList<>();
    for (SignForm.Join.Kind kind : SignForm.Join.Kind.values()) {
      sign.pattern(kind.word())
          .ifPresent(
              pattern -> {
                checkPattern(sign, kind.word(), pattern);
                joins.add(new SignForm.Join(kind, pattern));
              });
    }
    return joins;
  }

  /** Holds the editorial rules for patterns; they keep matching fast and captures sensible. */
  static void checkPattern(Fields sign, String key, Pattern pattern) {
    String source = pattern.source();
    if (source.startsWith(".*") || source.endsWith(".*")) {
      sign.error(
          key,
          "pattern has '.*' at an end",
          "leave it out; a pattern matches anywhere in the message");
    }
    if (pattern.literals().isEmpty()) {
      sign.error(
          key,
          "pattern has no literal of three characters that every match contains",
          "name a word of the message");
    }
    if (pattern.foundIn("")) {
      sign.error(key, "pattern matches the empty text", "");
    }
  }

  private static void checkSays(Fields sign, SignForm form, String says) {
    List<String> groups = form.values();
    int at = says.indexOf('{');
    while (at >= 0) {
      int end = says.indexOf('}', at);
      String group = end < 0 ? says.substring(at + 1) : says.substring(at + 1, end);
      if (!groups.contains(group)) {
        sign.error(
            "says",
            "'{"
                + group
                + "}' is no "
                + (form instanceof SignForm.OfFact
                    ? "value of the statement"
                    : "group of the pattern"),
            Words.advice(group, groups));
      }
      at = end < 0 ? -1 : says.indexOf('{', end);
    }
  }

  private Map<String, Map<String, Chance>> toldApartBy(Fields fields) {
    Map<String, Map<String, Chance>> all = new LinkedHashMap<>();
    for (Fields entry : fields.maps("told-apart-by")) {
      Map<String, Chance> answers = new LinkedHashMap<>();
      Fields map = entry.map("answers");
      String check = entry.name("check", "check");
      map.keysAsNames("answer of check " + check)
          .forEach(answer -> answers.put(answer, entries.chance(map, answer)));
      all.put(check, answers);
    }
    return all;
  }

  private List<Fix> fixes(Fields fields, String faultId) {
    List<Fix> fixes = new ArrayList<>();
    for (Fields fix : fields.maps("fixes")) {
      Fix read =
          new Fix(
              faultId + "/fix/" + (fixes.size() + 1),
              fix.text("title"),
              fix.texts("steps"),
              fix.number("minutes", 10),
              entries.chance(fix, "cures"),
              EntryReader.risk(fix),
              fix.texts("needs"),
              fix.text("prove"),
              fix.text("undo"),
              fix.texts("cautions"));
      cautions(fix, read);
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
