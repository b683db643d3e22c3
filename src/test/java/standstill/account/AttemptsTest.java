package standstill.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Addresses are those set aside for examples (RFC 5737). */
class AttemptsTest {
  private final TestClock clock = new TestClock();
  private final Attempts attempts = new Attempts(clock::nanos);

  private static Attempts.Who stranger(String name, String address) {
    return new Attempts.Who(name, !name.startsWith("nobody"), address, Optional.empty());
  }

  private static Attempts.Who known(String name, String address, String device) {
    return new Attempts.Who(name, true, address, Optional.of(device));
  }

  private boolean may(Attempts.Who who) {
    return attempts.take(who).isZero();
  }

  @Test
  void strangersHaveTenGuessesAtANameFromWherever() {
    int guesses = 0;
    for (int i = 0; i < 50; i++) {
      guesses += may(stranger("ada", "192.0.2." + i)) ? 1 : 0;
    }
    assertEquals(10, guesses);
    clock.pass(Duration.ofMinutes(5));
    assertEquals(Duration.ofMinutes(10), attempts.take(stranger("ada", "192.0.2.99")));
    assertTrue(may(stranger("bram", "192.0.2.99")));
    clock.pass(Duration.ofMinutes(10));
    assertTrue(may(stranger("ada", "192.0.2.99")));
  }

  @Test
  void noSpanOfFifteenMinutesHasMoreThanTen() {
    int lately = 0;
    for (int minute = 0; minute < 29; minute++) {
      boolean counts = minute >= 14;
      for (int i = 0; i < 10 && (minute == 14 || minute == 15); i++) {
        lately += may(stranger("ada", "192.0.2." + (minute * 10 + i))) && counts ? 1 : 0;
      }
      clock.pass(Duration.ofMinutes(1));
    }
    assertEquals(10, lately);
  }

  @Test
  void whateverIsThrownAtTheCountsTheyHold() {
    int guesses = 0;
    for (int round = 0; round < 40; round++) {
      guesses += may(stranger("ada", "192.0.2.1")) ? 1 : 0;
      guesses += may(stranger("ada", "198.51.100." + round)) ? 1 : 0;
      for (int i = 0; i < 1_000; i++) {
        may(stranger("nobody-" + round + "-" + i, "203.0.113." + i % 256 + "/" + round));
      }
    }
    assertEquals(10, guesses);
  }

  @Test
  void oneAddressCannotUseUpANameForTheOthers() {
    for (int i = 0; i < 100; i++) {
      attempts.take(stranger("ada", "192.0.2.1"));
    }
    assertFalse(may(stranger("ada", "192.0.2.1")));
    assertTrue(may(stranger("ada", "192.0.2.2")));
  }

  @Test
  void whoSignedInOnADeviceBeforeIsNeverLockedOutByStrangers() {
    for (int i = 0; i < 200; i++) {
      attempts.take(stranger("ada", "192.0.2." + i % 20));
    }
    assertFalse(may(stranger("ada", "192.0.2.1")));
    for (int i = 0; i < 10; i++) {
      assertTrue(may(known("ada", "192.0.2.1", "laptop")), "attempt " + i);
    }
    assertFalse(may(known("ada", "192.0.2.1", "laptop")), "a device that was taken guesses too");
    assertTrue(may(known("ada", "192.0.2.1", "bench")));
  }

  @Test
  void anAddressIsHeldUpAfterThirtyAttemptsOnAnyNames() {
    for (int i = 0; i < 30; i++) {
      assertTrue(may(stranger("name-" + i, "192.0.2.1")));
    }
    assertFalse(may(stranger("other", "192.0.2.1")));
    assertTrue(may(stranger("other", "192.0.2.2")));
  }

  @Test
  void aRefusedAttemptDoesNotMakeTheWaitLonger() {
    for (int i = 0; i < 5; i++) {
      attempts.take(stranger("ada", "192.0.2.1"));
    }
    clock.pass(Duration.ofMinutes(14));
    assertEquals(Duration.ofMinutes(1), attempts.take(stranger("ada", "192.0.2.1")));
    clock.pass(Duration.ofMinutes(1));
    assertTrue(may(stranger("ada", "192.0.2.1")));
  }

  @Test
  void signingInGivesBackItsOwnAttemptAndNoOthers() {
    for (int i = 0; i < 9; i++) {
      assertTrue(may(stranger("ada", "192.0.2." + i)));
    }
    for (int i = 0; i < 20; i++) {
      assertTrue(may(stranger("ada", "192.0.2.100")), "signed in " + i + " times");
      attempts.succeeded(stranger("ada", "192.0.2.100"));
    }
    assertTrue(may(stranger("ada", "192.0.2.50")));
    assertFalse(may(stranger("ada", "192.0.2.51")), "who signs in gives guesses to nobody");
  }

  @Test
  void aNameThatIsNotThereIsHeldUpLikeOneThatIs() {
    for (String name : new String[] {"ada", "nobody"}) {
      int guesses = 0;
      for (int i = 0; i < 20; i++) {
        guesses += may(stranger(name, "192.0.2." + i)) ? 1 : 0;
      }
      assertEquals(10, guesses, name);
    }
  }
}
