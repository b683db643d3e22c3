package standstill.disguise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What one text's disguise knows: stand-ins, learnt names, and what a person should look at. */
final class Register {
  private static final int MOST_TO_LOOK_AT = 100;

  private final StandIns standIns = new StandIns();
  private final Names names = new Names();
  private final Map<String, LookAt> lookAt = new LinkedHashMap<>();
  private int more;

  StandIns standIns() {
    return standIns;
  }

  Names names() {
    return names;
  }

  /** A stand-in such as {@code serial-1} for a value that is found from then on as a word too. */
  String named(String word, Sort sort, String value) {
    if (StandIns.isMade(value)) {
      return value;
    }
    String standIn = standIns.name(word, sort, value);
    names.learn(value, standIn);
    return standIn;
  }

  /** Remembers a name; one that can't be found as a word is put before the reader. */
  void learn(String kind, String value, String standIn) {
    if (!names.learn(value, standIn) && !Trade.isNumber(value)) {
      lookAt(
          value, "a " + kind + " that is also a common word: replaced only where a line marks it");
    }
  }

  /** Puts something before the reader. */
  void lookAt(String text, String why) {
    if (lookAt.size() < MOST_TO_LOOK_AT) {
      lookAt.putIfAbsent(text, new LookAt(text, why));
    } else if (!lookAt.containsKey(text)) {
      more++;
    }
  }

  List<LookAt> lookAt() {
    return new ArrayList<>(lookAt.values());
  }

  /** How many times something more was to be put before the reader than the list holds. */
  int more() {
    return more;
  }
}
