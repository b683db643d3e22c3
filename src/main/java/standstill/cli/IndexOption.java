package standstill.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import standstill.base.Base;
import standstill.search.Search;

/** The option that says where the search index is kept. */
final class IndexOption {
  private static final Path USUAL = Path.of("index");

  @Option(
      names = "--index",
      paramLabel = "DIR",
      description =
          "Keep the search index in this folder; in the folder 'index' here if there is one, else in"
              + " memory, when left out. It can be deleted at any time.")
  private @Nullable Path folder;

  /** Opens the search over a base. */
  Search open(Base base) {
    if (folder != null) {
      return Search.open(base, Optional.of(folder));
    }
    return Search.open(base, Files.isDirectory(USUAL) ? Optional.of(USUAL) : Optional.empty());
  }
}
