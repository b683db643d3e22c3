package standstill.report;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToIntFunction;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import standstill.store.BaseFolder;

/**
 * Twice the text takes twice the work, whatever the text holds.
 *
 * <p>Work is counted in steps of the program (see {@link Steps}) and in bytes that it allocates,
 * from the text to the written report. Both may grow by at most two and a half per doubling.
 */
class GrowthTest {
  private static final int SMALLEST = 20_000;
  private static final int DOUBLINGS = 2;
  private static final double MOST = 2.5;

  /**
   * Steps for one character of the longest text; a plain kernel line takes about a thousand. Most
   * of it is fixed for each text and grows with the base: it was 10,000 with half as many faults.
   */
  private static final long MOST_STEPS_FOR_A_CHARACTER = 15_000;

  private static ToIntFunction<String> reading;

  /** The whole line as one call; made by {@link CountingLoader}. */
  public static final class Reading implements ToIntFunction<String> {
    private final Diagnoser diagnoser;

    public Reading() throws IOException {
      diagnoser = new Diagnoser(BaseFolder.builtIn().base());
    }

    @Override
    public int applyAsInt(String text) {
      return JsonReport.write(diagnoser.diagnose(text), 10).length();
    }
  }

  @BeforeAll
  @SuppressWarnings("unchecked")
  static void load() throws ReflectiveOperationException {
    Class<?> counting = new CountingLoader().loadClass(Reading.class.getName());
    reading = (ToIntFunction<String>) counting.getConstructor().newInstance();
    // What is made when it is first needed must not count for the first text.
    for (GrowingText text : GrowingText.values()) {
      assertTrue(reading.applyAsInt(text.ofLength(SMALLEST / 10)) > 0);
    }
  }

  /** Steps taken and bytes allocated. */
  private record Work(long steps, long bytes) {
    static Work of(String text) {
      ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
      long thread = Thread.currentThread().getId();
      long stepsBefore = Steps.count();
      long bytesBefore = threads.getThreadAllocatedBytes(thread);
      assertTrue(reading.applyAsInt(text) > 0);
      return new Work(
          Steps.count() - stepsBefore, threads.getThreadAllocatedBytes(thread) - bytesBefore);
    }
  }

  @ParameterizedTest
  @EnumSource(GrowingText.class)
  void workGrowsWithTheTextAndNotFaster(GrowingText text) {
    List<Work> works = new ArrayList<>();
    for (int i = 0; i <= DOUBLINGS; i++) {
      works.add(Work.of(text.ofLength(SMALLEST << i)));
    }
    for (int i = 1; i <= DOUBLINGS; i++) {
      double steps = (double) works.get(i).steps() / works.get(i - 1).steps();
      double bytes = (double) works.get(i).bytes() / works.get(i - 1).bytes();
      String all = String.format(Locale.ROOT, "%s: %.2f, %.2f: %s", text, steps, bytes, works);
      assertTrue(steps < MOST && bytes < MOST, all);
    }
    long forACharacter = works.get(DOUBLINGS).steps() / (SMALLEST << DOUBLINGS);
    assertTrue(forACharacter < MOST_STEPS_FOR_A_CHARACTER, text + ": " + forACharacter);
  }
}
