package standstill.edit;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.eclipse.jgit.lib.ObjectId;
import org.jspecify.annotations.Nullable;
import standstill.audit.Audit;
import standstill.base.Base;
import standstill.base.yaml.BaseText;
import standstill.base.yaml.LabelReader;
import standstill.base.yaml.Loaded;
import standstill.score.LabelledLog;
import standstill.store.BaseFolder;
import standstill.text.Position;
import standstill.text.Problem;

/**
 * Reads the base of a commit with one entry's text changed, and says what is wrong then that was
 * not wrong before. Thread-safe; it keeps the last commit's texts and the last few answers.
 */
public final class Checker {
  /** A text is checked at each step from typing to approval. */
  private static final int MOST_KEPT = 6;

  private final GitBase git;
  private final Map<Asked, Checked> kept = new LinkedHashMap<>();
  private @Nullable Before last;

  private record Asked(String commit, EntryName entry, String text) {}

  private record Before(String commit, List<BaseText> texts, Base base, Set<String> problems) {}

  Checker(GitBase git) {
    this.git = git;
  }

  /**
   * What came of a text.
   *
   * @param before the base as it is
   * @param base the base with the text
   * @param problems those that the text brings, its own first
   * @param boot the labelled boot that the text is, if it is a sound one; the base stays then
   */
  public record Checked(
      Base before, Base base, List<Problem> problems, Optional<LabelledLog> boot) {
    public Checked {
      problems = List.copyOf(problems);
    }

    /** The first problem for which the base can't be used. */
    public Optional<String> firstError() {
      return problems.stream().filter(Problem::isError).findFirst().map(Checker::line);
    }
  }

  private static String line(Problem problem) {
    return problem.position() + ": " + problem.message();
  }

  /** Checks a text for an entry. */
  public Checked check(String commit, EntryName entry, String text) throws IOException {
    Asked asked = new Asked(commit, entry, text);
    synchronized (kept) {
      Checked known = kept.get(asked);
      if (known != null) {
        return known;
      }
    }
    Checked checked = read(commit, entry, text);
    synchronized (kept) {
      kept.put(asked, checked);
      if (kept.size() > MOST_KEPT) {
        kept.remove(kept.keySet().iterator().next());
      }
    }
    return checked;
  }

  private Checked read(String commit, EntryName entry, String text) throws IOException {
    Before before = before(commit);
    if (entry.isBoot()) {
      return readBoot(before.base(), entry, BootText.of(text));
    }
    List<BaseText> texts = new ArrayList<>();
    for (BaseText each : before.texts()) {
      if (!each.name().equals(entry.path())) {
        texts.add(each);
      }
    }
    texts.add(new BaseText(entry.path(), entry.path(), text));
    texts.sort(Comparator.comparing(BaseText::name));
    Loaded loaded = BaseFolder.of(texts);
    List<Problem> all = all(loaded);
    List<Problem> own = all.stream().filter(p -> p.position().file().equals(entry.path())).toList();
    if (own.stream().anyMatch(Problem::isError)) {
      // The entry is left out of the base then, and what others miss of it is not to be told.
      return new Checked(before.base(), loaded.base(), own, Optional.empty());
    }
    // What was wrong elsewhere before is not this text's doing.
    List<Problem> problems = new ArrayList<>(own);
    all.stream()
        .filter(p -> !p.position().file().equals(entry.path()))
        .filter(p -> !before.problems().contains(line(p)))
        .forEach(problems::add);
    return new Checked(before.base(), loaded.base(), problems, Optional.empty());
  }

  private static Checked readBoot(Base base, EntryName entry, BootText boot) {
    LabelReader.Labels read =
        LabelReader.read(List.of(new BaseText(entry.path(), entry.path(), boot.label())));
    List<Problem> problems = new ArrayList<>(read.problems());
    Position file = Position.ofFile(entry.path());
    if (boot.log().isBlank()) {
      problems.add(
          Problem.error(
              file, "there is no log", "the log stands below the line " + BootText.MARK.strip()));
    }
    if (boot.log().lines().limit(BootText.MOST_LINES + 1L).count() > BootText.MOST_LINES) {
      problems.add(
          Problem.error(
              file,
              "the log has more than " + BootText.MOST_LINES + " lines",
              "keep one boot, up to where it stopped"));
    }
    Optional<LabelledLog> labelled =
        read.labels().stream()
            .findFirst()
            .map(l -> new LabelledLog(l, boot.log().getBytes(StandardCharsets.UTF_8)));
    if (labelled.isPresent()) {
      if (!entry.log().endsWith("/" + labelled.get().label().log())) {
        problems.add(
            Problem.error(
                labelled.get().label().where(),
                "the log of this label is another file",
                "write log: " + entry.id() + ".log"));
      }
      problems.addAll(Audit.problems(base, labelled.get()));
    }
    problems.sort(null);
    return new Checked(
        base,
        base,
        problems,
        problems.stream().anyMatch(Problem::isError) ? Optional.empty() : labelled);
  }

  /** The base of a commit. */
  public Base base(String commit) throws IOException {
    return before(commit).base();
  }

  private static List<Problem> all(Loaded loaded) {
    List<Problem> all = new ArrayList<>(loaded.problems());
    all.addAll(Audit.problems(loaded.base()));
    all.sort(null);
    return all;
  }

  private synchronized Before before(String commit) throws IOException {
    Before kept = last;
    if (kept != null && kept.commit().equals(commit)) {
      return kept;
    }
    List<BaseText> texts = git.texts(ObjectId.fromString(commit));
    Loaded loaded = BaseFolder.of(texts);
    Set<String> problems = new HashSet<>();
    all(loaded).forEach(p -> problems.add(line(p)));
    Before made = new Before(commit, texts, loaded.base(), problems);
    last = made;
    return made;
  }
}
