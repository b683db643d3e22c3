package standstill.base.yaml;

import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.events.AliasEvent;
import org.yaml.snakeyaml.events.CollectionEndEvent;
import org.yaml.snakeyaml.events.CollectionStartEvent;
import org.yaml.snakeyaml.events.Event;
import org.yaml.snakeyaml.events.NodeEvent;
import org.yaml.snakeyaml.parser.Parser;

/**
 * A parser that stops at the place where a text begins to do harm: the library refuses deep nesting
 * and multiplied aliases too, but does not say where.
 */
final class Guarded implements Parser {
  private final Parser parser;
  private int depth;

  Guarded(Parser parser) {
    this.parser = parser;
  }

  /** A text is not read on. */
  static final class Refused extends RuntimeException {
    private final transient Mark mark;
    private final String what;
    private final String advice;

    Refused(Mark mark, String what, String advice) {
      super(what);
      this.mark = mark;
      this.what = what;
      this.advice = advice;
    }

    Mark mark() {
      return mark;
    }

    String what() {
      return what;
    }

    String advice() {
      return advice;
    }
  }

  @Override
  public boolean checkEvent(Event.ID choice) {
    return parser.checkEvent(choice);
  }

  @Override
  public Event peekEvent() {
    return parser.peekEvent();
  }

  @Override
  public Event getEvent() {
    Event event = parser.getEvent();
    if (event instanceof NodeEvent node && node.getAnchor() != null) {
      String kind = event instanceof AliasEvent ? "alias '" : "anchor '";
      throw new Refused(
          event.getStartMark(),
          kind + node.getAnchor() + "'",
          "write the value out; aliases are not allowed");
    }
    if (event instanceof CollectionStartEvent && ++depth > Nodes.DEEPEST) {
      throw new Refused(
          event.getStartMark(),
          "nested too deeply",
          "allowed: at most " + Nodes.DEEPEST + " levels");
    }
    if (event instanceof CollectionEndEvent) {
      depth--;
    }
    return event;
  }
}
