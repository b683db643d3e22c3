package standstill.base;

import java.util.Locale;
import java.util.Optional;

/** What a boot asks for. Closed: which line asks is data. */
public enum WishKind {
  /** The root file system. */
  ROOT,
  /** Where a sleeping system's memory was written. */
  RESUME,
  /** Swap space. */
  SWAP,
  /** The first process. */
  INIT,
  /** A place where a file system is to be mounted. */
  MOUNT,
  /** A device that somebody waits for, without a word what for. */
  VOLUME,
  /** The terminal that messages are sent to. */
  CONSOLE,
  /** All that the kernel was told, as one. */
  COMMAND_LINE,
  /** A restart or an end that somebody or something asked for. */
  RESTART;

  /** The word used in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The kind with that word. */
  public static Optional<WishKind> of(String word) {
    for (WishKind kind : values()) {
      if (kind.word().equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
