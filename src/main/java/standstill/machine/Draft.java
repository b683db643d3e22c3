package standstill.machine;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import standstill.base.ThingState;

/** What is being gathered of one thing or wish while the lines are read. */
final class Draft {
  private final List<Mention> mentions = new ArrayList<>();
  private final Map<String, String> values = new LinkedHashMap<>();
  private String name;
  private String title = "";
  private String on = "";
  private ThingState state = ThingState.SEEN;

  Draft(String name) {
    this.name = name;
  }

  String name() {
    return name;
  }

  String title() {
    return title;
  }

  String on() {
    return on;
  }

  ThingState state() {
    return state;
  }

  Map<String, String> values() {
    return values;
  }

  List<Mention> mentions() {
    return mentions;
  }

  /** Takes a better name: a whole one instead of a shortened one. */
  void rename(String better) {
    name = better;
  }

  void call(String words) {
    title = words;
  }

  void note(Mention mention, String hangsOn, Map<String, String> more) {
    state = mentions.isEmpty() ? mention.state() : state.then(mention.state());
    if (mentions.size() >= Thing.MOST_MENTIONS) {
      mentions.remove(mentions.size() - 1);
    }
    mentions.add(mention);
    if (!hangsOn.isEmpty()) {
      on = hangsOn;
    }
    more.forEach(
        (key, value) -> {
          if (!value.isEmpty()) {
            values.put(key, value);
          }
        });
  }

  Thing thing(standstill.base.ThingSort sort, String words) {
    return new Thing(sort, name, title.isEmpty() ? words : title, on, state, values, mentions);
  }

  Wish wish(standstill.base.WishKind kind) {
    return new Wish(kind, name, on, state, values, mentions);
  }
}
