package standstill.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Given;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Source;
import standstill.base.Stage;
import standstill.store.Edition;

/** Everything about a fault, ready for its template. */
public record FaultView(
    String id,
    String title,
    boolean general,
    String stage,
    List<String> stopsIn,
    String partId,
    String part,
    String howCommon,
    String about,
    List<LinkView> symptoms,
    List<SignView> signs,
    List<LinkView> leadsTo,
    List<LinkView> comesFrom,
    List<ApartView> toldApart,
    List<LinkView> neighbours,
    List<ReportView.FixView> fixes,
    List<BootView> boots,
    String prevent,
    List<String> sources,
    String reviewedOn,
    String reviewedBy,
    List<String> aliases) {
  private static final int MOST_NEIGHBOURS = 8;

  /** A sign: what has to be in a log, with one text of it. */
  public record SignView(String pattern, String condition, String seen, String shows) {}

  /** A check, and the answers that speak for this fault or against it. */
  public record ApartView(String href, String title, List<String> answers) {}

  /** A labelled boot that the fault stopped. */
  public record BootView(String name, String cut, String made) {}

  static FaultView of(Edition edition, Fault fault, Given given) {
    Base base = edition.base();
    return new FaultView(
        fault.id(),
        fault.title(),
        fault.general(),
        fault.stage().word(),
        fault.stopsIn().stream().sorted().map(Stage::word).toList(),
        fault.part(),
        base.scale().parts().getOrDefault(fault.part(), fault.part()),
        words(fault.howCommon().word()),
        fault.about(),
        fault.symptoms().stream()
            .flatMap(id -> base.symptom(id).stream())
            .map(s -> new LinkView("/symptom/" + s.id(), s.title(), ""))
            .toList(),
        fault.signs().stream().map(sign -> sign(base, fault, sign)).toList(),
        fault.leadsTo().stream()
            .flatMap(id -> base.fault(id).stream())
            .map(f -> link(f, ""))
            .toList(),
        base.faults().stream()
            .filter(f -> f.leadsTo().contains(fault.id()))
            .map(f -> link(f, ""))
            .toList(),
        apart(base, fault),
        neighbours(base, fault),
        fault.fixes().stream().map(fix -> ReportView.fix(base, fix, given)).toList(),
        edition.bootsOf(fault.id()).stream()
            .map(label -> new BootView(label.name(), words(label.cut()), label.made()))
            .toList(),
        fault.prevent(),
        fault.sources().stream().map(Source::toString).toList(),
        fault.reviewed().on().toString(),
        fault.reviewed().by(),
        fault.aliases());
  }

  static LinkView link(Fault fault, String note) {
    return new LinkView("/fault/" + fault.id(), fault.title(), note);
  }

  static List<String> needs(Base base, List<String> needs) {
    return needs.stream()
        .map(need -> Optional.ofNullable(base.scale().needs().get(need)).orElse(need))
        .toList();
  }

  private static String words(String word) {
    return word.replace('-', ' ');
  }

  private static SignView sign(Base base, Fault fault, Sign sign) {
    String shows = words(sign.shows().word()) + " with this cause";
    if (sign.form() instanceof SignForm.OnLine on) {
      List<String> conditions = new ArrayList<>();
      if (on.atEnd() > 0) {
        conditions.add("within the last " + on.atEnd() + " lines");
      }
      if (on.repeats() > 1) {
        conditions.add("at least " + on.repeats() + " times");
      }
      if (on.afterGap() > 0) {
        conditions.add("after " + (int) on.afterGap() + " s of silence");
      }
      on.joins().forEach(join -> conditions.add(join.kind().title() + " " + join.line().source()));
      String seen = sign.seen().isEmpty() ? "" : sign.seen().get(0);
      if (!sign.span().words().isEmpty()) {
        conditions.add(sign.span().words());
      }
      return new SignView(on.line().source(), String.join(", ", conditions), seen, shows);
    }
    if (sign.form() instanceof SignForm.OfFact fact) {
      return new SignView("", "the log shows that " + fact.statement().title(), "", shows);
    }
    String id = ((SignForm.Without) sign.form()).milestone();
    String title =
        fault.families().stream()
            .flatMap(family -> base.family(family).stream())
            .flatMap(family -> family.milestone(id).stream())
            .map(milestone -> milestone.title())
            .findFirst()
            .orElse(id);
    return new SignView("", "the log never comes to: " + title, "", shows);
  }

  private static List<ApartView> apart(Base base, Fault fault) {
    List<ApartView> all = new ArrayList<>();
    fault
        .toldApartBy()
        .forEach(
            (id, answers) ->
                base.check(id)
                    .ifPresent(
                        check ->
                            all.add(
                                new ApartView(
                                    "/check/" + id,
                                    check.title(),
                                    answers.entrySet().stream()
                                        .flatMap(
                                            each ->
                                                check.answer(each.getKey()).stream()
                                                    .map(
                                                        answer ->
                                                            words(each.getValue().word())
                                                                + ": "
                                                                + answer.text()))
                                        .toList()))));
    return all;
  }

  /** Faults that share most checks and symptoms with this one: those it is taken for. */
  private static List<LinkView> neighbours(Base base, Fault fault) {
    Map<Fault, Integer> shared = new LinkedHashMap<>();
    for (Fault other : base.faults()) {
      if (!other.id().equals(fault.id())) {
        int checks =
            (int)
                other.toldApartBy().keySet().stream()
                    .filter(fault.toldApartBy()::containsKey)
                    .count();
        int symptoms = (int) other.symptoms().stream().filter(fault.symptoms()::contains).count();
        if (checks > 0 && symptoms > 0) {
          shared.put(other, 2 * checks + symptoms);
        }
      }
    }
    return shared.entrySet().stream()
        .sorted(
            Map.Entry.<Fault, Integer>comparingByValue()
                .reversed()
                .thenComparing(e -> e.getKey().title(), Comparator.naturalOrder()))
        .limit(MOST_NEIGHBOURS)
        .map(each -> link(each.getKey(), ""))
        .toList();
  }
}
