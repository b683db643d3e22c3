package standstill.bench;

import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import standstill.base.Base;
import standstill.report.Diagnoser;
import standstill.report.Report;
import standstill.text.Pattern;

/**
 * Text to ranking on the whole base. What counts is the ratio to running one pattern over the text.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class LogBenchmark {
  private static final Pattern ONE = Pattern.known("Kernel panic - not syncing: (?P<why>.*)");

  /** A healthy boot of 10,000 lines, or all near misses of the base. */
  @Param({"healthy", "near-misses"})
  public String text;

  private byte[] bytes;
  private String[] lines;
  private Diagnoser diagnoser;

  @Setup
  public void prepare() {
    Base base = Texts.base();
    String whole = text.equals("healthy") ? Texts.healthy(10_000) : Texts.nearMisses(base);
    bytes = whole.getBytes(StandardCharsets.UTF_8);
    lines = whole.split("\\R");
    diagnoser = new Diagnoser(base);
  }

  @Benchmark
  public Report diagnose() {
    return diagnoser.diagnose(bytes);
  }

  @Benchmark
  public int onePatternOverTheText() {
    int found = 0;
    for (String line : lines) {
      found += ONE.foundIn(line) ? 1 : 0;
    }
    return found;
  }
}
