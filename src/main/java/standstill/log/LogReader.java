package standstill.log;

import java.util.ArrayList;
import java.util.List;
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

  private final List<Family> families;
  private final Prefixes prefixes;

  /**
   * A reader for logs of some families.
   *
   * @param families with their line forms, recognisers and beginnings
   */
  public LogReader(List<Family> families) {
    this.families = List.copyOf(families);
    this.prefixes = new Prefixes(this.families);
  }

  /** Reads the bytes of a file; {@link Gunzip} first when it may be compressed. */
  public BootLog read(byte[] bytes) {
    return read(Decoding.decode(bytes));
  }

  /** Reads pasted text. */
  public BootLog read(String text) {
    List<String> rawLines = RawLines.of(text);
    List<Piece> pieces = Spinners.collapse(Forum.undo(Terminal.read(rawLines)));
    List<Entry> entries = entries(Wrapping.join(pieces, prefixes.fresh()));
    Recogniser.Finding finding = new Recogniser(families).look(entries);
    Optional<Family> family =
        families.stream().filter(f -> f.id().equals(finding.family())).findFirst();
    String reason = NotALog.reason(text, entries, finding.hits());
    List<Boot> boots = Boots.of(entries, family.orElse(null));
    return new BootLog(rawLines.size(), rawLines, boots, finding.family(), reason);
  }

  private List<Entry> entries(List<Piece> pieces) {
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
        taken = Math.max(JournalJson.read(pieces, i, entries), 1);
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

  /**
   * A key and value that the kernel's log device adds to the record above, on a line of its own.
   */
  private static boolean isProperty(String text, Entry above) {
    int equals = text.indexOf('=');
    return above.prefix().record()
        && text.startsWith(" ")
        && equals > 1
        && text.substring(1, equals).chars().allMatch(c -> (c >= 'A' && c <= 'Z') || c == '_');
  }

  /** Adds a piece, in parts when kernel lines cut into it. */
  private static void part(Piece piece, Prefixes prefixes, List<Entry> entries) {
    Piece rest = piece;
    Prefix prefix = prefixes.read(rest.text());
    for (int i = 0; i < MOST_CUT_INS; i++) {
      String text = rest.text();
      int cut = CutIns.next(text, Math.max(prefix.end(), 1));
      Prefix inner = cut < 0 ? Prefix.NONE : prefixes.read(text.substring(cut));
      if (inner.seconds().isEmpty()) {
        break;
      }
      String before = text.substring(0, cut).stripTrailing();
      if (!before.isBlank()) {
        entries.add(Entry.of(rest.withText(before), prefix));
      }
      rest = rest.withText(text.substring(cut));
      prefix = inner;
    }
    entries.add(Entry.of(rest, prefix));
  }
}
