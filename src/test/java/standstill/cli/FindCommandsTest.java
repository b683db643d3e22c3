package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code search} and {@code show} on a terminal. */
class FindCommandsTest {
  @TempDir private Path folder;

  private CommandRun search(String... words) {
    String[] args = new String[words.length + 3];
    args[0] = "search";
    args[1] = "--index";
    args[2] = folder.resolve("index").toString();
    System.arraycopy(words, 0, args, 3, words.length);
    return CommandRun.of(args);
  }

  @Test
  void wordsFindEntriesAndSayHowToShowThem() {
    CommandRun run = search("black", "screen", "after", "the", "menu");
    assertEquals(0, run.code());
    assertTrue(run.out().contains("After the menu the screen stays black"), run.out());
    assertTrue(run.out().contains("symptom: show menu-then-black"), run.out());
    run.out().lines().forEach(line -> assertTrue(line.length() <= 80, line));
  }

  @Test
  void aLineOfALogFindsTheCauseWhoseSignItIs() throws Exception {
    CommandRun run = search("--json", "usb 1-4: device descriptor read/64, error -71");
    JsonNode found = new ObjectMapper().readTree(run.out()).at("/found");
    assertEquals("usb-descriptor-errors", found.at("/0/id").asText());
    assertTrue(found.at("/0/by-sign").asBoolean());
    assertTrue(found.size() <= 10);
  }

  @Test
  void aTypingErrorIsReadAsTheNearestWordAndSaid() {
    CommandRun run = search("hibernaton");
    assertTrue(run.out().contains("read as 'hibernation'"), run.out());
  }

  @Test
  void noMoreThanAskedForIsShown() throws Exception {
    assertEquals(
        2,
        new ObjectMapper()
            .readTree(search("--json", "--top", "2", "disk").out())
            .at("/found")
            .size());
    assertTrue(search("--top", "2", "disk").out().contains("more; --top N shows them"));
    assertEquals(ExitCode.USAGE, search("--top", "0", "disk").code());
    assertEquals(ExitCode.USAGE, search().code());
  }

  @Test
  void anEntryIsShownWithTheStepsForOneSystem() {
    String entry = "stale-menu-entry-after-update";
    String all = CommandRun.with("", "show", entry).out();
    assertTrue(all.contains("update-grub") && all.contains("grub2-mkconfig"), all);
    String own = CommandRun.with("", "show", entry, "--for", "debian,grub").out();
    assertTrue(own.contains("update-grub") && !own.contains("grub2-mkconfig"), own);
    CommandRun unknown = CommandRun.with("", "show", entry, "--for", "toaster");
    assertEquals(ExitCode.USAGE, unknown.code());
    assertTrue(unknown.err().contains("systemd-boot"), unknown.err());
  }

  @Test
  void theIndexIsKeptWhereItIsAskedTo() throws Exception {
    search("disk");
    try (var files = Files.list(folder.resolve("index"))) {
      assertTrue(files.anyMatch(f -> f.getFileName().toString().startsWith("segments")));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "root-id-on-no-disk | The root file system named at boot is on no disk | Repair: ",
        "list-disks-in-rescue-shell | Does the system that was started list the root disk? | Tells apart",
        "shell-before-root | appears | Causes, likeliest first",
        "link-down-on-empty-port | No disk on a SATA port that is empty | Why it is harmless",
      })
  void everyKindOfEntryIsShown(String id, String title, String part) {
    CommandRun run = CommandRun.of("show", id);
    assertEquals(0, run.code(), run.err());
    assertTrue(run.out().contains(title), run.out());
    assertTrue(run.out().contains(part), run.out());
    assertTrue(run.out().contains(id), run.out());
    run.out().lines().forEach(line -> assertTrue(line.length() <= 80, line));
    assertFalse(run.out().contains("\u001b"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"no-such-entry", "../etc", ""})
  void anUnknownIdIsSaidWithWhatToDo(String id) {
    CommandRun run = CommandRun.of("show", id);
    assertEquals(ExitCode.USAGE, run.code());
    assertTrue(run.err().contains("no entry '" + id + "'; try: search"), run.err());
  }
}
