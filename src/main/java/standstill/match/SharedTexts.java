package standstill.match;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.text.Pattern;
import standstill.text.PatternSet;

/** Where the signs of one fault match the texts that prove the signs of another. */
public final class SharedTexts {
  private SharedTexts() {}

  /**
   * A text of one fault's sign that another fault's sign matches.
   *
   * @param in the fault whose text it is
   * @param of its sign, which the text proves
   * @param text the text
   * @param other the fault that matches it too
   * @param by that fault's sign
   */
  public record Shared(Fault in, Sign of, String text, Fault other, Sign by) {}

  private record Owned(Fault fault, Sign sign, Pattern line) {}

  /** Hands over all shared texts of a base, in the order of its faults, signs and texts. */
  public static void each(Base base, Consumer<Shared> taker) {
    List<Owned> owned = new ArrayList<>();
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        if (sign.form() instanceof SignForm.OnLine form) {
          owned.add(new Owned(fault, sign, form.line()));
        }
      }
    }
    PatternSet lines = new PatternSet(owned.stream().map(Owned::line).toList());
    for (Owned own : owned) {
      for (String text : own.sign().seen()) {
        lines.candidates(
            text,
            false,
            (line, place) -> {
              Owned other = owned.get(place);
              if (other.fault() != own.fault() && line.foundIn(text)) {
                taker.accept(
                    new Shared(own.fault(), own.sign(), text, other.fault(), other.sign()));
              }
            });
      }
    }
  }
}
