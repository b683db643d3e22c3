package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import standstill.audit.Finding;
import standstill.base.Base;
import standstill.base.Risk;
import standstill.base.TestBase;
import standstill.text.Position;
import standstill.text.Problem;

/** Invented findings. */
class FindingsViewTest {
  private static final Base BASE =
      new TestBase()
          .fault("lamp-broken", 1)
          .sign("lamp is dark", 0.5, 0.01)
          .fix("Mend it", 5, 0.9, Risk.NONE)
          .add()
          .check("is-it-lit", 5, "yes", "no")
          .build();

  private static final List<Finding> FOUND =
      List.of(
          new Finding(
              "b-rule",
              "B is held",
              Problem.warning(
                  new Position("kb/faults/kernel/lamp-broken.yaml", 3, 5),
                  "<b> & 'c'",
                  "first\n  second")),
          new Finding(
              "a-rule",
              "A is held",
              Problem.error(new Position("kb/checks/is-it-lit.yaml", 1, 5), "an error", "")),
          new Finding(
              "b-rule", "B is held", Problem.warning(Position.ofFile("kb/scale.yaml"), "odd", "")));

  private static String page(Optional<List<Finding>> found, boolean boots) {
    return new Pages(false)
        .render(
            "findings",
            Map.of(
                "v",
                FindingsView.of(BASE, boots, found),
                "address",
                "/base/check",
                "notice",
                new BaseView.Notice(0, "")));
  }

  @Test
  void findingsStandBelowTheirRulesWithLinksToTheEntries() {
    FindingsView view = FindingsView.of(BASE, true, Optional.of(FOUND));
    assertEquals(1, view.errors());
    assertEquals(2, view.warnings());
    assertEquals(List.of("a-rule", "b-rule"), view.rules().stream().map(r -> r.id()).toList());
    assertEquals("/check/is-it-lit", view.rules().get(0).rows().get(0).href());
    assertEquals("/fault/lamp-broken", view.rules().get(1).rows().get(0).href());
    assertEquals(List.of("first", "second"), view.rules().get(1).rows().get(0).advice());
    assertEquals("", view.rules().get(1).rows().get(1).href());
  }

  @Test
  void whatEntriesSayIsEscaped() {
    String html = page(Optional.of(FOUND), true);
    assertTrue(html.contains("&lt;b&gt; &amp; "), html);
    assertTrue(html.contains("1 error and 2 warnings."), html);
    assertFalse(html.contains("without labelled boots"), html);
  }

  @Test
  void aPageThatIsNotReadySaysSo() {
    String html = page(Optional.empty(), true);
    assertTrue(html.contains("The base is being checked."), html);
    assertTrue(html.contains("<a href=\"/base/check\">"), html);
  }

  @Test
  void nothingFoundIsSaid() {
    String html = page(Optional.of(List.of()), false);
    assertTrue(html.contains("No rule is broken."), html);
    assertTrue(html.contains("without labelled boots"), html);
  }
}
