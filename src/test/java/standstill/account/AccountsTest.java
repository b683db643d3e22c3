package standstill.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AccountsTest {
  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("accounts");
  }

  @Test
  void aPasswordMatchesItsOwnNameAlone() throws Exception {
    Accounts.put(file(), "ada", "a lamp in every window");
    Accounts.put(file(), "bram", "three wicks and a match");
    Accounts accounts = Accounts.open(file());
    assertTrue(accounts.matches("ada", "a lamp in every window"));
    assertFalse(accounts.matches("ada", "three wicks and a match"));
    assertFalse(accounts.matches("carla", "a lamp in every window"));
    assertFalse(accounts.matches("ada", ""));
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
    assertTrue(accounts.matches("ada", "password"));
    assertFalse(accounts.matches("ada", "passwort"));
  }

  @Test
  void anAccountTakenAwayIsOutAtOnce() throws Exception {
    Accounts.put(file(), "ada", "a lamp in every window");
    Accounts accounts = Accounts.open(file());
    assertTrue(accounts.has("ada"));
    assertTrue(Accounts.remove(file(), "ada"));
    assertFalse(accounts.has("ada"));
    assertFalse(accounts.matches("ada", "a lamp in every window"));
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
}
