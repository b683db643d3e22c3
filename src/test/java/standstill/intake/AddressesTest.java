package standstill.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Addresses are those set aside for examples: RFC 5737 and RFC 3849. */
class AddressesTest {
  private static InetAddress address(String text) {
    return Addresses.literal(text).orElseThrow();
  }

  @Test
  void aBlockHoldsItsOwnAddressesAndNoOthers() {
    Addresses some = Addresses.of(List.of("192.0.2.128/25", "198.51.100.7", "2001:db8:1::/48"));
    assertTrue(some.hold(address("192.0.2.128")) && some.hold(address("192.0.2.255")));
    assertFalse(some.hold(address("192.0.2.127")));
    assertTrue(some.hold(address("198.51.100.7")));
    assertFalse(some.hold(address("198.51.100.8")));
    assertTrue(some.hold(address("2001:db8:1:ffff::1")));
    assertFalse(some.hold(address("2001:db8:2::1")));
    assertFalse(Addresses.none().hold(address("192.0.2.1")));
  }

  @Test
  void whatIsNoAddressIsNamedAndNeverLookedUp() {
    for (String wrong :
        List.of("proxy.example", "192.0.2", "192.0.2.1/33", "192.0.2.1/", "192.0.2.1/x", "", ":")) {
      assertEquals(
          wrong,
          assertThrows(IllegalArgumentException.class, () -> Addresses.of(List.of(wrong)))
              .getMessage());
    }
    assertTrue(Addresses.literal("300.0.0.1").isEmpty());
    assertTrue(Addresses.literal("127.1").isEmpty());
  }

  @Test
  void oneHouseholdOfTheNewerKindIsOneClient() {
    // RFC 6177: a site gets at least a /64, so that single addresses of it cost nothing.
    assertEquals(
        Client.key(address("2001:db8:0:5::1")), Client.key(address("2001:db8:0:5:ffff::9")));
    assertFalse(
        Client.key(address("2001:db8:0:5::1")).equals(Client.key(address("2001:db8:0:6::1"))));
  }
}
