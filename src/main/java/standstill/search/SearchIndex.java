package standstill.search;

import java.io.Closeable;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
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
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.similarities.BM25Similarity;
import org.apache.lucene.store.ByteBuffersDirectory;
import org.apache.lucene.store.Directory;
import org.apache.lucene.store.FSDirectory;
import org.apache.lucene.store.Lock;
import org.apache.lucene.store.NIOFSDirectory;
import org.apache.lucene.util.Version;

/**
 * The index: in a folder, or in memory.
 *
 * <p>A commit of the index carries the fingerprint of the entries that it was built from, and comes
 * last, so that an index that was half written has none. On opening, every file's check sum is
 * verified. An index that does not fit or can't be read is deleted and built again, under a lock;
 * where the folder can't be locked or written, the index is built in memory instead. A document's
 * number is the place of its entry.
 */
final class SearchIndex implements Closeable {
  /** Goes up when the analysis or the fields change, so that old indexes are built again. */
  private static final String FORMAT = "2 " + Version.LATEST;

  private static final String FINGERPRINT = "fingerprint";

  private final Directory directory;
  private final DirectoryReader reader;
  private final boolean built;

  private SearchIndex(Directory directory, DirectoryReader reader, boolean built) {
    this.directory = directory;
    this.reader = reader;
    this.built = built;
  }

  static SearchIndex open(List<Entry> entries, Optional<Path> folder) throws IOException {
    if (folder.isPresent()) {
      FSDirectory onDisk = null;
      try {
        onDisk = new NIOFSDirectory(folder.get());
        return onDisk(onDisk, entries);
      } catch (IOException e) {
        // No room, no right to write, or another process is building: memory will do.
        if (onDisk != null) {
          onDisk.close();
        }
      }
    }
    Directory memory = new ByteBuffersDirectory();
    build(memory, entries, fingerprint(entries));
    return new SearchIndex(memory, DirectoryReader.open(memory), true);
  }

  private static SearchIndex onDisk(Directory directory, List<Entry> entries) throws IOException {
    String fingerprint = fingerprint(entries);
    Optional<DirectoryReader> sound = sound(directory, fingerprint, entries.size());
    if (sound.isPresent()) {
      return new SearchIndex(directory, sound.get(), false);
    }
    try (Lock lock = directory.obtainLock("rebuild.lock")) {
      lock.ensureValid();
      for (String file : directory.listAll()) {
        if (!file.endsWith(".lock") && !file.startsWith(".")) {
          directory.deleteFile(file);
        }
      }
      build(directory, entries, fingerprint);
    }
    DirectoryReader reader =
        sound(directory, fingerprint, entries.size())
            .orElseThrow(() -> new IOException("the index does not hold what was written"));
    return new SearchIndex(directory, reader, true);
  }

  /** The index in the directory, when it is whole and was built from these entries. */
  private static Optional<DirectoryReader> sound(
      Directory directory, String fingerprint, int entries) {
    DirectoryReader reader = null;
    try {
      reader = DirectoryReader.open(directory);
      boolean fits =
          fingerprint.equals(reader.getIndexCommit().getUserData().get(FINGERPRINT))
              && reader.numDocs() == entries
              && reader.maxDoc() == entries;
      if (fits) {
        for (LeafReaderContext leaf : reader.leaves()) {
          leaf.reader().checkIntegrity();
        }
        return Optional.of(reader);
      }
    } catch (IOException | RuntimeException e) {
      // Whatever is wrong with it, the remedy is the same: build it again.
    }
    if (reader != null) {
      try {
        reader.close();
      } catch (IOException e) {
        // It is thrown away anyway.
      }
    }
    return Optional.empty();
  }

  private static void build(Directory directory, List<Entry> entries, String fingerprint)
      throws IOException {
    IndexWriterConfig config = new IndexWriterConfig(new TradeAnalyzer());
    config.setOpenMode(IndexWriterConfig.OpenMode.CREATE);
    config.setCommitOnClose(false);
    config.setUseCompoundFile(true);
    try (IndexWriter writer = new IndexWriter(directory, config)) {
      for (Entry entry : entries) {
        writer.addDocument(document(entry));
      }
      writer.forceMerge(1);
      writer.setLiveCommitData(Map.of(FINGERPRINT, fingerprint).entrySet());
      writer.commit();
    }
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

  @Override
  public void close() throws IOException {
    reader.close();
    directory.close();
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
