package standstill.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import standstill.base.Base;
import standstill.base.Family;
import standstill.log.Boot;
import standstill.log.BootLog;
import standstill.log.LogReader;
import standstill.match.Matches;
import standstill.match.SignMatcher;
import standstill.trace.Trace;
import standstill.trace.Tracer;

/**
 * The matcher with its shortcut against the one without, on a text so short that the latter can be
 * waited for.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class PrefilterBenchmark {
  private SignMatcher matcher;
  private SignMatcher plain;
  private Boot boot;
  private Trace trace;

  @Setup
  public void prepare() {
    Base base = Texts.base();
    Family family = base.family("linux").orElseThrow();
    matcher = new SignMatcher(base, family);
    plain = SignMatcher.withoutPrefilter(base, family);
    BootLog log = new LogReader(base.families()).read(Texts.healthy(100));
    boot = log.boots().get(log.boots().size() - 1);
    trace = new Tracer(family).trace(boot);
  }

  @Benchmark
  public Matches withPrefilter() {
    return matcher.match(boot, trace);
  }

  @Benchmark
  public Matches withoutPrefilter() {
    return plain.match(boot, trace);
  }
}
