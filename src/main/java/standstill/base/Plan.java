package standstill.base;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The steps of a repair as a reader gets them: what the log tells stands in its place, steps for
 * other systems than theirs are set apart, and variants between which nothing decides stand beside
 * each other under one number.
 *
 * @param rows the steps
 * @param others steps for other systems, as far as is known
 */
public record Plan(List<Row> rows, List<Row> others) {
  public Plan {
    rows = List.copyOf(rows);
    others = List.copyOf(others);
  }

  /**
   * A step.
   *
   * @param number in order, from 1; variants count side by side
   * @param heading title of the block that begins here, or empty
   * @param on the cases that it is for; empty for everybody
   * @param label those cases for people, or empty
   * @param told whether it is known that they are there
   * @param text what to do
   * @param risk what it puts at risk, where that is said of it
   * @param caution to be read before it, or empty
   * @param undo how to take it back, or empty
   * @param saveFirst what to save before it, or empty
   */
  public record Row(
      int number,
      String heading,
      List<Circumstance.Case> on,
      String label,
      boolean told,
      String text,
      Optional<Risk> risk,
      String caution,
      String undo,
      String saveFirst) {
    public Row {
      on = List.copyOf(on);
    }

    /** The step in one line, with its label. */
    public String line() {
      return label.isEmpty() ? text : label + ": " + text;
    }

    private Row at(int other) {
      return new Row(other, heading, on, label, told, text, risk, caution, undo, saveFirst);
    }
  }

  /** The plan of a fix for a system of which this is known. */
  public static Plan of(Fix fix, Given given) {
    Map<String, String> values = new LinkedHashMap<>(fix.scope().values());
    given.values().forEach((name, value) -> values.computeIfPresent(name, (k, v) -> value));
    List<Row> rows = new ArrayList<>();
    List<Row> others = new ArrayList<>();
    for (FixStep step : fix.steps()) {
      new Walked(given, values, rows, others).add(step, FixStep.Terms.NONE, true);
    }
    return new Plan(numbered(rows), numbered(others));
  }

  /** The steps as plain texts, with their labels. */
  public List<String> texts() {
    return rows.stream().map(Row::line).toList();
  }

  /**
   * Variants that exclude each other begin with the same number, and what comes after them goes on
   * behind the longest.
   */
  private static List<Row> numbered(List<Row> rows) {
    List<Row> numbered = new ArrayList<>();
    int next = 1;
    int choice = 1;
    int end = 1;
    List<Circumstance.Case> before = List.of();
    for (Row row : rows) {
      boolean variant = row.heading().isEmpty() && exclude(before, row.on());
      if (variant) {
        next = choice;
      } else if (!row.heading().isEmpty() || !row.on().equals(before)) {
        next = Math.max(next, end);
        choice = next;
      }
      numbered.add(row.at(next));
      next++;
      end = Math.max(end, next);
      before = row.on();
    }
    return numbered;
  }

  /** Whether no system is one of both kinds: in some circumstance they have no case in common. */
  private static boolean exclude(List<Circumstance.Case> some, List<Circumstance.Case> others) {
    return some.stream()
        .map(Circumstance.Case::circumstance)
        .anyMatch(
            id -> {
              List<Circumstance.Case> of =
                  others.stream().filter(c -> c.circumstance().equals(id)).toList();
              return !of.isEmpty() && some.stream().noneMatch(of::contains);
            });
  }

  /** Walks down the steps of a fix. */
  private record Walked(Given given, Map<String, String> values, List<Row> rows, List<Row> others) {
    void add(FixStep step, FixStep.Terms outer, boolean fits) {
      FixStep.Terms terms = inside(outer, step.terms());
      if (terms.on().isEmpty() && !(outer.on().isEmpty() && step.terms().on().isEmpty())) {
        return; // A block's variant for others than those whom the step around it is for.
      }
      boolean still = fits && given.fits(step.terms());
      if (step instanceof FixStep.Group group) {
        List<Row> into = still ? rows : others;
        int before = into.size();
        for (FixStep inner : group.steps()) {
          add(inner, cases(terms), still);
        }
        // The care of a group is read before its first step.
        if (into.size() > before) {
          into.set(before, headed(into.get(before), group));
        }
      } else {
        (still ? rows : others).add(row(((FixStep.Doing) step).text(), terms));
      }
    }

    private Row headed(Row first, FixStep.Group group) {
      FixStep.Terms own = group.terms();
      return new Row(
          first.number(),
          group.title().isEmpty() ? first.heading() : group.title(),
          first.on(),
          first.label(),
          first.told(),
          first.text(),
          first.risk().or(own::risk),
          joined(filled(own.caution()), first.caution()),
          joined(first.undo(), filled(own.undo())),
          joined(filled(own.saveFirst()), first.saveFirst()));
    }

    private Row row(String text, FixStep.Terms terms) {
      return new Row(
          0,
          "",
          terms.on(),
          label(terms.on()),
          !terms.on().isEmpty() && given.tells(terms),
          filled(text),
          terms.risk(),
          filled(terms.caution()),
          filled(terms.undo()),
          filled(terms.saveFirst()));
    }

    /** Cases of one circumstance are alternatives; several circumstances have to fit together. */
    private static String label(List<Circumstance.Case> on) {
      Map<String, List<String>> titles = new LinkedHashMap<>();
      on.forEach(
          c -> titles.computeIfAbsent(c.circumstance(), k -> new ArrayList<>()).add(c.title()));
      return titles.values().stream().map(Walked::either).collect(Collectors.joining(" / "));
    }

    private static String either(List<String> titles) {
      int last = titles.size() - 1;
      return last == 0
          ? titles.get(0)
          : String.join(", ", titles.subList(0, last)) + " or " + titles.get(last);
    }

    private String filled(String text) {
      return Placeholders.filled(text, values);
    }

    private static String joined(String one, String other) {
      return one.isEmpty() || other.isEmpty() ? one + other : one + " " + other;
    }

    /**
     * Whom a step is for, with what stands around it: of one circumstance what both allow, and
     * nobody at all when they allow nothing in common. Care stands where it is written.
     */
    private static FixStep.Terms inside(FixStep.Terms outer, FixStep.Terms own) {
      List<Circumstance.Case> on = new ArrayList<>();
      boolean nobody = false;
      for (String circumstance : circumstances(outer, own)) {
        List<Circumstance.Case> wide = of(outer, circumstance);
        List<Circumstance.Case> narrow = of(own, circumstance);
        List<Circumstance.Case> both =
            narrow.isEmpty()
                ? wide
                : narrow.stream().filter(c -> wide.isEmpty() || wide.contains(c)).toList();
        nobody |= both.isEmpty();
        on.addAll(both);
      }
      return new FixStep.Terms(
          nobody ? List.of() : on, own.risk(), own.caution(), own.undo(), own.saveFirst());
    }

    private static Set<String> circumstances(FixStep.Terms outer, FixStep.Terms own) {
      return Stream.concat(outer.on().stream(), own.on().stream())
          .map(Circumstance.Case::circumstance)
          .collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private static List<Circumstance.Case> of(FixStep.Terms terms, String circumstance) {
      return terms.on().stream().filter(c -> c.circumstance().equals(circumstance)).toList();
    }

    private static FixStep.Terms cases(FixStep.Terms terms) {
      return new FixStep.Terms(terms.on(), Optional.empty(), "", "", "");
    }
  }
}
