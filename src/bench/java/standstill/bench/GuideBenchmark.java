package standstill.bench;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import standstill.base.Base;
import standstill.base.Check;
import standstill.guide.Guidance;
import standstill.guide.Guide;
import standstill.guide.Limits;
import standstill.rank.Observations;
import standstill.rank.Ranking;

/** The next step on the whole base, without a log: the case with the most causes left. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class GuideBenchmark {
  private Guide guide;
  private Ranking start;
  private Observations answered;

  @Setup
  public void prepare() {
    Base base = Texts.base();
    guide = new Guide(base);
    start = guide.withoutLog("linux");
    answered = Observations.NONE;
    List<Check> checks = base.checks();
    for (int i = 0; i < 3; i++) {
      Check check = checks.get(i * 17);
      answered = answered.answer(check.id(), check.answers().get(0).id());
    }
  }

  @Benchmark
  public Guidance firstStep() {
    return guide.guide(start, Observations.NONE, Limits.none(true));
  }

  @Benchmark
  public Guidance nextStepAfterThreeAnswers() {
    return guide.guide(start, answered, Limits.none(true));
  }
}
