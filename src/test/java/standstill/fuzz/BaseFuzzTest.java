package standstill.fuzz;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import standstill.base.yaml.BaseText;
import standstill.base.yaml.Loaded;
import standstill.store.BaseFolder;
import standstill.text.Problem;

/**
 * Any text as a file of a base loads or is refused with its place; its first line names the file.
 */
class BaseFuzzTest {
  private static final List<String> NAMES =
      List.of(
          "faults/kernel/lamp-broken.yaml",
          "scale.yaml",
          "families/linux.yaml",
          "symptoms.yaml",
          "synonyms.yaml",
          "rates.yaml",
          "checks/lamp-lit.yaml",
          "trails/lamp-flickers.yaml",
          "walks/no-light.yaml");

  /** A small base around the file, so that most of the time goes into the file. */
  private static final List<BaseText> AROUND = around();

  private static List<BaseText> around() {
    String family =
        """
        id: linux
        title: Linux
        recognise: [{line: 'Linux version', seen: ['Linux version 6']}]
        begins: [{line: 'Linux version', seen: ['Linux version 6']}]
        ramdisk: [{line: 'initrd', seen: ['initrd']}]
        line-forms: [{id: ring, prefix: 'x', seen: ['x']}]
        milestones:
          - {id: starts, stage: kernel, proves: begins, title: Kernel starts, line: 'Linux', seen: ['Linux']}
        """;
    String symptoms =
        "- {id: text-stops, title: Text stops, stages: [kernel], look: It stops., words: [hang],"
            + " reviewed: {on: 2026-11-25, by: base-team}}\n";
    try {
      return List.of(
          text("scale.yaml", Files.readAllBytes(Path.of("kb/scale.yaml"))),
          text("families/linux.yaml", family.getBytes(StandardCharsets.UTF_8)),
          text("symptoms.yaml", symptoms.getBytes(StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static BaseText text(String name, byte[] bytes) {
    return BaseText.of(name, name, bytes);
  }

  @FuzzTest(maxDuration = "5m")
  void textsLoadOrAreRefused(byte[] bytes) {
    check(bytes);
  }

  @Test
  void keptAndBentTextsLoadOrAreRefused() {
    Bent.inputs(getClass(), "textsLoadOrAreRefused", 200, BaseFuzzTest::check);
  }

  private static void check(byte[] bytes) {
    String all = new String(bytes, StandardCharsets.UTF_8);
    int end = all.indexOf('\n');
    String first = end < 0 ? "" : all.substring(0, end);
    String name = NAMES.contains(first) ? first : NAMES.get(0);
    byte[] text =
        (NAMES.contains(first) ? all.substring(end + 1) : all).getBytes(StandardCharsets.UTF_8);
    List<BaseText> texts = new ArrayList<>(AROUND);
    texts.removeIf(other -> other.name().equals(name));
    texts.add(text(name, text));
    Loaded loaded = BaseFolder.of(texts);
    for (Problem problem : loaded.problems()) {
      assertFalse(problem.message().isBlank());
      assertFalse(problem.message().contains("Exception"), problem.toString());
      assertTrue(problem.position().line() >= 0 && problem.position().column() >= 0);
    }
  }
}
