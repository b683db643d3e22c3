package standstill.edit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import standstill.base.Base;
import standstill.base.Risk;
import standstill.base.Scale;
import standstill.base.yaml.EntryText;

/**
 * The main values of an entry as fields. The text is the one source of truth: fields are read from
 * it, and a field that a person changed is written into it at its place.
 */
public final class EntryForm {
  private static final int MOST_SIGNS = 40;
  private static final int MOST_FIXES = 20;

  private EntryForm() {}

  /** How a field is filled in. */
  public enum Kind {
    /** A line of text. */
    LINE,
    /** A paragraph. */
    PARAGRAPH,
    /** One of several words. */
    CHOICE,
    /** Several texts, one on a line. */
    LIST
  }

  /**
   * A field.
   *
   * @param path of its value in the text
   * @param label for people
   * @param hint what to write, or empty
   * @param kind how it is filled in
   * @param value as the text has it
   * @param choices of a choice
   */
  public record Field(
      String path, String label, String hint, Kind kind, String value, List<String> choices) {
    public Field {
      choices = List.copyOf(choices);
    }
  }

  /**
   * Fields that belong together.
   *
   * @param title for people
   * @param line of the text where they begin
   * @param fields in order
   */
  public record Group(String title, int line, List<Field> fields) {
    public Group {
      fields = List.copyOf(fields);
    }
  }

  /**
   * What came of writing fields into a text.
   *
   * @param text with the changed fields
   * @param notes what could not be written, and why
   */
  public record Written(String text, List<String> notes) {
    public Written {
      notes = List.copyOf(notes);
    }
  }

  /** The fields of an entry's text; none when the text is not sound YAML. */
  public static List<Group> of(EntryName entry, String text, Base base) {
    if (entry.isBoot()) {
      return List.of(); // Below its label stands a log, which may be anything.
    }
    EntryText yaml = EntryText.of(text);
    List<Group> groups = new ArrayList<>();
    if (!yaml.isSound()) {
      return groups;
    }
    groups.add(group(yaml, "The entry", "", head(entry, base)));
    for (int i = 0; entry.isFault() && i < Math.min(MOST_SIGNS, yaml.size("signs")); i++) {
      groups.add(group(yaml, "Sign " + (i + 1), "signs." + i + ".", sign(base.scale())));
    }
    for (int i = 0; entry.isFault() && i < Math.min(MOST_FIXES, yaml.size("fixes")); i++) {
      groups.add(group(yaml, "Repair " + (i + 1), "fixes." + i + ".", fix(base.scale())));
    }
    return groups.stream().filter(g -> !g.fields().isEmpty()).toList();
  }

  /**
   * Writes the fields that were changed. A field that was changed in the text too stays as the text
   * has it, with a note.
   *
   * @param now the field as it was sent, by its path; null when it was not
   * @param was the field as it was shown, by its path; null when it was not
   */
  public static Written write(
      EntryName entry,
      String text,
      Base base,
      Function<String, @Nullable String> now,
      Function<String, @Nullable String> was) {
    if (entry.isBoot()) {
      return new Written(text, List.of());
    }
    EntryText yaml = EntryText.of(text);
    List<String> notes = new ArrayList<>();
    for (Group group : of(entry, text, base)) {
      for (Field field : group.fields()) {
        String sent = lines(now.apply(field.path()));
        String shown = lines(was.apply(field.path()));
        if (sent == null || shown == null || sent.equals(shown) || sent.equals(field.value())) {
          continue;
        }
        String name = group.title() + ", " + field.label();
        if (!shown.equals(field.value())) {
          notes.add(
              name
                  + ": it was changed in the field and in the text. The text was kept; the field"
                  + " said: "
                  + sent);
          continue;
        }
        Optional<EntryText> written =
            field.kind() == Kind.LIST
                ? yaml.with(field.path(), list(sent))
                : yaml.with(field.path(), sent);
        if (written.isPresent()) {
          yaml = written.get();
        } else {
          notes.add(
              name + ": the text is laid out so that it has to be changed in the text itself.");
        }
      }
    }
    return new Written(yaml.text(), notes);
  }

  /** The text with one more sign, whose pattern and example come from a line of a log. */
  public static Optional<String> withSign(String text, String pattern, String seen) {
    return EntryText.of(text).withItem("signs", Skeleton.sign(pattern, seen)).map(EntryText::text);
  }

  private static List<String> list(String sent) {
    return sent.lines().filter(line -> !line.isBlank()).toList();
  }

  private static @Nullable String lines(@Nullable String sent) {
    return sent == null ? null : sent.replace("\r\n", "\n").stripTrailing();
  }

  private record Wanted(
      String key, String label, String hint, Kind kind, Collection<String> choices) {}

  private static Wanted line(String key, String label, String hint) {
    return new Wanted(key, label, hint, Kind.LINE, List.of());
  }

  private static Wanted paragraph(String key, String label) {
    return new Wanted(key, label, "", Kind.PARAGRAPH, List.of());
  }

  private static Wanted choice(String key, String label, Collection<String> choices) {
    return new Wanted(key, label, "", Kind.CHOICE, choices);
  }

  private static Wanted list(String key, String label, String hint) {
    return new Wanted(key, label, hint, Kind.LIST, List.of());
  }

  private static List<Wanted> head(EntryName entry, Base base) {
    Scale scale = base.scale();
    if (entry.isFault()) {
      return List.of(
          line("title", "Title", "The cause in a short sentence, without a full stop"),
          choice("part", "Part", scale.parts().keySet()),
          choice("how-common", "How common", scale.frequencies().keySet()),
          paragraph("about", "What it is"),
          list("symptoms", "Symptoms", "Ids, one on a line"),
          list("leads-to", "Leads to", "Ids of faults whose signs it also produces, one on a line"),
          paragraph("prevent", "How to keep it from coming back"));
    }
    if (entry.path().startsWith("checks/")) {
      return List.of(
          line("title", "Title", ""),
          line("minutes", "Minutes", ""),
          list("how", "How it is done", "One step on a line"),
          list("cautions", "Cautions", "One on a line"));
    }
    if (entry.path().startsWith("trails/")) {
      return List.of(
          line("title", "Title", ""),
          paragraph("why", "Why it is harmless"),
          paragraph("matters-when", "When it matters"));
    }
    return List.of();
  }

  private static List<Wanted> sign(Scale scale) {
    return List.of(
        line("id", "Id", "What it shows, in lower-case words joined by hyphens; it never changes"),
        line("line", "Pattern", "RE2 syntax; {name} of a group can be used below"),
        line("says", "Says", "A sentence for the report"),
        choice("shows", "Shows with this fault", scale.chances().keySet()),
        choice("elsewhere", "Shows in other boots", scale.chances().keySet()),
        list("seen", "Must match", "Whole lines, one on a line"),
        list("unlike", "Must not match", "Near misses, one on a line"));
  }

  private static List<Wanted> fix(Scale scale) {
    return List.of(
        line("id", "Id", "What is done, in lower-case words joined by hyphens; it never changes"),
        line("title", "Title", ""),
        list("steps", "Steps", "One on a line"),
        line("minutes", "Minutes", ""),
        choice("cures", "Cures it", scale.chances().keySet()),
        choice("risk", "Risk", Arrays.stream(Risk.values()).map(Risk::word).toList()),
        list("cautions", "Cautions", "What to beware of, one on a line"),
        line("prove", "It worked if", "What the next boot shows"),
        line("undo", "To undo it", ""));
  }

  private static Group group(EntryText yaml, String title, String prefix, List<Wanted> wanted) {
    List<Field> fields = new ArrayList<>();
    for (Wanted each : wanted) {
      String path = prefix + each.key();
      Optional<String> value =
          each.kind() == Kind.LIST
              ? yaml.values(path).map(values -> String.join("\n", values))
              : yaml.value(path).map(EntryForm::joined);
      value.ifPresent(
          v -> {
            List<String> choices = new ArrayList<>(each.choices());
            if (each.kind() == Kind.CHOICE && !choices.contains(v)) {
              choices.add(0, v);
            }
            fields.add(new Field(path, each.label(), each.hint(), each.kind(), v, choices));
          });
    }
    int line = fields.isEmpty() ? 1 : yaml.line(fields.get(0).path());
    return new Group(title, line, fields);
  }

  /** Folded texts may keep line ends; a field shows words. */
  private static String joined(String value) {
    return value.replaceAll("\\s*\\n\\s*", " ").stripTrailing();
  }
}
