package standstill.store;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import standstill.base.yaml.BaseReader;
import standstill.base.yaml.BaseText;
import standstill.base.yaml.Loaded;
import standstill.rank.Ranker;
import standstill.text.Position;
import standstill.text.Problem;

/** Reads a fault base from a folder, or the one that the program carries. */
public final class BaseFolder {
  /**
   * Largest accepted file; far above what {@code base.yaml} takes, so that it can say what is
   * wrong.
   */
  private static final int LARGEST_FILE = 4 << 20;

  /** Most bytes of all files together. */
  private static final long LARGEST_BASE = 64L << 20;

  private BaseFolder() {}

  /**
   * Reads the base in a folder.
   *
   * @throws IOException when the folder can't be read
   */
  public static Loaded read(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      throw new IOException("no folder: " + folder);
    }
    return read(folder, folder.toString());
  }

  /** Reads a base from texts that came from elsewhere than a folder. */
  public static Loaded of(List<BaseText> texts) {
    return BaseReader.read(texts, Ranker.MODEL_NUMBERS);
  }

  /** Reads the base that the program carries. */
  public static Loaded builtIn() throws IOException {
    URL scale = BaseFolder.class.getResource("/kb/" + BaseReader.SCALE);
    if (scale == null) {
      throw new IOException("this program carries no base");
    }
    try {
      URI uri = scale.toURI();
      if (!uri.getScheme().equals("jar")) {
        return read(Path.of(uri).resolveSibling(""));
      }
      try (FileSystem jar = FileSystems.newFileSystem(uri, Map.of())) {
        return read(jar.getPath("/kb"), "kb");
      }
    } catch (URISyntaxException e) {
      throw new IOException(e);
    }
  }

  private static Loaded read(Path folder, String shownAs) throws IOException {
    BaseFiles.Found found = BaseFiles.ofBase(folder, shownAs);
    Path root = folder.toRealPath();
    List<Problem> refused = new ArrayList<>(found.problems());
    List<BaseText> texts = new ArrayList<>(found.files().size());
    long bytes = 0;
    for (Path file : found.files()) {
      String name = root.relativize(file).toString().replace('\\', '/');
      String shown = shownAs + "/" + name;
      try {
        byte[] text = BaseFiles.read(file, LARGEST_FILE);
        bytes += text.length;
        if (text.length > LARGEST_FILE || bytes > LARGEST_BASE) {
          boolean one = text.length > LARGEST_FILE;
          refused.add(
              Problem.error(
                  Position.ofFile(shown),
                  one ? "file is too large" : "the base up to this file is too large",
                  "allowed: at most " + (one ? LARGEST_FILE : LARGEST_BASE) + " bytes"));
          if (!one) {
            break;
          }
        } else {
          texts.add(BaseText.of(name, shown, text));
        }
      } catch (IOException e) {
        refused.add(
            Problem.error(Position.ofFile(shown), "can't be read: " + BaseFiles.reason(e), ""));
      }
    }
    return BaseReader.read(texts, refused, Ranker.MODEL_NUMBERS);
  }
}
