package standstill.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What is wrong with the options of {@code serve} is said before anything is read. */
class ServeCommandTest {
  private static String refused(String... options) {
    String[] all = new String[options.length + 3];
    all[0] = "serve";
    all[1] = "--port";
    all[2] = "0";
    System.arraycopy(options, 0, all, 3, options.length);
    CommandRun run = CommandRun.with("", all);
    assertEquals(2, run.code(), run.err());
    return run.err();
  }

  @Test
  void anAddressOfAnotherMachineIsNotCalledATakenPort() {
    // 192.0.2.0/24 is set aside for examples (RFC 5737): no machine has it.
    String said = refused("--host", "192.0.2.1");
    assertTrue(said.contains("192.0.2.1 is not an address of this machine"), said);
    assertFalse(said.contains("port"), said);
    String name = refused("--host", "no such name");
    assertTrue(name.contains("no name that this machine knows"), name);
  }

  @Test
  void namesAndProxiesAreLookedAt() {
    String name = refused("--name", "https://base.example/");
    assertTrue(name.contains("leave out scheme, port and path"), name);
    String proxy = refused("--proxy", "proxy.example");
    assertTrue(proxy.contains("--proxy proxy.example is no address"), proxy);
  }
}
