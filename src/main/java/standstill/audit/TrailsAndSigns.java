package standstill.audit;

import java.util.ArrayList;
import java.util.List;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Trail;
import standstill.text.Problem;

/**
 * No line is called harmless by a false trail and decisive by a fault.
 *
 * <p>A sign that says {@code never} or {@code hardly-ever} for elsewhere claims that no healthy
 * machine prints its line; a false trail that matches the same text claims the opposite.
 */
final class TrailsAndSigns implements Rule {
  private static final List<String> DECISIVE = List.of("never", "hardly-ever");

  @Override
  public String id() {
    return "trail-against-sign";
  }

  @Override
  public String title() {
    return "No false trail calls harmless what a fault calls decisive";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    List<Problem> problems = new ArrayList<>();
    for (Fault fault : subject.base().faults()) {
      for (Sign sign : fault.signs()) {
        if (sign.form() instanceof SignForm.OnLine onLine
            && onLine.repeats() == 1
            && DECISIVE.contains(sign.elsewhere().word())) {
          for (Trail trail : subject.base().trails()) {
            if (subject.base().canMeet(trail.families(), fault.families())) {
              contradiction(sign, onLine, trail, problems);
            }
          }
        }
      }
    }
    return problems;
  }

  private static void contradiction(
      Sign sign, SignForm.OnLine form, Trail trail, List<Problem> problems) {
    for (Trail.TrailSign line : trail.signs()) {
      List<String> both = new ArrayList<>();
      sign.seen().stream().filter(line.line()::foundIn).forEach(both::add);
      line.seen().stream().filter(form.line()::foundIn).forEach(both::add);
      if (!both.isEmpty()) {
        problems.add(
            Problem.warning(
                sign.where(),
                "sign says '"
                    + sign.elsewhere().word()
                    + "' for elsewhere, and the false trail '"
                    + trail.id()
                    + "' calls its line harmless",
                "both match '" + both.get(0) + "', see " + line.where() + "; narrow one of them"));
        return;
      }
    }
  }
}
