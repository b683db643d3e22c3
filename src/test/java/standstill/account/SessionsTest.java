package standstill.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SessionsTest {
  private final TestClock clock = new TestClock();
  private final Sessions sessions = new Sessions(clock::nanos);

  @Test
  void aSessionIsFoundByItsTokenAndOwnsItsFormToken() {
    String token = sessions.begin("ada", "mark");
    Sessions.Session session = sessions.find(token).orElseThrow();
    assertEquals("ada", session.name());
    assertEquals(64, token.length());
    assertNotEquals(token, session.formToken());
    assertTrue(session.owns(session.formToken()));
    assertFalse(session.owns(token));
    assertTrue(sessions.find("").isEmpty());
    sessions.end(token);
    assertTrue(sessions.find(token).isEmpty());
  }

  @Test
  void anIdleSessionEndsAndAUsedOneEndsInTheEvening() {
    String idle = sessions.begin("ada", "mark");
    String used = sessions.begin("bram", "mark");
    for (int i = 0; i < 11; i++) {
      clock.pass(Duration.ofMinutes(61));
      assertTrue(sessions.find(used).isPresent(), "hour " + i);
    }
    assertTrue(sessions.find(idle).isEmpty());
    clock.pass(Duration.ofMinutes(60));
    assertTrue(sessions.find(used).isEmpty());
  }

  @Test
  void oneNameCannotPushTheOthersOut() {
    String other = sessions.begin("bram", "mark");
    List<String> own = new ArrayList<>();
    for (int i = 0; i < 500; i++) {
      own.add(sessions.begin("ada", "mark"));
    }
    assertTrue(sessions.find(other).isPresent());
    assertEquals(8, own.stream().filter(token -> sessions.find(token).isPresent()).count());
  }
}
