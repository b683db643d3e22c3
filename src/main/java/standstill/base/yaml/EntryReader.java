package standstill.base.yaml;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.yaml.snakeyaml.nodes.Node;
import standstill.base.Chance;
import standstill.base.Risk;
import standstill.base.Scale;
import standstill.base.Sign;
import standstill.base.Source;
import standstill.base.Stage;

/** What all kinds of entries share: ids, words of the scale, sources. */
final class EntryReader {
  static final List<String> STAGES = Arrays.stream(Stage.values()).map(Stage::word).toList();
  static final List<String> RISKS = Arrays.stream(Risk.values()).map(Risk::word).toList();
  private static final int LONGEST_ID = 60;
  static final String ID_FORM =
      "lower-case words joined by hyphens, at most " + LONGEST_ID + " characters";

  private final Scale scale;

  EntryReader(Scale scale) {
    this.scale = scale;
  }

  Scale scale() {
    return scale;
  }

  /** Reads the file's map and hands it on; empty when the file can't be used. */
  static Optional<Fields> root(Sink sink, String what) {
    Optional<Node> node = new Nodes(sink).compose();
    return node.map(n -> Fields.of(sink, n, what));
  }

  /** The entry's id, which equals the file's name. */
  static String id(Fields fields, BaseText file) {
    String id = id(fields);
    if (!id.isEmpty() && !id.equals(file.stem())) {
      fields.error(
          "id",
          "id '" + id + "' is not the file's name",
          "rename one of them; the file is " + file.stem() + ".yaml");
    }
    return id;
  }

  /** An id: lower-case words with hyphens. */
  static String id(Fields fields) {
    String id = fields.text("id");
    if (!id.isEmpty() && !isId(id)) {
      fields.error("id", "'" + id + "' is not an id", "allowed: " + ID_FORM);
    }
    return id;
  }

  static boolean isId(String id) {
    if (id.isEmpty() || id.length() > LONGEST_ID || id.startsWith("-") || id.endsWith("-")) {
      return false;
    }
    return id.chars().allMatch(c -> c == '-' || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'));
  }

  /** A chance by its word; {@code sometimes}, after a problem, when the word is unknown. */
  Chance chance(Fields fields, String key) {
    String word = fields.word(key, scale.chances().keySet()).orElse("sometimes");
    return new Chance(word, scale.chances().getOrDefault(word, 0.15));
  }

  static Stage stage(Fields fields) {
    return fields.word("stage", STAGES).flatMap(Stage::of).orElse(Stage.KERNEL);
  }

  static List<Stage> stages(Fields fields, String key, boolean required) {
    return fields.words(key, required, STAGES).stream().flatMap(w -> Stage.of(w).stream()).toList();
  }

  static Risk risk(Fields fields) {
    return fields.word("risk", RISKS).flatMap(Risk::of).orElse(Risk.NONE);
  }

  List<String> needs(Fields fields) {
    return fields.words("needs", false, scale.needs().keySet());
  }

  /** At least one source; a source other than common practice says where. */
  static List<Source> sources(Fields fields) {
    List<Source> sources = new ArrayList<>();
    for (Fields source : fields.maps("sources", true, "a source")) {
      String title = source.text("title");
      String where = source.text("where", "");
      if (where.isEmpty() && !title.equals(Source.COMMON_PRACTICE)) {
        source.error(
            source.has("where") ? "where" : "title",
            "source without 'where'",
            "name the file, section or page, or write the title '" + Source.COMMON_PRACTICE + "'");
      }
      source.done();
      sources.add(new Source(title, where));
    }
    return sources;
  }

  /** Who prints a sign's text, when the sign says so. */
  static Optional<Sign.PrintedBy> printedBy(Fields sign) {
    return sign.map("printed-by", false)
        .map(
            by -> {
              Sign.PrintedBy read = new Sign.PrintedBy(by.text("program"), by.text("reason"));
              by.done();
              return read;
            });
  }

  static LocalDate date(Fields fields, String key) {
    String text = fields.text(key);
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      fields.error(key, "'" + text + "' is not a date", "write it as 2026-01-31");
      return LocalDate.EPOCH;
    }
  }
}
