package standstill.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.Risk;
import standstill.base.Stage;
import standstill.base.Symptom;

/**
 * Browsing the faults by facets. Values of one facet widen the choice (or), facets narrow it (and).
 * The count of a value is the number of faults that choosing it alone in its facet would show.
 */
public final class Browse {

  /** By what faults can be chosen. */
  public enum Facet {
    /** Stage of the boot that the cause belongs to. */
    STAGE("Stage"),
    /** What a person sees. */
    SYMPTOM("What is seen"),
    /** Part of the machine or the system. */
    PART("Part"),
    /** What the mildest repair puts at risk. */
    RISK("Risk of the mildest repair"),
    /** What kinds of repairs there are, by what they touch. */
    REPAIR("Kind of repair"),
    /** What some repair needs. */
    NEEDS("A repair needs"),
    /** Exact cause, or general. */
    KIND("Kind");

    private final String title;

    Facet(String title) {
      this.title = title;
    }

    /** The word in addresses. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** For people. */
    public String title() {
      return title;
    }
  }

  /**
   * A value of a facet.
   *
   * @param id the word in addresses
   * @param title for people
   * @param count how many faults it would show
   * @param chosen whether it is chosen
   */
  public record Value(String id, String title, int count, boolean chosen) {}

  /**
   * What a choice shows.
   *
   * @param faults the faults, commonest first within each stage
   * @param facets the values of each facet that show something or are chosen
   */
  public record Shown(List<Fault> faults, Map<Facet, List<Value>> facets) {
    public Shown {
      faults = List.copyOf(faults);
      facets = Collections.unmodifiableMap(new EnumMap<>(facets));
    }
  }

  private static final String NOTHING = "nothing";
  private final Base base;

  /** Browses a base. */
  public Browse(Base base) {
    this.base = base;
  }

  /** The faults that a choice shows; words that are no value show nothing. */
  public Shown show(Map<Facet, Set<String>> choice) {
    List<Fault> faults =
        base.faults().stream()
            .filter(fault -> fits(fault, choice, null))
            .sorted(
                Comparator.comparing(Fault::stage)
                    .thenComparing(Fault::general)
                    .thenComparing(f -> -f.howCommon().weight())
                    .thenComparing(Fault::title))
            .toList();
    Map<Facet, List<Value>> facets = new EnumMap<>(Facet.class);
    for (Facet facet : Facet.values()) {
      Map<String, Integer> counts = new LinkedHashMap<>();
      for (Fault fault : base.faults()) {
        if (fits(fault, choice, facet)) {
          values(facet, fault).forEach(value -> counts.merge(value, 1, Integer::sum));
        }
      }
      Set<String> chosen = choice.getOrDefault(facet, Set.of());
      List<Value> values = new ArrayList<>();
      for (Map.Entry<String, String> each : titles(facet).entrySet()) {
        int count = counts.getOrDefault(each.getKey(), 0);
        boolean on = chosen.contains(each.getKey());
        if (count > 0 || on) {
          values.add(new Value(each.getKey(), each.getValue(), count, on));
        }
      }
      facets.put(facet, values);
    }
    return new Shown(faults, facets);
  }

  private boolean fits(
      Fault fault, Map<Facet, Set<String>> choice, @org.jspecify.annotations.Nullable Facet but) {
    return choice.entrySet().stream()
        .filter(each -> each.getKey() != but && !each.getValue().isEmpty())
        .allMatch(
            each -> values(each.getKey(), fault).stream().anyMatch(each.getValue()::contains));
  }

  private Set<String> values(Facet facet, Fault fault) {
    return switch (facet) {
      case STAGE -> Set.of(fault.stage().word());
      case SYMPTOM -> Set.copyOf(fault.symptoms());
      case PART -> Set.of(fault.part());
      case RISK ->
          fault.fixes().stream()
              .map(Fix::risk)
              .min(Comparator.naturalOrder())
              .map(risk -> Set.of(risk.word()))
              .orElse(Set.of());
      case REPAIR ->
          fault.fixes().stream().map(fix -> fix.risk().word()).collect(Collectors.toSet());
      case NEEDS -> needs(fault);
      case KIND -> Set.of(fault.general() ? "general" : "specific");
    };
  }

  private static Set<String> needs(Fault fault) {
    Set<String> needs = new LinkedHashSet<>();
    for (Fix fix : fault.fixes()) {
      if (fix.needs().isEmpty()) {
        needs.add(NOTHING);
      } else {
        needs.addAll(fix.needs());
      }
    }
    return needs;
  }

  private Map<String, String> titles(Facet facet) {
    Map<String, String> titles = new LinkedHashMap<>();
    switch (facet) {
      case STAGE -> {
        for (Stage stage : Stage.values()) {
          titles.put(stage.word(), stage.word());
        }
      }
      case SYMPTOM -> {
        for (Symptom symptom : base.symptoms()) {
          titles.put(symptom.id(), symptom.title());
        }
      }
      case PART -> titles.putAll(base.scale().parts());
      case RISK, REPAIR -> {
        for (Risk risk : Risk.values()) {
          titles.put(risk.word(), risk.title());
        }
      }
      case NEEDS -> {
        titles.put(NOTHING, "nothing");
        titles.putAll(base.scale().needs());
      }
      case KIND -> {
        titles.put("specific", "an exact cause");
        titles.put("general", "a general cause");
      }
    }
    return titles;
  }
}
