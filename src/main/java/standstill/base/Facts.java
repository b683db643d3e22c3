package standstill.base;

import java.util.List;

/**
 * What the lines of a family say of the machine.
 *
 * @param lines which line says what
 * @param classes what class numbers mean
 * @param names names that are one
 */
public record Facts(List<FactLine> lines, List<DeviceClass> classes, List<NameRule> names) {
  /** A family that says nothing of the machine. */
  public static final Facts NONE = new Facts(List.of(), List.of(), List.of());

  /** What several families say together; what two of them have in common stands there once. */
  public static Facts joined(List<Facts> all) {
    return new Facts(
        all.stream().flatMap(facts -> facts.lines.stream()).distinct().toList(),
        all.stream().flatMap(facts -> facts.classes.stream()).distinct().toList(),
        all.stream().flatMap(facts -> facts.names.stream()).distinct().toList());
  }

  public Facts {
    lines = List.copyOf(lines);
    classes = List.copyOf(classes);
    names = List.copyOf(names);
  }
}
