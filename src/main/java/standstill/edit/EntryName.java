package standstill.edit;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.base.Stage;

/**
 * Name of a file that may be edited, below the base's folder.
 *
 * @param path with slashes, for example {@code faults/root/root-id-on-no-disk.yaml}
 */
public record EntryName(String path) implements Comparable<EntryName> {
  private static final int LONGEST_ID = 60;
  private static final String ENDING = ".yaml";
  private static final Set<String> FOLDERS =
      Set.of("checks", "trails", "walks", "families", "boots", "steps");
  private static final Set<String> FILES = Set.of("scale", "symptoms", "synonyms", "circumstances");

  /** A name from outside. */
  public EntryName {
    if (!allowed(path)) {
      throw new IllegalArgumentException("not the name of an entry: " + path);
    }
  }

  /** A name from outside; empty when it is none of the base's kinds of entries. */
  public static Optional<EntryName> of(String path) {
    return allowed(path) ? Optional.of(new EntryName(path)) : Optional.empty();
  }

  /** The name of a fault's file; empty when stage or id can't be one. */
  public static Optional<EntryName> ofFault(String stage, String id) {
    return of("faults/" + stage + "/" + id + ENDING);
  }

  /** The file's name without folders and ending. */
  public String id() {
    return path.substring(path.lastIndexOf('/') + 1, path.length() - ENDING.length());
  }

  /** Whether it is a fault's file. */
  public boolean isFault() {
    return path.startsWith("faults/");
  }

  /** Whether it is a labelled boot, which has a log beside its label. */
  public boolean isBoot() {
    return path.startsWith("boots/");
  }

  /** The log beside a boot's label. */
  String log() {
    return path.substring(0, path.length() - ENDING.length()) + ".log";
  }

  /** The files that hold it. */
  List<String> files() {
    return isBoot() ? List.of(path, log()) : List.of(path);
  }

  private static boolean allowed(String path) {
    if (!path.endsWith(ENDING)) {
      return false;
    }
    String[] parts = path.substring(0, path.length() - ENDING.length()).split("/", -1);
    String id = parts[parts.length - 1];
    return isId(id)
        && switch (parts.length) {
          case 1 -> FILES.contains(id);
          case 2 -> FOLDERS.contains(parts[0]);
          case 3 -> parts[0].equals("faults") && Stage.of(parts[1]).isPresent();
          default -> false;
        };
  }

  private static boolean isId(String id) {
    return !id.isEmpty()
        && id.length() <= LONGEST_ID
        && !id.startsWith("-")
        && !id.endsWith("-")
        && id.chars().allMatch(c -> c == '-' || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'));
  }

  @Override
  public int compareTo(EntryName other) {
    return path.compareTo(other.path);
  }

  @Override
  public String toString() {
    return path;
  }
}
