package standstill.base.yaml;

import static standstill.base.yaml.Shape.may;
import static standstill.base.yaml.Shape.must;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import standstill.base.Label;
import standstill.base.Risk;
import standstill.base.Scale;
import standstill.base.SignForm;
import standstill.base.Stage;
import standstill.base.Statement;
import standstill.base.ThingSort;
import standstill.base.ThingState;
import standstill.base.WishKind;

/**
 * The keys of all files of the base, with what may stand under them: the one table that the readers
 * are held to, and that the schemas for editors are written from. What one entry alone can't show
 * (that an id is the file's name, that a caution fits the risk, that a reference leads somewhere)
 * stays with the readers.
 */
final class Shapes {
  /** What a step is: something to do, a shared block, or steps that belong together. */
  static final List<String> STEPS = List.of("do", "use", "steps");

  /** What harmless lines depend on. */
  static final List<String> PROVISOS = List.of("line", "no-line", "reached", "without");

  /** Where an answer of a walk leads: exactly one of them. */
  static final List<String> LEADS = List.of("then", "fault", "fix", "hand-over");

  /** What a milestone proves of its stage. */
  static final List<String> PROVES = List.of("begins", "within", "ends", "stops");

  static final List<String> STAGES = Arrays.stream(Stage.values()).map(Stage::word).toList();

  private static final List<String> RISKS = Arrays.stream(Risk.values()).map(Risk::word).toList();
  private static final int MOST_BOOTS = 1_000_000;

  private static final Value STAGE = Scalars.word(STAGES);
  private static final Value RISK = Scalars.word(RISKS);
  private static final Value TEXTS = ListOf.any(Scalars.text());
  private static final Value SOME_TEXTS = ListOf.some(Scalars.text());
  private static final Value IDS = ListOf.any(Scalars.id());
  private static final Value SOME_IDS = ListOf.some(Scalars.id());

  private static final List<String> THINGS =
      Arrays.stream(ThingSort.values()).map(ThingSort::word).toList();

  private static final List<String> WISHES =
      Arrays.stream(WishKind.values()).map(WishKind::word).toList();

  private static final List<String> STATES =
      Arrays.stream(ThingState.values()).map(ThingState::word).toList();

  private static final Shape.Key SOURCES =
      must(
          "sources",
          ListOf.some(
              Shape.of(
                  "a source",
                  must(
                      "title",
                      Scalars.text(),
                      "Name of the source, or: common practice, no source"),
                  may("where", Scalars.text(), "The file, section or page."))),
          "Where the statements come from; at least one.");

  private static final Shape.Key REVIEWED =
      must(
          "reviewed",
          Shape.of(
              "'reviewed'",
              must("on", Scalars.day(), "The day on which somebody last read the whole entry."),
              must("by", Scalars.text(), "Who.")),
          "When somebody last looked at the entry, and who; check asks for it again after a year.");

  private static final Shape.Key PRINTED_BY =
      may(
          "printed-by",
          Shape.of(
              "'printed-by'",
              must("program", Scalars.text(), "The program that prints the text."),
              must("reason", Scalars.text(), "Why the message check can't prove it.")),
          "For a text whose program the message check can't fetch.");

  private static final Shape.Key LINE =
      must(
          "line",
          Scalars.pattern(),
          "RE2 syntax; matched anywhere in the message of a line, without time stamp and process tag.");

  private static final Shape.Key SEEN =
      must("seen", SOME_TEXTS, "Texts that the pattern must match.");

  private static final Shape.Key UNLIKE =
      must("unlike", SOME_TEXTS, "Near misses that the pattern must not match.");

  /** Word of {@code holds} in a line form. */
  static final String RECORD = "record";

  private static final Shape.Key ID =
      must("id", Scalars.id(), "Lower-case words joined by hyphens; never changes.");

  private static final Value CONDITIONS = ListOf.any(Scalars.condition());

  private static final Shape.Key WHEN =
      may(
          "when",
          CONDITIONS,
          "What has to be so for it to make sense: words of circumstances.yaml, facts, or an answer"
              + " as check/answer, each alone or as 'not word'.");

  private static final Value RELEASE =
      Shape.of(
          "a version",
          must("program", Scalars.text(), "The program, such as linux."),
          must("version", Scalars.version(), "Numbers joined by dots, in quotes."));

  private static final Shape.Key SINCE =
      may("since", RELEASE, "The first version for which it holds.");

  private static final Shape.Key UNTIL =
      may("until", RELEASE, "The last version for which it holds.");

  private static final Shape.Key SIGN_ID =
      must(
          "id",
          Scalars.id(),
          "Names the sign within its entry, for ever, such as: alert-id-does-not-exist");

  private static final Value STEP_LIST = stepList();

  private final Value chance;
  private final Value frequency;
  private final Value part;
  private final Value needs;

  Shapes(Scale scale) {
    chance = words(scale.chances().keySet());
    frequency = words(scale.frequencies().keySet());
    part = words(scale.parts().keySet());
    needs = ListOf.any(words(scale.needs().keySet()));
  }

  private static Value words(Collection<String> words) {
    return Scalars.word(words);
  }

  /** A file of {@code faults/}. */
  Shape fault() {
    return Shape.of(
        "a fault",
        must("id", Scalars.id(), "Names the cause, for ever; equals the file's name."),
        must("title", Scalars.title(), "The cause in a sentence without a full stop."),
        may(
            "kind",
            Scalars.word(List.of("specific", "general")),
            "general: says only what can be said of a part; specific when left out."),
        must("family", SOME_IDS, "Families of logs in which it occurs."),
        must("stage", STAGE, "Where the cause belongs; equals the folder."),
        may(
            "stops-in",
            ListOf.some(STAGE),
            "Stages in which the boot may end because of it; the stage itself when left out."),
        must("part", part, "Part of the machine, from scale.yaml."),
        must("how-common", frequency, "How common it is among causes of stalled boots."),
        must("about", Scalars.text(), "One paragraph, plain language."),
        must("symptoms", SOME_IDS, "What a person sees: ids from symptoms.yaml."),
        must("signs", ListOf.some(sign()), "What it leaves in a log."),
        may("leads-to", IDS, "Faults whose signs this one also produces."),
        may(
            "ends-in",
            new MapOf("'ends-in'", chance),
            "Stops in which boots with this fault end, each with its chance."),
        may(
            "told-apart-by",
            ListOf.any(
                Shape.of(
                    "an entry of told-apart-by",
                    must("check", Scalars.id(), "A check."),
                    must(
                        "answers",
                        new MapOf("'answers'", chance),
                        "The chance of its answers when this fault is the cause."))),
            "Checks whose answers tell it from other faults."),
        must("fixes", ListOf.some(fix()), "Repairs."),
        may(
            "order",
            Scalars.word(List.of("forced")),
            "forced: the repairs are to be done in the order in which they stand."),
        may(
            "values",
            new MapOf("'values'", Scalars.text()),
            "Names in the repairs' steps to what stands there while the log doesn't tell."),
        must("prevent", Scalars.text(), "How to keep it from coming back."),
        SOURCES,
        REVIEWED,
        may("aliases", IDS, "Former ids."),
        may(
            "retired",
            new MapOf("'retired'", Scalars.id()),
            "Former ids of its signs and fixes, each with the id of its successor."));
  }

  /** A file of {@code stops/}. */
  Shape stop() {
    return Shape.of(
        "a stop",
        must("id", Scalars.id(), "Names the stop, for ever; equals the file's name."),
        must("title", Scalars.title(), "What happened, in a sentence without a full stop."),
        may(
            "kind",
            Scalars.word(List.of("stopped", "nothing-stopped")),
            "nothing-stopped: the boot came through; stopped when left out."),
        must("family", SOME_IDS, "Families of logs in which it occurs."),
        must("stages", ListOf.some(STAGE), "Stages in which boots end so."),
        must("how-common", frequency, "How common it is among the boots that people ask about."),
        must("about", Scalars.text(), "One paragraph, plain language."),
        must(
            "unlisted",
            chance,
            "Share of the boots that end so and have a cause that the base does not list."),
        may(
            "general",
            IDS,
            "General faults that stand for another cause; their signs are signs of the stop."),
        may("signs", ListOf.some(sign()), "Further signs of the stop."),
        may("looks", IDS, "Checks that help most where the cause is open, best first."),
        SOURCES,
        REVIEWED,
        may("aliases", IDS, "Former ids."));
  }

  private Value sign() {
    String tells = "What that tells, as a sentence.";
    Shape missing =
        simple(
            must("without", Scalars.id(), "A milestone that the paste covers and that is missing."),
            tells);
    Shape reached = simple(must("reached", Scalars.id(), "A milestone that was reached."), tells);
    Shape statement =
        simple(
            must("fact", words(Statement.words()), "A statement on the machine that has to hold."),
            "A sentence built from the statement's values, such as: {class} {device} has no driver");
    return new Choice(
        "without",
        missing,
        new Choice("reached", reached, new Choice("fact", statement, lineOfALog())));
  }

  private Shape lineOfALog() {
    List<Shape.Key> keys = new ArrayList<>(List.of(SIGN_ID, LINE));
    keys.add(
        may("at-end", Scalars.whole(1, 10_000), "Only within that many last lines of the boot."));
    keys.add(may("repeats", Scalars.whole(2, 10_000), "Only when it stands there that often."));
    keys.add(
        may(
            "after-gap",
            Scalars.number(1, 86_400),
            "Only when that many seconds of silence stand before it."));
    for (SignForm.Join.Kind kind : SignForm.Join.Kind.values()) {
      keys.add(may(kind.word(), Scalars.pattern(), means(kind)));
    }
    keys.addAll(weights());
    keys.add(
        may(
            "says",
            Scalars.text(),
            "A sentence built from the captured values, such as: disk {name} is gone"));
    keys.addAll(List.of(SEEN, UNLIKE, SINCE, UNTIL, PRINTED_BY));
    return new Shape("a sign", keys, List.of());
  }

  private static String means(SignForm.Join.Kind kind) {
    String same = ", with the same values of shared groups.";
    return switch (kind) {
      case THEN_NOT -> "Only where no line below matches this" + same;
      case AFTER -> "Only where a line above matches this" + same;
      case BEFORE -> "Only where a line below matches this" + same;
    };
  }

  /** A sign that is no line: what it looks for, what it weighs, what it says. */
  private Shape simple(Shape.Key wanted, String says) {
    List<Shape.Key> keys = new ArrayList<>(List.of(SIGN_ID, wanted));
    keys.addAll(weights());
    keys.add(may("says", Scalars.text(), says));
    return new Shape("a sign", keys, List.of());
  }

  private List<Shape.Key> weights() {
    return List.of(
        must("shows", chance, "Chance that this fault leaves the sign."),
        must("elsewhere", chance, "Chance of the sign in boots with another cause, or none."),
        may(
            "rivals",
            chance,
            "Chance of the sign where another cause led to the same stop; as elsewhere when left out."),
        may("event", Scalars.text(), "Signs of one event are counted once."));
  }

  private Shape fix() {
    return Shape.of(
        "a fix",
        must(
            "id",
            Scalars.id(),
            "Names the fix within its fault, for ever, such as: write-loader-anew"),
        must("title", Scalars.text(), "The repair in a few words."),
        must("steps", STEP_LIST, "What to do, in order: texts, or maps where more is to be said."),
        must("minutes", Scalars.whole(1, 2_000), "How long it takes."),
        must("cures", chance, "Chance that it repairs this fault."),
        must("risk", RISK, "What it puts at risk."),
        may("needs", needs, "Things that the person must have."),
        must("prove", Scalars.text(), "What the next boot shows when it worked."),
        must("undo", Scalars.text(), "How to take it back."),
        must(
            "cautions",
            TEXTS,
            "To be read before; may be []. data: a backup; firmware: power; hands-inside: mains and static;"
                + " locks-out: the key, password or other way in."),
        may(
            "lasts",
            Scalars.word(List.of("lasting", "one-boot")),
            "one-boot: holds for the next boot only; lasting when left out."),
        may("first", Scalars.id(), "The fix of this fault that has to be done before."),
        WHEN,
        SINCE,
        UNTIL);
  }

  private static Value stepList() {
    List<Shape.Key> inner =
        List.of(
            may("do", Scalars.text(), "What to do; {name} stands for a value that the log gives."),
            may("use", Scalars.id(), "A block of steps/."),
            may("with", new MapOf("'with'", Scalars.text()), "Values of the block's parameters."),
            may("for", SOME_IDS, "Whom it is for: words of circumstances.yaml."),
            may("risk", RISK, "What it puts at risk; no more than the repair says."),
            may("caution", Scalars.text(), "To be read before it."),
            may("undo", Scalars.text(), "How to take it back."),
            may("save-first", Scalars.text(), "What to save before, and how."));
    Shape step = new Shape("a step", inner, List.of("do", "use"));
    List<Shape.Key> outer = new ArrayList<>(inner);
    outer.add(may("steps", ListOf.some(new TextOr(step)), "Steps that belong together."));
    return ListOf.some(new TextOr(new Shape("a step", outer, STEPS)));
  }

  /** A file of {@code steps/}. */
  static Shape block() {
    return Shape.of(
        "a block of steps",
        must("id", Scalars.id(), "Equals the file's name."),
        must("title", Scalars.title(), "What the steps do."),
        must("about", Scalars.text(), "When they are the right ones."),
        may(
            "parameters",
            new MapOf(
                "'parameters'",
                Shape.of(
                    "a parameter",
                    must("means", Scalars.text(), "What it is."),
                    must("unknown", Scalars.text(), "What stands there when no value is given."))),
            "Names that stand as {name} in the steps."),
        must("steps", STEP_LIST, "What to do, in order."),
        must("risk", RISK, "The gravest of what the steps put at risk."),
        SOURCES,
        REVIEWED);
  }

  /** {@code circumstances.yaml}. */
  static ListOf circumstances() {
    return ListOf.some(
        Shape.of(
            "a circumstance",
            ID,
            must("title", Scalars.text(), "In what systems differ, for people."),
            must(
                "cases",
                ListOf.some(
                    Shape.of(
                        "a case",
                        ID,
                        must("title", Scalars.text(), "Name for people."),
                        may(
                            "tells",
                            ListOf.any(Shape.of("a line", LINE, SEEN)),
                            "Lines of a log that show it."))),
                "What it can be.")));
  }

  /** A file of {@code checks/}. */
  Shape check() {
    return Shape.of(
        "a check",
        must("id", Scalars.id(), "Equals the file's name."),
        must("title", Scalars.text(), "The question."),
        must("how", SOME_TEXTS, "How to find the answer."),
        may("minutes", Scalars.whole(1, 1_000), "How long it takes; 5 when left out."),
        must("risk", RISK, "What it puts at risk."),
        may("needs", needs, "Things that the person must have."),
        may("cautions", TEXTS, "To be read before."),
        WHEN,
        must(
            "answers",
            new ListOf(
                Shape.of(
                    "an answer",
                    ID,
                    must("text", Scalars.text(), "What the person reads."),
                    must(
                        "otherwise",
                        chance,
                        "Chance of the answer when the cause does not mention this check.")),
                2,
                5),
            "Two to five; that one does not know is always offered."),
        SOURCES,
        REVIEWED);
  }

  /** {@code symptoms.yaml}. */
  static ListOf symptoms() {
    return ListOf.some(
        Shape.of(
            "a symptom",
            ID,
            must("title", Scalars.text(), "What a person sees, in a few words."),
            must("stages", ListOf.some(STAGE), "The stages in which it is seen."),
            must("look", Scalars.text(), "What it looks like."),
            may("words", TEXTS, "Other words that people use for it."),
            REVIEWED));
  }

  /** {@code synonyms.yaml}. */
  static ListOf synonyms() {
    return ListOf.any(
        Shape.of(
            "a group of synonyms",
            must(
                "words",
                new ListOf(Scalars.text(), 2, Integer.MAX_VALUE),
                "Words or short phrases that people use for one thing.")));
  }

  /** A file of {@code trails/}. */
  static Shape trail() {
    return Shape.of(
        "a false trail",
        must("id", Scalars.id(), "Equals the file's name."),
        must("title", Scalars.text(), "What the lines are, for people."),
        must("family", SOME_IDS, "Families of logs that print them."),
        must(
            "signs",
            ListOf.some(Shape.of("a sign", SIGN_ID, LINE, SEEN, UNLIKE, SINCE, UNTIL, PRINTED_BY)),
            "The lines."),
        may(
            "harmless-only-when",
            ListOf.some(
                Shape.of(
                        "a proviso",
                        may("line", Scalars.pattern(), "A line that has to be there."),
                        may("no-line", Scalars.pattern(), "A line that must not be there."),
                        may("reached", Scalars.id(), "A milestone that has to be reached."),
                        may("without", Scalars.id(), "A milestone that has to be missing."),
                        may("seen", SOME_TEXTS, "Texts that the pattern must match."),
                        may("unlike", SOME_TEXTS, "Near misses that it must not match."))
                    .withExactlyOne(PROVISOS)),
            "What else has to be in the boot, or must not be."),
        must("why", Scalars.text(), "Why they are printed and stop nothing."),
        must("matters-when", Scalars.text(), "When they do matter after all."),
        SOURCES,
        REVIEWED);
  }

  /** A file of {@code walks/}. */
  static Shape walk() {
    return Shape.of(
        "a walk",
        must("id", Scalars.id(), "Equals the file's name."),
        must("title", Scalars.text(), "The situation, for people."),
        must("about", Scalars.text(), "What the walk does, in a paragraph."),
        must(
            "offered-at",
            Shape.of(
                "'offered-at'",
                may("symptoms", IDS, "Symptoms at which it is offered."),
                may("stages", ListOf.any(STAGE), "Stages at which it is offered."),
                may("faults", IDS, "Faults at which it is offered when one of them is likely.")),
            "At least one symptom, stage or fault."),
        must("steps", ListOf.some(step()), "The first one is where the walk begins."),
        SOURCES,
        REVIEWED);
  }

  private static Shape step() {
    return Shape.of(
        "a step",
        ID,
        must("ask", Scalars.text(), "The question."),
        may("how", TEXTS, "How to find the answer."),
        may("minutes", Scalars.whole(1, 1_000), "How long it takes; 2 when left out."),
        may("risk", RISK, "What it puts at risk; none when left out."),
        may("cautions", TEXTS, "To be read before."),
        must(
            "answers",
            new ListOf(
                Shape.of(
                        "answer",
                        ID,
                        must("text", Scalars.text(), "What the person reads."),
                        may("then", Scalars.id(), "A later step."),
                        may("fault", Scalars.id(), "The fault that it is."),
                        may("fix", Scalars.fix(), "A fix: the fault's id, /fix/, the fix's id."),
                        may("hand-over", Scalars.text(), "What to tell somebody more experienced."))
                    .withExactlyOne(LEADS),
                2,
                5),
            "Two to five, each with one of then, fault, fix, hand-over."));
  }

  private static final String NAMES_A_PART = "What the lines are of.";

  /** A file of {@code families/}. */
  static Shape family() {
    Value examples =
        ListOf.some(Shape.of("an example", may("id", Scalars.id(), NAMES_A_PART), LINE, SEEN));
    return Shape.of(
        "a family",
        must("id", Scalars.id(), "Equals the file's name."),
        must("title", Scalars.text(), "Name for people."),
        may("include", IDS, "Families whose parts and faults this one has as well."),
        may(
            "not-diagnosed",
            Scalars.text(),
            "Why its boots are recognised and not diagnosed; diagnosed when left out."),
        must("recognise", examples, "Lines that prove that a log is of this family."),
        may("may-be", examples, "Lines of its own that other families print as well."),
        may(
            "begins",
            examples,
            "Lines of firmware and loader at which a new boot starts, in order."),
        may("kernel-begins", examples, "The kernel's own first lines."),
        may("ramdisk", examples, "Lines that only an initial ramdisk prints."),
        may(
            "line-forms",
            ListOf.some(
                Shape.of(
                    "a line form",
                    ID,
                    must("prefix", Scalars.pattern(), "What stands before the message."),
                    may(
                        "holds",
                        Scalars.word(List.of(RECORD)),
                        "What follows: a record of a log device, with microseconds, \\xNN for bytes,"
                            + " and further lines of KEY=value."),
                    SEEN)),
            "How lines begin: time stamp, host, process."),
        may("stamps", examples, "The kernel's time stamp, where its lines may cut into others."),
        may(
            "waiting",
            examples,
            "Lines that come again and again while something is waited for, named by the group job."),
        may("separators", examples, "Lines that a journal prints between boots."),
        may("headings", examples, "Lines that a journal prints above its first one."),
        may("kernel-tag", Scalars.text(), "The tag that a journal gives to the kernel's lines."),
        must(
            "milestones",
            ListOf.some(
                Shape.of(
                    "a milestone",
                    ID,
                    must("stage", STAGE, "The stage that begins, ends or is proven."),
                    must("proves", Scalars.word(PROVES), "What it proves of the stage."),
                    must("title", Scalars.text(), "Name for people."),
                    LINE,
                    SEEN)),
            "Lines that prove that a stage began or ended."),
        may("facts", ListOf.any(factLine()), "What lines say of the machine."),
        may(
            "device-classes",
            ListOf.any(
                Shape.of(
                    "a class of devices",
                    must("code", Scalars.text(), "Hexadecimal digits that the number begins with."),
                    must("thing", words(THINGS), "What such a device is."),
                    must("title", Scalars.text(), "In words, for people."),
                    may("disks", Scalars.word(List.of("yes")), "That disks hang on it."),
                    may("drivers", TEXTS, "How its drivers call themselves."))),
            "What class numbers of devices mean."),
        may(
            "names",
            ListOf.any(
                Shape.of(
                    "a rule for names",
                    must("line", Scalars.pattern(), "The long name, from its beginning."),
                    must("as", Scalars.text(), "The usual name, with {group} places."),
                    SEEN)),
            "Names that are one."));
  }

  private static Shape factLine() {
    return Shape.of(
        "a fact line",
        ID,
        LINE,
        may("beside", Scalars.pattern(), "Must stand in the same message as well."),
        may("unless", Scalars.pattern(), "Must not stand in the same message."),
        may("thing", words(THINGS), "Sort of the thing that it speaks of."),
        may("wish", words(WISHES), "Kind of the wish that it speaks of."),
        must("state", words(STATES), "What it says of it."),
        may(
            "name",
            Scalars.text(),
            "Its name, with {group} places; the group 'name' when left out; a wish may have none."),
        may("on", Scalars.text(), "What it hangs on, with {group} places."),
        may("with", new MapOf("'with'", Scalars.text()), "Further values, with {group} places."),
        may("each", Scalars.text(), "The group that names several; {each} is one of them."),
        SEEN);
  }

  /** {@code scale.yaml}. */
  static Shape scale(List<String> modelNumbers) {
    return Shape.of(
        "the scale",
        must(
            "chances",
            new MapOf("'chances'", Scalars.number(1e-6, 1 - 1e-6)),
            "Words for chances, as probabilities."),
        must(
            "frequencies",
            new MapOf("'frequencies'", Scalars.number(1e-3, 1_000)),
            "Words for how common a fault is, as weights relative to each other."),
        must("parts", new MapOf("'parts'", Scalars.text()), "Parts of the machine."),
        must("needs", new MapOf("'needs'", Scalars.text()), "Things that a step may need."),
        must(
            "risk-minutes",
            numbers("'risk-minutes'", RISKS, 0, 10_000),
            "The minutes that each risk is reckoned to cost on top."),
        must(
            "need-minutes",
            Scalars.number(0, 10_000),
            "The minutes that each needed thing is reckoned to cost on top."),
        must("model", numbers("'model'", modelNumbers, -1_000, 1_000), "Numbers of the ranking."));
  }

  private static Shape numbers(String what, List<String> names, double least, double most) {
    return new Shape(
        what, names.stream().map(n -> must(n, Scalars.number(least, most), n)).toList(), List.of());
  }

  /** {@code rates.yaml}. */
  static Shape rates() {
    Value count = Scalars.whole(0, MOST_BOOTS);
    return Shape.of(
        "the rates",
        must("boots", count, "How many labelled boots were counted."),
        may(
            "signs",
            ListOf.any(
                Shape.of(
                    "a rate",
                    must("fault", Scalars.id(), "The fault that the sign belongs to."),
                    must("sign", Scalars.id(), "The sign's id within the fault."),
                    must("seen", count, "In how many boots of other causes it was seen."),
                    must("of", count, "Out of how many."),
                    may(
                        "rivals-seen",
                        count,
                        "In how many boots that ended in the same stop for another reason."),
                    may("rivals", count, "Out of how many of those."))),
            "Signs that were seen in boots of other causes."));
  }

  /** {@code retired.yaml}. */
  static ListOf retired() {
    return ListOf.any(
        Shape.of(
            "a retired fix",
            must("was", Scalars.fix(), "The id that saved walks may hold."),
            must("now", Scalars.fix(), "The id of its successor.")));
  }

  /** A label in {@code boots/}. */
  static Shape label() {
    return Shape.of(
        "a label",
        must("log", Scalars.text(), "The log beside the label, which has its name."),
        must("label", Scalars.id(), "A fault, healthy, or unlisted."),
        may("also", IDS, "Other faults that are right as well: the log can't tell them apart."),
        may("general", IDS, "General causes that are right where the base lacks the cause."),
        must("stage", STAGE, "Where progress ended."),
        may("stops", IDS, "Stops that are right; those of its faults when left out."),
        must("cut", Scalars.word(Label.CUTS), "What of the boot the log shows."),
        must("made", Scalars.text(), "How the boot was provoked."),
        must("licence", Scalars.text(), "Licence of the log."));
  }
}
