package standstill.match;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import standstill.base.Base;
import standstill.base.Family;
import standstill.base.SignForm;
import standstill.base.yaml.BaseText;
import standstill.base.yaml.Loaded;
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

  private static final String TRAIL =
      """
      id: lamp-flickers
      title: Lamps that flicker
      family: [linux]
      signs:
        - {id: lamp-flickers, line: 'lamp (?P<lamp>\\w+) flickers', seen: ['lamp a flickers'], unlike: ['none']}
      harmless-only-when:
        - %s
      why: Invented.
      matters-when: Invented.
      sources: [{title: 'common practice, no source'}]
      reviewed: {on: 2026-11-25, by: base-team}
      """;

  /** Lines of the log that a false trail explains; the base around it is the shipped one. */
  private static List<Integer> harmless(String proviso, String... lines) throws Exception {
    return harmless(
        List.of("scale.yaml", "families/pc.yaml", "families/linux.yaml"), proviso, lines);
  }

  private static List<Integer> harmless(List<String> names, String proviso, String... lines)
      throws Exception {
    List<BaseText> files = new ArrayList<>();
    for (String name : names) {
      files.add(BaseText.of(name, name, Files.readAllBytes(Path.of("kb", name))));
    }
    files.add(new BaseText("trails/lamp-flickers.yaml", "t", TRAIL.formatted(proviso)));
    Loaded loaded = BaseFolder.of(files);
    assertEquals(List.of(), loaded.problems());
    Family linux = loaded.base().family("linux").orElseThrow();
    StringBuilder log = new StringBuilder("[    0.000000] Linux version 6.1.0-18-amd64\n");
    for (int i = 0; i < lines.length; i++) {
      log.append("[    ").append(i + 1).append(".000000] ").append(lines[i]).append('\n');
    }
    BootLog read = new LogReader(loaded.base().families()).read(log.toString());
    Boot boot = read.boots().get(0);
    Matches matches =
        new SignMatcher(loaded.base(), linux).match(boot, new Tracer(linux).trace(boot));
    return matches.trails().stream().flatMap(t -> t.hits().stream()).map(Hit::line).toList();
  }

  @Test
  void aTrailIsHarmlessOnlyWhileNothingForbiddenIsThere() throws Exception {
    String proviso = "{no-line: 'fire in the room', seen: ['fire in the room'], unlike: ['fog']}";
    assertEquals(List.of(2), harmless(proviso, "lamp a flickers", "all is well"));
    assertEquals(List.of(), harmless(proviso, "lamp a flickers", "fire in the room"));
  }

  @Test
  void aTrailIsHarmlessOnlyWithWhatHasToBeThereForTheSameThing() throws Exception {
    String proviso =
        "{line: 'lamp (?P<lamp>\\w+) burns', seen: ['lamp a burns'], unlike: ['lamp a is out']}";
    assertEquals(List.of(2), harmless(proviso, "lamp a flickers", "lamp a burns"));
    assertEquals(List.of(), harmless(proviso, "lamp a flickers", "lamp b burns"));
    assertEquals(
        List.of(3), harmless(proviso, "lamp a flickers", "lamp b flickers", "lamp b burns"));
  }

  @Test
  void aProvisoIsNotMistakenForWhatASignAsksToStandAboveOrBelow() throws Exception {
    Path kb = Path.of("kb");
    List<String> names;
    try (Stream<Path> all = Files.walk(kb)) {
      names =
          all.map(file -> kb.relativize(file).toString())
              .filter(name -> name.endsWith(".yaml") && !name.startsWith("boots"))
              .sorted()
              .toList();
    }
    long joins =
        BaseFolder.read(kb).base().faults().stream()
            .flatMap(fault -> fault.signs().stream())
            .filter(s -> s.form() instanceof SignForm.OnLine form && !form.joins().isEmpty())
            .count();
    assertTrue(joins > 0, "the shipped base has no sign that asks for a second line");
    String forbidden = "{no-line: 'fire in the room', seen: ['fire in the room'], unlike: ['fog']}";
    assertEquals(List.of(2), harmless(names, forbidden, "lamp a flickers", "all is well"));
    assertEquals(List.of(), harmless(names, forbidden, "lamp a flickers", "fire in the room"));
    String needed = "{line: 'all is well', seen: ['all is well'], unlike: ['fog']}";
    assertEquals(List.of(2), harmless(names, needed, "lamp a flickers", "all is well"));
    assertEquals(List.of(), harmless(names, needed, "lamp a flickers"));
  }

  @Test
  void aTrailMayDependOnAMilestone() throws Exception {
    String mounted = "VFS: Mounted root (ext4 filesystem) readonly on device 8:2.";
    assertEquals(List.of(2), harmless("{reached: root-mounted}", "lamp a flickers", mounted));
    assertEquals(List.of(), harmless("{reached: root-mounted}", "lamp a flickers"));
  }
}
