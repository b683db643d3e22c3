package standstill.house;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;

/** The packed program says what it is made of, and passes the licences of all of it on. */
class JarSupplyIT {
  private static final String THIRD = "META-INF/third-party/";

  private static ZipFile jar() throws IOException {
    return new ZipFile(System.getProperty("standstill.jar", "target/standstill.jar"));
  }

  private static String text(ZipFile jar, String name) throws IOException {
    ZipEntry entry = jar.getEntry(name);
    assertTrue(entry != null, name + " is not in the jar");
    return new String(jar.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
  }

  @Test
  void licenceAndNoticeStandInTheRootOfTheJarAndOfTheRepository() throws Exception {
    try (ZipFile jar = jar()) {
      for (String name : List.of("LICENSE", "NOTICE")) {
        assertEquals(Files.readString(Path.of(name)), text(jar, name));
      }
      assertTrue(text(jar, "LICENSE").contains("Version 2.0, January 2004"));
    }
  }

  /** CycloneDX 1.4 and later: components[].licenses[].license.id or name, or an expression. */
  @Test
  void everyLibraryIsListedAndItsLicencePassedOn() throws Exception {
    try (ZipFile jar = jar()) {
      JsonNode bom = new ObjectMapper().readTree(text(jar, "META-INF/sbom/standstill.cdx.json"));
      assertEquals("CycloneDX", bom.at("/bomFormat").asText());
      assertEquals("standstill", bom.at("/metadata/component/name").asText());
      assertTrue(bom.at("/components").size() >= 20, "only " + bom.at("/components").size());
      String list = text(jar, THIRD + "LICENCES.txt");
      Set<String> passedOn =
          jar.stream()
              .map(ZipEntry::getName)
              .filter(n -> n.startsWith(THIRD) && n.matches(".*(LICENSE|about\\.html)[^/]*"))
              .map(n -> n.substring(THIRD.length()).replaceFirst("-jar/.*", ""))
              .collect(Collectors.toSet());
      List<String> missing = new ArrayList<>();
      for (JsonNode component : bom.at("/components")) {
        String name = component.at("/name").asText();
        String id = component.at("/group").asText() + ":" + name;
        if (!list.contains(id + ":" + component.at("/version").asText())) {
          missing.add(id + " is not in the list");
        }
        // The text of Apache-2.0 is the program's own licence.
        boolean apache = component.at("/licenses").toString().contains("Apache-2.0");
        if (!apache && !passedOn.contains(name)) {
          missing.add(id + ": no licence file: " + component.at("/licenses"));
        }
      }
      assertEquals(List.of(), missing);
    }
  }

  /** A library whose classes nobody loads is one more that has to be kept up to date. */
  @Test
  void nothingIsPackedThatTheBillDoesNotName() throws Exception {
    try (ZipFile jar = jar()) {
      Set<String> left = new TreeSet<>();
      jar.stream()
          .map(ZipEntry::getName)
          .filter(n -> n.endsWith(".class"))
          .filter(
              n ->
                  n.matches(
                      "(org/objectweb|jakarta/(enterprise|interceptor|transaction)|org/intellij).*"))
          .forEach(left::add);
      assertEquals(Set.of(), left);
    }
  }
}
