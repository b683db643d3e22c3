package standstill.base;

import java.util.Locale;
import java.util.Optional;

/** What a step puts at risk, from least to most. */
public enum Risk {
  /** Nothing. */
  NONE("nothing is changed"),
  /** A restart, with what was not saved. */
  RESTART("needs a restart"),
  /** Settings that can be put back. */
  SETTINGS("changes a setting"),
  /** The way into the system: keys, passwords, boot entries. */
  LOCKS_OUT("can lock you out"),
  /** Data on a disk. */
  DATA("can lose data"),
  /** The machine's firmware. */
  FIRMWARE("writes firmware"),
  /** The person and the parts: the case is opened. */
  HANDS_INSIDE("hands inside the case");

  private final String title;

  Risk(String title) {
    this.title = title;
  }

  /** The word used in files. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** For people. */
  public String title() {
    return title;
  }

  /** Whether the harm is hard to take back. */
  public boolean isGrave() {
    return compareTo(LOCKS_OUT) >= 0;
  }

  /** The risk with that word. */
  public static Optional<Risk> of(String word) {
    for (Risk risk : values()) {
      if (risk.word().equals(word)) {
        return Optional.of(risk);
      }
    }
    return Optional.empty();
  }
}
