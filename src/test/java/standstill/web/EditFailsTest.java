package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import standstill.edit.TeamBase;

/**
 * What a maintainer sees when a file can't be written, and that sending it again is safe. A folder
 * stands where the server writes, which fails as a full disk does, at the same place.
 */
class EditFailsTest {
  @TempDir private Path folder;

  private static HttpResponse<String> propose(Maintainer ada, String effect) throws Exception {
    return ada.post(
        effect.replace("/effect", "/propose"),
        Map.of("token", Maintainer.token(ada.page(effect)), "reason", "Counted on the bench."));
  }

  private static void assertSaysWhatToDo(HttpResponse<String> answer) {
    assertTrue(answer.statusCode() >= 400, answer.body());
    assertTrue(answer.body().contains("recorded in git"), answer.body());
    assertTrue(answer.body().contains("could not be written"), answer.body());
    assertTrue(answer.body().contains("To do the same again does no harm"), answer.body());
  }

  @Test
  void whatCouldNotBeWrittenIsSentAgainAndDoneOnce() throws Exception {
    try (TeamServer running = TeamServer.start(folder)) {
      running.team().removeBoots();
      Maintainer ada = new Maintainer(running.address());
      Maintainer bram = new Maintainer(running.address());
      assertEquals(303, ada.signIn("ada", TeamServer.ADA).statusCode());
      assertEquals(303, bram.signIn("bram", TeamServer.BRAM).statusCode());
      Map<String, String> form =
          Maintainer.form(ada.page("/edit/entry?file=" + TeamBase.ENTRY.path()));
      form.put("text", form.get("text") + "# counted\n");
      form.put("do", "effect");
      String effect = ada.sent("/edit/entry", form);

      Path journal = folder.resolve("repository/.git/standstill/.begun.part");
      // A proposal moves no file, so that a journal that can't be written does not stop it.
      Files.createDirectories(journal.resolve("full"));
      assertEquals(303, propose(ada, effect).statusCode());
      Files.delete(journal.resolve("full"));
      Files.delete(journal);
      String change =
          propose(ada, effect)
              .headers()
              .firstValue("Location")
              .orElseThrow()
              .replaceFirst("^https?://[^/]+", "");
      assertTrue(change.endsWith("-1"), change);

      Map<String, String> tip = Maintainer.form(bram.page(change));
      Path written = running.team().file().resolveSibling(".root-id-on-no-disk.yaml.part");
      Files.createDirectories(written.resolve("full"));
      assertSaysWhatToDo(bram.post(change + "/approve", tip));
      Files.delete(written.resolve("full"));
      Files.delete(written);
      assertEquals(303, bram.post(change + "/approve", tip).statusCode());
      assertEquals(303, bram.post(change + "/approve", tip).statusCode(), "and once more");
      assertTrue(bram.page(change).contains("in the base"));
      assertTrue(Files.readString(running.team().file()).endsWith("# counted\n"));
      assertTrue(running.team().isClean());
    }
  }
}
