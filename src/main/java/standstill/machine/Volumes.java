package standstill.machine;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import standstill.base.ThingSort;
import standstill.base.ThingState;

/** Arrays, encrypted volumes, volume groups and types of file systems. */
final class Volumes {
  private Volumes() {}

  static Said memberMissing(Machine machine) {
    List<Found> found = new ArrayList<>();
    for (Thing array : machine.things(ThingSort.ARRAY)) {
      List<Mention> lines =
          array.mentions().stream()
              .filter(m -> m.state() == ThingState.INCOMPLETE || isShort(m))
              .toList();
      if (!lines.isEmpty()) {
        found.add(new Found(Map.of("array", array.name()), lines));
      }
    }
    return Said.seenOnly(found);
  }

  private static boolean isShort(Mention mention) {
    OptionalInt have = number(mention, "have");
    OptionalInt want = number(mention, "want");
    return have.isPresent() && want.isPresent() && have.getAsInt() < want.getAsInt();
  }

  private static OptionalInt number(Mention mention, String key) {
    String text = mention.values().getOrDefault(key, "");
    return text.length() > 0 && text.length() < 6 && text.chars().allMatch(Character::isDigit)
        ? OptionalInt.of(Integer.parseInt(text))
        : OptionalInt.empty();
  }

  static Said neverOpened(Machine machine) {
    return never(machine, ThingSort.ENCRYPTED_VOLUME);
  }

  static Said groupNeverFound(Machine machine) {
    return never(machine, ThingSort.VOLUME);
  }

  /** Things that were asked for or tried, and that no line shows open. */
  private static Said never(Machine machine, ThingSort sort) {
    List<Found> found = new ArrayList<>();
    for (Thing volume : machine.things(sort)) {
      boolean tried = volume.ever(ThingState.STARTING) || volume.ever(ThingState.FAILED);
      if (tried && !volume.ever(ThingState.READY) && isToTheEnd(machine)) {
        found.add(new Found(Map.of("volume", volume.name()), List.of(volume.last())));
      }
    }
    return Said.seenOnly(found);
  }

  /** A boot that went on to its end has opened what it needed. */
  private static boolean isToTheEnd(Machine machine) {
    return machine.trace().stage() != standstill.base.Stage.DONE;
  }

  static Said moduleMissing(Machine machine) {
    List<Found> found = new ArrayList<>();
    for (Thing type : machine.things(ThingSort.FILE_SYSTEM)) {
      List<Mention> lines =
          type.mentions().stream().filter(m -> m.values().containsKey("type-asked")).toList();
      if (!lines.isEmpty()) {
        found.add(new Found(Map.of("type", type.name()), lines));
      }
    }
    return Said.seenOnly(found);
  }
}
