package standstill.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import standstill.edit.Proposal;
import standstill.edit.Proposals;
import standstill.edit.TeamBase;

/**
 * Ends the server, as a power cut ends it for the program, in the middle of saves and merges, and
 * looks at what is left: git finds the repository whole, the base can be read, everything that was
 * acknowledged is there, and the next start works on.
 */
class EditKilledIT {
  private static final int TIMES = Integer.getInteger("standstill.kills", 50);
  private static final int LONGEST_LIFE_MILLIS = 700;

  @TempDir private Path folder;

  /** What the server acknowledged. */
  private record Acknowledged(String change, String mark, Proposal.Standing standing) {}

  private static Process server(Path base, Path accounts) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-XX:+UseSerialGC",
            "-jar",
            System.getProperty("standstill.jar", "target/standstill.jar"),
            "serve",
            "--port",
            "0",
            "--base",
            base.toString(),
            "--edit",
            "--accounts",
            accounts.toString())
        .redirectErrorStream(true)
        .start();
  }

  private static String address(Process server) throws IOException {
    BufferedReader out =
        new BufferedReader(new InputStreamReader(server.getInputStream(), StandardCharsets.UTF_8));
    StringBuilder said = new StringBuilder();
    for (String line = out.readLine(); line != null; line = out.readLine()) {
      if (line.startsWith("Open http://")) {
        return line.replaceFirst("Open (http://[^/]+)/.*", "$1");
      }
      said.append(line).append('\n');
    }
    throw new AssertionError("the server did not start: " + said);
  }

  /** The same kind of hash at the least cost, because everybody signs in fifty times. */
  private static String quickHash(String password) {
    return Password.hash(password)
        .addRandomSalt(16)
        .with(Argon2Function.getInstance(64, 1, 1, 32, Argon2.ID))
        .getResult();
  }

  private static long of(Collection<Acknowledged> done, Proposal.Standing standing) {
    return done.stream().filter(each -> each.standing() == standing).count();
  }

  private static String git(Path top, String... arguments) throws Exception {
    List<String> command = new ArrayList<>(List.of("git", "-C", top.toString()));
    command.addAll(List.of(arguments));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), command + ": " + out);
    return out;
  }

  /** Saves and merges as fast as it can until the server is gone, and says what ended it. */
  private static String work(
      Maintainer ada, Maintainer bram, int round, ConcurrentLinkedQueue<Acknowledged> done) {
    try {
      for (int i = 0; ; i++) {
        String mark = "round " + round + " change " + i;
        Map<String, String> form =
            Maintainer.form(ada.page("/edit/entry?file=" + TeamBase.ENTRY.path()));
        form.put(
            "text", form.get("text").replaceFirst("(?s)\n# round.*", "\n") + "# " + mark + "\n");
        form.put("do", "effect");
        String effect = ada.sent("/edit/entry", form);
        Map<String, String> forward =
            Map.of("token", Maintainer.token(ada.page(effect)), "reason", mark);
        String change = ada.sent(effect.replace("/effect", "/propose"), forward);
        if (!change.startsWith("/change/")) {
          throw new AssertionError(ada.page(change));
        }
        done.add(new Acknowledged(change, mark, Proposal.Standing.WAITING));
        if (i % 3 < 2) {
          bram.sent(change + "/approve", Maintainer.form(bram.page(change)));
          done.add(new Acknowledged(change, mark, Proposal.Standing.MERGED));
        } else if (i % 6 == 2) {
          ada.sent(change + "/take-back", Maintainer.form(ada.page(change)));
          done.add(new Acknowledged(change, mark, Proposal.Standing.TAKEN_BACK));
        }
      }
    } catch (IOException | InterruptedException e) {
      // The server is gone: that is how a round ends.
      return e.toString();
    } catch (AssertionError e) {
      return e.getMessage();
    }
  }

  @Test
  void afterEachSuddenEndTheRepositoryIsWhole() throws Exception {
    long seed = System.nanoTime();
    System.out.println("seed " + seed);
    Random random = new Random(seed);
    Path top = folder.resolve("repository");
    TeamBase team = TeamBase.make(top);
    team.removeBoots();
    Path accounts = folder.resolve("accounts");
    Files.writeString(
        accounts,
        "ada "
            + quickHash("a lamp in every window")
            + "\nbram "
            + quickHash("three wicks and a match")
            + "\n");
    Files.setPosixFilePermissions(accounts, PosixFilePermissions.fromString("rw-------"));
    ConcurrentLinkedQueue<Acknowledged> done = new ConcurrentLinkedQueue<>();
    for (int round = 0; round < TIMES; round++) {
      Process server = server(team.folder(), accounts);
      try {
        String root = address(server);
        assertTrue(team.isClean(), "round " + round + ", seed " + seed + "\n" + git(top, "status"));
        Maintainer ada = new Maintainer(root);
        Maintainer bram = new Maintainer(root);
        assertEquals(303, ada.signIn("ada", "a lamp in every window").statusCode());
        assertEquals(303, bram.signIn("bram", "three wicks and a match").statusCode());
        int number = round;
        FutureTask<String> ending = new FutureTask<>(() -> work(ada, bram, number, done));
        Thread worker = new Thread(ending);
        worker.start();
        // The first steps of a fresh program are slow; the end shall come among those after them.
        int enough = done.size() + 1 + random.nextInt(2);
        for (int i = 0; i < 3_000 && done.size() < enough; i++) {
          worker.join(20);
        }
        // At least a millisecond: a wait of 0 would never end.
        worker.join(1 + random.nextInt(LONGEST_LIFE_MILLIS));
        if (ending.isDone()) {
          fail("round " + round + " ended by itself, seed " + seed + "\n" + ending.get());
        }
        server.destroyForcibly();
        assertTrue(server.waitFor(30, TimeUnit.SECONDS));
        worker.join(30_000);
        assertFalse(worker.isAlive(), "seed " + seed);
      } finally {
        server.destroyForcibly();
      }
      System.out.println("round " + round + ": " + done.size() + " steps acknowledged so far");
      git(top, "fsck", "--strict", "--no-dangling");
      git(top, "rev-parse", "HEAD^{tree}");
      // Half a write is never a file of the base: it has its old text or its new one.
      String text = Files.readString(team.file());
      assertTrue(text.startsWith("id: root-id-on-no-disk\n"), "seed " + seed);
      assertTrue(text.endsWith("\n"), "seed " + seed);
    }
    long merged = of(done, Proposal.Standing.MERGED);
    System.out.println(
        done.size()
            + " steps acknowledged, "
            + merged
            + " of them merges, "
            + of(done, Proposal.Standing.TAKEN_BACK)
            + " taken back");
    assertTrue(merged >= TIMES / 5, "too little happened: " + merged + " merges");
    try (Proposals proposals = Proposals.open(team.folder(), Clock.systemUTC())) {
      String log = git(top, "log", "--format=%B", "main");
      for (Acknowledged each : done) {
        Proposal proposal =
            proposals.find(each.change().substring("/change/".length())).orElseThrow();
        assertTrue(proposal.text().endsWith("# " + each.mark() + "\n"), each + ", seed " + seed);
        if (each.standing() != Proposal.Standing.WAITING) {
          assertEquals(each.standing(), proposal.standing(), each + ", seed " + seed);
        }
        if (each.standing() == Proposal.Standing.MERGED) {
          assertTrue(log.contains(each.mark()), each + ", seed " + seed);
        }
      }
      assertTrue(
          proposals
              .checker()
              .check(proposals.head(), TeamBase.ENTRY, proposals.current(TeamBase.ENTRY).text())
              .problems()
              .isEmpty());
    }
    assertTrue(team.isClean());
    try (Stream<Path> files = Files.walk(top)) {
      assertEquals(
          List.of(),
          files
              .map(Path::toString)
              .filter(f -> f.endsWith(".part") || f.endsWith(".lock"))
              .toList());
    }
  }
}
