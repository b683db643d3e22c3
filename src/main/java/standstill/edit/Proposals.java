package standstill.edit;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import org.eclipse.jgit.lib.ObjectId;

/**
 * Proposals of a base in a git repository. Each is a branch of its own, {@code
 * edit/<author>/<entry>-<number>}; each step of it is a commit in the name of who took it, so that
 * it is there whole or not at all. A second person's approval merges it into the branch that is
 * checked out. Whoever asks for the same step again, because the answer was lost or the disk was
 * full, gets the step that was taken. Thread-safe.
 */
public final class Proposals implements Closeable {
  /** Longest accepted text of an entry, in characters. */
  public static final int LONGEST_TEXT = 256 * 1024;

  private static final int MOST_OPEN = 500;
  private static final int TRIES = 5;

  private final GitBase git;
  private final Journal journal;
  private final WorkTree tree;
  private final Branches branches;
  private final Reading reading;
  private final Repeated repeated;
  private final Checker checker;
  private final Clock clock;
  private final ReentrantLock writing = new ReentrantLock();

  private Proposals(GitBase git, Journal journal, Checker checker, Clock clock) {
    this.git = git;
    this.journal = journal;
    this.tree = new WorkTree(git, journal);
    this.branches = new Branches(git, journal);
    this.reading = new Reading(git, branches);
    this.repeated = new Repeated(git, reading, branches);
    this.checker = checker;
    this.clock = clock;
  }

  /**
   * An entry's text as the base has it.
   *
   * @param commit the commit that it was read from
   * @param text empty for an entry that is not there
   */
  public record Current(String commit, String text) {}

  /**
   * Opens the repository around a base's folder, and finishes what a sudden end left half done.
   *
   * @throws Refused when there is no repository that can be edited
   */
  public static Proposals open(Path folder, Clock clock) throws IOException, Refused {
    GitBase git = GitBase.open(folder);
    try {
      Journal journal = Journal.open(git.repository().getDirectory().toPath());
      Proposals proposals = new Proposals(git, journal, new Checker(git), clock);
      try {
        proposals.tree.recover();
        proposals.putAwayMerged();
      } catch (IOException | Refused e) {
        journal.close();
        throw e;
      }
      return proposals;
    } catch (IOException | Refused e) {
      git.close();
      throw e;
    }
  }

  /** What checks texts against this base. */
  public Checker checker() {
    return checker;
  }

  /** The folder of the base in the work tree. */
  public Path folder() {
    return git.folder();
  }

  /** The name of the branch that is checked out. */
  public String branch() throws IOException, Refused {
    return git.branch().replaceFirst("^refs/heads/", "");
  }

  /** The commit that the checked-out branch stands at. */
  public String head() throws IOException, Refused {
    return git.head().name();
  }

  /** The names of all entries that may be edited. */
  public List<EntryName> entries() throws IOException, Refused {
    return git.entries(git.head()).stream().sorted().toList();
  }

  /** An entry as the base has it now. */
  public Current current(EntryName entry) throws IOException, Refused {
    ObjectId head = git.head();
    return new Current(head.name(), git.text(head, entry).orElse(""));
  }

  /** Whether the base has a file of a boot's name, also a compressed log that isn't edited here. */
  public boolean isTaken(EntryName boot) throws IOException, Refused {
    return git.hasPartOf(git.head(), boot);
  }

  /**
   * Puts a change forward.
   *
   * @param from the commit whose text the author set out from
   */
  public Proposal propose(String who, EntryName entry, String from, String text, String reason)
      throws IOException, Refused {
    String why = Messages.reason(reason);
    String clean = clean(entry, text);
    String message = Messages.step("Propose", entry, why, Proposal.Standing.WAITING);
    return alone(
        () -> repeated.proposed(who, entry, from, clean, message),
        () -> {
          ObjectId head = git.head();
          ObjectId start =
              git.inHistory(from, head)
                  .orElseThrow(
                      () ->
                          new Refused(
                              "The text that this change set out from is not in the branch that is"
                                  + " checked out. Copy your text and open the entry anew."));
          if (!git.isPlain(entry)) {
            throw new Refused("The file " + entry + " is a symbolic link, or lies behind one.");
          }
          // The same once more: an answer was lost on its way, or a write failed behind it.
          Optional<Proposal> same = repeated.waiting(who, entry, clean, why);
          if (same.isPresent()) {
            return same.get();
          }
          if (branches.all(Branches.Space.OPEN).size() >= MOST_OPEN) {
            throw new Refused(
                "There are " + MOST_OPEN + " open proposals. Decide on some of them first.");
          }
          Optional<String> old = git.text(start, entry);
          if (entry.isBoot() && old.isEmpty() && git.hasPartOf(head, entry)) {
            throw new Refused(
                "There is a labelled boot of this name already. Give this one another name.");
          }
          if (clean.equals(old.orElse(""))) {
            throw new Refused("Nothing was changed.");
          }
          sound(start, entry, clean);
          ObjectId commit =
              git.commit(
                  git.tree(start, entry, clean), List.of(start), who, clock.instant(), message);
          String id = branches.freeId(who, entry);
          branches.write(Branches.Space.OPEN, id, ObjectId.zeroId(), commit);
          return here(id);
        });
  }

  /** Gives a proposal another text; its author alone can. */
  public Proposal revise(String who, String id, String tip, String text, String reason)
      throws IOException, Refused {
    String why = Messages.reason(reason);
    return alone(
        () -> stepped("Revise", who, id, tip, Optional.of(text), why, Proposal.Standing.WAITING),
        () -> {
          Proposal proposal = open(id, tip);
          own(who, proposal);
          String clean = clean(proposal.entry(), text);
          if (clean.equals(proposal.text())) {
            throw new Refused("Nothing was changed.");
          }
          ObjectId at = ObjectId.fromString(tip);
          sound(git.common(at, git.head()).orElse(at), proposal.entry(), clean);
          step(
              "Revise",
              who,
              proposal,
              git.tree(at, proposal.entry(), clean),
              List.of(at),
              why,
              Proposal.Standing.WAITING);
          return here(id);
        });
  }

  /**
   * Settles a conflict: the text holds what both wanted.
   *
   * @param head the base's commit that the person has seen
   */
  public Proposal settle(String who, String id, String tip, String head, String text, String reason)
      throws IOException, Refused {
    String why = Messages.reason(reason);
    return alone(
        () -> stepped("Settle", who, id, tip, Optional.of(text), why, Proposal.Standing.WAITING),
        () -> {
          Proposal proposal = open(id, tip);
          own(who, proposal);
          String clean = clean(proposal.entry(), text);
          ObjectId now = git.head();
          if (!now.name().equals(head)) {
            throw new Refused(
                "The base was changed once more while you settled this. Copy your text, look at the"
                    + " texts again, and settle them anew.");
          }
          sound(now, proposal.entry(), clean);
          step(
              "Settle",
              who,
              proposal,
              git.tree(now, proposal.entry(), clean),
              List.of(ObjectId.fromString(tip), now),
              why,
              Proposal.Standing.WAITING);
          return here(id);
        });
  }

  /** Sends a proposal back to its author with a remark; anybody but the author can. */
  public Proposal sendBack(String who, String id, String tip, String remark)
      throws IOException, Refused {
    String why = Messages.reason(remark);
    return alone(
        () ->
            stepped("Send back", who, id, tip, Optional.empty(), why, Proposal.Standing.SENT_BACK),
        () -> {
          Proposal proposal = open(id, tip);
          if (proposal.author().equals(who)) {
            throw new Refused("This is your own proposal. Take it back instead.");
          }
          ObjectId at = ObjectId.fromString(tip);
          step(
              "Send back",
              who,
              proposal,
              git.treeOf(at),
              List.of(at),
              why,
              Proposal.Standing.SENT_BACK);
          return here(id);
        });
  }

  /** Takes one's own proposal back; it is kept, out of the way. */
  public Proposal takeBack(String who, String id, String tip) throws IOException, Refused {
    return alone(
        () -> repeated.ended(id, tip, who, Proposal.Standing.TAKEN_BACK),
        () -> {
          Proposal proposal = open(id, tip);
          own(who, proposal);
          ObjectId at = ObjectId.fromString(tip);
          branches.write(Branches.Space.TAKEN_BACK, id, ObjectId.zeroId(), at);
          branches.close(id, at);
          return here(id);
        });
  }

  /**
   * Approves a proposal and merges it; a second person has to.
   *
   * @param tip the commit that the person has looked at
   * @param measured what the change was measured to do, for the record; may be empty
   */
  public Proposal approve(String who, String id, String tip, String measured)
      throws IOException, Refused {
    return alone(
        () -> repeated.approved(id, tip, who),
        () -> {
          // What was approved before and failed on the way may have landed: then it is done.
          putAwayMerged();
          for (int i = 0; i < TRIES; i++) {
            Proposal proposal = open(id, tip);
            if (proposal.writers().contains(who)) {
              throw new Refused("You wrote on this proposal. A second person has to approve it.");
            }
            if (proposal.standing() != Proposal.Standing.WAITING) {
              throw new Refused("This proposal does not wait for approval.");
            }
            if (merge(who, proposal, measured)) {
              putAwayMerged();
              return here(id);
            }
          }
          throw new Refused("The branch moves too fast at present. Try again.");
        });
  }

  /** Merges a proposal; false when the branch moved meanwhile. */
  private boolean merge(String who, Proposal proposal, String measured)
      throws IOException, Refused {
    ObjectId head = git.head();
    ObjectId tip = ObjectId.fromString(proposal.tip());
    ObjectId merged =
        git.merge(head, tip)
            .orElseThrow(
                () -> new Refused("The entry was changed meanwhile; settle the conflict."));
    Set<String> paths = git.changed(git.treeOf(head), merged);
    if (paths.isEmpty() || !git.allInTree(proposal.entry()).containsAll(paths)) {
      throw new Refused(
          paths.isEmpty()
              ? "The base holds this text already. The author can take the proposal back."
              : "The branch of this proposal changes more than its entry. Look at it with git.");
    }
    if (!git.isPlain(proposal.entry())) {
      throw new Refused(
          "The file " + proposal.entry() + " is a symbolic link, or lies behind one.");
    }
    Instant now = clock.instant();
    ObjectId commit =
        git.commit(merged, List.of(head, tip), who, now, Messages.merge(proposal, who, measured));
    sound(head, proposal.entry(), git.text(commit, proposal.entry()).orElse(""));
    String branch = git.branch();
    return tree.move(
        head, commit, List.of(branch), () -> branches.move(branch, head, commit, "approve"));
  }

  /** All open proposals; those that wait for a second person first. */
  public List<Proposal> open() throws IOException, Refused {
    List<Proposal> all = new ArrayList<>();
    for (String id : branches.all(Branches.Space.OPEN).keySet()) {
      reading.proposal(id).filter(p -> p.standing().isOpen()).ifPresent(all::add);
    }
    all.sort(
        Comparator.comparing(Proposal::standing)
            .thenComparing(Proposal::since, Comparator.reverseOrder()));
    return all;
  }

  /** The proposals that came to an end last, newest first. */
  public List<Proposal> ended(int most) throws IOException, Refused {
    Map<String, Instant> times = reading.times(Branches.Space.MERGED);
    times.putAll(reading.times(Branches.Space.TAKEN_BACK));
    List<String> ids =
        times.entrySet().stream()
            .sorted(Map.Entry.<String, Instant>comparingByValue().reversed())
            .limit(most)
            .map(Map.Entry::getKey)
            .toList();
    List<Proposal> all = new ArrayList<>();
    for (String id : ids) {
      find(id).ifPresent(all::add);
    }
    return all;
  }

  /** The proposal of an id. */
  public Optional<Proposal> find(String id) throws IOException, Refused {
    return reading.proposal(id);
  }

  /**
   * What the entry would be with a proposal merged now; empty when it is not open or conflicts.
   *
   * @see Trials
   */
  public Optional<Current> outcome(Proposal proposal) throws IOException, Refused {
    if (!proposal.standing().isOpen()) {
      return Optional.empty();
    }
    ObjectId head = git.head();
    Optional<ObjectId> merged = git.merge(head, ObjectId.fromString(proposal.tip()));
    return merged.isEmpty()
        ? Optional.empty()
        : git.textIn(merged.get(), proposal.entry()).map(text -> new Current(head.name(), text));
  }

  /** The three texts of a conflict; empty when there is none. */
  public Optional<ThreeTexts> conflict(Proposal proposal) throws IOException, Refused {
    if (proposal.standing() != Proposal.Standing.CONFLICT) {
      return Optional.empty();
    }
    ObjectId head = git.head();
    String base = git.text(head, proposal.entry()).orElse("");
    String merged = LineDiff.merge(proposal.before(), base, proposal.text());
    return Optional.of(
        new ThreeTexts(proposal.before(), base, proposal.text(), merged, head.name()));
  }

  /** Whether a commit is in the history of the branch that is checked out. */
  public boolean knows(String commit) throws IOException, Refused {
    return git.inHistory(commit, git.head()).isPresent();
  }

  /** The texts that an entry had, newest first. */
  public List<Version> history(EntryName entry) throws IOException, Refused {
    return reading.history(entry);
  }

  /** The text that an entry had in a commit of the base's history; empty when there is none. */
  public Optional<String> textAt(EntryName entry, String commit) throws IOException, Refused {
    Optional<ObjectId> found = git.inHistory(commit, git.head());
    return found.isEmpty() ? Optional.empty() : git.text(found.get(), entry);
  }

  /** Proposes a text that the entry had before. */
  public Proposal restore(String who, EntryName entry, String commit, String reason)
      throws IOException, Refused {
    String text =
        textAt(entry, commit)
            .orElseThrow(() -> new Refused("The entry has no such text in its history."));
    return propose(who, entry, current(entry).commit(), text, reason);
  }

  @Override
  public void close() throws IOException {
    journal.close();
    git.close();
  }

  /** A step of a proposal. */
  @FunctionalInterface
  private interface Step {
    Proposal take() throws IOException, Refused;
  }

  /** Finds a step that was taken before, and writes nothing. */
  @FunctionalInterface
  private interface Done {
    Optional<Proposal> find() throws IOException, Refused;
  }

  private Optional<Proposal> stepped(
      String verb,
      String who,
      String id,
      String tip,
      Optional<String> text,
      String why,
      Proposal.Standing standing)
      throws IOException, Refused {
    Optional<Proposal> now = find(id);
    if (now.isEmpty()) {
      return now;
    }
    EntryName entry = now.get().entry();
    String clean = text.isPresent() ? clean(entry, text.get()) : now.get().text();
    return repeated.stepped(now.get(), tip, who, clean, Messages.step(verb, entry, why, standing));
  }

  /**
   * Takes a step while nobody else writes, once.
   *
   * @throws Refused also when it can't be written, with what became of it
   */
  private Proposal alone(Done done, Step step) throws IOException, Refused {
    writing.lock();
    try {
      try {
        // A write that failed half-way, for example on a full disk, is finished before the next
        // one.
        tree.recover();
      } catch (IOException e) {
        throw new Refused(
            "A change before this one is in the base, but its files could not be written: "
                + reason(e)
                + ". See to the disk, then do this again; nothing of it was done yet.",
            e);
      }
      Optional<Proposal> before = done.find();
      try {
        if (before.isPresent()) {
          putAwayEnded();
          return here(before.get().id());
        }
        return step.take();
      } catch (IOException e) {
        throw unwritten(done, e);
      }
    } finally {
      writing.unlock();
    }
  }

  /** What became of a step that could not be written to its end. */
  private static Refused unwritten(Done done, IOException e) {
    boolean recorded;
    try {
      recorded = done.find().isPresent();
    } catch (IOException | Refused again) {
      return new Refused(
          "It could not be written to its end: "
              + reason(e)
              + ". See to the disk, then do the same again: what was recorded is not done twice.",
          e);
    }
    return recorded
        ? new Refused(
            "It is done and recorded in git, but the files that follow could not be written: "
                + reason(e)
                + ". See to the disk; they are written before the next change, or at the next start."
                + " To do the same again does no harm.",
            e)
        : new Refused(
            "It was not done, and nothing was changed: "
                + reason(e)
                + ". See to the disk, then do the same again.",
            e);
  }

  private static String reason(IOException e) {
    return e instanceof FileSystemException system && system.getReason() != null
        ? system.getReason()
        : e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }

  private void sound(ObjectId commit, EntryName entry, String text) throws IOException, Refused {
    Optional<String> first = checker.check(commit.name(), entry, text).firstError();
    if (first.isPresent()) {
      throw new Refused("With this text the base has an error: " + first.get());
    }
  }

  private static void own(String who, Proposal proposal) throws Refused {
    if (!proposal.author().equals(who)) {
      throw new Refused("This is the proposal of " + proposal.author() + ".");
    }
  }

  private Proposal open(String id, String tip) throws IOException, Refused {
    Proposal proposal =
        find(id)
            .filter(p -> p.standing().isOpen())
            .orElseThrow(() -> new Refused("This proposal is not open any more."));
    if (!proposal.tip().equals(tip)) {
      throw new Refused("The proposal was changed since you opened this page. Look at it again.");
    }
    return proposal;
  }

  private Proposal here(String id) throws IOException, Refused {
    return find(id).orElseThrow(() -> new IOException("proposal " + id + " is gone"));
  }

  private void step(
      String verb,
      String who,
      Proposal proposal,
      ObjectId newTree,
      List<ObjectId> parents,
      String why,
      Proposal.Standing standing)
      throws IOException, Refused {
    ObjectId commit =
        git.commit(
            newTree,
            parents,
            who,
            clock.instant(),
            Messages.step(verb, proposal.entry(), why, standing));
    branches.write(Branches.Space.OPEN, proposal.id(), ObjectId.fromString(proposal.tip()), commit);
  }

  /**
   * Branches whose tip is in the base are done: they make room, and their merge is kept at hand.
   */
  private void putAwayMerged() throws IOException, Refused {
    Map<String, ObjectId> open = branches.all(Branches.Space.OPEN);
    Map<ObjectId, ObjectId> merges = reading.mergesOf(new HashSet<>(open.values()));
    for (Map.Entry<String, ObjectId> each : open.entrySet()) {
      ObjectId merge = merges.get(each.getValue());
      if (merge != null) {
        if (!branches.all(Branches.Space.MERGED).containsKey(each.getKey())) {
          branches.write(Branches.Space.MERGED, each.getKey(), ObjectId.zeroId(), merge);
        }
        branches.close(each.getKey(), each.getValue());
      }
    }
  }

  /** Finishes a step that ended between two references. */
  private void putAwayEnded() throws IOException, Refused {
    putAwayMerged();
    Map<String, ObjectId> open = branches.all(Branches.Space.OPEN);
    for (Map.Entry<String, ObjectId> each : branches.all(Branches.Space.TAKEN_BACK).entrySet()) {
      if (each.getValue().equals(open.get(each.getKey()))) {
        branches.close(each.getKey(), each.getValue());
      }
    }
  }

  /** How long an entry's text may be, in characters. */
  public static int longest(EntryName entry) {
    return entry.isBoot() ? BootText.LONGEST : LONGEST_TEXT;
  }

  private static String clean(EntryName entry, String text) throws Refused {
    if (text.length() > longest(entry)) {
      throw new Refused("The text is longer than " + longest(entry) + " characters.");
    }
    String clean = text.replace("\r\n", "\n").replace('\r', '\n').stripTrailing();
    if (clean.isEmpty()) {
      throw new Refused("There is no text. An entry can't be emptied here.");
    }
    return clean + "\n";
  }
}
