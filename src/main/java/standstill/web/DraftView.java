package standstill.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import standstill.base.Symptom;
import standstill.edit.Checker;
import standstill.edit.Draft;
import standstill.edit.EntryForm;
import standstill.edit.Proposal;
import standstill.text.Problem;

/**
 * An entry being edited, ready for its template.
 *
 * @param id of the draft; empty before the first step
 * @param revises id of the proposal that it revises; empty for a new one
 * @param rows height of the text's box
 * @param log to try it on; empty when that is a paste
 * @param paste address of the paste that it is tried on, or empty
 */
public record DraftView(
    String id,
    String file,
    String name,
    boolean isFault,
    boolean isBoot,
    boolean isNew,
    String from,
    String revises,
    String text,
    int rows,
    List<GroupView> groups,
    List<ProblemView> problems,
    List<String> notes,
    List<String> others,
    List<WordView> symptoms,
    String log,
    String paste,
    @Nullable TriedView tried) {

  /** Fields that belong together. */
  public record GroupView(String title, int line, boolean open, List<FieldView> fields) {}

  /** A field. */
  public record FieldView(
      String path,
      String label,
      String hint,
      String kind,
      String value,
      int rows,
      List<String> choices) {}

  /** A problem of the text. */
  public record ProblemView(
      boolean grave,
      String place,
      int line,
      int column,
      String message,
      String excerpt,
      String advice) {}

  /** An id that may be used in a field. */
  public record WordView(String id, String title) {}

  static DraftView of(
      Draft draft,
      boolean isNew,
      Checker.Checked checked,
      List<Proposal> others,
      Optional<TriedView> tried) {
    List<GroupView> groups = new ArrayList<>();
    for (EntryForm.Group group : EntryForm.of(draft.entry(), draft.text(), checked.before())) {
      groups.add(
          new GroupView(
              group.title(),
              group.line(),
              groups.isEmpty(),
              group.fields().stream().map(DraftView::field).toList()));
    }
    boolean pasted = DraftPage.isPaste(draft.log());
    return new DraftView(
        draft.id(),
        draft.entry().path(),
        draft.entry().id(),
        draft.entry().isFault(),
        draft.entry().isBoot(),
        isNew,
        draft.from(),
        draft.revises().isEmpty() ? "" : draft.revises().split(" ", 2)[0],
        draft.text(),
        Math.max(18, Math.min(48, (int) draft.text().lines().count() + 2)),
        groups,
        checked.problems().stream().map(p -> problem(p, draft.entry().path())).toList(),
        draft.notes(),
        others.stream()
            .filter(p -> p.entry().equals(draft.entry()) && !draft.revises().startsWith(p.id()))
            .map(Proposal::id)
            .toList(),
        draft.entry().isFault()
            ? checked.before().symptoms().stream().map(DraftView::word).toList()
            : List.of(),
        pasted ? "" : draft.log(),
        pasted ? draft.log() : "",
        tried.orElse(null));
  }

  private static WordView word(Symptom symptom) {
    return new WordView(symptom.id(), symptom.title());
  }

  private static FieldView field(EntryForm.Field field) {
    int lines =
        field.kind() == EntryForm.Kind.PARAGRAPH
            ? 2 + field.value().length() / 60
            : 1 + (int) field.value().lines().count();
    return new FieldView(
        field.path(),
        field.label(),
        field.hint(),
        field.kind().name().toLowerCase(Locale.ROOT),
        field.value(),
        Math.min(12, lines),
        field.choices());
  }

  static ProblemView problem(Problem problem, String file) {
    boolean here = problem.position().file().equals(file);
    String place =
        here && problem.position().line() > 0
            ? problem.position().line() + ":" + problem.position().column()
            : problem.position().toString();
    return new ProblemView(
        problem.isError(),
        place,
        here ? problem.position().line() : 0,
        problem.position().column(),
        problem.message(),
        problem.excerpt(),
        problem.advice());
  }
}
