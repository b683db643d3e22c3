package standstill.base.yaml;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.base.Fault;
import standstill.base.Sign;
import standstill.base.Stage;
import standstill.base.Stop;

/** Reads one file of {@code kb/stops/}. */
final class StopReader {
  private StopReader() {}

  /** The stop; empty when something is wrong with it, and the sink then knows what. */
  static Optional<Stop> read(EntryReader entries, FaultReader faults, BaseText file, Sink sink) {
    Optional<Fields> root = Fields.root(sink, new Shapes(entries.scale()).stop());
    if (root.isEmpty()) {
      return Optional.empty();
    }
    Fields fields = root.get();
    String id = EntryReader.id(fields, file);
    boolean nothing = fields.text("kind").equals("nothing-stopped");
    Set<Stage> stages = EnumSet.noneOf(Stage.class);
    stages.addAll(EntryReader.stages(fields, "stages"));
    String frequency = fields.text("how-common");
    List<Sign> signs = fields.has("signs") ? faults.signs(fields, id) : List.of();
    List<String> general = fields.names("general", "fault");
    if (signs.isEmpty() && general.isEmpty()) {
      fields.error("id", "stop without a sign", "give it signs, or a general fault that has some");
    }
    Stop stop =
        new Stop(
            id,
            fields.text("title"),
            fields.names("family", "family"),
            stages,
            new Fault.Frequency(
                frequency, entries.scale().frequencies().getOrDefault(frequency, 1.0)),
            fields.text("about"),
            nothing,
            entries.chance(fields, "unlisted"),
            general,
            signs,
            fields.names("looks", "check"),
            EntryReader.sources(fields),
            EntryReader.reviewed(fields),
            fields.texts("aliases"),
            fields.position("id"));
    return sink.hasErrors() ? Optional.empty() : Optional.of(stop);
  }
}
