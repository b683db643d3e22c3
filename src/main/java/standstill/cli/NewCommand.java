package standstill.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import standstill.base.Base;
import standstill.base.Risk;
import standstill.base.Stage;
import standstill.base.Symptom;
import standstill.base.yaml.BaseReader;
import standstill.store.BaseFolder;

/** Writes a new entry, with blanks for what nobody has said yet. */
@Command(
    name = "new",
    mixinStandardHelpOptions = true,
    description = {
      "Writes a new entry of a base: a fault, a check, a symptom or a false trail (trail).",
      "On a terminal it asks; an empty answer leaves a blank. A script says it all with options. With a line of"
          + " a log it proposes the pattern of the sign and the stage. Every blank fails 'check' at its place"
          + " until it is filled with what is true."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  standstill new fault dock-does-not-answer --from boot.log:212",
      "  standstill new trail dock-slow-at-first --from boot.log:212 --into kb",
      "  standstill new fault disk-tray-unplugged --from boot.log:212 --stage devices \\",
      "      --title 'The tray of the disk is unplugged' --set part=disk --into kb",
      "  standstill new check lamps-of-dock --title 'Is the lamp of the dock lit?'",
    })
final class NewCommand implements Callable<Integer> {
  private static final List<String> KINDS = List.of("fault", "check", "symptom", "trail");
  private static final List<String> STAGES =
      Arrays.stream(Stage.values()).map(Stage::word).toList();

  @Parameters(index = "0", paramLabel = "KIND", description = "fault, check, symptom or trail.")
  private String kind = "";

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "ID",
      description = "Names the entry for ever: lower-case words joined by hyphens.")
  private @Nullable String id;

  @Option(
      names = "--from",
      paramLabel = "LOG:LINE",
      description = "For a fault or a trail: the line to make the sign of, from 1.")
  private @Nullable String from;

  @Option(names = "--title", paramLabel = "TEXT", description = "The title.")
  private @Nullable String title;

  @Option(
      names = "--stage",
      paramLabel = "WORD",
      description = "The stage; that of the line in the log when left out.")
  private @Nullable String stage;

  @Option(
      names = "--set",
      paramLabel = "KEY=TEXT",
      description =
          "Any other key that would be asked for, such as part, how-common, about, shows, elsewhere; as often"
              + " as you like.")
  private Map<String, String> set = new LinkedHashMap<>();

  @Option(
      names = "--into",
      paramLabel = "DIR",
      defaultValue = "kb",
      description = "Folder of the base; ${DEFAULT-VALUE} when left out.")
  private Path into = Path.of("kb");

  @Option(
      names = "--questions",
      description = "Ask although no terminal is there; standard input answers, a line each.")
  private boolean questions;

  @Spec private @Nullable CommandSpec spec;

  @Override
  public Integer call() {
    if (!KINDS.contains(kind)) {
      throw new Failure(
          ExitCode.USAGE, "'" + kind + "' is no kind of entry: " + String.join(", ", KINDS));
    }
    boolean signed = kind.equals("fault") || kind.equals("trail");
    if (from != null && !signed) {
      throw new Failure(
          ExitCode.USAGE, "--from is for a fault or a trail; a " + kind + " has no sign");
    }
    Base base = base();
    if (id != null) {
      free(base, id);
    }
    PrintWriter out = Output.of(spec);
    Optional<Interview> interview =
        questions || System.console() != null
            ? Optional.of(
                new Interview(
                    new BufferedReader(new InputStreamReader(System.in, Style.outputCharset())),
                    out))
            : Optional.empty();
    Optional<LineForSign> line =
        from == null
            ? Optional.empty()
            : Optional.of(LineForSign.read(LogPlace.of(from), base, into, interview, out));
    line.ifPresent(l -> l.tell(out));
    List<Question> asked = questions(base);
    Map<String, String> given = given(asked);
    String named = id(base, interview);
    for (Question question : asked) {
      String suggestion =
          question.key().equals("stage") ? line.map(l -> l.stage().word()).orElse("") : "";
      if (!given.containsKey(question.key())) {
        interview
            .flatMap(i -> i.ask(question, suggestion))
            .or(() -> suggestion.isEmpty() ? Optional.empty() : Optional.of(suggestion))
            .ifPresent(answer -> given.put(question.key(), answer));
      }
    }
    if (kind.equals("fault") && !given.containsKey("stage")) {
      throw new Failure(
          ExitCode.USAGE,
          "a fault needs a stage, which is also its folder: --stage with one of "
              + String.join(", ", STAGES));
    }
    write(base, named, asked, given, line, out);
    return ExitCode.OK;
  }

  /** The base as far as it can be read: other skeletons in it may still have blanks. */
  private Base base() {
    try {
      Base base = BaseFolder.read(into).base();
      if (base.families().isEmpty()) {
        throw new Failure(
            ExitCode.BASE, into + " is no base, or its scale or families have errors; see check");
      }
      return base;
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, "the fault base could not be read: " + e.getMessage());
    }
  }

  private List<Question> questions(Base base) {
    List<String> chances = List.copyOf(base.scale().chances().keySet());
    List<Question> all = new ArrayList<>();
    all.add(Question.text("title", TITLES.getOrDefault(kind, "")));
    switch (kind) {
      case "fault":
        all.add(Question.word("stage", "where the cause belongs", STAGES));
        all.add(
            Question.word(
                "part",
                "part of the machine, from scale.yaml",
                List.copyOf(base.scale().parts().keySet())));
        all.add(
            Question.word(
                "how-common",
                "among causes of stalled boots",
                List.copyOf(base.scale().frequencies().keySet())));
        all.add(Question.text("about", "what is wrong, and how a machine gets into this state"));
        all.add(
            Question.words(
                "symptoms",
                "what a person sees: ids from symptoms.yaml, with commas",
                base.symptoms().stream().map(Symptom::id).toList()));
        all.add(Question.word("shows", "chance that this fault leaves the line", chances));
        all.add(
            Question.word("elsewhere", "chance of the line with another cause, or none", chances));
        all.add(Question.text("by", "who looked at the entry"));
        break;
      case "check":
        all.add(Question.text("minutes", "how long it takes, from 1"));
        all.add(
            Question.word(
                "risk", "what it can harm", Arrays.stream(Risk.values()).map(Risk::word).toList()));
        break;
      case "symptom":
        all.add(Question.words("stages", "where it is seen, with commas", STAGES));
        all.add(Question.text("look", "what the screen shows"));
        break;
      default:
        all.add(Question.text("why", "why the line is printed and stops nothing"));
        all.add(Question.text("matters-when", "the case in which it does matter"));
    }
    return all;
  }

  private static final Map<String, String> TITLES =
      Map.of(
          "fault", "the cause in a sentence without full stop",
          "check", "what to find out, as a question",
          "symptom", "what is seen, in a sentence without full stop",
          "trail", "what the lines are, without full stop");

  /** What options say, checked. */
  private Map<String, String> given(List<Question> asked) {
    Map<String, String> given = new LinkedHashMap<>(set);
    if (title != null) {
      given.put("title", title);
    }
    if (stage != null) {
      given.put(kind.equals("symptom") ? "stages" : "stage", stage);
    }
    given.replaceAll((key, value) -> Question.tidy(value));
    given.forEach(
        (key, value) -> {
          Question question =
              asked.stream()
                  .filter(q -> q.key().equals(key))
                  .findFirst()
                  .orElseThrow(
                      () ->
                          new Failure(
                              ExitCode.USAGE,
                              "a new "
                                  + kind
                                  + " is not asked for '"
                                  + key
                                  + "'; keys: "
                                  + String.join(", ", asked.stream().map(Question::key).toList())));
          question
              .wrong(value)
              .ifPresent(
                  wrong -> {
                    throw new Failure(ExitCode.USAGE, key + ": " + wrong);
                  });
        });
    return given;
  }

  private String id(Base base, Optional<Interview> interview) {
    String named =
        Optional.ofNullable(id)
            .or(
                () ->
                    interview.flatMap(
                        i ->
                            i.ask(
                                Question.text(
                                    "id", "names the " + kind + " for ever: " + BaseReader.ID_FORM),
                                "")))
            .orElseThrow(
                () ->
                    new Failure(
                        ExitCode.USAGE, "which id? new " + kind + " ID; " + BaseReader.ID_FORM));
    free(base, named);
    return named;
  }

  /** Refuses what is no id, or the id of another entry of the kind. */
  private void free(Base base, String named) {
    if (!BaseReader.isId(named)) {
      throw new Failure(ExitCode.USAGE, "'" + named + "' is not an id: " + BaseReader.ID_FORM);
    }
    boolean taken =
        switch (kind) {
          case "fault" ->
              base.fault(named).isPresent()
                  || STAGES.stream().anyMatch(s -> Files.exists(faultFile(s, named)));
          case "check" -> base.check(named).isPresent();
          case "symptom" -> base.symptom(named).isPresent();
          default -> base.trail(named).isPresent();
        };
    if (taken) {
      throw new Failure(ExitCode.USAGE, "the id '" + named + "' is taken");
    }
  }

  private Path faultFile(String stageWord, String named) {
    return into.resolve("faults").resolve(stageWord).resolve(named + ".yaml");
  }

  private void write(
      Base base,
      String named,
      List<Question> asked,
      Map<String, String> given,
      Optional<LineForSign> line,
      PrintWriter out) {
    String today = LocalDate.now().toString();
    Skeleton skeleton = new Skeleton(asked, given);
    String family = line.map(LineForSign::family).orElse(base.mostCommonFamily());
    Skeleton.SignLine sign = line.map(LineForSign::sign).orElse(Skeleton.SignLine.NONE);
    Path file;
    String text;
    switch (kind) {
      case "fault":
        file = faultFile(given.getOrDefault("stage", ""), named);
        text = skeleton.fault(named, family, sign, today);
        break;
      case "check":
        file = into.resolve("checks").resolve(named + ".yaml");
        text = skeleton.check(named, today);
        break;
      case "symptom":
        file = into.resolve("symptoms.yaml");
        text = skeleton.symptom(named, today);
        break;
      default:
        file = into.resolve("trails").resolve(named + ".yaml");
        text = skeleton.trail(named, family, sign, today);
    }
    try {
      if (kind.equals("symptom")) {
        append(file, text);
      } else {
        Files.createDirectories(file.getParent());
        Files.writeString(file, text, StandardOpenOption.CREATE_NEW);
      }
    } catch (FileAlreadyExistsException e) {
      throw new Failure(ExitCode.USAGE, file + " is there already and was left as it is");
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, file + " could not be written: " + e.getMessage());
    }
    out.println((kind.equals("symptom") ? "added to " : "wrote ") + file);
    Paragraph.lines("still blank: ", "  ", String.join(", ", skeleton.blanks()))
        .forEach(out::println);
    out.println("'check " + into + "' names each blank until it is filled");
    out.flush();
  }

  private static void append(Path file, String text) throws IOException {
    String before = Files.exists(file) ? Files.readString(file, StandardCharsets.UTF_8) : "";
    String between = before.isEmpty() || before.endsWith("\n") ? "" : "\n";
    Files.writeString(file, between + text, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
  }
}
