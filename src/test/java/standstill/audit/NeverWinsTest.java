package standstill.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static standstill.audit.SmallBase.sign;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class NeverWinsTest {
  private static final String LAMP =
      sign("lamp \\S+ is dark", "usually", "rarely", "lamp a is dark");
  private static final String WICK = sign("wick \\S+ is wet", "usually", "rarely", "wick b is wet");

  @Test
  void aRarerFaultWithNothingOfItsOwnNeverWins() throws Exception {
    SmallBase base =
        new SmallBase()
            .fault("common-thing", "often", "", LAMP, WICK)
            .fault("rare-thing", "rarely", "", LAMP, WICK);
    assertEquals(
        List.of(
            "kb/faults/kernel/rare-thing.yaml:1:5: warning: fault 'rare-thing' is never ranked first"),
        base.problems(new NeverWins()));
    // The scale gives 'often' five times the weight of 'rarely', and all else is equal.
    String advice = base.found(new NeverWins()).get(0).advice();
    assertTrue(advice.startsWith("on its best evidence 'common-thing' is 5.0 times"), advice);
  }

  @Test
  void aSharedFirstPlaceIsAPlace() throws Exception {
    assertEquals(
        List.of(),
        new SmallBase()
            .fault("one-thing", "often", "", LAMP, WICK)
            .fault("same-thing", "often", "", LAMP, WICK)
            .problems(new NeverWins()));
  }

  @Test
  void oneSignOfItsOwnIsEnough() throws Exception {
    String oil = sign("oil \\S+ is gone", "usually", "rarely", "oil c is gone");
    assertEquals(
        List.of(),
        new SmallBase()
            .fault("common-thing", "often", "", LAMP, WICK)
            .fault("rare-thing", "rarely", "", LAMP, oil)
            .problems(new NeverWins()));
  }

  @Test
  void signsOfAllFormsMakeEvidence() throws Exception {
    String repeats = LAMP.replace("shows", "repeats: 3, shows");
    String atEnd = WICK.replace("shows", "at-end: 5, shows");
    String afterGap =
        sign("oil \\S+ is gone", "usually", "rarely", "oil c is gone")
            .replace("shows", "after-gap: 30, shows");
    String without =
        "{id: no-milestone, without: kernel-starts, shows: usually, elsewhere: rarely}";
    for (String form : List.of(repeats, atEnd, afterGap, without)) {
      SmallBase base =
          new SmallBase()
              .fault(
                  "common-thing",
                  "sometimes",
                  "",
                  sign("bell", "usually", "rarely", "bell"),
                  WICK.replace("wick", "cord"))
              .fault(
                  "rare-thing",
                  "hardly-ever",
                  "",
                  form,
                  form.replace("{id: ", "{id: other-")
                      .replace("dark", "dim")
                      .replace("wet", "dry")
                      .replace("gone", "old")
                      .replace("kernel-starts", "root-mounted"));
      assertEquals(List.of(), base.problems(new NeverWins()), form);
    }
  }

  @Test
  void aLabelledBootMayShowWhatTextsAloneCannot() throws Exception {
    // The common fault would have printed more: that it did not is to be seen in a whole boot only.
    List<String> more = new ArrayList<>(List.of(LAMP, WICK));
    for (String word : List.of("bell", "cord", "hook")) {
      more.add(sign(word + " is off", "always", "rarely", word + " is off"));
    }
    SmallBase base =
        new SmallBase()
            .fault("common-thing", "often", "", more.toArray(new String[0]))
            .fault("rare-thing", "sometimes", "", LAMP, WICK);
    assertEquals(1, base.problems(new NeverWins()).size());
    base.boot(
        "rare-thing",
        """
        [    0.000000] Linux version 6.1.0 (bench@lantern) #1 SMP
        [    0.100000] Command line: root=/dev/sda1
        [    1.000000] lamp a is dark
        """);
    assertEquals(List.of(), base.problems(new NeverWins()));
  }
}
