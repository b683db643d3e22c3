package standstill.search;

import java.util.Locale;
import java.util.Optional;
import standstill.base.Base;

/** The kinds of entries that a search finds. */
public enum Kind {
  /** A cause. */
  FAULT("fault"),
  /** What a person sees. */
  SYMPTOM("symptom"),
  /** An observation that tells faults apart. */
  CHECK("check"),
  /** Lines that look bad and are harmless. */
  TRAIL("false trail");

  private final String title;

  Kind(String title) {
    this.title = title;
  }

  /** The word used in addresses and JSON. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** For people. */
  public String title() {
    return title;
  }

  /** The kind with that word. */
  public static Optional<Kind> of(String word) {
    for (Kind kind : values()) {
      if (kind.word().equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  /** The title of an entry of this kind; empty when the base has none of that id. */
  public Optional<String> titleOf(Base base, String id) {
    return switch (this) {
      case FAULT -> base.fault(id).map(f -> f.title());
      case SYMPTOM -> base.symptom(id).map(s -> s.title());
      case CHECK -> base.check(id).map(c -> c.title());
      case TRAIL -> base.trail(id).map(t -> t.title());
    };
  }
}
