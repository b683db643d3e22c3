package standstill.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
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

  private static final long LARGEST_LOG = 100L << 20;

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
    List<Path> logs = files(folder, name -> name.endsWith(".log") || name.endsWith(".log.gz"));
    List<Problem> problems = new ArrayList<>(labels.problems());
    List<LabelledLog> read = new ArrayList<>();
    for (Label label : labels.labels()) {
      Path log = folder.resolve(label.log());
      if (!Files.isRegularFile(log)) {
        problems.add(
            Problem.error(label.where(), "no log '" + label.log() + "' beside this label", ""));
        continue;
      }
      try {
        read.add(new LabelledLog(label, Gunzip.expand(Files.readAllBytes(log), LARGEST_LOG)));
      } catch (TooLargeException e) {
        problems.add(
            Problem.error(
                label.where(),
                "log '" + label.log() + "' is larger than " + LARGEST_LOG + " bytes",
                ""));
      }
    }
    for (Path log : logs) {
      String name = log.getFileName().toString();
      if (labels.labels().stream().noneMatch(l -> l.log().equals(name))) {
        problems.add(
            Problem.error(
                Position.ofFile(log.toString()),
                "log without a label",
                "write " + name.replaceFirst("\\.log(\\.gz)?$", ".yaml") + " beside it"));
      }
    }
    return new Boots(read, problems);
  }

  /**
   * Reads the labels alone.
   *
   * @throws IOException when the folder can't be read
   */
  public static LabelReader.Labels labels(Path folder) throws IOException {
    List<BaseText> texts = new ArrayList<>();
    for (Path path : files(folder, name -> name.endsWith(".yaml"))) {
      texts.add(
          new BaseText(NAME + "/" + path.getFileName(), path.toString(), Files.readString(path)));
    }
    return LabelReader.read(texts);
  }

  private static List<Path> files(Path folder, Predicate<String> wanted) throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.filter(path -> wanted.test(path.getFileName().toString())).sorted().toList();
    }
  }
}
