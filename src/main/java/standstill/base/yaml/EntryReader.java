package standstill.base.yaml;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.base.Chance;
import standstill.base.Reviewed;
import standstill.base.Risk;
import standstill.base.Scale;
import standstill.base.Sign;
import standstill.base.Source;
import standstill.base.Stage;

/** What all kinds of entries share: ids, words of the scale, sources, review. */
final class EntryReader {
  private final Scale scale;

  EntryReader(Scale scale) {
    this.scale = scale;
  }

  Scale scale() {
    return scale;
  }

  /** The entry's id, which equals the file's name. */
  static String id(Fields fields, BaseText file) {
    String id = fields.text("id");
    if (!id.isEmpty() && !id.equals(file.stem())) {
      fields.error(
          "id",
          "id '" + id + "' is not the file's name",
          "rename one of them; the file is " + file.stem() + ".yaml");
    }
    return id;
  }

  /** No two answers of one question have the same id. */
  static void distinct(Fields question, List<String> answers) {
    if (answers.stream().distinct().count() < answers.size()) {
      question.error("answers", "two answers have the same id", "");
    }
  }

  /** No two signs or fixes of one entry have the same id. */
  static void distinct(List<Fields> parts) {
    Set<String> ids = new HashSet<>();
    for (Fields part : parts) {
      String id = part.text("id");
      if (!id.isEmpty() && !ids.add(id)) {
        part.error(
            "id",
            "second sign or fix with the id '" + id + "' in this entry",
            "give it one that says what is different about it");
      }
    }
  }

  /** A chance by its word; the middle one when the word is unknown, which was reported before. */
  Chance chance(Fields fields, String key) {
    String word = fields.text(key);
    return new Chance(word, scale.chances().getOrDefault(word, 0.5));
  }

  static Stage stage(Fields fields) {
    return Stage.of(fields.text("stage")).orElse(Stage.KERNEL);
  }

  static List<Stage> stages(Fields fields, String key) {
    return fields.texts(key).stream().flatMap(w -> Stage.of(w).stream()).toList();
  }

  static Risk risk(Fields fields) {
    return Risk.of(fields.text("risk")).orElse(Risk.NONE);
  }

  /** A source other than common practice says where. */
  static List<Source> sources(Fields fields) {
    List<Source> sources = new ArrayList<>();
    for (Fields source : fields.maps("sources")) {
      String title = source.text("title");
      String where = source.text("where");
      if (where.isEmpty() && !title.equals(Source.COMMON_PRACTICE)) {
        source.error(
            "title",
            "source without 'where'",
            "name the file, section or page, or write the title '" + Source.COMMON_PRACTICE + "'");
      }
      sources.add(new Source(title, where));
    }
    return sources;
  }

  static Reviewed reviewed(Fields fields) {
    Fields reviewed = fields.map("reviewed");
    return new Reviewed(
        Scalars.day(reviewed.text("on")).orElse(LocalDate.EPOCH), reviewed.text("by"));
  }

  /** Who prints a sign's text, when the sign says so. */
  static Optional<Sign.PrintedBy> printedBy(Fields sign) {
    if (!sign.has("printed-by")) {
      return Optional.empty();
    }
    Fields by = sign.map("printed-by");
    return Optional.of(new Sign.PrintedBy(by.text("program"), by.text("reason")));
  }
}
