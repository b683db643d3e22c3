package standstill.base.yaml;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.base.Label;
import standstill.text.Problem;

/** Reads the labels of labelled logs. */
public final class LabelReader {
  private LabelReader() {}

  /**
   * Labels and the problems with them.
   *
   * @param labels those that are sound
   * @param problems what is wrong with the others
   */
  public record Labels(List<Label> labels, List<Problem> problems) {
    public Labels {
      labels = List.copyOf(labels);
      problems = problems.stream().sorted().toList();
    }
  }

  /** Reads labels, in the order of the files. */
  public static Labels read(List<BaseText> files) {
    List<Label> labels = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    for (BaseText file : files) {
      Sink sink = new Sink(file);
      label(file, sink).ifPresent(labels::add);
      problems.addAll(sink.problems());
    }
    return new Labels(labels, problems);
  }

  private static Optional<Label> label(BaseText file, Sink sink) {
    Optional<Fields> root = Fields.root(sink, Shapes.label());
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    String log = fields.text("log");
    if (!log.isEmpty()
        && !(log.equals(file.stem() + ".log") || log.equals(file.stem() + ".log.gz"))) {
      fields.error(
          "log",
          "'" + log + "' is not the log beside this label",
          "allowed: " + file.stem() + ".log or " + file.stem() + ".log.gz");
    }
    Label label =
        new Label(
            file.stem(),
            log,
            fields.text("label"),
            fields.texts("also"),
            fields.texts("general"),
            EntryReader.stage(fields),
            Set.of(),
            fields.texts("stops"),
            fields.text("cut"),
            fields.text("made"),
            fields.text("licence"),
            fields.position("label"));
    return sink.hasErrors() ? Optional.empty() : Optional.of(label);
  }
}
