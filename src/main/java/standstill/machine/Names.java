package standstill.machine;

import java.util.List;
import standstill.base.NameRule;

/** One name for each thing, whichever way a line writes it. */
final class Names {
  private static final String CUT = "...";

  private final List<NameRule> rules;

  Names(List<NameRule> rules) {
    this.rules = rules;
  }

  /** The usual form of a name. */
  String usual(String name) {
    String usual = UnitName.unescaped(name.strip());
    for (NameRule rule : rules) {
      String before = usual;
      usual =
          rule.line()
              .findAtStart(before)
              .filter(m -> m.end() == before.length())
              .map(m -> Template.fill(rule.as(), m.values()))
              .orElse(before);
    }
    return usual;
  }

  /**
   * Whether two names may be one: equal, or one of them was shortened in its middle and the rest
   * fits the other.
   */
  static boolean same(String a, String b) {
    if (a.equals(b)) {
      return true;
    }
    int cutA = a.indexOf(CUT);
    int cutB = b.indexOf(CUT);
    if (cutA < 0 && cutB < 0) {
      return false;
    }
    if (cutB < 0) {
      return fits(a, cutA, b);
    }
    if (cutA < 0) {
      return fits(b, cutB, a);
    }
    String headA = a.substring(0, cutA);
    String headB = b.substring(0, cutB);
    String tailA = a.substring(cutA + CUT.length());
    String tailB = b.substring(cutB + CUT.length());
    return (headA.startsWith(headB) || headB.startsWith(headA))
        && (tailA.endsWith(tailB) || tailB.endsWith(tailA));
  }

  static boolean isCut(String name) {
    return name.contains(CUT);
  }

  private static boolean fits(String shortened, int cut, String whole) {
    String head = shortened.substring(0, cut);
    String tail = shortened.substring(cut + CUT.length());
    return head.length() + tail.length() >= 6
        && whole.length() >= head.length() + tail.length()
        && whole.startsWith(head)
        && whole.endsWith(tail);
  }
}
