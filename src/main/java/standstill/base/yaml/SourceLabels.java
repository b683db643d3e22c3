package standstill.base.yaml;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.error.MarkedYAMLException;
import org.yaml.snakeyaml.error.YAMLException;
import standstill.base.Label;
import standstill.base.Stage;
import standstill.text.Position;
import standstill.text.Problem;

/**
 * Reads the labels of a source that other people keep: one list for all of its logs, with the cause
 * in words, and beside it which faults of the base a fair person would call the cause.
 */
public final class SourceLabels {
  private static final int LONGEST = 4 << 20;

  private final List<Label> labels = new ArrayList<>();
  private final List<Problem> problems = new ArrayList<>();

  private SourceLabels() {}

  /**
   * Reads the labels of one source.
   *
   * @param labels the list, each item with {@code file}, {@code healthy} and {@code stage}
   * @param causes for each log, ids of the faults that are its cause; empty where the base has none
   * @param near for each log, ids of what is true but coarser
   * @param stops for each log, ids of the stops that are right
   */
  public static LabelReader.Labels read(
      BaseText labels, List<BaseText> causes, List<BaseText> near, List<BaseText> stops) {
    SourceLabels reader = new SourceLabels();
    Map<String, List<String>> isCause = reader.judged(causes);
    Map<String, List<String>> isNear = reader.judged(near);
    Map<String, List<String>> isStop = reader.judged(stops);
    if (reader.load(labels) instanceof List<?> list) {
      for (Object item : list) {
        if (item instanceof Map<?, ?> map && map.get("file") instanceof String file) {
          reader.add(
              labels,
              file,
              map,
              isCause.get(file),
              isNear.getOrDefault(file, List.of()),
              isStop.getOrDefault(file, List.of()));
        }
      }
    } else {
      reader.problems.add(
          Problem.error(Position.ofFile(labels.shownAs()), "not a list of labels", ""));
    }
    return new LabelReader.Labels(reader.labels, reader.problems);
  }

  private void add(
      BaseText file,
      String log,
      Map<?, ?> map,
      @org.jspecify.annotations.Nullable List<String> causes,
      List<String> near,
      List<String> stops) {
    boolean healthy = Boolean.TRUE.equals(map.get("healthy"));
    if (!healthy && causes == null) {
      return; // Nobody has said yet what the right answer is.
    }
    List<String> right = causes == null ? List.of() : causes;
    boolean listed = !right.isEmpty();
    Set<Stage> also = EnumSet.noneOf(Stage.class);
    for (Object word : map.get("stage_also") instanceof List<?> list ? list : List.of()) {
      Stage.of(String.valueOf(word)).ifPresent(also::add);
    }
    if (healthy && !map.containsKey("stage")) {
      also.addAll(EnumSet.allOf(Stage.class)); // It says how it ends, not in which stage.
    }
    labels.add(
        new Label(
            log.replaceFirst("\\.log$", ""),
            log,
            healthy ? Label.HEALTHY : listed ? right.get(0) : Label.UNLISTED,
            listed ? right.subList(1, right.size()) : List.of(),
            near,
            Stage.of(String.valueOf(map.get("stage"))).orElse(Stage.DONE),
            also,
            stops,
            Label.CUTS.get(0),
            "see the source's own labels",
            "see the source",
            Position.ofFile(file.shownAs())));
  }

  /** Lists by log; what a later file says of a log takes the place of what an earlier one says. */
  private Map<String, List<String>> judged(List<BaseText> files) {
    Map<String, List<String>> all = new LinkedHashMap<>();
    for (BaseText file : files) {
      if (load(file) instanceof Map<?, ?> map) {
        map.forEach(
            (log, ids) -> {
              if (ids instanceof List<?> list) {
                all.put(String.valueOf(log), list.stream().map(id -> String.valueOf(id)).toList());
              }
            });
      }
    }
    return all;
  }

  private @org.jspecify.annotations.Nullable Object load(BaseText file) {
    LoaderOptions options = new LoaderOptions();
    options.setCodePointLimit(LONGEST);
    options.setMaxAliasesForCollections(0);
    options.setAllowDuplicateKeys(false);
    try {
      return new Yaml(new SafeConstructor(options)).load(file.text());
    } catch (MarkedYAMLException e) {
      var mark = e.getProblemMark();
      problems.add(
          Problem.error(
              mark == null
                  ? Position.ofFile(file.shownAs())
                  : new Position(file.shownAs(), mark.getLine() + 1, mark.getColumn() + 1),
              "not YAML that can be read: " + e.getProblem(),
              ""));
    } catch (YAMLException e) {
      problems.add(Problem.error(Position.ofFile(file.shownAs()), "not YAML that can be read", ""));
    }
    return null;
  }
}
