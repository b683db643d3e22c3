package standstill.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;
import standstill.base.Base;
import standstill.base.Circumstance;

/** What the system is like, for all commands that show repairs. */
final class SystemOption {
  @Option(
      names = "--for",
      paramLabel = "WORD",
      split = ",",
      description =
          "What your system is like, such as debian, grub or dracut; steps for others are left out. As often as"
              + " you like.")
  private List<String> words = new ArrayList<>();

  /** The words, all of which the base knows. */
  List<String> words(Base base) {
    for (String word : words) {
      if (base.caseOf(word).isEmpty()) {
        throw new Failure(
            ExitCode.USAGE,
            "--for: '"
                + word
                + "' is no kind of system that the base knows; words: "
                + base.circumstances().stream()
                    .flatMap(c -> c.cases().stream())
                    .map(Circumstance.Case::id)
                    .collect(Collectors.joining(", ")));
      }
    }
    return words;
  }
}
