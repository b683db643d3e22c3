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
import java.util.stream.Stream;
import standstill.base.yaml.BaseReader;
import standstill.base.yaml.BaseText;
import standstill.base.yaml.Loaded;
import standstill.rank.Ranker;

/** Reads a fault base from a folder, or the one that the program carries. */
public final class BaseFolder {
  /** Most files that a base may have. */
  private static final int MOST_FILES = 10_000;

  /**
   * Largest accepted file; far above what {@code base.yaml} takes, so that it can say what is
   * wrong.
   */
  private static final long LARGEST_FILE = 4L << 20;

  private BaseFolder() {}

  /**
   * Reads the base in a folder.
   *
   * @throws IOException when the folder or a file in it can't be read
   */
  public static Loaded read(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      throw new IOException("no folder: " + folder);
    }
    return BaseReader.read(texts(folder, folder.toString()), Ranker.MODEL_NUMBERS);
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
        return BaseReader.read(texts(jar.getPath("/kb"), "kb"), Ranker.MODEL_NUMBERS);
      }
    } catch (URISyntaxException e) {
      throw new IOException(e);
    }
  }

  /** Every YAML file of a base and of its labelled boots, in order. */
  static Stream<Path> yamlFiles(Path folder) throws IOException {
    return Files.walk(folder, 4).filter(p -> p.toString().endsWith(".yaml")).sorted();
  }

  private static List<BaseText> texts(Path folder, String shownAs) throws IOException {
    List<Path> files;
    Path boots = folder.resolve(BootFolder.NAME);
    try (Stream<Path> walk = yamlFiles(folder)) {
      files = walk.filter(p -> !p.startsWith(boots)).limit(MOST_FILES).toList();
    }
    List<BaseText> texts = new ArrayList<>(files.size());
    for (Path file : files) {
      String name = folder.relativize(file).toString().replace('\\', '/');
      String shown = shownAs + "/" + name;
      if (Files.size(file) > LARGEST_FILE) {
        throw new IOException(shown + ": larger than " + LARGEST_FILE + " bytes");
      }
      texts.add(BaseText.of(name, shown, Files.readAllBytes(file)));
    }
    return texts;
  }
}
