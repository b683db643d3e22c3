package standstill.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import standstill.base.Label;
import standstill.base.yaml.BaseText;
import standstill.base.yaml.LabelReader;
import standstill.log.Gunzip;
import standstill.log.TooLargeException;
import standstill.score.LabelledLog;
import standstill.text.Position;
import standstill.text.Problem;

/** Reads the labelled logs beside a base. */
public final class BootFolder {
  /** Name of the folder, beside the base's own. */
  public static final String NAME = "boots";

  private static final int LARGEST_LOG = 100 << 20;
  static final int LARGEST_LABEL = 1 << 20;

  private BootFolder() {}

  /**
   * Labelled logs and what is wrong with them.
   *
   * @param logs those that could be read
   * @param problems the others, and logs without a label
   */
  public record Boots(List<LabelledLog> logs, List<Problem> problems) {
    public Boots {
      logs = List.copyOf(logs);
      problems = problems.stream().sorted().toList();
    }
  }

  /**
   * Reads a folder of labelled logs.
   *
   * @throws IOException when the folder can't be read
   */
  public static Boots read(Path folder) throws IOException {
    LabelReader.Labels labels = labels(folder);
    BaseFiles.Found logs =
        BaseFiles.in(
            folder, folder.toString(), name -> name.endsWith(".log") || name.endsWith(".log.gz"));
    List<Problem> problems = new ArrayList<>(labels.problems());
    problems.addAll(logs.problems());
    Map<String, Path> byName = new HashMap<>();
    logs.files().forEach(log -> byName.put(log.getFileName().toString(), log));
    Set<String> labelled = new HashSet<>();
    List<LabelledLog> read = new ArrayList<>();
    for (Label label : labels.labels()) {
      labelled.add(label.log());
      log(label, byName.get(label.log()), problems).ifPresent(read::add);
    }
    for (Path log : logs.files()) {
      String name = log.getFileName().toString();
      if (!labelled.contains(name)) {
        problems.add(
            Problem.error(
                Position.ofFile(folder + "/" + name),
                "log without a label",
                "write " + name.replaceFirst("\\.log(\\.gz)?$", ".yaml") + " beside it"));
      }
    }
    return new Boots(read, problems);
  }

  /** The log of a label; empty, with a problem, when it is missing, too large or unreadable. */
  static Optional<LabelledLog> log(Label label, @Nullable Path log, List<Problem> problems) {
    String why;
    if (log == null) {
      why = "no log '" + label.log() + "' beside this label";
    } else {
      try {
        byte[] bytes = BaseFiles.read(log, LARGEST_LOG);
        return Optional.of(new LabelledLog(label, Gunzip.expand(bytes, LARGEST_LOG)));
      } catch (TooLargeException e) {
        why = "log '" + label.log() + "' is larger than " + LARGEST_LOG + " bytes";
      } catch (IOException e) {
        why = "log '" + label.log() + "' can't be read: " + BaseFiles.reason(e);
      }
    }
    problems.add(Problem.error(label.where(), why, ""));
    return Optional.empty();
  }

  /**
   * Reads the labels alone.
   *
   * @throws IOException when the folder can't be read
   */
  public static LabelReader.Labels labels(Path folder) throws IOException {
    BaseFiles.Found found = BaseFiles.in(folder, folder.toString(), name -> name.endsWith(".yaml"));
    List<Problem> refused = new ArrayList<>(found.problems());
    List<BaseText> texts = new ArrayList<>();
    for (Path path : found.files()) {
      String name = String.valueOf(path.getFileName());
      String shown = folder + "/" + name;
      try {
        texts.add(BaseText.of(NAME + "/" + name, shown, BaseFiles.read(path, LARGEST_LABEL)));
      } catch (IOException e) {
        refused.add(
            Problem.error(Position.ofFile(shown), "can't be read: " + BaseFiles.reason(e), ""));
      }
    }
    LabelReader.Labels read = LabelReader.read(texts);
    refused.addAll(read.problems());
    return new LabelReader.Labels(read.labels(), refused);
  }
}
