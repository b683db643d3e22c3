package standstill.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class EntryNameTest {
  @Test
  void filesOfTheBaseAreNames() {
    for (String path :
        List.of(
            "faults/root/root-id-on-no-disk.yaml",
            "checks/lamp.yaml",
            "trails/x.yaml",
            "walks/y2.yaml",
            "families/linux.yaml",
            "boots/lamp-out.yaml",
            "symptoms.yaml",
            "scale.yaml")) {
      assertEquals(Optional.of(path), EntryName.of(path).map(EntryName::path));
    }
    assertEquals("lamp", new EntryName("checks/lamp.yaml").id());
  }

  @Test
  void nothingElseGetsThrough() {
    for (String path :
        List.of(
            "",
            ".yaml",
            "faults/root/.yaml",
            "faults/cellar/x.yaml",
            "faults/x.yaml",
            "faults/root/../root/x.yaml",
            "faults/root/x.yaml/y.yaml",
            "../scale.yaml",
            "/scale.yaml",
            "checks//x.yaml",
            "checks/X.yaml",
            "checks/x\n.yaml",
            "checks/x.yml",
            "boots/x.log",
            "boots/x/y.yaml",
            "rates.yaml",
            ".git/config.yaml",
            "checks/" + "x".repeat(61) + ".yaml")) {
      assertTrue(EntryName.of(path).isEmpty(), path);
    }
  }
}
