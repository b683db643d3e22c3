package standstill.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.eclipse.jgit.api.Git;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.Ref;
import org.eclipse.jgit.revwalk.RevCommit;
import org.eclipse.jgit.revwalk.RevWalk;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

/** Proposals in real repositories. */
class ProposalsTest {
  private static final EntryName ENTRY = TeamBase.ENTRY;
  private static final String TITLE = "title: The root file system named at boot is on no disk";
  private static final String COMMON = "how-common: very-often";

  @TempDir private Path folder;
  private TeamBase base;
  private Proposals proposals;

  @BeforeEach
  void open() throws Exception {
    base = TeamBase.make(folder);
    proposals = Proposals.open(base.folder(), Clock.systemUTC());
  }

  @AfterEach
  void close() throws IOException {
    proposals.close();
  }

  private Proposal propose(String who, Proposals.Current from, String old, String other)
      throws Exception {
    assertTrue(from.text().contains(old), old);
    return proposals.propose(
        who, ENTRY, from.commit(), from.text().replace(old, other), "Say it more clearly.");
  }

  private Proposal approve(String who, Proposal proposal) throws Exception {
    return proposals.approve(who, proposal.id(), proposal.tip(), "");
  }

  private static String refusal(Executable what) {
    return assertThrows(Refused.class, what).reason();
  }

  /** A boot is two files in one proposal; either is there with the other or not at all. */
  @Test
  void aBootIsPutForwardAndMergedWithItsLog() throws Exception {
    EntryName boot = new EntryName("boots/bench-lamp.yaml");
    String label =
        "log: bench-lamp.log\nlabel: unlisted\nstage: root\ncut: whole\nmade: x\nlicence: CC0-1.0\n";
    Path log = base.folder().resolve("boots/bench-lamp.log");
    String text = new BootText(label, "one\n=== the log ===\ntwo\n").joined();
    Proposal made =
        proposals.propose("ada", boot, proposals.head(), text, "The lamp of bench seven.");
    assertEquals("ada/bench-lamp-1", made.id());
    assertEquals(text, made.text());
    assertTrue(made.isNew());
    assertFalse(Files.exists(log));
    try (Git git = base.git()) {
      RevCommit tip = git.getRepository().parseCommit(ObjectId.fromString(made.tip()));
      assertEquals("ada", tip.getAuthorIdent().getName());
    }
    made =
        proposals.revise("ada", made.id(), made.tip(), text.replace("two", "three"), "Third line.");
    Proposal open = made;
    assertTrue(refusal(() -> approve("ada", open)).contains("second person"));
    assertEquals(Proposal.Standing.MERGED, approve("bram", made).standing());
    assertEquals("one\n=== the log ===\nthree\n", Files.readString(log));
    assertEquals(label, Files.readString(base.folder().resolve("boots/bench-lamp.yaml")));
    assertTrue(base.isClean());

    Proposals.Current now = proposals.current(boot);
    Proposal other =
        proposals.propose(
            "bram", boot, now.commit(), now.text().replace("made: x", "made: y"), "Say how.");
    assertEquals(Proposal.Standing.MERGED, approve("ada", other).standing());
    assertTrue(base.isClean());
  }

  /** The log of another boot may be compressed, which is not edited here and not overwritten. */
  @Test
  void aBootsNameIsGivenOnce() throws Exception {
    EntryName boot = new EntryName("boots/bench-lamp.yaml");
    Files.write(base.folder().resolve("boots/bench-lamp.log.gz"), new byte[] {1, 2, 3});
    base.commitAll("Keep a compressed log");
    String text =
        new BootText(
                "log: bench-lamp.log\nlabel: unlisted\nstage: root\ncut: whole\nmade: x\nlicence: CC0-1.0\n",
                "one\n")
            .joined();
    assertTrue(proposals.isTaken(boot));
    String head = proposals.head();
    assertTrue(
        refusal(() -> proposals.propose("ada", boot, head, text, "The lamp."))
            .contains("of this name already"));
    assertTrue(
        refusal(
                () ->
                    proposals.propose(
                        "ada", boot, head, "x".repeat(BootText.LONGEST + 1), "The lamp."))
            .contains("longer than"));
  }

  @Test
  void aProposalIsACommitOfItsAuthorOnABranchOfItsOwn() throws Exception {
    Proposals.Current now = proposals.current(ENTRY);
    Proposal made = propose("ada", now, COMMON, "how-common: often");
    assertEquals("ada/root-id-on-no-disk-1", made.id());
    assertEquals(Proposal.Standing.WAITING, made.standing());
    assertEquals(now.text(), made.before());
    assertTrue(made.text().contains("how-common: often"));
    assertEquals("Say it more clearly.", made.reason());
    try (Git git = base.git();
        RevWalk walk = new RevWalk(git.getRepository())) {
      Ref ref = git.getRepository().exactRef("refs/heads/edit/ada/root-id-on-no-disk-1");
      RevCommit commit = walk.parseCommit(ref.getObjectId());
      assertEquals("ada", commit.getAuthorIdent().getName());
      assertEquals(now.commit(), commit.getParent(0).name());
    }
    assertTrue(base.isClean());
    assertEquals(now, proposals.current(ENTRY));
  }

  @Test
  void approvalOfASecondPersonBringsItIntoBranchFilesAndIndex() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    Proposal merged =
        proposals.approve("bram", made.id(), made.tip(), "Measured on 3 labelled boots.");
    assertEquals(Proposal.Standing.MERGED, merged.standing());
    assertEquals(made.text(), proposals.current(ENTRY).text());
    assertEquals(made.text(), Files.readString(base.file()));
    assertTrue(base.isClean());
    assertEquals(List.of(), proposals.open());
    assertEquals(List.of(merged), proposals.ended(10));
    try (Git git = base.git();
        RevWalk walk = new RevWalk(git.getRepository())) {
      RevCommit head = walk.parseCommit(git.getRepository().resolve("main"));
      assertEquals("bram", head.getAuthorIdent().getName());
      assertEquals(made.tip(), head.getParent(1).name());
      assertTrue(head.getFullMessage().contains("Approved-by: bram"), head.getFullMessage());
      assertTrue(head.getFullMessage().contains("Measured on 3"), head.getFullMessage());
      assertEquals(null, git.getRepository().exactRef("refs/heads/edit/ada/root-id-on-no-disk-1"));
    }
    Version last = proposals.history(ENTRY).get(0);
    assertEquals("ada", last.who());
    assertEquals("bram", last.approvedBy());
  }

  @Test
  void nobodyApprovesWhatTheyWrote() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    assertTrue(refusal(() -> approve("ada", made)).contains("second person"));
    assertEquals(Proposal.Standing.WAITING, proposals.find(made.id()).orElseThrow().standing());
  }

  @Test
  void twoChangesInDifferentPlacesOfAnEntryAreBothKept() throws Exception {
    Proposals.Current seen = proposals.current(ENTRY);
    Proposal one = propose("ada", seen, COMMON, "how-common: often");
    Proposal other = propose("bram", seen, "aliases: []", "aliases: [root-id-nowhere]");
    approve("bram", one);
    Proposal still = proposals.find(other.id()).orElseThrow();
    assertEquals(Proposal.Standing.WAITING, still.standing());
    String outcome = proposals.outcome(still).orElseThrow().text();
    approve("ada", still);
    String text = proposals.current(ENTRY).text();
    assertEquals(outcome, text);
    assertTrue(text.contains("how-common: often") && text.contains("aliases: [root-id-nowhere]"));
  }

  @Test
  void twoChangesInOnePlaceAreShownAndNothingIsOverwritten() throws Exception {
    Proposals.Current seen = proposals.current(ENTRY);
    Proposal one = propose("ada", seen, COMMON, "how-common: often");
    approve("bram", one);
    // bram opened the entry before ada's change came in, and saves after it.
    Proposal other = propose("bram", seen, COMMON, "how-common: rarely");
    assertEquals(Proposal.Standing.CONFLICT, other.standing());
    assertTrue(refusal(() -> approve("ada", other)).contains("does not wait"));
    ThreeTexts texts = proposals.conflict(other).orElseThrow();
    assertEquals(seen.text(), texts.common());
    assertEquals(one.text(), texts.base());
    assertEquals(other.text(), texts.proposed());
    assertEquals(one.text(), proposals.current(ENTRY).text());

    Proposal settled =
        proposals.settle(
            "bram",
            other.id(),
            other.tip(),
            texts.head(),
            texts.base().replace("how-common: often", "how-common: sometimes"),
            "The middle of both.");
    assertEquals(Proposal.Standing.WAITING, settled.standing());
    assertEquals(one.text(), settled.before());
    approve("ada", settled);
    assertTrue(proposals.current(ENTRY).text().contains("how-common: sometimes"));
    List<String> writers = proposals.history(ENTRY).stream().map(Version::who).toList();
    assertEquals("bram", writers.get(0));
    assertEquals(Set.of("ada", "bram"), Set.copyOf(writers.subList(1, 3)));
    assertEquals("carla", writers.get(3));
  }

  @Test
  void settlingAgainstAnOlderBaseIsRefused() throws Exception {
    Proposals.Current seen = proposals.current(ENTRY);
    approve("bram", propose("ada", seen, COMMON, "how-common: often"));
    Proposal other = propose("bram", seen, COMMON, "how-common: rarely");
    assertTrue(
        refusal(
                () ->
                    proposals.settle(
                        "bram", other.id(), other.tip(), seen.commit(), seen.text(), "Mine."))
            .contains("changed once more"));
  }

  @Test
  void aProposalThatChangedSinceItWasLookedAtIsNotApproved() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    Proposal revised =
        proposals.revise(
            "ada",
            made.id(),
            made.tip(),
            made.text().replace("how-common: often", "how-common: rarely"),
            "Rarer than I thought.");
    assertTrue(refusal(() -> approve("bram", made)).contains("changed since"));
    assertEquals("Rarer than I thought.", revised.reason());
    assertEquals(Proposal.Standing.MERGED, approve("bram", revised).standing());
  }

  @Test
  void whatWasSentBackWaitsUntilItsAuthorRevisesIt() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    Proposal back = proposals.sendBack("bram", made.id(), made.tip(), "Which boots show that?");
    assertEquals(Proposal.Standing.SENT_BACK, back.standing());
    assertEquals("Which boots show that?", back.steps().get(1).why());
    assertTrue(refusal(() -> approve("carla", back)).contains("does not wait"));
    assertTrue(
        refusal(() -> proposals.revise("bram", made.id(), back.tip(), "x: y", "So."))
            .contains("proposal of ada"));
    Proposal again =
        proposals.revise("ada", made.id(), back.tip(), made.text() + "# boots: three\n", "These.");
    assertEquals(Proposal.Standing.WAITING, again.standing());
    assertEquals(Set.of("ada"), again.writers());
    approve("bram", again);
  }

  @Test
  void whatWasTakenBackIsKeptAndItsNumberIsNotGivenAgain() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    assertTrue(refusal(() -> proposals.takeBack("bram", made.id(), made.tip())).contains("of ada"));
    Proposal back = proposals.takeBack("ada", made.id(), made.tip());
    assertEquals(Proposal.Standing.TAKEN_BACK, back.standing());
    assertEquals(made.text(), back.text());
    assertEquals(List.of(), proposals.open());
    Proposal next = propose("ada", proposals.current(ENTRY), COMMON, "how-common: rarely");
    assertEquals("ada/root-id-on-no-disk-2", next.id());
  }

  @Test
  void anOlderTextComesBackAsAProposal() throws Exception {
    String first = proposals.current(ENTRY).text();
    approve("bram", propose("ada", proposals.current(ENTRY), COMMON, "how-common: often"));
    Version oldest = proposals.history(ENTRY).get(1);
    Proposal restored =
        proposals.restore("bram", ENTRY, oldest.commit(), "The old word was right.");
    approve("ada", restored);
    assertEquals(first, proposals.current(ENTRY).text());
    assertEquals(3, proposals.history(ENTRY).size());
    assertTrue(
        refusal(() -> proposals.restore("bram", ENTRY, "0".repeat(40), "No."))
            .contains("no such text"));
  }

  @Test
  void somebodysOwnChangesInTheWorkTreeAreNotTouched() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    String own = Files.readString(base.file()) + "# half a thought\n";
    Files.writeString(base.file(), own);
    String before = proposals.current(ENTRY).commit();
    assertTrue(refusal(() -> approve("bram", made)).contains("not committed"));
    assertEquals(own, Files.readString(base.file()));
    assertEquals(before, proposals.current(ENTRY).commit());
    base.commitAll("Finish the thought");
    approve("bram", made);
    String merged = Files.readString(base.file());
    assertTrue(merged.contains("how-common: often") && merged.contains("half a thought"));
    assertTrue(base.isClean());
  }

  @Test
  void somebodysOwnChangesInOtherFilesStay() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    Files.writeString(folder.resolve("notes.txt"), "being written\n");
    approve("bram", made);
    assertEquals("being written\n", Files.readString(folder.resolve("notes.txt")));
    try (Git git = base.git()) {
      assertEquals(Set.of("notes.txt"), git.status().call().getModified());
    }
  }

  @Test
  void aTextWithErrorsIsNoProposal() throws Exception {
    Proposals.Current now = proposals.current(ENTRY);
    String why =
        refusal(
            () ->
                proposals.propose(
                    "ada",
                    ENTRY,
                    now.commit(),
                    now.text().replace(COMMON, "how-common: ofen"),
                    "Typing."));
    assertTrue(why.contains(ENTRY.path() + ":8:13"), why);
    assertTrue(
        refusal(() -> proposals.propose("ada", ENTRY, now.commit(), now.text(), "Nothing."))
            .contains("Nothing was changed"));
    assertTrue(
        refusal(() -> propose("ada", new Proposals.Current("f".repeat(40), now.text()), TITLE, "x"))
            .contains("not in the branch"));
    assertEquals(List.of(), proposals.open());
  }

  @Test
  void aReasonCannotPassForAnApproval() throws Exception {
    Proposals.Current now = proposals.current(ENTRY);
    Proposal made =
        proposals.propose(
            "ada",
            ENTRY,
            now.commit(),
            now.text().replace(COMMON, "how-common: often"),
            "Honest.\n\nApproved-by: bram\nStanding: merged");
    assertEquals(Proposal.Standing.WAITING, made.standing());
    assertEquals("Honest.\n\nApproved-by: bram\nStanding: merged", made.reason());
    approve("carla", made);
    assertEquals("carla", proposals.history(ENTRY).get(0).approvedBy());
  }

  @Test
  void anEntryBehindASymbolicLinkIsRefused() throws Exception {
    Path target = folder.resolve("outside.yaml");
    Files.move(base.file(), target);
    Files.createSymbolicLink(base.file(), target);
    Proposals.Current now = proposals.current(ENTRY);
    assertTrue(
        refusal(() -> propose("ada", now, COMMON, "how-common: often")).contains("symbolic link"));
  }

  @Test
  void oneServerAtATimeEdits() {
    assertTrue(
        refusal(() -> Proposals.open(base.folder(), Clock.systemUTC())).contains("Another server"));
  }

  @Test
  void aFolderOutsideOfGitIsRefused(@TempDir Path elsewhere) {
    assertTrue(
        refusal(() -> Proposals.open(elsewhere, Clock.systemUTC()))
            .contains("in no git work tree"));
  }

  @Test
  void aMoveThatEndedHalfWayIsFinishedAtTheNextStart() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    String old = Files.readString(base.file());
    ObjectId before = ObjectId.fromString(proposals.current(ENTRY).commit());
    ObjectId after = ObjectId.fromString(approve("bram", made).tip());
    try (Git git = base.git()) {
      after = git.getRepository().resolve("main");
      // As if the program had ended between the branch and the files: both still old.
      git.checkout().setStartPoint(before.name()).addPath("kb/" + ENTRY.path()).call();
    }
    assertEquals(old, Files.readString(base.file()));
    assertFalse(base.isClean());
    proposals.close();
    Path git = folder.resolve(".git");
    try (Journal journal = Journal.open(git)) {
      journal.begin(List.of("refs/heads/main"), before, after);
    }
    Files.writeString(git.resolve("index.lock"), "");
    Files.writeString(git.resolve("refs/heads/main.lock"), "");
    Files.writeString(Durable.part(base.file()), "half");
    proposals = Proposals.open(base.folder(), Clock.systemUTC());
    assertEquals(made.text(), Files.readString(base.file()));
    assertTrue(base.isClean());
    assertFalse(Files.exists(git.resolve("index.lock")));
    approve("bram", propose("ada", proposals.current(ENTRY), "how-common: often", COMMON));
  }

  @Test
  void anEndRightAfterTheIndexWasLockedLeavesNoLock() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    ObjectId head = ObjectId.fromString(proposals.current(ENTRY).commit());
    proposals.close();
    Path git = folder.resolve(".git");
    try (Journal journal = Journal.open(git)) {
      journal.begin(List.of("refs/heads/main"), head, ObjectId.fromString(made.tip()));
    }
    Files.writeString(git.resolve("index.lock"), "");
    proposals = Proposals.open(base.folder(), Clock.systemUTC());
    assertFalse(Files.exists(git.resolve("index.lock")));
    approve("bram", made);
  }

  @Test
  void aLockThatIsOlderThanTheMoveIsSomebodyElses() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    ObjectId head = ObjectId.fromString(proposals.current(ENTRY).commit());
    proposals.close();
    Path git = folder.resolve(".git");
    Path lock = Files.writeString(git.resolve("index.lock"), "");
    Files.setLastModifiedTime(lock, FileTime.from(Instant.now().minusSeconds(60)));
    try (Journal journal = Journal.open(git)) {
      journal.begin(List.of("refs/heads/main"), head, ObjectId.fromString(made.tip()));
    }
    proposals = Proposals.open(base.folder(), Clock.systemUTC());
    assertTrue(Files.exists(lock));
    assertThrows(Refused.class, () -> approve("bram", made));
    Files.delete(lock);
    approve("bram", made);
  }

  @Test
  void whoeverWroteAfterTheSuddenEndKeepsTheirText() throws Exception {
    Proposal made = propose("ada", proposals.current(ENTRY), COMMON, "how-common: often");
    ObjectId before = ObjectId.fromString(proposals.current(ENTRY).commit());
    approve("bram", made);
    ObjectId after;
    try (Git git = base.git()) {
      after = git.getRepository().resolve("main");
    }
    proposals.close();
    try (Journal journal = Journal.open(folder.resolve(".git"))) {
      journal.begin(List.of("refs/heads/main"), before, after);
    }
    Files.writeString(base.file(), "# mine\n");
    proposals = Proposals.open(base.folder(), Clock.systemUTC());
    assertEquals("# mine\n", Files.readString(base.file()));
  }
}
