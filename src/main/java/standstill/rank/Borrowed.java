package standstill.rank;

import java.util.List;
import standstill.base.Fault;
import standstill.match.Seen;

/**
 * Evidence that is borrowed from consequences needs backing by a sign of the fault's own: every
 * possible upstream cause could otherwise claim every failure that follows from it. A decisive own
 * sign is full backing, one that merely tells something is some.
 */
final class Borrowed {
  static final String NAME = "borrowed";

  private final boolean on;
  private final double noOwnSign;

  Borrowed(Model model, Corrections corrections) {
    this.on = corrections.on(NAME);
    this.noOwnSign = model.number("no-own-sign");
  }

  /**
   * The factor.
   *
   * @param own signs of the fault that were seen
   * @param factors what was seen of it and of what it leads to
   */
  Factor factor(Fault fault, List<Seen> own, List<Factor> factors, Telling telling) {
    boolean borrows =
        factors.stream()
            .flatMap(f -> f.signs().stream().limit(1))
            .anyMatch(s -> !s.fault().id().equals(fault.id()));
    boolean decisive = own.stream().anyMatch(s -> telling.tells(s) && telling.decisive(s));
    boolean tells = own.stream().anyMatch(telling::tells);
    double value = !on || !borrows || decisive ? 1 : tells ? Math.sqrt(noOwnSign) : noOwnSign;
    String why =
        tells
            ? "its own signs are common; the rest is what it leads to"
            : "only what it leads to was seen, and no sign of its own";
    return new Factor(Factor.Kind.ABSENT, value, why, List.of());
  }
}
