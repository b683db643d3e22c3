package standstill.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AccountsTest {
  @TempDir private Path folder;

  private static boolean matches(Accounts accounts, String name, String password)
      throws IOException {
    return accounts.enter(name, password).isPresent();
  }

  private Path file() {
    return folder.resolve("accounts");
  }

  @Test
  void aPasswordMatchesItsOwnNameAlone() throws Exception {
    Accounts.put(file(), "ada", "a lamp in every window");
    Accounts.put(file(), "bram", "three wicks and a match");
    Accounts accounts = Accounts.open(file());
    assertTrue(matches(accounts, "ada", "a lamp in every window"));
    assertFalse(matches(accounts, "ada", "three wicks and a match"));
    assertFalse(matches(accounts, "carla", "a lamp in every window"));
    assertFalse(matches(accounts, "ada", ""));
    assertEquals(Set.of("ada", "bram"), Accounts.names(file()));
  }

  @Test
  void theFileHoldsHashesOfTheRecommendedKindAndIsForItsOwnerAlone() throws Exception {
    Accounts.put(file(), "ada", "a lamp in every window");
    String text = Files.readString(file());
    // Parameters of RFC 9106, section 4, second recommended option: t=3, p=4, m=2^16 KiB.
    assertTrue(text.contains("ada $argon2id$v=19$m=65536,t=3,p=4$"), text);
    assertFalse(text.contains("lamp"), text);
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file())));
    assertTrue(Accounts.caution(file()).isEmpty());
    Files.setPosixFilePermissions(file(), PosixFilePermissions.fromString("rw-r--r--"));
    assertTrue(Accounts.caution(file()).orElseThrow().contains("chmod 600"));
  }

  @Test
  void aHashOfAnotherImplementationIsUnderstood() throws Exception {
    // The reference implementation of Argon2 (phc-winner-argon2, src/test.c) hashes "password" with
    // the salt "somesalt", version 0x13, t=2, m=2^16, p=1, to this text; quoted from memory, and
    // proved by the match.
    Files.writeString(
        file(),
        "ada $argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc\n");
    Accounts accounts = Accounts.open(file());
    assertTrue(matches(accounts, "ada", "password"));
    assertFalse(matches(accounts, "ada", "passwort"));
  }

  @Test
  void anAccountTakenAwayIsOutAtOnce() throws Exception {
    Accounts.put(file(), "ada", "a lamp in every window");
    Accounts accounts = Accounts.open(file());
    assertTrue(accounts.has("ada"));
    assertTrue(Accounts.remove(file(), "ada"));
    assertFalse(accounts.has("ada"));
    assertFalse(matches(accounts, "ada", "a lamp in every window"));
    assertFalse(Accounts.remove(file(), "ada"));
  }

  @Test
  void aLineThatIsNoAccountIsReportedAndNotShown() throws Exception {
    Files.writeString(file(), "# maintainers\nada my-password-in-clear\n");
    String said = assertThrows(IOException.class, () -> Accounts.open(file())).getMessage();
    assertTrue(said.contains(":2: "), said);
    assertFalse(said.contains("my-password"), said);
  }

  @Test
  void namesAreThoseThatABranchCanHave() {
    assertTrue(Accounts.isName("ada"));
    assertTrue(Accounts.isName("bram-2"));
    for (String name :
        new String[] {
          "", "Ada", "2ada", "-ada", "ada-", "a/b", "a b", "..", "a\n", "x".repeat(33)
        }) {
      assertFalse(Accounts.isName(name), name);
    }
  }

  @Test
  void accountsAddedAtOnceAreAllKept() throws Exception {
    List<FutureTask<Boolean>> adding = new ArrayList<>();
    for (String name : List.of("ada", "bram", "carla", "dorus")) {
      FutureTask<Boolean> task =
          new FutureTask<>(
              () -> {
                Accounts.put(file(), name, "a lamp in every window");
                return true;
              });
      adding.add(task);
    }
    adding.forEach(task -> new Thread(task).start());
    for (FutureTask<Boolean> task : adding) {
      assertTrue(task.get());
    }
    assertEquals(Set.of("ada", "bram", "carla", "dorus"), Set.copyOf(Accounts.names(file())));
  }

  @Test
  void whoeverChangesTheFileWaitsForTheProgramThatDoes() throws Exception {
    Accounts.put(file(), "ada", "a lamp in every window");
    FutureTask<Boolean> removing = new FutureTask<>(() -> Accounts.remove(file(), "ada"));
    try (FileChannel lock =
            FileChannel.open(folder.resolve(".accounts.lock"), StandardOpenOption.WRITE);
        FileLock held = lock.lock()) {
      assertTrue(held.isValid());
      // Within one program a second lock is an error: that shows that it is asked for.
      new Thread(removing).start();
      assertThrows(ExecutionException.class, removing::get);
    }
    assertEquals(Set.of("ada"), Accounts.names(file()));
    assertTrue(Accounts.remove(file(), "ada"));
  }

  @Test
  void aLinkToTheFileStaysALink() throws Exception {
    Path link = folder.resolve("link");
    Accounts.put(file(), "ada", "a lamp in every window");
    Files.createSymbolicLink(link, file());
    Accounts.put(link, "bram", "three wicks and a match");
    assertTrue(Files.isSymbolicLink(link));
    assertEquals(Set.of("ada", "bram"), Accounts.names(file()));
  }

  @Test
  void aProofIsOfOneNameAndEndsWithItsPassword() throws Exception {
    Accounts.put(file(), "ada", "a lamp in every window");
    Accounts.put(file(), "bram", "three wicks and a match");
    Accounts accounts = Accounts.open(file());
    String proof = accounts.proof("ada").orElseThrow();
    String mark = accounts.mark("ada").orElseThrow();
    assertTrue(accounts.device("ada", proof).isPresent());
    assertTrue(accounts.device("bram", proof).isEmpty());
    assertTrue(accounts.device("ada", proof.replace('.', 'x')).isEmpty());
    assertTrue(accounts.device("ada", "").isEmpty() && accounts.proof("carla").isEmpty());
    String other = accounts.proof("ada").orElseThrow();
    assertFalse(accounts.device("ada", proof).equals(accounts.device("ada", other)));
    assertTrue(
        accounts.device("ada", other.substring(0, 25) + proof.substring(25)).isEmpty(),
        "a proof is not made by putting two together");
    Accounts.put(file(), "ada", "another lamp in every window");
    assertTrue(accounts.device("ada", proof).isEmpty());
    assertFalse(accounts.mark("ada").orElseThrow().equals(mark));
  }
}
