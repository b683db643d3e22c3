package standstill.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import standstill.base.Base;
import standstill.base.Check;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Sign;
import standstill.base.Symptom;
import standstill.base.Trail;

/**
 * The searched texts of an entry.
 *
 * @param kind what it is
 * @param id its id
 * @param title its title
 * @param weight how common it is; 1 where that makes no sense
 * @param units its texts in pieces of a sentence or a paragraph
 */
record Entry(Kind kind, String id, String title, double weight, List<Unit> units) {

  /** Where in an entry a text stands; the factor says how much a match there counts. */
  enum Field {
    TITLE(2.0f),
    NAME(1.2f),
    SIGNS(1.4f),
    LOOK(2.0f),
    ABOUT(1.1f),
    FIXES(0.7f),
    FAULTS(0.9f);

    private final float boost;

    Field(float boost) {
      this.boost = boost;
    }

    float boost() {
      return boost;
    }
  }

  /**
   * A text.
   *
   * @param field where it counts
   * @param where what it is, for people
   * @param text the text
   */
  record Unit(Field field, String where, String text) {}

  /** All entries of a base. */
  static List<Entry> of(Base base) {
    List<Entry> all = new ArrayList<>();
    base.faults().forEach(fault -> all.add(fault(base, fault)));
    base.symptoms().forEach(symptom -> all.add(symptom(symptom)));
    base.checks().forEach(check -> all.add(check(base, check)));
    base.trails().forEach(trail -> all.add(trail(trail)));
    return all;
  }

  private static Entry fault(Base base, Fault fault) {
    Units units = new Units(fault.id(), fault.title());
    fault.aliases().forEach(alias -> units.add(Field.NAME, "former name", spaced(alias)));
    units.add(Field.ABOUT, "about", fault.about());
    Map<String, String> parts = base.scale().parts();
    units.add(Field.ABOUT, "part", parts.getOrDefault(fault.part(), fault.part()));
    for (Sign sign : fault.signs()) {
      sign.seen().forEach(text -> units.add(Field.SIGNS, "in a log", text));
    }
    for (String id : fault.symptoms()) {
      base.symptom(id)
          .ifPresent(
              symptom -> {
                units.add(Field.LOOK, "seen as", symptom.title());
                symptom.words().forEach(word -> units.add(Field.LOOK, "seen as", word));
              });
    }
    for (Fix fix : fault.fixes()) {
      units.add(Field.FIXES, "repair", fix.title());
      fix.texts().forEach(step -> units.add(Field.FIXES, "repair", step));
    }
    units.add(Field.FIXES, "prevention", fault.prevent());
    return new Entry(Kind.FAULT, fault.id(), fault.title(), fault.howCommon().weight(), units.list);
  }

  private static Entry symptom(Symptom symptom) {
    Units units = new Units(symptom.id(), symptom.title());
    units.add(Field.ABOUT, "what it looks like", symptom.look());
    symptom.words().forEach(word -> units.add(Field.LOOK, "also called", word));
    return new Entry(Kind.SYMPTOM, symptom.id(), symptom.title(), 1, units.list);
  }

  private static Entry check(Base base, Check check) {
    Units units = new Units(check.id(), check.title());
    check.how().forEach(step -> units.add(Field.ABOUT, "how to look", step));
    check.answers().forEach(answer -> units.add(Field.FIXES, "answer", answer.text()));
    base.faults().stream()
        .filter(fault -> fault.toldApartBy().containsKey(check.id()))
        .forEach(fault -> units.add(Field.FAULTS, "asked for", fault.title()));
    return new Entry(Kind.CHECK, check.id(), check.title(), 1, units.list);
  }

  private static Entry trail(Trail trail) {
    Units units = new Units(trail.id(), trail.title());
    units.add(Field.ABOUT, "why it is harmless", trail.why());
    units.add(Field.FIXES, "when it matters", trail.mattersWhen());
    trail.signs().stream()
        .flatMap(sign -> sign.seen().stream())
        .forEach(text -> units.add(Field.SIGNS, "in a log", text));
    return new Entry(Kind.TRAIL, trail.id(), trail.title(), 1, units.list);
  }

  private static String spaced(String id) {
    return id.replace('-', ' ');
  }

  private static final class Units {
    private final List<Unit> list = new ArrayList<>();

    Units(String id, String title) {
      add(Field.TITLE, "title", title);
      add(Field.NAME, "name", spaced(id));
    }

    void add(Field field, String where, String text) {
      if (!text.isBlank()) {
        list.add(new Unit(field, where, text));
      }
    }
  }
}
