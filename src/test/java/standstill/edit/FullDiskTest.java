package standstill.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A write that fails says what became of it, and the same request again does not do it twice. A
 * folder in the place of a file that is to be written stands for a disk without room.
 */
class FullDiskTest {
  private static final EntryName ENTRY = TeamBase.ENTRY;
  private static final String REASON = "Say it more clearly.";

  @TempDir private Path folder;
  private TeamBase base;
  private Proposals proposals;
  private Proposals.Current current;
  private String text;

  @BeforeEach
  void open() throws Exception {
    base = TeamBase.make(folder);
    proposals = Proposals.open(base.folder(), Clock.systemUTC());
    current = proposals.current(ENTRY);
    text = current.text().replace("how-common: very-often", "how-common: often");
  }

  @AfterEach
  void close() throws IOException {
    proposals.close();
  }

  private Proposal propose() throws Exception {
    return proposals.propose("ada", ENTRY, current.commit(), text, REASON);
  }

  private Proposal approve(Proposal proposal) throws Exception {
    return proposals.approve("bram", proposal.id(), proposal.tip(), "");
  }

  /** Where the journal is written before anything else. */
  private Path beforeAnything() {
    return Durable.part(folder.resolve(".git/standstill/begun"));
  }

  /** Where an entry's new content is written after the branch has moved. */
  private Path afterTheMerge() {
    return Durable.part(base.file());
  }

  private static void noRoomAt(Path file) throws IOException {
    Files.createDirectories(file.resolve("full"));
  }

  private static void roomAt(Path file) throws IOException {
    Files.delete(file.resolve("full"));
    Files.delete(file);
  }

  @Test
  void whatWasNotDoneIsSaidAndDoneTheNextTime() throws Exception {
    noRoomAt(beforeAnything());
    String said = assertThrows(Refused.class, this::propose).reason();
    assertTrue(said.startsWith("It was not done, and nothing was changed: "), said);
    assertTrue(said.endsWith("See to the disk, then do the same again."), said);
    assertEquals(0, proposals.open().size());
    roomAt(beforeAnything());
    assertEquals("ada/root-id-on-no-disk-1", propose().id());
  }

  @Test
  void whatIsMergedIsSaidToBeSoAndApprovingAgainAnswersIt() throws Exception {
    Proposal made = propose();
    noRoomAt(afterTheMerge());
    String said = assertThrows(Refused.class, () -> approve(made)).reason();
    assertTrue(said.startsWith("It is done and recorded in git, but the files"), said);
    assertEquals(text, proposals.current(ENTRY).text(), "the branch has it");
    String waiting = assertThrows(Refused.class, () -> approve(made)).reason();
    assertTrue(waiting.startsWith("A change before this one is in the base, but"), waiting);
    roomAt(afterTheMerge());
    Proposal merged = approve(made);
    assertEquals(Proposal.Standing.MERGED, merged.standing());
    assertEquals(text, Files.readString(base.file()));
    assertTrue(base.isClean());
    assertEquals(merged, approve(made), "and once more");
    assertEquals(1, proposals.history(ENTRY).stream().filter(v -> v.why().equals(REASON)).count());
  }

  @Test
  void aStartFinishesWhatHadNoRoom() throws Exception {
    Proposal made = propose();
    noRoomAt(afterTheMerge());
    assertThrows(Refused.class, () -> approve(made));
    roomAt(afterTheMerge());
    proposals.close();
    proposals = Proposals.open(base.folder(), Clock.systemUTC());
    assertEquals(text, Files.readString(base.file()));
    assertEquals(Proposal.Standing.MERGED, proposals.find(made.id()).orElseThrow().standing());
  }

  @Test
  void theSameStepTwiceIsOneStep() throws Exception {
    Proposal made = propose();
    assertEquals(made, propose());
    assertEquals(1, proposals.open().size());
    Proposal back = proposals.sendBack("bram", made.id(), made.tip(), "Which disk?");
    assertEquals(back, proposals.sendBack("bram", made.id(), made.tip(), "Which disk?"));
    String other = text.replace("how-common: often", "how-common: rarely");
    Proposal revised = proposals.revise("ada", made.id(), back.tip(), other, "It is rare.");
    assertEquals(revised, proposals.revise("ada", made.id(), back.tip(), other, "It is rare."));
    assertEquals(3, revised.steps().size());
    Proposal ended = proposals.takeBack("ada", made.id(), revised.tip());
    assertEquals(ended, proposals.takeBack("ada", made.id(), revised.tip()));
    assertEquals(Proposal.Standing.TAKEN_BACK, ended.standing());
  }

  @Test
  void anotherStepFromTheSamePageIsNotTakenForTheSame() throws Exception {
    Proposal made = propose();
    Proposal other = proposals.propose("ada", ENTRY, current.commit(), text, "For another reason.");
    assertFalse(made.id().equals(other.id()));
    proposals.sendBack("bram", made.id(), made.tip(), "Which disk?");
    assertThrows(
        Refused.class, () -> proposals.sendBack("bram", made.id(), made.tip(), "Another remark."));
    assertThrows(
        Refused.class, () -> proposals.sendBack("cleo", made.id(), made.tip(), "Which disk?"));
    proposals.approve("bram", other.id(), other.tip(), "");
    assertThrows(Refused.class, () -> proposals.approve("cleo", other.id(), other.tip(), ""));
  }
}
