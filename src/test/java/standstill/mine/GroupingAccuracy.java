package standstill.mine;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Grouping accuracy: the share of messages whose group holds exactly the messages of their true
 * event. J. Zhu, S. He, J. Liu, P. He, Q. Xie, Z. Zheng, M. R. Lyu, "Tools and Benchmarks for
 * Automated Log Parsing", ICSE-SEIP 2019, section III ("parsing accuracy").
 */
final class GroupingAccuracy {
  private GroupingAccuracy() {}

  /**
   * The share of messages that are grouped rightly.
   *
   * @param truth the event of each message
   * @param found the group of each message, in the same order
   */
  static double of(List<?> truth, List<?> found) {
    Set<List<Integer>> events = new HashSet<>(places(truth).values());
    int right = places(found).values().stream().filter(events::contains).mapToInt(List::size).sum();
    return (double) right / truth.size();
  }

  private static Map<Object, List<Integer>> places(List<?> labels) {
    Map<Object, List<Integer>> places = new HashMap<>();
    for (int i = 0; i < labels.size(); i++) {
      places.computeIfAbsent(labels.get(i), label -> new ArrayList<>()).add(i);
    }
    return places;
  }
}
