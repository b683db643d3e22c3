package standstill.web;

import java.util.ArrayList;
import java.util.List;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Given;
import standstill.base.Stage;
import standstill.store.Edition;

/** The whole base, ready for its template. */
public record HandbookView(
    List<ChapterView> chapters,
    List<SymptomView> symptoms,
    List<CheckView> checks,
    List<TrailView> trails,
    int faults) {

  /** The faults of a stage. */
  public record ChapterView(String stage, List<FaultView> faults) {}

  static HandbookView of(Edition edition) {
    Base base = edition.base();
    List<ChapterView> chapters = new ArrayList<>();
    for (Stage stage : Stage.values()) {
      List<FaultView> faults = new ArrayList<>();
      for (Fault fault : base.faults()) {
        if (fault.stage() == stage) {
          faults.add(FaultView.of(edition, fault, Given.NOTHING));
        }
      }
      if (!faults.isEmpty()) {
        chapters.add(new ChapterView(stage.word(), faults));
      }
    }
    return new HandbookView(
        chapters,
        base.symptoms().stream().map(s -> SymptomView.of(edition, s)).toList(),
        base.checks().stream().map(c -> CheckView.of(base, c)).toList(),
        base.trails().stream().map(TrailView::of).toList(),
        base.faults().size());
  }
}
