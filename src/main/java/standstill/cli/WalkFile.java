package standstill.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Stage;
import standstill.guide.Course;

/**
 * A walk in a file: ids and replies as JSON, never any text of the log.
 *
 * <p>Keys: {@code walk} (the form's number, 1), {@code stage}, {@code sees}, {@code lacks}, {@code
 * before}, {@code turns}, a list of {@code {kind, id, reply}}.
 */
final class WalkFile {
  private static final int FORM = 1;
  private static final long LARGEST = 1 << 20;

  private WalkFile() {}

  /** Writes a walk; the file is replaced as a whole or not at all. */
  static void save(Path file, Course course) {
    ObjectMapper mapper = new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT);
    ObjectNode root = mapper.createObjectNode();
    root.put("walk", FORM);
    root.put("stage", course.stage().map(Stage::word).orElse(null));
    course.sees().forEach(root.putArray("sees")::add);
    course.lacks().forEach(root.putArray("lacks")::add);
    course.before().forEach(root.putArray("before")::add);
    ArrayNode turns = root.putArray("turns");
    for (Course.Turn turn : course.turns()) {
      turns
          .addObject()
          .put("kind", turn.kind().name().toLowerCase(Locale.ROOT))
          .put("id", turn.id())
          .put("reply", turn.reply());
    }
    try {
      Path whole = file.toAbsolutePath();
      Path written = Files.createTempFile(whole.getParent(), ".walk", ".json");
      Files.writeString(written, mapper.writeValueAsString(root) + "\n", StandardCharsets.UTF_8);
      Files.move(written, whole, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, file + " could not be written: " + e.getMessage());
    }
  }

  /** Reads a walk and checks it against the base. */
  static Course read(Path file, Base base) {
    try {
      if (Files.size(file) > LARGEST) {
        throw new Failure(ExitCode.UNREADABLE, file + " is too large for a saved walk");
      }
      JsonNode root = new ObjectMapper().readTree(Files.readAllBytes(file));
      if (root == null || root.path("walk").asInt() != FORM) {
        throw new Failure(ExitCode.UNREADABLE, file + " is not a saved walk");
      }
      Optional<Stage> stage = Optional.empty();
      if (root.hasNonNull("stage")) {
        stage = Stage.of(root.get("stage").asText());
        if (stage.isEmpty()) {
          throw new Failure(ExitCode.UNREADABLE, file + ": unknown stage");
        }
      }
      List<Course.Turn> turns = new ArrayList<>();
      for (JsonNode turn : root.path("turns")) {
        turns.add(
            new Course.Turn(
                kind(file, turn.path("kind").asText()),
                turn.path("id").asText(),
                turn.path("reply").asText()));
      }
      Course course =
          new Course(
              stage,
              texts(root.path("sees")),
              texts(root.path("lacks")),
              texts(root.path("before")),
              turns);
      List<String> problems = course.problems(base);
      if (!problems.isEmpty()) {
        throw new Failure(
            ExitCode.UNREADABLE, file + " does not fit this base: " + String.join("; ", problems));
      }
      return course.renewed(base);
    } catch (NoSuchFileException e) {
      throw new Failure(ExitCode.UNREADABLE, "no file: " + file);
    } catch (IOException e) {
      throw new Failure(ExitCode.UNREADABLE, file + " could not be read: " + e.getMessage());
    }
  }

  private static Course.Kind kind(Path file, String word) {
    for (Course.Kind kind : Course.Kind.values()) {
      if (kind.name().toLowerCase(Locale.ROOT).equals(word)) {
        return kind;
      }
    }
    throw new Failure(ExitCode.UNREADABLE, file + ": unknown kind of step '" + word + "'");
  }

  private static Set<String> texts(JsonNode array) {
    Set<String> texts = new LinkedHashSet<>();
    array.forEach(each -> texts.add(each.asText()));
    return texts;
  }
}
