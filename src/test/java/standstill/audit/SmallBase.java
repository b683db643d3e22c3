package standstill.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import standstill.base.Label;
import standstill.base.Stage;
import standstill.base.yaml.BaseReader;
import standstill.base.yaml.BaseText;
import standstill.base.yaml.Loaded;
import standstill.rank.Ranker;
import standstill.score.LabelledLog;
import standstill.text.Position;
import standstill.text.Problem;

/** Builds a small base out of YAML, with the shipped scale and family. All entries are invented. */
public final class SmallBase {
  static final LocalDate TODAY = LocalDate.of(2026, 11, 26);

  private final List<BaseText> files = new ArrayList<>();
  private final List<LabelledLog> logs = new ArrayList<>();
  private String symptoms =
      "- {id: dark, title: Dark, stages: [kernel], look: It is dark., reviewed: {on: 2026-11-01, by: ada}}\n";
  private String reviewed = "2026-11-01";

  public SmallBase() throws IOException {
    for (String name : List.of("scale.yaml", "families/linux.yaml", "families/pc.yaml")) {
      files.add(BaseText.of(name, "kb/" + name, Files.readAllBytes(Path.of("kb", name))));
    }
  }

  /** What the entries added from now on say of their review. */
  SmallBase reviewed(String day) {
    reviewed = day;
    return this;
  }

  SmallBase symptoms(String yaml) {
    symptoms = yaml;
    return this;
  }

  /** A sign in one line. */
  public static String sign(String line, String shows, String elsewhere, String seen) {
    return String.format(
        "{id: %s, line: '%s', shows: %s, elsewhere: %s, seen: ['%s'], unlike: ['nothing of it']}",
        id(seen), line, shows, elsewhere, seen);
  }

  /** An id out of the text that a sign matches. */
  private static String id(String seen) {
    String words = seen.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    return words.substring(0, Math.min(40, words.length())).replaceAll("^-|-$", "");
  }

  /** A fault of the stage kernel; {@code more} holds keys that it has besides. */
  public SmallBase fault(String id, String howCommon, String more, String... signs) {
    return file(
        "faults/kernel/" + id + ".yaml",
        "id: "
            + id
            + "\ntitle: Invented\nfamily: [linux]\nstage: kernel\npart: disk\nhow-common: "
            + howCommon
            + "\nabout: Invented.\nsymptoms: [dark]\nsigns:\n  - "
            + String.join("\n  - ", signs)
            + "\nfixes: [{id: mend-it, title: Mend it, steps: [Mend it.], minutes: 5, cures: usually, risk: none,"
            + " prove: Light., undo: Nothing., cautions: []}]\nprevent: Care.\n"
            + more);
  }

  SmallBase check(String id) {
    return file(
        "checks/" + id + ".yaml",
        "id: "
            + id
            + "\ntitle: Is it?\nhow: [Look.]\nrisk: none\nanswers:\n"
            + "  - {id: yes-it-is, text: It is, otherwise: often}\n"
            + "  - {id: no-it-is-not, text: It is not, otherwise: often}\n");
  }

  SmallBase trail(String id, String sign) {
    return file(
        "trails/" + id + ".yaml",
        "id: "
            + id
            + "\ntitle: Invented\nfamily: [linux]\nsigns: ["
            + sign
            + "]\nwhy: It is.\nmatters-when: Never.\n");
  }

  private SmallBase file(String name, String text) {
    String end =
        "sources: [{title: 'common practice, no source'}]\nreviewed: {on: "
            + reviewed
            + ", by: ada}\n";
    files.add(new BaseText(name, "kb/" + name, text + end));
    return this;
  }

  SmallBase boot(String label, String log, String... also) {
    logs.add(
        new LabelledLog(
            new Label(
                "boot-" + logs.size(),
                "x.log",
                label,
                List.of(also),
                List.of(),
                Stage.KERNEL,
                Set.of(),
                List.of(),
                "whole",
                "invented",
                "CC0-1.0",
                Position.ofFile("kb/boots/boot-" + logs.size() + ".yaml")),
            log.getBytes(StandardCharsets.UTF_8)));
    return this;
  }

  public Loaded load() {
    List<BaseText> all = new ArrayList<>(files);
    all.add(new BaseText("symptoms.yaml", "kb/symptoms.yaml", symptoms));
    Loaded loaded = BaseReader.read(all, Ranker.MODEL_NUMBERS);
    assertEquals(List.of(), loaded.problems());
    return loaded;
  }

  List<LabelledLog> logs() {
    return logs;
  }

  /** What a rule finds, each as its first line. */
  List<String> problems(Rule rule) {
    return found(rule).stream().map(p -> p.toString().lines().findFirst().orElse("")).toList();
  }

  List<Problem> found(Rule rule) {
    return rule.problems(Subject.of(load().base(), logs, TODAY));
  }
}
