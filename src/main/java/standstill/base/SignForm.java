package standstill.base;

import java.util.List;
import standstill.text.Pattern;

/** What has to be in a log for a sign to be there. */
public sealed interface SignForm {

  /** The sign in a few words for a report. */
  String describe();

  /** Names of the values that it gives for sentences. */
  List<String> values();

  /**
   * A line that matches.
   *
   * @param line matched anywhere in a message
   * @param atEnd only within that many last lines; 0 for anywhere
   * @param repeats at least that often; 1 or more
   * @param afterGap only when at least that many seconds of silence stand before it; 0 for no such
   *     demand
   * @param joins other lines that have to stand above or below it, or must not
   */
  record OnLine(Pattern line, int atEnd, int repeats, double afterGap, List<Join> joins)
      implements SignForm {
    public OnLine {
      joins = List.copyOf(joins);
    }

    /** One that asks for no other line. */
    public OnLine(Pattern line, int atEnd, int repeats, double afterGap) {
      this(line, atEnd, repeats, afterGap, List.of());
    }

    @Override
    public List<String> values() {
      return line.groups();
    }

    @Override
    public String describe() {
      StringBuilder out = new StringBuilder("/").append(line.source()).append("/");
      if (atEnd > 0) {
        out.append(" within the last ").append(atEnd).append(" lines");
      }
      if (repeats > 1) {
        out.append(" at least ").append(repeats).append(" times");
      }
      if (afterGap > 0) {
        out.append(" after ").append((int) afterGap).append(" s of silence");
      }
      for (Join join : joins) {
        out.append(' ').append(join.kind().title()).append(" /");
        out.append(join.line().source()).append('/');
      }
      return out.toString();
    }
  }

  /**
   * A milestone that was reached.
   *
   * @param milestone id of the milestone
   */
  record Reached(String milestone) implements SignForm {
    @Override
    public List<String> values() {
      return List.of();
    }

    @Override
    public String describe() {
      return "milestone '" + milestone + "'";
    }
  }

  /**
   * A demand on another line.
   *
   * @param kind where it has to stand, or that it must not
   * @param line the other line; groups that both patterns have must have caught the same
   */
  record Join(Kind kind, Pattern line) {
    /** How two lines are joined. */
    public enum Kind {
      /** The other line must not stand below. */
      THEN_NOT("then-not", "and after it no"),
      /** The other line must stand above. */
      AFTER("after", "after"),
      /** The other line must stand below. */
      BEFORE("before", "before");

      private final String word;
      private final String title;

      Kind(String word, String title) {
        this.word = word;
        this.title = title;
      }

      /** The key used in files. */
      public String word() {
        return word;
      }

      /** In words. */
      public String title() {
        return title;
      }
    }
  }

  /**
   * A statement that holds of the machine.
   *
   * @param statement which
   */
  record OfFact(Statement statement) implements SignForm {
    @Override
    public List<String> values() {
      return statement.groups();
    }

    @Override
    public String describe() {
      return statement.title();
    }
  }

  /**
   * A milestone that is missing although the paste covers its stage.
   *
   * @param milestone id of the milestone
   */
  record Without(String milestone) implements SignForm {
    @Override
    public List<String> values() {
      return List.of();
    }

    @Override
    public String describe() {
      return "no milestone '" + milestone + "'";
    }
  }
}
