package standstill.audit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import standstill.base.Base;
import standstill.base.yaml.Loaded;
import standstill.score.LabelledLog;
import standstill.text.Problem;

/** All rules on a base: the entry of this room. */
public final class Audit {
  /** Rules whose breach makes a base wrong; they need the base alone, and are quick. */
  private static final List<Rule> SOUND =
      List.of(
          new SignTexts(),
          new SameSignTwice(),
          new NothingUnused(),
          new ReachableSymptoms(),
          new ChecksTellApart(),
          new EndedWordings());

  /** Rules that find what somebody should look at; they take their time. */
  private static final List<Rule> WORTH_A_LOOK =
      List.of(
          new KnownLabels(),
          new OverlappingSigns(),
          new TrailsAndSigns(),
          new HealthyBoots(),
          new NeverWins(),
          new CaughtValues(),
          new UnusedBlocks(),
          new Reviews());

  private Audit() {}

  /** Every rule. */
  static List<Rule> rules() {
    return Stream.concat(SOUND.stream(), WORTH_A_LOOK.stream()).toList();
  }

  /** What is wrong with a base, in the order of the places. */
  public static List<Problem> problems(Base base) {
    Subject subject = new Subject(base, List.of(), LocalDate.MIN);
    return SOUND.stream()
        .flatMap(rule -> rule.problems(subject).stream())
        .sorted()
        .distinct()
        .toList();
  }

  /** What is wrong with a labelled boot beside a base. */
  public static List<Problem> problems(Base base, LabelledLog boot) {
    return new KnownLabels().problems(Subject.of(base, List.of(boot), LocalDate.MIN));
  }

  /**
   * All that is wrong with a base, and all that somebody should look at, in the order of the
   * places.
   *
   * @param loaded the base with the problems of its files
   * @param boots its labelled boots; rules that need them find nothing without
   * @param today the day from which reviews are counted back
   */
  public static List<Finding> findings(Loaded loaded, List<LabelledLog> boots, LocalDate today) {
    List<Finding> findings = new ArrayList<>();
    loaded.problems().forEach(p -> findings.add(Finding.ofFile(p)));
    if (loaded.base().faults().isEmpty()) {
      return findings; // Without a scale nothing could be weighed.
    }
    Subject subject = Subject.of(loaded.base(), boots, today);
    for (Rule rule : rules()) {
      rule.problems(subject).stream()
          .distinct()
          .forEach(p -> findings.add(new Finding(rule.id(), rule.title(), p)));
    }
    findings.sort(null);
    return findings;
  }
}
