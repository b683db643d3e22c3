package standstill.search;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.StringField;
import org.apache.lucene.document.TextField;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.SegmentInfos;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.similarities.BM25Similarity;
import org.apache.lucene.store.ByteBuffersDirectory;
import org.apache.lucene.store.Directory;
import org.apache.lucene.store.FSDirectory;
import org.apache.lucene.store.IOContext;
import org.apache.lucene.store.Lock;
import org.apache.lucene.store.LockObtainFailedException;
import org.apache.lucene.store.NIOFSDirectory;
import org.apache.lucene.util.Version;

/**
 * The index: always used in memory, and kept in a folder so that the next start need not build it.
 *
 * <p>A base's index is small (about a megabyte for five hundred entries). Used in memory it holds
 * no files open: the folder can be deleted or written again by another process at any time, and an
 * index that a newer one has replaced needs no closing while somebody still searches it.
 *
 * <p>A commit of the index carries the fingerprint of the entries that it was built from, and comes
 * last, so that an index that was half written has none. On opening, every file's check sum is
 * verified. An index that does not fit or can't be read is deleted and written again, under a lock;
 * where the folder can't be locked or written, nothing is kept and the reason is. Only files that
 * this program wrote are ever deleted, see {@link IndexFolder}. A document's number is the place of
 * its entry.
 */
final class SearchIndex {
  /** Goes up when the analysis or the fields change, so that old indexes are built again. */
  private static final String FORMAT = "3 " + Version.LATEST;

  private static final String FINGERPRINT = "fingerprint";

  private final DirectoryReader reader;
  private final boolean built;
  private final Optional<String> notKept;

  private SearchIndex(DirectoryReader reader, boolean built, Optional<String> notKept) {
    this.reader = reader;
    this.built = built;
    this.notKept = notKept;
  }

  static SearchIndex open(List<Entry> entries, Optional<Path> folder) throws IOException {
    String fingerprint = fingerprint(entries);
    Optional<IndexFolder> claimed = Optional.empty();
    Optional<String> notKept = Optional.empty();
    if (folder.isPresent()) {
      try {
        claimed = Optional.of(IndexFolder.claim(folder.get()));
      } catch (IOException e) {
        // No right or no room to write there: the index in memory will do.
        notKept = Optional.of(reason(e));
      }
    }
    if (claimed.isPresent()) {
      Optional<DirectoryReader> kept = kept(claimed.get(), fingerprint, entries.size());
      if (kept.isPresent()) {
        return new SearchIndex(kept.get(), false, Optional.empty());
      }
    }
    Directory memory = new ByteBuffersDirectory();
    build(memory, entries, fingerprint);
    if (claimed.isPresent()) {
      notKept = keep(memory, fingerprint, claimed.get());
    }
    return new SearchIndex(DirectoryReader.open(memory), true, notKept);
  }

  private static String reason(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "no right to write there";
    }
    return e instanceof FileSystemException system && system.getReason() != null
        ? system.getReason()
        : String.valueOf(e.getMessage());
  }

  /** The index in the folder, when it is whole and was built from these entries. */
  private static Optional<DirectoryReader> kept(
      IndexFolder folder, String fingerprint, int entries) {
    try (FSDirectory disk = new NIOFSDirectory(folder.path())) {
      Directory memory = new ByteBuffersDirectory();
      for (String file : SegmentInfos.readLatestCommit(disk).files(true)) {
        memory.copyFrom(disk, file, file, IOContext.READONCE);
      }
      DirectoryReader reader = DirectoryReader.open(memory);
      if (fingerprint.equals(reader.getIndexCommit().getUserData().get(FINGERPRINT))
          && reader.numDocs() == entries
          && reader.maxDoc() == entries) {
        for (LeafReaderContext leaf : reader.leaves()) {
          leaf.reader().checkIntegrity();
        }
        return Optional.of(reader);
      }
    } catch (IOException | RuntimeException e) {
      // Whatever is wrong with it, the remedy is the same: build it again.
    }
    return Optional.empty();
  }

  /** Writes an index into the folder, in place of the one there; says why when it could not. */
  private static Optional<String> keep(Directory memory, String fingerprint, IndexFolder folder) {
    try (FSDirectory disk = new NIOFSDirectory(folder.path());
        Lock lock = disk.obtainLock(IndexFolder.LOCK)) {
      lock.ensureValid();
      folder.refuseForeign();
      folder.clear();
      try (IndexWriter writer = new IndexWriter(disk, configuration())) {
        writer.addIndexes(memory);
        commit(writer, fingerprint);
      }
      return Optional.empty();
    } catch (LockObtainFailedException e) {
      return Optional.of("another process is writing it");
    } catch (IOException e) {
      return Optional.of(reason(e));
    }
  }

  private static void build(Directory directory, List<Entry> entries, String fingerprint)
      throws IOException {
    try (IndexWriter writer = new IndexWriter(directory, configuration())) {
      for (Entry entry : entries) {
        writer.addDocument(document(entry));
      }
      writer.forceMerge(1);
      commit(writer, fingerprint);
    }
  }

  private static IndexWriterConfig configuration() {
    IndexWriterConfig config = new IndexWriterConfig(new TradeAnalyzer());
    config.setOpenMode(IndexWriterConfig.OpenMode.CREATE);
    config.setCommitOnClose(false);
    config.setUseCompoundFile(true);
    return config;
  }

  private static void commit(IndexWriter writer, String fingerprint) throws IOException {
    writer.setLiveCommitData(Map.of(FINGERPRINT, fingerprint).entrySet());
    writer.commit();
  }

  private static Document document(Entry entry) {
    Document document = new Document();
    document.add(
        new StringField("kind", entry.kind().word(), org.apache.lucene.document.Field.Store.NO));
    for (Entry.Unit unit : entry.units()) {
      document.add(
          new TextField(
              unit.field().name(), unit.text(), org.apache.lucene.document.Field.Store.NO));
      document.add(
          new TextField(
              TradeAnalyzer.SPELLING, unit.text(), org.apache.lucene.document.Field.Store.NO));
    }
    return document;
  }

  private static String fingerprint(List<Entry> entries) {
    MessageDigest digest;
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
    feed(digest, FORMAT);
    for (Entry entry : entries) {
      feed(digest, entry.kind().word());
      feed(digest, entry.id());
      for (Entry.Unit unit : entry.units()) {
        feed(digest, unit.field().name());
        feed(digest, unit.text());
      }
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static void feed(MessageDigest digest, String text) {
    digest.update(text.getBytes(StandardCharsets.UTF_8));
    digest.update((byte) 0);
  }

  IndexSearcher searcher() {
    IndexSearcher searcher = new IndexSearcher(reader);
    searcher.setSimilarity(new OverFields());
    return searcher;
  }

  DirectoryReader reader() {
    return reader;
  }

  /** Whether it had to be built. */
  boolean wasBuilt() {
    return built;
  }

  /** Why it could not be kept in the folder; empty when it was, or was not to be. */
  Optional<String> notKept() {
    return notKept;
  }

  /**
   * BM25 for words whose document frequency is taken over several fields: it can exceed the number
   * of documents that have one of the fields, where the formula would turn negative.
   */
  private static final class OverFields extends BM25Similarity {
    @Override
    protected float idf(long docFreq, long docCount) {
      return super.idf(docFreq, Math.max(docFreq, docCount));
    }
  }
}
