package standstill.base.yaml;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Circumstance;
import standstill.base.FixStep;
import standstill.base.Placeholders;
import standstill.base.Risk;
import standstill.base.StepBlock;

/** Reads the steps of a repair or of a block; shared blocks come in with their values filled in. */
final class StepReader {
  private final List<Circumstance> circumstances;
  private final Blocks blocks;

  /** The shared blocks of a base. */
  interface Blocks {
    /** No blocks. */
    Blocks NONE =
        new Blocks() {
          @Override
          public Optional<StepBlock> get(String id) {
            return Optional.empty();
          }

          @Override
          public Set<String> ids() {
            return Set.of();
          }
        };

    /** The block of that id; empty when there is none that can be used. */
    Optional<StepBlock> get(String id);

    /** All ids, those of blocks with errors included. */
    Set<String> ids();
  }

  StepReader(List<Circumstance> circumstances, Blocks blocks) {
    this.circumstances = List.copyOf(circumstances);
    this.blocks = blocks;
  }

  /** The steps under a key, in which only these names may stand for values. */
  List<FixStep> read(Fields fields, String key, Set<String> names) {
    List<FixStep> steps = new ArrayList<>();
    for (Fields.Item item : fields.mixed(key)) {
      FixStep step = item.text().isEmpty() ? step(item.map()) : FixStep.of(item.text());
      for (String name : placeholders(step)) {
        if (!names.contains(name)) {
          item.map()
              .error(
                  "",
                  "'{" + name + "}' stands for nothing",
                  names.isEmpty()
                      ? "declare under 'values' (in a block: 'parameters') what stands there"
                          + " while it is not known"
                      : Words.advice(name, names));
        }
      }
      steps.add(step);
    }
    return steps;
  }

  private FixStep step(Fields fields) {
    FixStep.Terms terms = terms(fields);
    if (fields.has("use")) {
      return block(fields, terms);
    }
    if (fields.has("with")) {
      fields.error("with", "values without a block", "'with' goes with 'use'");
    }
    if (fields.keys().contains("steps")) {
      List<FixStep> inner = new ArrayList<>();
      for (Fields.Item item : fields.mixed("steps")) {
        inner.add(item.text().isEmpty() ? step(item.map()) : FixStep.of(item.text()));
      }
      return new FixStep.Group("", "", inner, terms);
    }
    return new FixStep.Doing(fields.text("do"), terms);
  }

  private FixStep block(Fields fields, FixStep.Terms terms) {
    String id = fields.text("use");
    Optional<StepBlock> found = blocks.get(id);
    if (found.isEmpty()) {
      // A block with errors has been reported in its own file.
      if (!blocks.ids().contains(id)) {
        fields.error("use", "unknown block of steps '" + id + "'", Words.advice(id, blocks.ids()));
      }
      return new FixStep.Group(id, id, List.of(), terms);
    }
    StepBlock block = found.get();
    Map<String, String> values = new LinkedHashMap<>();
    block.parameters().forEach((name, parameter) -> values.put(name, parameter.unknown()));
    Fields with = fields.map("with");
    for (String name : with.keys()) {
      if (values.replace(name, with.text(name)) == null) {
        with.error(
            name,
            "block '" + id + "' has no parameter '" + name + "'",
            values.isEmpty() ? "it has none" : Words.advice(name, values.keySet()));
      }
    }
    List<FixStep> steps = block.steps().stream().map(s -> filled(s, values)).toList();
    Optional<Risk> risk = terms.risk().or(() -> Optional.of(block.risk()).filter(Risk::isGrave));
    return new FixStep.Group(
        Placeholders.filled(block.title(), values),
        id,
        steps,
        new FixStep.Terms(terms.on(), risk, terms.caution(), terms.undo(), terms.saveFirst()));
  }

  private FixStep.Terms terms(Fields fields) {
    List<Circumstance.Case> on = new ArrayList<>();
    for (String word : fields.texts("for")) {
      Optional<Circumstance.Case> known =
          circumstances.stream().flatMap(c -> c.option(word).stream()).findFirst();
      if (known.isEmpty()) {
        fields.error(
            "for",
            "unknown word '" + word + "' in for",
            Words.advice(
                word,
                circumstances.stream()
                    .flatMap(c -> c.cases().stream())
                    .map(Circumstance.Case::id)
                    .toList()));
      }
      known.ifPresent(on::add);
    }
    return new FixStep.Terms(
        on,
        fields.has("risk") ? Optional.of(EntryReader.risk(fields)) : Optional.empty(),
        fields.text("caution"),
        fields.text("undo"),
        fields.text("save-first"));
  }

  private static FixStep filled(FixStep step, Map<String, String> values) {
    FixStep.Terms t = step.terms();
    FixStep.Terms terms =
        new FixStep.Terms(
            t.on(),
            t.risk(),
            Placeholders.filled(t.caution(), values),
            Placeholders.filled(t.undo(), values),
            Placeholders.filled(t.saveFirst(), values));
    if (step instanceof FixStep.Group group) {
      return new FixStep.Group(
          Placeholders.filled(group.title(), values),
          group.block(),
          group.steps().stream().map(s -> filled(s, values)).toList(),
          terms);
    }
    return new FixStep.Doing(Placeholders.filled(((FixStep.Doing) step).text(), values), terms);
  }

  private static Set<String> placeholders(FixStep step) {
    Set<String> names = new LinkedHashSet<>();
    FixStep.Terms t = step.terms();
    for (String text : List.of(t.caution(), t.undo(), t.saveFirst())) {
      names.addAll(Placeholders.in(text));
    }
    if (step instanceof FixStep.Group group) {
      group.steps().forEach(s -> names.addAll(placeholders(s)));
    } else {
      names.addAll(Placeholders.in(((FixStep.Doing) step).text()));
    }
    return names;
  }

  /** The gravest risk that is said of any of the steps. */
  static Risk gravest(List<FixStep> steps) {
    Risk gravest = Risk.NONE;
    for (FixStep step : steps) {
      Risk own = step.terms().risk().orElse(Risk.NONE);
      Risk inner = step instanceof FixStep.Group group ? gravest(group.steps()) : Risk.NONE;
      Risk worse = own.compareTo(inner) > 0 ? own : inner;
      gravest = worse.compareTo(gravest) > 0 ? worse : gravest;
    }
    return gravest;
  }

  /** What the steps say to beware of and to save. */
  static List<String> cautions(List<FixStep> steps) {
    List<String> all = new ArrayList<>();
    for (FixStep step : steps) {
      all.add(step.terms().caution());
      all.add(step.terms().saveFirst());
      if (step instanceof FixStep.Group group) {
        all.addAll(cautions(group.steps()));
      }
    }
    return all;
  }
}
