package standstill.log;

import java.util.ArrayList;
import java.util.List;

/** Undoes what happens to a log on its way through web pages, letters and forums. */
final class Forum {
  private Forum() {}

  /** The pieces without damage; frames, fences and what was nothing but markup are left out. */
  static List<Piece> undo(List<Piece> pieces) {
    List<Piece> out = new ArrayList<>(pieces.size());
    for (Piece piece : pieces) {
      if (JournalJson.mayBegin(piece.text())) {
        out.add(piece);
        continue;
      }
      for (String line : Markup.undo(piece.text())) {
        String clean = clean(line);
        if (!clean.isBlank() && !CutMarks.isFence(clean) && !Frames.isFrame(clean)) {
          out.add(piece.withText(withoutEdges(clean)));
        }
      }
    }
    List<Piece> unquoted = new ArrayList<>(out.size());
    for (Piece piece : Quoting.undo(out)) {
      if (!piece.text().isBlank() && !CutMarks.isFence(piece.text())) {
        unquoted.add(piece);
      }
    }
    return unquoted;
  }

  /** A line without codes, pretty characters and what doesn't print. */
  static String clean(String line) {
    return Plain.of(Typography.undo(Debris.clean(line)));
  }

  /** A drawn edge on both sides is a frame; on one side it may be a tree. */
  private static String withoutEdges(String line) {
    String text = line.strip();
    boolean framed =
        text.length() > 2
            && Frames.isDrawing(text.charAt(0))
            && Frames.isDrawing(text.charAt(text.length() - 1));
    return framed ? Frames.strip(text) : line;
  }
}
