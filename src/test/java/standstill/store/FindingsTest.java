package standstill.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import standstill.audit.Finding;
import standstill.base.Base;
import standstill.base.TestBase;

/** An invented base whose one fault was reviewed in 1970. */
class FindingsTest {
  private static final class Days extends Clock {
    private Instant now = Instant.parse("1970-06-01T12:00:00Z");

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  private static Base base() {
    return new TestBase()
        .fault("lamp-broken", 1)
        .sign("lamp is dark", 0.5, 0.01)
        .fix("Mend it", 5, 0.9, standstill.base.Risk.NONE)
        .add()
        .build();
  }

  private static List<Finding> wait(Findings findings, Base base) throws InterruptedException {
    Optional<List<Finding>> found = findings.of(base, Optional.empty());
    while (found.isEmpty()) {
      TimeUnit.MILLISECONDS.sleep(20);
      found = findings.of(base, Optional.empty());
    }
    return found.get();
  }

  @Test
  @Timeout(60)
  void findingsAreMadeOnceForEachBaseAndDay() throws Exception {
    Days clock = new Days();
    Findings findings = new Findings(clock);
    Base base = base();
    List<Finding> first = wait(findings, base);
    assertEquals(List.of(), rules(first, "not-reviewed"));
    assertSame(first, wait(findings, base));
    clock.now = clock.now.plus(Duration.ofDays(365));
    List<Finding> later = wait(findings, base);
    assertEquals(1, rules(later, "not-reviewed").size(), later.toString());
    assertTrue(wait(findings, base()) != later, "another base has findings of its own");
  }

  private static List<Finding> rules(List<Finding> all, String rule) {
    return all.stream().filter(f -> f.rule().equals(rule)).toList();
  }
}
