package standstill.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program that changes accounts is killed at any moment; what it acknowledged is kept. */
class KilledWhileChangingIT {
  private static final int KILLS = Integer.getInteger("standstill.kills", 20);

  @TempDir private Path folder;

  /** The program: changes accounts until it is killed, and tells of each change that is done. */
  static final class Changer {
    private Changer() {}

    public static void main(String[] arguments) throws Exception {
      Path file = Path.of(arguments[0]);
      String round = arguments[1];
      for (int number = 0; ; number++) {
        String name = "ada-" + round + "-" + number;
        Accounts.put(file, name, "a lamp in every window");
        tell("+" + name);
        // Fast changes among the slow ones: a removal needs no hash.
        for (int i = 0; number > 0 && i < 40; i++) {
          Accounts.remove(file, "nobody");
        }
        if (number % 2 == 1) {
          tell("?" + name);
          Accounts.remove(file, name);
          tell("-" + name);
        }
      }
    }

    private static void tell(String what) {
      System.out.print(what + "\n");
      System.out.flush();
    }
  }

  @Test
  void whatWasAcknowledgedIsKeptWheneverItEnds() throws Exception {
    long seed = System.nanoTime();
    System.out.println("KilledWhileChangingIT: seed " + seed);
    Random random = new Random(seed);
    Path file = folder.resolve("accounts");
    Accounts.put(file, "always", "three wicks and a match");
    Set<String> kept = new TreeSet<>(Set.of("always"));
    int told = 0;
    for (int kill = 0; kill < KILLS; kill++) {
      String where = "kill " + kill + ", seed " + seed;
      Process changer =
          new ProcessBuilder(
                  Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                  "-XX:TieredStopAtLevel=1",
                  "-XX:+UseSerialGC",
                  "-cp",
                  System.getProperty(
                      "surefire.test.class.path", System.getProperty("java.class.path")),
                  Changer.class.getName(),
                  file.toString(),
                  Integer.toString(kill))
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      BufferedReader out =
          new BufferedReader(
              new InputStreamReader(changer.getInputStream(), StandardCharsets.UTF_8));
      Set<String> removed = new TreeSet<>();
      int enough = 1 + random.nextInt(3);
      String line = "";
      for (int i = 0; i < enough && line != null; i++) {
        line = out.readLine();
        told += count(line, kept, removed);
      }
      TimeUnit.MICROSECONDS.sleep(random.nextInt(300_000));
      // By its handle: the process itself would close what it still has told.
      changer.toHandle().destroyForcibly();
      assertTrue(changer.waitFor(30, TimeUnit.SECONDS), where);
      for (line = out.readLine(); line != null; line = out.readLine()) {
        told += count(line, kept, removed);
      }
      Set<String> there = Accounts.names(file);
      assertTrue(there.containsAll(kept), where + ": " + kept + " but there are " + there);
      removed.forEach(name -> assertTrue(!there.contains(name), where + ": " + name));
      assertTrue(there.size() <= kept.size() + 1, where + ": more than one that was not told");
      // The change that was in the middle may have landed or not; it is known now.
      kept.clear();
      kept.addAll(there);
      assertEquals(
          "rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)), where);
    }
    System.out.println(told + " changes acknowledged in " + KILLS + " lives, none lost");
    assertTrue(told >= KILLS, "too little happened: " + told);
    Accounts.put(file, "last", "three wicks and a match");
    assertTrue(Accounts.names(file).contains("last"), "the next change works after a sudden end");
  }

  private static int count(String line, Set<String> kept, Set<String> removed) {
    if (line == null || line.isEmpty()) {
      return 0;
    }
    String name = line.substring(1);
    switch (line.charAt(0)) {
      case '+' -> kept.add(name);
      case '?' -> kept.remove(name);
      default -> removed.add(name);
    }
    return line.charAt(0) == '?' ? 0 : 1;
  }
}
