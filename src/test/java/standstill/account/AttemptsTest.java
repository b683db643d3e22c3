package standstill.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class AttemptsTest {
  private final TestClock clock = new TestClock();
  private final Attempts attempts = new Attempts(clock);

  @Test
  void aNameIsHeldUpAfterTenAttemptsFromAnywhere() {
    for (int i = 0; i < 10; i++) {
      assertTrue(attempts.take("ada", "192.0.2." + i).isZero(), "attempt " + i);
    }
    clock.pass(Duration.ofMinutes(5));
    assertEquals(Duration.ofMinutes(10), attempts.take("ada", "192.0.2.99"));
    assertTrue(attempts.take("bram", "192.0.2.99").isZero());
    clock.pass(Duration.ofMinutes(10));
    assertTrue(attempts.take("ada", "192.0.2.99").isZero());
  }

  @Test
  void anAddressIsHeldUpAfterThirtyAttemptsOnAnyNames() {
    for (int i = 0; i < 30; i++) {
      assertTrue(attempts.take("name-" + i, "192.0.2.1").isZero());
    }
    assertFalse(attempts.take("other", "192.0.2.1").isZero());
    assertTrue(attempts.take("other", "192.0.2.2").isZero());
  }

  @Test
  void signingInClearsTheNamesCount() {
    for (int i = 0; i < 9; i++) {
      attempts.take("ada", "192.0.2." + i);
    }
    attempts.succeeded("ada");
    for (int i = 0; i < 10; i++) {
      assertTrue(attempts.take("ada", "192.0.2." + (20 + i)).isZero());
    }
  }
}
