package standstill.base;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PlaceholdersTest {
  @Test
  void aNameInBracesIsAPlaceAndTheBracesOfOthersAreNot() {
    String text = "mount /dev/{disk} ; ${disk} {} {A} {a b} IMPORT{program} {unit_name}";
    assertEquals(Set.of("disk", "unit_name"), Placeholders.in(text));
    assertEquals(
        "mount /dev/sda ; ${disk} {} {A} {a b} IMPORT{program} {unit_name}",
        Placeholders.filled(text, Map.of("disk", "sda", "program", "x")));
  }

  @Test
  void whatIsFilledInIsNotReadAgain() {
    assertEquals(
        "{b} and {open", Placeholders.filled("{a} and {open", Map.of("a", "{b}", "b", "no")));
  }
}
