package standstill.log;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import standstill.base.Family;

/**
 * Reads a boot log in whatever shape people paste it.
 *
 * <p>In stages, each a small class: bytes to text, text to lines, terminal codes to what was
 * visible, forum damage undone, beginnings taken apart with the line forms of the base, lines that
 * cut into each other parted, boots divided. Every visible line keeps the number of the input line
 * that it came from. No input makes it fail; a text that is no boot log comes back with the reason.
 * Time and memory grow with the input and not faster. An instance may be used by several threads.
 */
public final class LogReader {
  private static final int MOST_CUT_INS = 50;

  private final Recogniser recogniser;
  private final Prefixes prefixes;
  private final CutIns cutIns;
  private final Waiting waiting;
  private final BootLines unknown;
  private final Map<String, BootLines> bootLines = new HashMap<>();

  /**
   * A reader for logs of some families.
   *
   * @param families with their line forms, recognisers and beginnings
   */
  public LogReader(List<Family> families) {
    recogniser = new Recogniser(families);
    prefixes = new Prefixes(families);
    cutIns = new CutIns(families);
    waiting = new Waiting(families);
    unknown = new BootLines(families, Optional.empty());
    families.forEach(
        family -> bootLines.put(family.id(), new BootLines(families, Optional.of(family))));
  }

  /** Reads the bytes of a file; {@link Gunzip} first when it may be compressed. */
  public BootLog read(byte[] bytes) {
    return read(Decoding.decode(bytes));
  }

  /** Reads pasted text. */
  public BootLog read(String text) {
    List<String> rawLines = RawLines.of(text);
    Cells cells = Cells.forText(text.length());
    List<Piece> pieces = waiting.collapse(Forum.undo(Terminal.read(rawLines, cells, cutIns)));
    List<Entry> entries = entries(Wrapping.join(pieces, prefixes.fresh()), cells);
    Recogniser.Finding finding = recogniser.look(entries);
    String reason = NotALog.reason(text, entries, finding.hits());
    BootLines lines = bootLines.getOrDefault(finding.family(), unknown);
    Boots.Division boots = Boots.of(entries, lines);
    return new BootLog(
        rawLines.size(),
        rawLines,
        boots.kept(),
        finding.family(),
        reason,
        limits(cells, boots.leftOut()));
  }

  /** What was not followed or kept, in sentences for the person who pasted it. */
  private static List<String> limits(Cells cells, int bootsLeftOut) {
    List<String> limits = new ArrayList<>();
    if (cells.areSpent()) {
      limits.add(
          "From line "
              + cells.spentOn()
              + " on, codes that move the cursor were not followed: the text holds far more of them than a"
              + " screen shows.");
    }
    if (bootsLeftOut > 0) {
      limits.add(
          "The text holds "
              + (bootsLeftOut + Boots.MOST)
              + " starts of the machine; the last "
              + Boots.MOST
              + " were kept and are counted from 1.");
    }
    return limits;
  }

  private List<Entry> entries(List<Piece> pieces, Cells cells) {
    Prefixes own = prefixes.fresh();
    List<Entry> entries = new ArrayList<>(pieces.size());
    boolean cut = false;
    int i = 0;
    while (i < pieces.size()) {
      Piece piece = pieces.get(i);
      int before = entries.size();
      int taken = 1;
      if (CutMarks.isCut(piece.text())) {
        cut = true;
      } else if (JournalJson.mayBegin(piece.text())) {
        taken = Math.max(JournalJson.read(pieces, i, entries, cells, cutIns), 1);
        piece = piece.withText(Forum.clean(piece.text()));
      }
      boolean read = entries.size() > before || CutMarks.isCut(piece.text());
      if (!read && !piece.text().isBlank()) {
        if (before > 0 && isProperty(piece.text(), entries.get(before - 1))) {
          entries.set(before - 1, entries.get(before - 1).until(piece.last()));
        } else {
          part(piece, own, entries);
        }
      }
      if (cut && entries.size() > before) {
        entries.set(before, entries.get(before).withCut());
        cut = false;
      }
      i += taken;
    }
    return entries;
  }

  /** A key and value that a log device adds to the record above, on a line of its own. */
  private static boolean isProperty(String text, Entry above) {
    int equals = text.indexOf('=');
    return above.prefix().record()
        && text.startsWith(" ")
        && equals > 1
        && text.substring(1, equals).chars().allMatch(c -> (c >= 'A' && c <= 'Z') || c == '_');
  }

  /** Adds a piece, in parts when kernel lines cut into it. */
  private void part(Piece piece, Prefixes prefixes, List<Entry> entries) {
    String text = piece.text();
    int from = 0;
    Prefix prefix = prefixes.read(text);
    for (int i = 0; i < MOST_CUT_INS; i++) {
      int cut = cutIns.next(text, from + Math.max(prefix.end(), 1));
      Prefix inner = cut < 0 ? Prefix.NONE : prefixes.readAt(text, cut);
      if (inner.seconds().isEmpty()) {
        break;
      }
      int end = endOfText(text, from, cut);
      if (end > from) {
        entries.add(Entry.of(piece.part(from, end), prefix));
      }
      from = cut;
      prefix = inner;
    }
    entries.add(Entry.of(from == 0 ? piece : piece.part(from, text.length()), prefix));
  }

  /** Where the text before an offset ends when blanks at its end are left out. */
  private static int endOfText(String text, int from, int to) {
    int end = to;
    while (end > from && Character.isWhitespace(text.charAt(end - 1))) {
      end--;
    }
    return end;
  }
}
