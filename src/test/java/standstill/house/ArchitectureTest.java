package standstill.house;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.dependencies.SlicesRuleDefinition;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Holds the arrows of the house: the table in DEVELOPERS.md, in one place as code. */
class ArchitectureTest {
  /** What each room may import; a room that stands in no row fails the test. */
  private static final Map<String, Set<String>> MAY_IMPORT =
      Map.ofEntries(
          Map.entry("text", Set.of()),
          Map.entry("base", Set.of("text")),
          Map.entry("base.yaml", Set.of("base", "text")),
          Map.entry("log", Set.of("base", "text")),
          Map.entry("trace", Set.of("log", "base", "text")),
          Map.entry("machine", Set.of("trace", "log", "base", "text")),
          Map.entry("match", Set.of("machine", "trace", "log", "base", "text")),
          Map.entry("rank", Set.of("match", "machine", "trace", "base", "text")),
          Map.entry("guide", Set.of("rank", "match", "base")),
          Map.entry("decode", Set.of("text")),
          Map.entry(
              "report",
              Set.of(
                  "decode", "guide", "rank", "match", "machine", "trace", "log", "base", "text")),
          Map.entry("search", Set.of("match", "base", "text")),
          Map.entry(
              "score",
              Set.of(
                  "report", "guide", "rank", "match", "machine", "trace", "log", "base", "text",
                  "search")),
          Map.entry(
              "audit",
              Set.of(
                  "score",
                  "report",
                  "base.yaml",
                  "rank",
                  "match",
                  "machine",
                  "trace",
                  "log",
                  "base",
                  "text")),
          Map.entry("disguise", Set.of("log", "text")),
          Map.entry("account", Set.of()),
          Map.entry("intake", Set.of()),
          Map.entry("mine", Set.of("match", "log", "base", "text")),
          Map.entry(
              "store",
              Set.of(
                  "audit",
                  "score",
                  "report",
                  "search",
                  "base.yaml",
                  "guide",
                  "rank",
                  "match",
                  "machine",
                  "trace",
                  "log",
                  "base",
                  "text")),
          Map.entry(
              "edit",
              Set.of(
                  "store",
                  "audit",
                  "score",
                  "report",
                  "base.yaml",
                  "mine",
                  "match",
                  "log",
                  "base",
                  "text")),
          Map.entry(
              "web",
              Set.of(
                  "account",
                  "intake",
                  "edit",
                  "store",
                  "mine",
                  "disguise",
                  "audit",
                  "score",
                  "search",
                  "report",
                  "decode",
                  "guide",
                  "rank",
                  "match",
                  "machine",
                  "trace",
                  "log",
                  "base",
                  "text")),
          Map.entry(
              "cli",
              Set.of(
                  "web",
                  "account",
                  "intake",
                  "edit",
                  "store",
                  "mine",
                  "disguise",
                  "audit",
                  "score",
                  "search",
                  "report",
                  "decode",
                  "guide",
                  "rank",
                  "match",
                  "machine",
                  "trace",
                  "log",
                  "base.yaml",
                  "base",
                  "text")));

  private static JavaClasses classes;

  @BeforeAll
  static void read() {
    classes =
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("standstill");
    assertTrue(classes.size() > 60, "only " + classes.size() + " classes were seen");
  }

  private static String room(JavaClass type) {
    return type.getPackageName().replaceFirst("^standstill\\.?", "");
  }

  @Test
  void importsGoUpTheTableAndNeverDown() {
    Set<String> broken = new TreeSet<>();
    for (JavaClass type : classes) {
      Set<String> allowed = MAY_IMPORT.get(room(type));
      if (allowed == null) {
        broken.add("no row for the room of " + type.getName());
        continue;
      }
      type.getDirectDependenciesFromSelf().stream()
          .map(d -> d.getTargetClass().getBaseComponentType())
          .filter(t -> t.getPackageName().startsWith("standstill"))
          .filter(t -> !room(t).equals(room(type)) && !allowed.contains(room(t)))
          .forEach(t -> broken.add(room(type) + " must not import " + t.getName()));
    }
    assertEquals(Set.of(), broken);
  }

  @Test
  void roomsHaveNoCircles() {
    SlicesRuleDefinition.slices()
        .matching("standstill.(**)")
        .should()
        .beFreeOfCycles()
        .check(classes);
  }

  @Test
  void eachLibraryIsKnownToOneRoom() {
    Map<String, List<String>> owners =
        Map.of(
            "com.google.re2j..", List.of("standstill.text.."),
            "org.yaml.snakeyaml..", List.of("standstill.base.yaml.."),
            "io.javalin..", List.of("standstill.web..", "standstill.cli.."),
            "io.pebbletemplates..", List.of("standstill.web.."),
            "org.apache.lucene..", List.of("standstill.search.."),
            "org.eclipse.jgit..", List.of("standstill.edit.."),
            "org.eclipse.jetty..", List.of("standstill.intake.."),
            "com.password4j..", List.of("standstill.account.."),
            "picocli..", List.of("standstill.cli.."));
    owners.forEach(
        (library, rooms) ->
            noClasses()
                .that()
                .resideOutsideOfPackages(rooms.toArray(new String[0]))
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library)
                .because("a library that one room knows can be changed in one place")
                .allowEmptyShould(true)
                .check(classes));
  }

  @Test
  void everythingPrintedGoesThroughOnePlace() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("standstill.cli.Output")
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .because("logs and bases are hostile, and that place shows what would steer a terminal")
        .check(classes);
  }

  @Test
  void patternsOfTheBaseRunInLinearTime() {
    noClasses()
        .that()
        .resideInAnyPackage(
            "standstill.base..", "standstill.match..", "standstill.trace..", "standstill.rank..")
        .should()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.util.regex.Pattern")
        .because("logs and patterns are hostile input")
        .check(classes);
  }

  @Test
  void everyPackageDeclaresItsNulls() {
    List<String> without = new ArrayList<>();
    classes.stream()
        .map(JavaClass::getPackage)
        .distinct()
        .filter(p -> !p.isAnnotatedWith(NullMarked.class))
        .forEach(p -> without.add(p.getName()));
    assertEquals(List.of(), without);
  }
}
