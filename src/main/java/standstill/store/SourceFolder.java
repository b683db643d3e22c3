package standstill.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import standstill.base.Label;
import standstill.base.yaml.BaseText;
import standstill.base.yaml.LabelReader;
import standstill.base.yaml.SourceLabels;
import standstill.score.LabelledLog;
import standstill.score.Source;
import standstill.text.Problem;

/**
 * Reads folders of labelled logs that other people keep: each folder with a {@code labels.yaml} is
 * one source. Which faults are the cause of a log stands in {@code accept.yaml}, what is near in
 * {@code near.yaml}; a team adds its own judgement in a folder of its own.
 */
public final class SourceFolder {
  private SourceFolder() {}

  /**
   * Sources and what is wrong with them.
   *
   * @param sources those with at least one judged log
   * @param problems what could not be read
   */
  public record Sources(List<Source> sources, List<Problem> problems) {
    public Sources {
      sources = List.copyOf(sources);
      problems = problems.stream().sorted().toList();
    }
  }

  /**
   * Reads all sources below a folder.
   *
   * @param judged folder with {@code NAME-accept.yaml}, {@code NAME-near.yaml} and {@code
   *     NAME-stops.yaml} for the sources; what they say of a log takes precedence
   * @throws IOException when a file can't be read
   */
  public static Sources read(Path folder, Path judged) throws IOException {
    List<Source> sources = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    List<Path> folders;
    try (Stream<Path> list = Files.list(folder)) {
      folders =
          list.filter(each -> Files.isRegularFile(each.resolve("labels.yaml"))).sorted().toList();
    }
    for (Path each : folders) {
      String name = each.getFileName().toString();
      LabelReader.Labels labels =
          SourceLabels.read(
              text(each.resolve("labels.yaml")),
              texts(each.resolve("accept.yaml"), judged.resolve(name + "-accept.yaml")),
              texts(each.resolve("near.yaml"), judged.resolve(name + "-near.yaml")),
              texts(judged.resolve(name + "-stops.yaml")));
      problems.addAll(labels.problems());
      List<LabelledLog> logs = new ArrayList<>();
      for (Label label : labels.labels()) {
        Path log = each.resolve(label.log());
        BootFolder.log(label, Files.isRegularFile(log) ? log : null, problems).ifPresent(logs::add);
      }
      if (!logs.isEmpty()) {
        sources.add(new Source(name, logs));
      }
    }
    return new Sources(sources, problems);
  }

  private static List<BaseText> texts(Path... files) throws IOException {
    List<BaseText> texts = new ArrayList<>();
    for (Path file : files) {
      if (Files.isRegularFile(file)) {
        texts.add(text(file));
      }
    }
    return texts;
  }

  private static BaseText text(Path file) throws IOException {
    return BaseText.of(
        file.getFileName().toString(),
        file.toString(),
        BaseFiles.read(file, BootFolder.LARGEST_LABEL));
  }
}
