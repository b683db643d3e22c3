package standstill.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import standstill.base.Base;
import standstill.base.yaml.Loaded;
import standstill.search.Search;
import standstill.store.BaseFolder;
import standstill.store.BaseInUse;
import standstill.store.RefusedBaseException;
import standstill.text.Problem;

/** The option that chooses the fault base. */
final class BaseOption {
  @Option(
      names = "--base",
      paramLabel = "DIR",
      description =
          "Use the fault base in this folder instead of the one that the program carries.")
  private @Nullable Path folder;

  /** The folder that was given; empty for the base that the program carries. */
  Optional<Path> folder() {
    return Optional.ofNullable(folder);
  }

  /** Reads the base. */
  Loaded load() {
    try {
      return folder == null ? BaseFolder.builtIn() : BaseFolder.read(folder);
    } catch (IOException e) {
      throw unreadable(e);
    }
  }

  /** A base without errors. */
  Base base() {
    Loaded loaded = load();
    if (loaded.hasErrors()) {
      throw hasErrors(loaded.problems());
    }
    return loaded.base();
  }

  /** A base without errors, to be followed while it changes on disk. */
  BaseInUse inUse(Function<Base, Search> searching) {
    if (folder == null) {
      return BaseInUse.fixed(base(), searching);
    }
    try {
      return BaseInUse.of(folder, searching);
    } catch (RefusedBaseException e) {
      throw hasErrors(e.errors());
    } catch (IOException e) {
      throw unreadable(e);
    }
  }

  private static Failure unreadable(IOException e) {
    return new Failure(ExitCode.UNREADABLE, "the fault base could not be read: " + e.getMessage());
  }

  private static Failure hasErrors(List<Problem> problems) {
    StringBuilder message = new StringBuilder("the fault base has errors");
    problems.stream()
        .filter(Problem::isError)
        .limit(20)
        .forEach(problem -> message.append('\n').append(problem));
    message.append("\nrun 'check' on it for the whole list");
    return new Failure(ExitCode.BASE, message.toString());
  }
}
