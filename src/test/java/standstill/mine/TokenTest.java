package standstill.mine;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class TokenTest {
  private static List<String> masked(String message) {
    return Token.of(message).stream().map(Token::masked).toList();
  }

  @Test
  void valuesAreMaskedInsideTheirTokens() {
    assertEquals(
        List.of("usb", "<*>:", "reset", "of", "<*>", "(<*>)", "failed,", "error", "-71"),
        masked("usb 1-4.2: reset of 0000:03:00.0  (sda1) failed, error -71"));
  }

  @Test
  void aNameWithBlanksIsOneValue() {
    assertEquals(List.of("dock", "'<*>'", "is", "gone"), masked("dock 'Lantern Street' is gone"));
  }

  @Test
  void theStatusColumnIsNoToken() {
    assertEquals(
        List.of("Failed", "to", "mount", "<*>."), masked("[FAILED] Failed to mount /srv/bench."));
  }

  @Test
  void errorNumbersAndResultsTellCausesApart() {
    assertEquals("-110", Token.causes(Token.of("dock 12: no answer, error -110")));
    assertEquals("timeout", Token.causes(Token.of("lantern.service: failed, result 'timeout'.")));
    assertEquals("", Token.causes(Token.of("dock 12: no answer")));
  }
}
