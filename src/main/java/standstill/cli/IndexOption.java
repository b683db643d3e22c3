package standstill.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import standstill.base.Base;
import standstill.search.ForeignFolderException;
import standstill.search.Search;

/** The option that says where the search index is kept. */
final class IndexOption {
  @Option(
      names = "--index",
      paramLabel = "DIR",
      description =
          "Keep the search index in this folder, which is empty, new or an index already; in the"
              + " user's cache folder when left out. It can be deleted at any time.")
  private @Nullable Path folder;

  /**
   * What opens the search over a base.
   *
   * @param base the folder of the base; empty for the one that the program carries
   * @param err where a caution is printed when the index can't be kept
   */
  Function<Base, Search> over(Optional<Path> base, PrintWriter err) {
    Path asked = folder;
    return asked == null ? inCache(base, err) : new InFolder(asked, err);
  }

  /** Nobody asked for it to be kept, so only what a person should know of is said. */
  private static Function<Base, Search> inCache(Optional<Path> base, PrintWriter err) {
    Optional<Path> cache = CacheFolder.ofIndex(base);
    return read -> {
      try {
        return Search.open(read, cache);
      } catch (ForeignFolderException e) {
        caution(err, e.getMessage() + "; nothing in it was touched");
        return Search.open(read, Optional.empty());
      }
    };
  }

  private static void caution(PrintWriter err, String why) {
    err.println("Caution: the search index is in memory alone: " + why);
    err.flush();
  }

  /** In a folder that was asked for: the first time it has to be one that the index may have. */
  private static final class InFolder implements Function<Base, Search> {
    private final Path folder;
    private final PrintWriter err;
    private boolean opened;

    InFolder(Path folder, PrintWriter err) {
      this.folder = folder;
      this.err = err;
    }

    @Override
    public synchronized Search apply(Base base) {
      try {
        Search search = Search.open(base, Optional.of(folder));
        opened = true;
        search.notKept().ifPresent(why -> caution(err, "'" + folder + "': " + why));
        return search;
      } catch (ForeignFolderException e) {
        if (!opened) {
          throw new Failure(
              ExitCode.USAGE,
              e.getMessage() + "\nnothing in it was touched; name an empty or a new folder");
        }
        // A running server goes on: what was put there since is no reason to refuse a new base.
        caution(err, e.getMessage() + "; nothing in it was touched");
        return Search.open(base, Optional.empty());
      }
    }
  }
}
