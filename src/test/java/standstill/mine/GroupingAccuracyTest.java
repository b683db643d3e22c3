package standstill.mine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** By hand, after the definition in Zhu et al. 2019, section III. */
class GroupingAccuracyTest {
  @Test
  void onlyMessagesWhoseWholeGroupIsRightCount() {
    // Events {1,2,3} {4,5} {6}; groups {1,2} {3} {4,5} {6}: messages 4, 5 and 6 are right.
    double accuracy =
        GroupingAccuracy.of(
            List.of("a", "a", "a", "b", "b", "c"), List.of("p", "p", "q", "r", "r", "s"));
    assertEquals(0.5, accuracy);
  }

  @Test
  void oneMessageTooManySpoilsTheGroup() {
    assertEquals(
        0.0, GroupingAccuracy.of(List.of("a", "a", "a", "b"), List.of("p", "p", "p", "p")));
  }

  @Test
  void namesOfGroupsDoNotMatter() {
    assertEquals(1.0, GroupingAccuracy.of(List.of("a", "b", "a"), List.of(7, 3, 7)));
  }
}
