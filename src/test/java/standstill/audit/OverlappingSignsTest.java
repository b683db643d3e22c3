package standstill.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static standstill.audit.SmallBase.sign;

import java.util.List;
import org.junit.jupiter.api.Test;

class OverlappingSignsTest {
  private static final String LAMP =
      sign("lamp \\S+ is dark", "usually", "hardly-ever", "lamp a is dark");
  private static final String OF_NAME =
      sign("lamp a is dark", "usually", "hardly-ever", "lamp a is dark");
  private static final String WICK = sign("wick \\S+ is wet", "usually", "never", "wick b is wet");
  private static final String OIL = sign("oil \\S+ is gone", "usually", "never", "oil c is gone");

  private static List<String> problems(SmallBase base) {
    return base.problems(new OverlappingSigns());
  }

  @Test
  void faultsThatShareAllTheirSignsAreNamedTogether() throws Exception {
    SmallBase base =
        new SmallBase()
            .fault("one-thing", "often", "", LAMP)
            .fault("same-thing", "often", "", OF_NAME);
    assertEquals(
        List.of(
            "kb/faults/kernel/same-thing.yaml:10:5: warning: nothing tells 'one-thing' from"
                + " 'same-thing', whose signs match the same texts"),
        problems(base));
    String advice = base.found(new OverlappingSigns()).get(0).advice();
    assertTrue(
        advice.contains(
            "'lamp a is dark' of kb/faults/kernel/one-thing.yaml:10:5 is matched by"
                + " kb/faults/kernel/same-thing.yaml:10:5"),
        advice);
  }

  @Test
  void aConsequenceMayShareTheSigns() throws Exception {
    assertEquals(
        List.of(),
        problems(
            new SmallBase()
                .fault("one-thing", "often", "leads-to: [middle]\n", LAMP)
                .fault("middle", "often", "leads-to: [last]\n", WICK)
                .fault("last", "often", "", OF_NAME)));
  }

  @Test
  void aGeneralFaultMayShareTheSigns() throws Exception {
    String common = sign("lamp \\S+ is dark", "usually", "often", "lamp a is dark");
    assertEquals(
        List.of(),
        problems(
            new SmallBase()
                .fault("one-thing", "often", "kind: general\n", common)
                .fault("same-thing", "often", "", OF_NAME)));
  }

  @Test
  void aCheckThatTellsThemApartIsEnoughWhereTheWordsAllowForIt() throws Exception {
    String common = sign("lamp \\S+ is dark", "often", "often", "lamp a is dark");
    String second = sign("oil \\S+ is gone", "often", "often", "oil c is gone");
    String more = "told-apart-by: [{check: is-it, answers: {yes-it-is: %s}}]\n";
    SmallBase told =
        new SmallBase()
            .check("is-it")
            .fault("one-thing", "often", String.format(more, "usually"), common, second, WICK)
            .fault("same-thing", "often", String.format(more, "never"), common, second);
    assertEquals(List.of(), problems(told));
    SmallBase alike =
        new SmallBase()
            .check("is-it")
            .fault("one-thing", "often", String.format(more, "usually"), common, second, WICK)
            .fault("same-thing", "often", String.format(more, "usually"), common, second);
    assertEquals(1, problems(alike).size());
  }

  @Test
  void aWordThatDeniesACommonFaultIsDoubted() throws Exception {
    // Of two equally common faults one shows the line usually, so half of all boots may have it.
    SmallBase base =
        new SmallBase()
            .fault("one-thing", "often", "", LAMP, WICK)
            .fault("other-thing", "often", "", OF_NAME, OIL);
    assertEquals(
        List.of(
            "kb/faults/kernel/other-thing.yaml:10:5: warning: 'one-thing' and 'other-thing' share a"
                + " text that a sign says is rarer elsewhere"),
        problems(base));
    String usual = sign("lamp a is dark", "usually", "usually", "lamp a is dark");
    String often = sign("lamp \\S+ is dark", "usually", "often", "lamp a is dark");
    assertEquals(
        List.of(),
        problems(
            new SmallBase()
                .fault("one-thing", "often", "", often, WICK)
                .fault("other-thing", "often", "", usual, OIL)));
  }
}
