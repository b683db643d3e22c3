package standstill.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.Family;
import standstill.log.Boot;
import standstill.log.BootLog;
import standstill.log.LogReader;
import standstill.store.BaseFolder;
import standstill.trace.Trace;
import standstill.trace.Tracer;

class SignMatcherTest {
  @Test
  void theShortcutCostsNoFinding() throws Exception {
    Base base = BaseFolder.read(Path.of("kb")).base();
    Family linux = base.family("linux").orElseThrow();
    LogReader reader = new LogReader(base.families());
    SignMatcher quick = new SignMatcher(base, linux);
    SignMatcher slow = SignMatcher.withoutPrefilter(base, linux);
    Tracer tracer = new Tracer(linux);
    List<Path> logs;
    try (Stream<Path> list = Files.list(Path.of("docs/examples"))) {
      logs = list.filter(p -> p.toString().endsWith(".log")).toList();
    }
    assertTrue(logs.size() >= 6);
    for (Path log : logs) {
      BootLog read = reader.read(Files.readAllBytes(log));
      Boot boot = read.boots().get(read.boots().size() - 1);
      Trace trace = tracer.trace(boot);
      Matches a = quick.match(boot, trace);
      Matches b = slow.match(boot, trace);
      assertEquals(b.signs(), a.signs(), log.toString());
      assertEquals(b.trails(), a.trails(), log.toString());
      assertEquals(b.explained(), a.explained(), log.toString());
    }
  }
}
