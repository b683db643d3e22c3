package standstill.base.yaml;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import standstill.base.Chance;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.FixStep;
import standstill.base.Risk;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Span;
import standstill.base.Stage;
import standstill.base.Statement;
import standstill.text.Pattern;

/** Reads one file of {@code kb/faults/}. */
final class FaultReader {
  /** What somebody is told to have at hand before they may lock themselves out. */
  private static final List<String> WAYS_IN =
      List.of("key", "password", "passphrase", "entry", "live system");

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
    Map<String, String> retired = retired(fields);
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
            endsIn(fields),
            toldApartBy,
            fixes,
            fields.text("prevent"),
            sources,
            EntryReader.reviewed(fields),
            fields.texts("aliases"),
            retired,
            fields.position("id")));
  }

  /** Holds that ids are unique within the entry and that former ones lead to what is there. */
  private static Map<String, String> retired(Fields fields) {
    List<Fields> signs = fields.maps("signs");
    List<Fields> fixes = fields.maps("fixes");
    EntryReader.distinct(Stream.concat(signs.stream(), fixes.stream()).toList());
    Set<String> signIds = signs.stream().map(f -> f.text("id")).collect(Collectors.toSet());
    Set<String> fixIds = fixes.stream().map(f -> f.text("id")).collect(Collectors.toSet());
    Map<String, String> all = new LinkedHashMap<>();
    Fields map = fields.map("retired");
    for (String was : map.keys()) {
      String now = map.text(was);
      all.put(was, now);
      if (signIds.contains(was) || fixIds.contains(was)) {
        map.error(was, "retired id '" + was + "' is in use", "a retired id is never used again");
      } else if (!signIds.contains(now) && !fixIds.contains(now) && !map.has(now)) {
        map.error(
            was,
            "'" + was + "' leads to no sign or fix of this fault: '" + now + "'",
            "a fix that went to another fault stands in kb/retired.yaml");
      }
    }
    return all;
  }

  /** The signs of an entry. */
  List<Sign> signs(Fields fields, String faultId) {
    List<Sign> signs = new ArrayList<>();
    for (Fields sign : fields.maps("signs")) {
      String id = faultId + "/" + sign.text("id");
      Optional<SignForm> form = form(sign);
      if (form.isPresent()) {
        boolean onLine = form.get() instanceof SignForm.OnLine;
        String says = sign.text("says");
        checkSays(sign, form.get(), says);
        signs.add(
            new Sign(
                id,
                form.get(),
                entries.chance(sign, "shows"),
                entries.chance(sign, "elsewhere"),
                entries.chance(sign, sign.has("rivals") ? "rivals" : "elsewhere"),
                sign.has("event") ? faultId + "/" + sign.text("event") : id,
                says,
                onLine ? sign.texts("seen") : List.of(),
                onLine ? sign.texts("unlike") : List.of(),
                onLine ? EntryReader.printedBy(sign) : Optional.empty(),
                onLine ? EntryReader.span(sign) : Span.ALWAYS,
                sign.position()));
      }
    }
    return signs;
  }

  private static Optional<SignForm> form(Fields sign) {
    if (sign.keys().contains("without")) {
      return Optional.of(new SignForm.Without(sign.text("without")));
    }
    if (sign.keys().contains("reached")) {
      return Optional.of(new SignForm.Reached(sign.text("reached")));
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

  private Map<String, Chance> endsIn(Fields fields) {
    Map<String, Chance> all = new LinkedHashMap<>();
    if (fields.has("ends-in")) {
      Fields map = fields.map("ends-in");
      map.keysAsNames("stop").forEach(stop -> all.put(stop, entries.chance(map, stop)));
    }
    return all;
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
    Map<String, String> values = new LinkedHashMap<>();
    Fields map = fields.map("values");
    map.keys().forEach(name -> values.put(name, map.text(name)));
    List<Fields> all = fields.maps("fixes");
    Map<String, String> before = before(all, fields.has("order"));
    List<Fix> fixes = new ArrayList<>();
    for (Fields fix : all) {
      List<FixStep> steps = entries.steps().read(fix, "steps", values.keySet());
      Fix read =
          new Fix(
              Fix.id(faultId, fix.text("id")),
              fix.text("title"),
              steps,
              fix.number("minutes", 10),
              entries.chance(fix, "cures"),
              EntryReader.risk(fix),
              fix.texts("needs"),
              fix.text("prove"),
              fix.text("undo"),
              fix.texts("cautions"),
              new Fix.Scope(
                  !fix.text("lasts").equals("one-boot"),
                  Optional.ofNullable(before.get(fix.text("id"))).map(own -> Fix.id(faultId, own)),
                  EntryReader.conditions(fix),
                  EntryReader.span(fix),
                  values));
      cautions(fix, read);
      fixes.add(read);
    }
    return fixes;
  }

  /** Ids of fixes to those that have to be done before them; none waits for itself. */
  private static Map<String, String> before(List<Fields> fixes, boolean forced) {
    List<String> ids = fixes.stream().map(f -> f.text("id")).toList();
    Map<String, String> before = new LinkedHashMap<>();
    for (int i = 0; i < fixes.size(); i++) {
      Fields fix = fixes.get(i);
      String first = fix.has("first") ? fix.text("first") : forced && i > 0 ? ids.get(i - 1) : "";
      if (fix.has("first") && !ids.contains(first)) {
        fix.error("first", "'" + first + "' is no fix of this fault", Words.advice(first, ids));
      } else if (!first.isEmpty()) {
        before.put(ids.get(i), first);
      }
    }
    for (Fields fix : fixes) {
      String at = before.get(fix.text("id"));
      for (int i = 0; i < ids.size() && at != null && !at.equals(fix.text("id")); i++) {
        at = before.get(at);
      }
      if (at != null) {
        fix.error("first", "the fixes wait for each other", "one of them has to come first");
        return Map.of();
      }
    }
    return before;
  }

  /** A dangerous fix carries the usual caution, in words that can be checked. */
  private static void cautions(Fields fix, Fix read) {
    if (StepReader.gravest(read.steps()).compareTo(read.risk()) > 0) {
      fix.error(
          "risk",
          "a step puts more at risk than the fix says: " + StepReader.gravest(read.steps()).word(),
          "name the gravest risk of its steps");
    }
    String all =
        (String.join(" ", read.cautions())
                + " "
                + String.join(" ", StepReader.cautions(read.steps())))
            .toLowerCase(java.util.Locale.ROOT);
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
    if (read.risk() == Risk.LOCKS_OUT && WAYS_IN.stream().noneMatch(all::contains)) {
      fix.error(
          "risk",
          "fix that can lock out has no caution about another way in",
          "name the recovery key, the password, the older entry or the live system that opens it");
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
