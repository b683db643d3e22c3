package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.FutureTask;
import org.junit.jupiter.api.Test;

class TurnsTest {
  private static final String ADA = "192.0.2.1";
  private static final String BRAM = "192.0.2.2";

  /** Begins something that lasts until it is let go; returns when it is at work. */
  private static FutureTask<String> begin(Turns turns, String who, long bytes, CountDownLatch end)
      throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    FutureTask<String> task =
        new FutureTask<>(
            () ->
                turns.take(
                    who,
                    bytes,
                    () -> {
                      begun.countDown();
                      try {
                        end.await();
                      } catch (InterruptedException e) {
                        throw new AssertionError(e);
                      }
                      return "done";
                    }));
    new Thread(task).start();
    begun.await();
    return task;
  }

  @Test
  void whoseTurnDoesNotComeIsToldInTime() throws Exception {
    Turns turns = new Turns(1, 1 << 20, 4, 50);
    CountDownLatch end = new CountDownLatch(1);
    FutureTask<String> first = begin(turns, ADA, 10, end);
    assertThrows(Overloaded.class, () -> turns.take(BRAM, 10, () -> "too late"));
    end.countDown();
    assertEquals("done", first.get());
    assertEquals("in time", turns.take(BRAM, 10, () -> "in time"));
  }

  @Test
  void largeTextsWaitForMemoryEvenWhenAProcessorIsFree() throws Exception {
    Turns turns = new Turns(4, 1 << 20, 4, 50);
    CountDownLatch end = new CountDownLatch(1);
    FutureTask<String> first = begin(turns, ADA, 800 << 10, end);
    assertThrows(Overloaded.class, () -> turns.take(BRAM, 800 << 10, () -> "too much"));
    assertEquals("small", turns.take(BRAM, 10 << 10, () -> "small"));
    end.countDown();
    first.get();
    assertEquals("alone", turns.take(BRAM, 50 << 20, () -> "alone"), "the largest goes alone");
  }

  @Test
  void memoryThatRunsOutEndsOneRequestAndGivesItsTurnBack() {
    Turns turns = new Turns(1, 1 << 20, 4, 50);
    for (int i = 0; i < 3; i++) {
      assertThrows(
          TooLarge.class,
          () ->
              turns.take(
                  ADA,
                  10,
                  () -> {
                    throw new OutOfMemoryError("as a hostile log has it");
                  }));
    }
    assertEquals("still there", turns.take(ADA, 10, () -> "still there"));
  }
}
