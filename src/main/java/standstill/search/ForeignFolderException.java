package standstill.search;

/**
 * The folder that was named for the index is not the index's: it holds what this program did not
 * write. Nothing in it was touched. The message says what was found, for people.
 */
public final class ForeignFolderException extends RuntimeException {
  ForeignFolderException(String message) {
    super(message);
  }
}
