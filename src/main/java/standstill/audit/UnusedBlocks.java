package standstill.audit;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Fix;
import standstill.base.FixStep;
import standstill.base.StepBlock;
import standstill.text.Problem;

/** Each shared block of steps is used by a repair. */
final class UnusedBlocks implements Rule {
  @Override
  public String id() {
    return "unused-blocks";
  }

  @Override
  public String title() {
    return "Each shared block of steps is used";
  }

  @Override
  public List<Problem> problems(Subject subject) {
    Base base = subject.base();
    Set<String> used = new HashSet<>();
    for (Fault fault : base.faults()) {
      for (Fix fix : fault.fixes()) {
        fix.steps().forEach(step -> used(step, used));
      }
    }
    return base.blocks().stream()
        .filter(block -> !used.contains(block.id()))
        .map(UnusedBlocks::problem)
        .toList();
  }

  private static Problem problem(StepBlock block) {
    return Problem.warning(
        block.where(),
        "no repair uses the steps '" + block.id() + "'",
        "write use: " + block.id() + " in a repair, or remove them");
  }

  private static void used(FixStep step, Set<String> used) {
    if (step instanceof FixStep.Group group) {
      used.add(group.block());
      group.steps().forEach(s -> used(s, used));
    }
  }
}
