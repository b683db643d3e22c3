package standstill.base;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import standstill.text.Position;

/**
 * Steps that many repairs share, written once.
 *
 * @param id name
 * @param title what they do
 * @param about when they are the right ones
 * @param parameters names that stand as {@code {name}} in the steps
 * @param steps in order
 * @param risk the gravest of what they put at risk
 * @param sources where they come from
 * @param reviewed when somebody last looked at them
 * @param where the block's file
 */
public record StepBlock(
    String id,
    String title,
    String about,
    Map<String, Parameter> parameters,
    List<FixStep> steps,
    Risk risk,
    List<Source> sources,
    Reviewed reviewed,
    Position where) {
  public StepBlock {
    parameters = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(parameters));
    steps = List.copyOf(steps);
    sources = List.copyOf(sources);
  }

  /**
   * A name whose value the repair gives.
   *
   * @param means what it is
   * @param unknown what stands in its place where the repair gives none
   */
  public record Parameter(String means, String unknown) {}
}
