package standstill.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import standstill.base.Base;
import standstill.base.TestBase;

/**
 * A process that writes the index is killed at any moment: the next start has a whole index, takes
 * the leftovers for its own, and has touched nothing beside them.
 */
class KilledWhileWritingIT {
  private static final int KILLS = 50;
  private static final int FIRST_KILLS = 10;
  private static final int FAULTS = 40;

  private Path index;

  @BeforeEach
  void place(@TempDir Path folder) {
    index = folder.resolve("index");
  }

  /**
   * Invented faults; a base of an odd number has one more, so that neither fits the other's index.
   */
  private static Base base(int number) {
    TestBase base = new TestBase();
    for (int i = 0; i < FAULTS + number % 2; i++) {
      base.fault("lantern-" + i, 1).add();
    }
    return base.build();
  }

  /** The process: writes the index again and again until it is killed, and tells of each time. */
  static final class Writer {
    private Writer() {}

    public static void main(String[] folder) {
      for (int number = 0; ; number++) {
        Search.open(base(number), Optional.of(Path.of(folder[0])));
        System.out.write('!');
        System.out.flush();
      }
    }
  }

  @Test
  void everyStartAfterAKillHasAWholeIndex() throws Exception {
    long seed = System.nanoTime();
    System.out.println("KilledWhileWritingIT: seed " + seed);
    Random random = new Random(seed);
    int rebuilt = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      String where = "kill " + kill + ", seed " + seed;
      Process writer = writer(index);
      for (int writes = random.nextInt(6); writes >= 0; writes--) {
        assertEquals('!', writer.getInputStream().read(), where);
      }
      TimeUnit.MICROSECONDS.sleep(random.nextInt(30_000));
      writer.destroyForcibly();
      assertTrue(writer.waitFor(30, TimeUnit.SECONDS), where);
      if (kill % 10 == 9) {
        refusesWhatIsNotItsOwn(where);
      }

      Search after = Search.open(base(0), Optional.of(index));
      rebuilt += after.wasBuilt() ? 1 : 0;
      assertEquals("lantern-7", after.find("lantern 7", Set.of(), 1).found().get(0).id(), where);
      assertEquals(FAULTS, after.find("lantern", Set.of(), 100).total(), where);
      assertFalse(Search.open(base(0), Optional.of(index)).wasBuilt(), where);
    }
    killedInTheFirstMoments(random, seed);
    System.out.println("KilledWhileWritingIT: " + rebuilt + " of " + KILLS + " were built again");
    assertTrue(rebuilt > 0, "no kill came while the index was of the other base or half written");
    try (Stream<Path> files = Files.list(index)) {
      List<String> left = files.map(f -> f.getFileName().toString()).toList();
      assertTrue(left.size() < 10, "leftovers pile up: " + left);
    }
  }

  /** Somebody's file among the leftovers: refused until it is taken away, and never deleted. */
  private void refusesWhatIsNotItsOwn(String where) throws Exception {
    Path diary = Files.writeString(index.resolve("_diary.doc"), "dear lantern");
    assertThrows(
        ForeignFolderException.class, () -> Search.open(base(0), Optional.of(index)), where);
    assertEquals("dear lantern", Files.readString(diary), where);
    Files.delete(diary);
  }

  /** While the folder is made, marked and written for the first time. */
  private void killedInTheFirstMoments(Random random, long seed) throws Exception {
    for (int kill = 0; kill < FIRST_KILLS; kill++) {
      Path fresh = index.resolveSibling(index.getFileName() + "-" + kill);
      Process writer = writer(fresh);
      long until = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
      while (!Files.exists(fresh) && System.nanoTime() < until) {
        TimeUnit.MICROSECONDS.sleep(200);
      }
      TimeUnit.MICROSECONDS.sleep(random.nextInt(20_000));
      writer.destroyForcibly();
      assertTrue(writer.waitFor(30, TimeUnit.SECONDS));
      String where = "first kill " + kill + ", seed " + seed;
      Search after = Search.open(base(0), Optional.of(fresh));
      assertEquals(FAULTS, after.find("lantern", Set.of(), 100).total(), where);
      assertFalse(Search.open(base(0), Optional.of(fresh)).wasBuilt(), where);
    }
  }

  private static Process writer(Path folder) throws Exception {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-cp",
            System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
            Writer.class.getName(),
            folder.toString())
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }
}
