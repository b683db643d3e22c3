package standstill.base.yaml;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import standstill.base.Circumstance;
import standstill.base.StepBlock;

/** The files of {@code kb/steps/}, read when a step first uses them: one block may use another. */
final class StepBlocks implements StepReader.Blocks {
  private final Map<String, BaseText> files = new TreeMap<>();
  private final StepReader steps;
  private final BiFunction<BaseText, Function<Sink, Optional<StepBlock>>, Optional<StepBlock>>
      reading;
  private final Map<String, Optional<StepBlock>> read = new HashMap<>();
  private final Set<String> open = new HashSet<>();

  /**
   * Blocks that are still to be read.
   *
   * @param reading reads a file with a sink of its own and keeps its problems
   */
  StepBlocks(
      Collection<BaseText> all,
      List<Circumstance> circumstances,
      BiFunction<BaseText, Function<Sink, Optional<StepBlock>>, Optional<StepBlock>> reading) {
    all.forEach(file -> files.put(file.stem(), file));
    this.reading = reading;
    this.steps = new StepReader(circumstances, this);
  }

  @Override
  public Set<String> ids() {
    return files.keySet();
  }

  @Override
  public Optional<StepBlock> get(String id) {
    BaseText file = files.get(id);
    if (file == null || open.contains(id)) {
      return Optional.empty();
    }
    if (!read.containsKey(id)) {
      open.add(id);
      read.put(id, reading.apply(file, sink -> read(steps, file, sink, open)));
      open.remove(id);
    }
    return read.getOrDefault(id, Optional.empty());
  }

  /** All blocks without errors, in the order of their ids. */
  List<StepBlock> all() {
    List<StepBlock> all = new ArrayList<>();
    files.keySet().forEach(id -> get(id).ifPresent(all::add));
    return all;
  }

  /** Reads one block. */
  static Optional<StepBlock> read(
      StepReader steps, BaseText file, Sink sink, Set<String> openBlocks) {
    Optional<Fields> root = Fields.root(sink, Shapes.block());
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    Map<String, StepBlock.Parameter> parameters = new LinkedHashMap<>();
    Fields map = fields.map("parameters");
    for (String name : map.keys()) {
      Fields parameter = map.map(name);
      parameters.put(
          name, new StepBlock.Parameter(parameter.text("means"), parameter.text("unknown")));
    }
    for (Fields.Item item : fields.mixed("steps")) {
      if (openBlocks.contains(item.map().text("use"))) {
        item.map().error("use", "block uses itself", "write the steps out");
      }
    }
    StepBlock block =
        new StepBlock(
            EntryReader.id(fields, file),
            fields.text("title"),
            fields.text("about"),
            parameters,
            steps.read(fields, "steps", parameters.keySet()),
            EntryReader.risk(fields),
            EntryReader.sources(fields),
            EntryReader.reviewed(fields),
            fields.position("id"));
    if (StepReader.gravest(block.steps()).compareTo(block.risk()) > 0) {
      fields.error("risk", "a step is said to be riskier than the block", "name the gravest risk");
    }
    return sink.hasErrors() ? Optional.empty() : Optional.of(block);
  }
}
