package standstill.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import standstill.base.Base;
import standstill.base.yaml.Loaded;
import standstill.store.BaseFolder;
import standstill.text.Problem;

/** The option that chooses the fault base. */
final class BaseOption {
  @Option(
      names = "--base",
      paramLabel = "DIR",
      description =
          "Use the fault base in this folder instead of the one that the program carries.")
  private @Nullable Path folder;

  /** The folder of the base; empty for the one that the program carries. */
  Optional<Path> folder() {
    return Optional.ofNullable(folder);
  }

  /** Reads the base. */
  Loaded load() {
    try {
      return folder == null ? BaseFolder.builtIn() : BaseFolder.read(folder);
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, "the fault base could not be read: " + e.getMessage());
    }
  }

  /** A base without errors. */
  Base base() {
    Loaded loaded = load();
    if (loaded.hasErrors()) {
      StringBuilder message = new StringBuilder("the fault base has errors");
      loaded.problems().stream()
          .filter(Problem::isError)
          .limit(20)
          .forEach(problem -> message.append('\n').append(problem));
      message.append("\nrun 'check' on it for the whole list");
      throw new Failure(ExitCode.BASE, message.toString());
    }
    return loaded.base();
  }
}
