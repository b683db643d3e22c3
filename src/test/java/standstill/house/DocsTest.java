package standstill.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Links resolve, and templates never switch escaping off. */
class DocsTest {
  private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+)(?:#[^)]*)?\\)");

  private static List<Path> files(Path folder, String ending) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(p -> p.toString().endsWith(ending)).sorted().toList();
    }
  }

  @Test
  void linksInTheDocsResolve() throws IOException {
    List<Path> pages = new ArrayList<>(files(Path.of("docs"), ".md"));
    pages.add(Path.of("README.md"));
    pages.add(Path.of("DEVELOPERS.md"));
    List<String> broken = new ArrayList<>();
    for (Path page : pages) {
      Matcher link = LINK.matcher(Files.readString(page));
      while (link.find()) {
        String target = link.group(1);
        Path parent = page.getParent() == null ? Path.of("") : page.getParent();
        if (!target.startsWith("http") && !Files.exists(parent.resolve(target))) {
          broken.add(page + ": " + target);
        }
      }
    }
    assertEquals(List.of(), broken);
  }

  @Test
  void templatesNeverSwitchEscapingOff() throws IOException {
    List<Path> templates = files(Path.of("src/main/resources/templates"), ".html");
    assertTrue(templates.size() >= 4, "only " + templates.size() + " templates were seen");
    List<String> found = new ArrayList<>();
    for (Path template : templates) {
      String text = Files.readString(template);
      if (text.contains("raw")
          || text.contains("autoescape")
          || text.contains("style=\"")
          || text.contains("onclick")) {
        found.add(template.toString());
      }
    }
    assertEquals(List.of(), found);
  }
}
