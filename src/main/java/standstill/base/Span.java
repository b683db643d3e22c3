package standstill.base;

import java.util.Optional;

/**
 * The versions of a program for which something holds.
 *
 * @param since the first version; empty where it always did
 * @param until the last version; empty where it still does
 */
public record Span(Optional<Release> since, Optional<Release> until) {
  /** For all versions. */
  public static final Span ALWAYS = new Span(Optional.empty(), Optional.empty());

  /** In words, such as {@code since linux 6.9}; empty when it holds for all versions. */
  public String words() {
    String from = since.map(r -> "since " + r.words()).orElse("");
    String to = until.map(r -> "until " + r.words()).orElse("");
    return from.isEmpty() || to.isEmpty() ? from + to : from + ", " + to;
  }

  /**
   * A version of a program.
   *
   * @param program its name
   * @param version numbers joined by dots
   */
  public record Release(String program, String version) {
    /** In words. */
    public String words() {
      return program + " " + version;
    }

    /** Whether it comes after another version; numbers are compared one by one. */
    public boolean isAfter(Release other) {
      String[] a = version.split("\\.", -1);
      String[] b = other.version().split("\\.", -1);
      for (int i = 0; i < Math.max(a.length, b.length); i++) {
        int x = i < a.length ? Integer.parseInt(a[i]) : 0;
        int y = i < b.length ? Integer.parseInt(b[i]) : 0;
        if (x != y) {
          return x > y;
        }
      }
      return false;
    }
  }
}
