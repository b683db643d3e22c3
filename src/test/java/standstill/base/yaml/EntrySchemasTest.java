package standstill.base.yaml;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.CoreSchema;
import standstill.base.Circumstance;
import standstill.base.Scale;
import standstill.rank.Ranker;

/**
 * The kept schemas, judged by a library of draft 2020-12 on texts read by a library of YAML 1.2:
 * all files of the base pass, and what is broken on purpose is refused by schema and reader alike.
 */
class EntrySchemasTest {
  private static final Path KEPT = Path.of("docs/reference/schema");
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Entries of each kind that are broken in every way; the others only have to pass. */
  private static final int BROKEN = 4;

  private static final Scale SCALE =
      SmallReaders.scale(new Sink(text(Path.of("kb/scale.yaml"))), Ranker.MODEL_NUMBERS)
          .orElseThrow();
  private static final StepReader STEPS = steps();
  private static final Map<String, JsonSchema> SCHEMAS = new HashMap<>();

  @BeforeAll
  static void readTheSchemas() throws IOException {
    JsonSchemaFactory factory = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012);
    for (EntrySchemas.Kind kind : kinds()) {
      SCHEMAS.put(
          kind.name(),
          factory.getSchema(Files.readString(KEPT.resolve(kind.name() + ".schema.json"))));
    }
  }

  private static List<EntrySchemas.Kind> kinds() {
    return EntrySchemas.kinds(SCALE, Ranker.MODEL_NUMBERS);
  }

  /** A reader of steps that knows the words and blocks of the shipped base. */
  private static StepReader steps() {
    List<Circumstance> circumstances =
        SmallReaders.circumstances(new Sink(text(Path.of("kb/circumstances.yaml"))));
    try (Stream<Path> list = Files.list(Path.of("kb/steps"))) {
      return new StepReader(
          circumstances,
          new StepBlocks(
              list.map(EntrySchemasTest::text).toList(),
              circumstances,
              (file, read) -> read.apply(new Sink(file))));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static BaseText text(Path file) {
    try {
      String name = Path.of("kb").relativize(file).toString().replace('\\', '/');
      return BaseText.of(name, file.toString(), Files.readAllBytes(file));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static List<BaseText> files(EntrySchemas.Kind kind) throws IOException {
    String first = kind.files().replaceFirst("/.*", "");
    try (Stream<Path> walk = Files.walk(Path.of("kb", first))) {
      return walk.filter(p -> p.toString().endsWith(".yaml"))
          .sorted()
          .map(EntrySchemasTest::text)
          .toList();
    }
  }

  private static JsonNode node(String yaml) {
    LoadSettings settings = LoadSettings.builder().setSchema(new CoreSchema()).build();
    return JSON.valueToTree(new Load(settings).loadFromString(yaml));
  }

  private static List<String> bySchema(EntrySchemas.Kind kind, JsonNode node) {
    return java.util.Objects.requireNonNull(SCHEMAS.get(kind.name())).validate(node).stream()
        .map(Object::toString)
        .toList();
  }

  /** What the declaration alone finds. */
  private static boolean declarationRefuses(EntrySchemas.Kind kind, BaseText file) {
    Sink sink = new Sink(file);
    new Nodes(sink).compose().ifPresent(n -> kind.value().check("file", n, sink));
    return sink.hasErrors();
  }

  /** What the whole reader finds. */
  private static boolean readerRefuses(EntrySchemas.Kind kind, BaseText file) {
    EntryReader entries = new EntryReader(SCALE, STEPS);
    Sink sink = new Sink(file);
    switch (kind.name()) {
      case "fault" -> new FaultReader(entries).read(file, sink);
      case "check" -> SmallReaders.check(entries, file, sink);
      case "symptoms" -> SmallReaders.symptoms(sink);
      case "trail" -> SmallReaders.trail(file, sink);
      case "walk" -> WalkReader.read(file, sink);
      case "family" -> SmallReaders.family(file, sink);
      case "scale" -> SmallReaders.scale(sink, Ranker.MODEL_NUMBERS);
      case "rates" -> SmallReaders.rates(sink);
      case "steps" -> StepBlocks.read(STEPS, file, sink, Set.of());
      case "circumstances" -> SmallReaders.circumstances(sink);
      case "retired" -> SmallReaders.retired(sink);
      case "synonyms" -> SmallReaders.synonyms(sink);
      case "boot" -> {
        return !LabelReader.read(List.of(file)).problems().isEmpty();
      }
      default -> throw new IllegalArgumentException(kind.name());
    }
    return sink.hasErrors();
  }

  @Test
  void keptSchemasAreTheGeneratedOnes() throws IOException {
    Map<String, String> kept = new HashMap<>();
    try (Stream<Path> list = Files.list(KEPT)) {
      for (Path file : list.toList()) {
        kept.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    assertEquals(
        EntrySchemas.of(SCALE, Ranker.MODEL_NUMBERS),
        kept,
        "run: java -jar target/standstill.jar schema docs/reference/schema --base kb");
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void everyFileOfTheBaseIsAccepted(EntrySchemas.Kind kind) throws IOException {
    List<BaseText> files = files(kind);
    assertTrue(!files.isEmpty(), "no files of the kind " + kind.name());
    for (BaseText file : files) {
      assertEquals(List.of(), bySchema(kind, node(file.text())), file.shownAs());
    }
  }

  /** A broken copy and how it was broken. */
  private record Broken(String how, JsonNode root) {}

  /** Calls back with every place at which something is declared, and what is. */
  private interface Place {
    void at(Value declared, JsonNode node, Consumer<JsonNode> put);
  }

  private static void places(Value declared, JsonNode node, Consumer<JsonNode> put, Place visitor) {
    visitor.at(declared, node, put);
    if (declared instanceof ListOf list && node instanceof ArrayNode array) {
      // Items repeat each other; the first and the last of a list will do.
      for (int index : new TreeSet<>(List.of(0, array.size() - 1))) {
        if (index >= 0 && index < array.size()) {
          places(list.each(), array.get(index), n -> array.set(index, n), visitor);
        }
      }
    } else if (declared instanceof Choice choice) {
      places(node.has(choice.key()) ? choice.with() : choice.without(), node, put, visitor);
    } else if (declared instanceof TextOr either) {
      if (node instanceof ObjectNode) {
        places(either.map(), node, n -> {}, visitor);
      }
    } else if (declared instanceof Value.Keyed keyed && node instanceof ObjectNode map) {
      List<String> names = new ArrayList<>();
      map.fieldNames().forEachRemaining(names::add);
      for (String name : names) {
        Value value =
            keyed instanceof Shape shape
                ? shape.keys().stream()
                    .filter(k -> k.name().equals(name))
                    .findFirst()
                    .orElseThrow()
                    .value()
                : ((MapOf) keyed).each();
        places(value, map.get(name), n -> map.set(name, n), visitor);
      }
    }
  }

  /**
   * What must be refused: an unknown key, a missing one, a value of another type, an unknown word.
   * Each copy is broken in one place.
   */
  private static List<Broken> broken(EntrySchemas.Kind kind, JsonNode whole) {
    List<Broken> all = new ArrayList<>();
    JsonNode work = whole.deepCopy();
    JsonNodeFactory make = JsonNodeFactory.instance;
    places(
        kind.value(),
        work,
        n -> {},
        (declared, node, put) -> {
          if (declared instanceof Shape shape && node instanceof ObjectNode map) {
            map.put("lantern", "x");
            all.add(new Broken("unknown key in " + shape.what(), work.deepCopy()));
            map.remove("lantern");
            for (Shape.Key key : shape.keys()) {
              JsonNode value = map.get(key.name());
              if (key.required()) {
                map.remove(key.name());
                all.add(new Broken(key.name() + " missing in " + shape.what(), work.deepCopy()));
                map.set(key.name(), value);
              }
            }
          }
          boolean mayBeText = declared instanceof TextOr;
          if (mayBeText && node instanceof ObjectNode) {
            return; // Its map is visited next.
          }
          JsonNode other =
              mayBeText || node.isTextual() || node.isNumber()
                  ? make.arrayNode()
                  : make.textNode("x");
          put.accept(other);
          if (work.equals(whole)) {
            return; // The root itself has no place to put something else.
          }
          all.add(new Broken("another type at " + node, work.deepCopy()));
          if (declared.schema().has("enum")) {
            put.accept(make.textNode("lantern"));
            all.add(new Broken("unknown word for " + node, work.deepCopy()));
          }
          put.accept(node);
        });
    assertEquals(whole, work, "a copy was left broken");
    return all;
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void whatIsBrokenIsRefusedBySchemaAndReader(EntrySchemas.Kind kind) throws IOException {
    List<BaseText> files = files(kind);
    int step = Math.max(1, files.size() / BROKEN);
    int seen = 0;
    for (int i = 0; i < files.size(); i += step) {
      BaseText file = files.get(i);
      JsonNode whole = shortened(kind, node(file.text()));
      assertTrue(
          !readerRefuses(kind, json(file, whole)), "the whole entry is refused: " + file.name());
      for (Broken each : broken(kind, whole)) {
        seen++;
        String what = file.name() + ": " + each.how();
        assertTrue(!bySchema(kind, each.root()).isEmpty(), "the schema accepts " + what);
        assertTrue(readerRefuses(kind, json(file, each.root())), "the reader accepts " + what);
      }
    }
    assertTrue(seen >= 5, kind.name() + ": only " + seen + " broken copies");
  }

  /** The same with fewer items in long lists, which would only cost time. */
  private static JsonNode shortened(EntrySchemas.Kind kind, JsonNode node) {
    if (kind.name().equals("walk")) {
      return node; // Its steps lead to each other.
    }
    if (node instanceof ArrayNode array) {
      ArrayNode some = JsonNodeFactory.instance.arrayNode();
      for (int i = 0; i < array.size(); i++) {
        if (array.size() <= BROKEN || i == 0 || i == array.size() - 1) {
          some.add(shortened(kind, array.get(i)));
        }
      }
      return some;
    }
    if (node instanceof ObjectNode map) {
      ObjectNode some = JsonNodeFactory.instance.objectNode();
      map.fields().forEachRemaining(e -> some.set(e.getKey(), shortened(kind, e.getValue())));
      return some;
    }
    return node;
  }

  private static BaseText json(BaseText file, JsonNode node) {
    // JSON is YAML too, so that a broken copy needs no writer of its own.
    return new BaseText(file.name(), file.shownAs(), node.toString());
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void schemaAndDeclarationAgreeOnAnyValue(EntrySchemas.Kind kind) throws IOException {
    List<JsonNode> values = new ArrayList<>();
    for (String value :
        List.of(
            "7",
            "0",
            "-1",
            "1.5",
            "1e9",
            "true",
            "null",
            "\"\"",
            "\" \"",
            "\"x\"",
            "\"No id.\"",
            "\"7\"",
            "\"true\"",
            "\"2026-11-26\"",
            "\"often\"",
            "[]",
            "[\"x\"]",
            "[7]",
            "[[]]",
            "{}",
            "{\"x\": \"often\"}",
            "{\"No id\": \"often\"}")) {
      values.add(JSON.readTree(value));
    }
    BaseText file = files(kind).get(0);
    JsonNode work = shortened(kind, node(file.text()));
    List<String> differ = new ArrayList<>();
    places(
        kind.value(),
        work,
        n -> {},
        (declared, node, put) -> {
          for (JsonNode value : values) {
            put.accept(value);
            boolean refused = declarationRefuses(kind, json(file, work));
            if (refused == bySchema(kind, work).isEmpty()) {
              differ.add(value + " instead of " + node + (refused ? ": refused" : ": accepted"));
            }
          }
          put.accept(node);
        });
    assertEquals(List.of(), differ, "by the declaration, and by the schema the other way round");
  }

  @Test
  void everyKeyIsNamedInTheReference() throws IOException {
    String reference = Files.readString(Path.of("docs/reference/base-format.md"));
    List<String> missing = new ArrayList<>();
    for (EntrySchemas.Kind kind : kinds()) {
      JsonNode schema = JSON.readTree(Files.readString(KEPT.resolve(kind.name() + ".schema.json")));
      for (JsonNode properties : schema.findValues("properties")) {
        properties
            .fieldNames()
            .forEachRemaining(
                key -> {
                  if (!reference.contains(key)) {
                    missing.add(kind.name() + ": " + key);
                  }
                });
      }
    }
    assertEquals(List.of(), missing);
  }
}
