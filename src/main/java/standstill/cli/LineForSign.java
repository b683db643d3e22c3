package standstill.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import standstill.base.Base;
import standstill.base.Stage;
import standstill.disguise.Disguise;
import standstill.log.Boot;
import standstill.log.BootLog;
import standstill.log.LogLine;
import standstill.match.Hit;
import standstill.mine.Candidate;
import standstill.mine.Generalised;
import standstill.mine.Miner;
import standstill.report.Diagnoser;
import standstill.report.Sighting;

/**
 * A line of a log that becomes a sign.
 *
 * @param family of the log
 * @param stage that the boot had reached
 * @param generalised the proposed pattern
 * @param seen the line's message, identifiers in it replaced by stand-ins where the pattern allows
 * @param disguised whether something was replaced
 * @param explainedBy what in the base stands on the line already; empty for nothing
 * @param healthy in how many healthy boots the pattern matches
 */
record LineForSign(
    String family,
    Stage stage,
    Generalised generalised,
    String seen,
    boolean disguised,
    String explainedBy,
    int healthy) {
  private static final int OFFERED = 9;

  /** Reads a log and takes the line; without a number the person chooses among candidates. */
  static LineForSign read(
      LogPlace place, Base base, Path folder, Optional<Interview> interview, PrintWriter out) {
    Diagnoser diagnoser = new Diagnoser(base);
    BootLog log = diagnoser.read(DiagnoseCommand.InputFile.read(place.log()));
    if (diagnoser.sight(log, 0).isEmpty()) {
      String reason = log.reasonNotALog();
      throw new Failure(
          ExitCode.UNREADABLE,
          place.log() + ": " + (reason.isEmpty() ? "its kernel is not in the base" : reason));
    }
    List<List<String>> healthy = HealthyBoots.beside(Optional.of(folder), diagnoser);
    int number =
        place.line().isPresent()
            ? place.line().getAsInt()
            : chosen(place.log(), log, diagnoser, healthy, interview, out);
    for (int b = log.boots().size(); b > 0; b--) {
      Sighting sighting = diagnoser.sight(log, b).orElseThrow();
      int index = index(sighting.boot(), number);
      if (index >= 0) {
        return of(log, sighting, index, healthy);
      }
    }
    throw new Failure(
        ExitCode.USAGE,
        place.log() + " has no text on line " + number + "; it has " + log.lineCount() + " lines");
  }

  /**
   * The last of the lines that came from that line of the input: what cut into it stands before.
   */
  private static int index(Boot boot, int number) {
    return IntStream.range(0, boot.lines().size())
        .filter(i -> boot.lines().get(i).number() <= number)
        .filter(i -> boot.lines().get(i).lastNumber() >= number)
        .max()
        .orElse(-1);
  }

  private static LineForSign of(
      BootLog log, Sighting sighting, int index, List<List<String>> healthy) {
    LogLine line = sighting.boot().lines().get(index);
    Generalised generalised = Generalised.of(line.message());
    if (!generalised.tells()) {
      throw new Failure(
          ExitCode.USAGE,
          "line " + line.number() + " has no word that a sign could look for: " + line.message());
    }
    String stands = Disguise.of(log).apply(line.message());
    boolean disguised = !stands.equals(line.message()) && generalised.pattern().foundIn(stands);
    return new LineForSign(
        log.family(),
        UnsolvedLogs.stageAt(sighting.trace(), index),
        generalised,
        disguised ? stands : line.message(),
        disguised,
        explainedBy(sighting, index),
        (int)
            healthy.stream()
                .filter(boot -> boot.stream().anyMatch(generalised.pattern()::foundIn))
                .count());
  }

  private static String explainedBy(Sighting sighting, int index) {
    if (!sighting.matches().explained().get(index)) {
      return "";
    }
    return sighting.matches().signs().stream()
        .filter(seen -> stands(seen.hits(), index))
        .map(seen -> "a sign of " + seen.fault().id())
        .findFirst()
        .or(
            () ->
                sighting.matches().trails().stream()
                    .filter(seen -> stands(seen.hits(), index))
                    .map(seen -> "the false trail " + seen.trail().id())
                    .findFirst())
        .orElse("a sign, a false trail or a milestone");
  }

  private static boolean stands(List<Hit> hits, int index) {
    return hits.stream().anyMatch(hit -> hit.index() == index);
  }

  private static int chosen(
      String name,
      BootLog log,
      Diagnoser diagnoser,
      List<List<String>> healthy,
      Optional<Interview> interview,
      PrintWriter out) {
    Miner miner = new Miner();
    UnsolvedLogs.strays(name, diagnoser.sight(log, 0).orElseThrow()).forEach(miner::add);
    List<Candidate> best = miner.candidates(1, healthy).stream().limit(OFFERED).toList();
    if (interview.isEmpty() || best.isEmpty()) {
      throw new Failure(
          ExitCode.USAGE,
          "which line? --from " + name + ":LINE; 'propose " + name + "' lists some");
    }
    for (Candidate candidate : best) {
      String before = candidate.examples().get(0).line() + "  ";
      Paragraph.lines(before, candidate.examples().get(0).message()).forEach(out::println);
    }
    String suggestion = String.valueOf(best.get(0).examples().get(0).line());
    String answer =
        interview
            .get()
            .ask(Question.text("line", "which line tells the cause"), suggestion)
            .orElse("");
    if (!answer.matches("[1-9]\\d{0,8}")) {
      throw new Failure(ExitCode.USAGE, "'" + answer + "' is no number of a line");
    }
    return Integer.parseInt(answer);
  }

  Skeleton.SignLine sign() {
    return new Skeleton.SignLine(generalised.pattern().source(), seen);
  }

  /** Says what was made of the line. */
  void tell(PrintWriter out) {
    out.println("sign: " + Skeleton.quoted(generalised.pattern().source()));
    out.println("matches: " + seen);
    if (disguised) {
      out.println("names and identifiers in the text were replaced by stand-ins");
    }
    if (!explainedBy.isEmpty()) {
      out.println("note: " + explainedBy + " stands on this line already");
    }
    if (healthy > 0) {
      Paragraph.lines(
              "note: ",
              "healthy machines print this too: it matches a line of "
                  + healthy
                  + " labelled boots that came through; it may be a false trail")
          .forEach(out::println);
    }
  }
}
