package standstill.base.yaml;

/**
 * One file of the base.
 *
 * @param name path below the base's folder, with slashes, for example {@code faults/root/x.yaml}
 * @param shownAs the name to show in messages
 * @param text the content
 */
public record BaseText(String name, String shownAs, String text) {
  /** The file's name without folders and without {@code .yaml}. */
  String stem() {
    String last = name.substring(name.lastIndexOf('/') + 1);
    return last.endsWith(".yaml") ? last.substring(0, last.length() - 5) : last;
  }

  /** The folder that holds it, without slashes at either end; empty at the top. */
  String folder() {
    int slash = name.lastIndexOf('/');
    return slash < 0 ? "" : name.substring(0, slash);
  }
}
