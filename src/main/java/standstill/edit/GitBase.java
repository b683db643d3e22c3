package standstill.edit;

import java.io.Closeable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.eclipse.jgit.dircache.DirCache;
import org.eclipse.jgit.dircache.DirCacheBuilder;
import org.eclipse.jgit.dircache.DirCacheEditor;
import org.eclipse.jgit.dircache.DirCacheEntry;
import org.eclipse.jgit.errors.CorruptObjectException;
import org.eclipse.jgit.errors.IncorrectObjectTypeException;
import org.eclipse.jgit.errors.MissingObjectException;
import org.eclipse.jgit.lib.CommitBuilder;
import org.eclipse.jgit.lib.Constants;
import org.eclipse.jgit.lib.FileMode;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.ObjectInserter;
import org.eclipse.jgit.lib.ObjectReader;
import org.eclipse.jgit.lib.PersonIdent;
import org.eclipse.jgit.lib.Ref;
import org.eclipse.jgit.lib.Repository;
import org.eclipse.jgit.merge.MergeStrategy;
import org.eclipse.jgit.merge.ThreeWayMerger;
import org.eclipse.jgit.revwalk.RevCommit;
import org.eclipse.jgit.revwalk.RevWalk;
import org.eclipse.jgit.revwalk.filter.RevFilter;
import org.eclipse.jgit.storage.file.FileRepositoryBuilder;
import org.eclipse.jgit.treewalk.TreeWalk;
import org.eclipse.jgit.treewalk.filter.PathFilter;
import org.eclipse.jgit.treewalk.filter.TreeFilter;
import org.jspecify.annotations.Nullable;
import standstill.base.yaml.BaseText;

/**
 * The git repository whose work tree holds the base: reading texts out of commits, and making trees
 * and commits in the object database. It touches neither the index nor the work tree.
 */
final class GitBase implements Closeable {
  /** Largest file that is read out of a commit, in bytes. */
  private static final int LARGEST_FILE = 4 << 20;

  private static final int MOST_FILES = 10_000;

  private final Repository repository;
  private final Path folder;
  private final String prefix;

  private GitBase(Repository repository, Path folder, String prefix) {
    this.repository = repository;
    this.folder = folder;
    this.prefix = prefix;
  }

  /**
   * The repository around a base's folder.
   *
   * @throws Refused when there is none that can be written to
   */
  static GitBase open(Path folder) throws IOException, Refused {
    GitBase base = around(folder);
    // What is acknowledged must outlive a power cut, not only the end of the process.
    base.repository.getConfig().setBoolean("core", null, "fsyncobjectfiles", true);
    base.repository.getConfig().setBoolean("core", null, "fsyncreffiles", true);
    base.head();
    return base;
  }

  /**
   * The repository around a base's folder, to be read only: any commit may be checked out.
   *
   * @throws Refused when there is none
   */
  static GitBase around(Path folder) throws IOException, Refused {
    Path real = folder.toRealPath();
    FileRepositoryBuilder builder =
        new FileRepositoryBuilder().setMustExist(true).findGitDir(real.toFile());
    if (builder.getGitDir() == null) {
      throw new Refused(
          "The folder "
              + folder
              + " is in no git work tree. Editing keeps its history in git: run 'git init' there"
              + " and commit the base first.");
    }
    Repository repository = builder.build();
    if (repository.isBare()) {
      repository.close();
      throw new Refused("The repository around " + folder + " has no work tree.");
    }
    Path tree = repository.getWorkTree().toPath().toRealPath();
    String below = tree.relativize(real).toString().replace('\\', '/');
    return new GitBase(repository, real, below.isEmpty() ? "" : below + "/");
  }

  Repository repository() {
    return repository;
  }

  /** The folder of the base in the work tree, without symbolic links. */
  Path folder() {
    return folder;
  }

  /** Path of an entry from the top of the repository. */
  String inTree(EntryName entry) {
    return prefix + entry.path();
  }

  /** Paths of all files of an entry from the top of the repository. */
  Set<String> allInTree(EntryName entry) {
    Set<String> paths = new TreeSet<>();
    entry.files().forEach(file -> paths.add(prefix + file));
    return paths;
  }

  /** The branch that is checked out, in full. */
  String branch() throws IOException, Refused {
    Ref head = repository.exactRef(Constants.HEAD);
    if (head == null || !head.isSymbolic()) {
      throw new Refused(
          "No branch is checked out in the base's work tree. Check out the branch that holds the"
              + " base.");
    }
    return head.getTarget().getName();
  }

  /** The commit that the checked-out branch stands at. */
  ObjectId head() throws IOException, Refused {
    Ref ref = repository.exactRef(branch());
    if (ref == null || ref.getObjectId() == null) {
      throw new Refused("The checked-out branch has no commit yet. Commit the base first.");
    }
    return ref.getObjectId();
  }

  /** A commit by its full name, if it is in the history of another. */
  Optional<ObjectId> inHistory(String name, ObjectId of) throws IOException {
    if (!ObjectId.isId(name)) {
      return Optional.empty();
    }
    try (RevWalk walk = new RevWalk(repository)) {
      RevCommit commit = walk.parseCommit(ObjectId.fromString(name));
      return walk.isMergedInto(commit, walk.parseCommit(of))
          ? Optional.of(commit.getId())
          : Optional.empty();
    } catch (MissingObjectException | IncorrectObjectTypeException e) {
      return Optional.empty();
    }
  }

  /** The text of an entry in a commit; empty when it is not there as a plain file. */
  Optional<String> text(ObjectId commit, EntryName entry) throws IOException {
    return textIn(treeOf(commit), entry);
  }

  /** The text of an entry in a tree; empty when it is not there as a plain file. */
  Optional<String> textIn(ObjectId tree, EntryName entry) throws IOException {
    Optional<ObjectId> blob = blobIn(tree, inTree(entry));
    if (blob.isEmpty()) {
      return Optional.empty();
    }
    String text = read(blob.get());
    if (entry.isBoot()) {
      Optional<ObjectId> log = blobIn(tree, prefix + entry.log());
      return log.isEmpty()
          ? Optional.empty()
          : Optional.of(new BootText(text, read(log.get())).joined());
    }
    return Optional.of(text);
  }

  /** The content of a file in a commit; empty when it is not there as a plain file. */
  Optional<ObjectId> blob(ObjectId commit, String path) throws IOException {
    return blobIn(treeOf(commit), path);
  }

  private Optional<ObjectId> blobIn(ObjectId treeId, String path) throws IOException {
    try (TreeWalk tree = TreeWalk.forPath(repository, path, treeId)) {
      return tree != null && FileMode.REGULAR_FILE.equals(tree.getFileMode(0))
          ? Optional.of(tree.getObjectId(0))
          : Optional.empty();
    }
  }

  byte[] bytes(ObjectId blob) throws IOException {
    return repository.open(blob, Constants.OBJ_BLOB).getCachedBytes(LARGEST_FILE);
  }

  private String read(ObjectId blob) throws IOException {
    return new String(bytes(blob), StandardCharsets.UTF_8);
  }

  /** All YAML files of the base in a commit, labels of boots aside. */
  List<BaseText> texts(ObjectId commit) throws IOException {
    List<BaseText> texts = new ArrayList<>();
    try (RevWalk walk = new RevWalk(repository);
        TreeWalk tree = new TreeWalk(repository)) {
      tree.addTree(walk.parseCommit(commit).getTree());
      tree.setRecursive(true);
      if (!prefix.isEmpty()) {
        tree.setFilter(PathFilter.create(prefix.substring(0, prefix.length() - 1)));
      }
      while (tree.next() && texts.size() < MOST_FILES) {
        String name = tree.getPathString().substring(prefix.length());
        if (name.endsWith(".yaml")
            && !name.startsWith("boots/")
            && FileMode.REGULAR_FILE.equals(tree.getFileMode(0))) {
          texts.add(new BaseText(name, name, read(tree.getObjectId(0))));
        }
      }
    }
    return texts;
  }

  /** Names of the entries of a commit that may be edited. */
  List<EntryName> entries(ObjectId commit) throws IOException {
    List<EntryName> names = new ArrayList<>();
    for (BaseText text : texts(commit)) {
      EntryName.of(text.name()).ifPresent(names::add);
    }
    return names;
  }

  /** Makes the tree of a commit with one entry's text changed. */
  ObjectId tree(ObjectId commit, EntryName entry, String text) throws IOException {
    try (ObjectInserter inserter = repository.newObjectInserter();
        ObjectReader reader = inserter.newReader();
        RevWalk walk = new RevWalk(reader)) {
      DirCache cache = DirCache.newInCore();
      DirCacheBuilder builder = cache.builder();
      builder.addTree(
          new byte[0], DirCacheEntry.STAGE_0, reader, walk.parseCommit(commit).getTree());
      builder.finish();
      DirCacheEditor editor = cache.editor();
      if (entry.isBoot()) {
        BootText boot = BootText.of(text);
        editor.add(edit(inTree(entry), blob(inserter, boot.label())));
        editor.add(edit(prefix + entry.log(), blob(inserter, boot.log())));
      } else {
        editor.add(edit(inTree(entry), blob(inserter, text)));
      }
      editor.finish();
      ObjectId tree = cache.writeTree(inserter);
      inserter.flush();
      return tree;
    }
  }

  private static ObjectId blob(ObjectInserter inserter, String text) throws IOException {
    return inserter.insert(Constants.OBJ_BLOB, text.getBytes(StandardCharsets.UTF_8));
  }

  private static DirCacheEditor.PathEdit edit(String path, ObjectId blob) {
    return new DirCacheEditor.PathEdit(path) {
      @Override
      public void apply(DirCacheEntry at) {
        at.setFileMode(FileMode.REGULAR_FILE);
        at.setObjectId(blob);
      }
    };
  }

  /** Whether a commit has a file that a new boot of this name would clash with. */
  boolean hasPartOf(ObjectId commit, EntryName boot) throws IOException {
    for (String path : boot.files()) {
      if (blob(commit, prefix + path).isPresent()) {
        return true;
      }
    }
    return blob(commit, prefix + boot.log() + ".gz").isPresent();
  }

  /** The tree of a commit. */
  ObjectId treeOf(ObjectId commit) throws IOException {
    try (RevWalk walk = new RevWalk(repository)) {
      return walk.parseCommit(commit).getTree().getId();
    }
  }

  /** Makes a commit, which no branch knows yet. */
  ObjectId commit(ObjectId tree, List<ObjectId> parents, String who, Instant when, String message)
      throws IOException {
    // The domain is reserved for names that are none (RFC 2606, section 2).
    PersonIdent person = new PersonIdent(who, who + "@standstill.invalid", when, ZoneOffset.UTC);
    CommitBuilder builder = new CommitBuilder();
    builder.setTreeId(tree);
    builder.setParentIds(parents);
    builder.setAuthor(person);
    builder.setCommitter(person);
    builder.setMessage(message);
    builder.setEncoding(StandardCharsets.UTF_8);
    try (ObjectInserter inserter = repository.newObjectInserter()) {
      ObjectId commit = inserter.insert(builder);
      inserter.flush();
      return commit;
    }
  }

  /** The tree in which two commits are merged; empty when they conflict. Writes no file. */
  Optional<ObjectId> merge(ObjectId ours, ObjectId theirs) throws IOException {
    ThreeWayMerger merger = MergeStrategy.RECURSIVE.newMerger(repository, true);
    return merger.merge(ours, theirs) ? Optional.of(merger.getResultTreeId()) : Optional.empty();
  }

  /** The commit that two others have both set out from. */
  Optional<ObjectId> common(ObjectId one, ObjectId other) throws IOException {
    try (RevWalk walk = new RevWalk(repository)) {
      walk.setRevFilter(RevFilter.MERGE_BASE);
      walk.markStart(walk.parseCommit(one));
      walk.markStart(walk.parseCommit(other));
      @Nullable RevCommit base = walk.next();
      return base == null ? Optional.empty() : Optional.of(base.getId());
    }
  }

  /** Paths of the files in which two trees differ. */
  Set<String> changed(ObjectId oneTree, ObjectId otherTree) throws IOException {
    Set<String> paths = new TreeSet<>();
    try (TreeWalk walk = new TreeWalk(repository)) {
      walk.addTree(oneTree);
      walk.addTree(otherTree);
      walk.setRecursive(true);
      walk.setFilter(TreeFilter.ANY_DIFF);
      while (walk.next()) {
        paths.add(walk.getPathString());
      }
    } catch (CorruptObjectException e) {
      throw new IOException(e);
    }
    return paths;
  }

  /** Whether the way from the base's folder to an entry's file holds no symbolic link. */
  boolean isPlain(EntryName entry) {
    for (String file : entry.files()) {
      Path at = folder;
      for (String part : file.split("/", -1)) {
        at = at.resolve(part);
        if (Files.isSymbolicLink(at)) {
          return false;
        }
      }
    }
    return true;
  }

  @Override
  public void close() {
    repository.close();
  }
}
