package standstill.mine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** By hand, after the steps of He et al. 2017, section III. */
class TemplateTreeTest {
  private static TemplateTree.Group add(TemplateTree tree, String message) {
    return tree.add(List.of(message.split(" ")), "").orElseThrow();
  }

  @Test
  void whatDiffersBecomesAWildcard() {
    TemplateTree tree = new TemplateTree(4, 0.5, 100, false);
    TemplateTree.Group group = add(tree, "receive from node four");
    assertSame(group, add(tree, "receive from node nine"));
    assertEquals(List.of("receive", "from", "node", "<*>"), group.template());
    assertEquals(1, tree.size());
  }

  @Test
  void messagesOfDifferentLengthStayApart() {
    TemplateTree tree = new TemplateTree(4, 0.1, 100, false);
    assertNotSame(add(tree, "receive from node"), add(tree, "receive from node four"));
  }

  @Test
  void theFirstTokenPartsUnlessItHasADigit() {
    TemplateTree tree = new TemplateTree(4, 0.5, 100, false);
    assertNotSame(add(tree, "send to node four"), add(tree, "sent to node four"));
    assertSame(add(tree, "node1 is gone now"), add(tree, "node2 is gone now"));
  }

  @Test
  void fewerEqualTokensThanAskedOpenAGroup() {
    TemplateTree tree = new TemplateTree(4, 0.75, 100, false);
    TemplateTree.Group group = add(tree, "dock is at rest");
    assertSame(group, add(tree, "dock is at work"), "three of four");
    assertNotSame(group, add(tree, "dock is in pain"), "two of four");
  }

  @Test
  void aFullNodeSendsTheRestToTheWildcard() {
    TemplateTree tree = new TemplateTree(4, 0.5, 3, false);
    add(tree, "a is gone now");
    add(tree, "b is gone now");
    assertSame(
        add(tree, "c is gone now"), add(tree, "d is gone now"), "two branches and the wildcard's");
  }

  @Test
  void ofEquallyLikeGroupsTheWiderOneTakesTheMessage() {
    TemplateTree tree = new TemplateTree(3, 0.5, 100, false);
    TemplateTree.Group narrow = add(tree, "a b c d");
    TemplateTree.Group wide = add(tree, "e f g h");
    assertSame(wide, add(tree, "e f x y"));
    assertNotSame(narrow, wide);
    assertSame(wide, add(tree, "e f c d"), "two tokens are the same in both");
  }

  @Test
  void valuesCountAsEqualOnlyWhereTheCallerSaysSo() {
    TemplateTree paper = new TemplateTree(4, 0.5, 100, false);
    assertNotSame(add(paper, "dock <*> <*> on"), add(paper, "dock <*> <*> off"));
    TemplateTree masked = new TemplateTree(4, 0.5, 100, true);
    assertSame(add(masked, "dock <*> <*> on"), add(masked, "dock <*> <*> off"));
  }

  @Test
  void whatTellsCausesApartNeverSharesAGroup() {
    TemplateTree tree = new TemplateTree(4, 0.1, 100, true);
    List<String> tokens = List.of("dock", "is", "gone");
    assertNotSame(tree.add(tokens, "-110").orElseThrow(), tree.add(tokens, "-71").orElseThrow());
  }

  @Test
  void hostileTextFindsNoRoomForGroupsWithoutEnd() {
    TemplateTree tree = new TemplateTree(3, 1.0, 100, true);
    for (int i = 0; i < 2_000; i++) {
      tree.add(List.of("word" + i), "");
    }
    assertEquals(500, tree.size());
    assertEquals(Optional.empty(), tree.add(List.of("another"), ""));
    assertTrue(tree.add(List.of("word7"), "").isPresent(), "known ones are still known");
  }
}
