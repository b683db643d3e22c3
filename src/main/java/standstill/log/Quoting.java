package standstill.log;

import java.util.ArrayList;
import java.util.List;

/**
 * Takes off what stands before every line of a paste: the marks of a quoted letter and the line
 * numbers of an editor.
 *
 * <p>Both are judged over the whole paste. A firmware's own {@code >>Start PXE over IPv4} is no
 * quotation, and a number counts as a line number only where the numbers go up all the way.
 */
final class Quoting {
  private static final int FEWEST_NUMBERS = 4;

  private Quoting() {}

  static List<Piece> undo(List<Piece> pieces) {
    return withoutNumbers(withoutMarks(pieces));
  }

  private static List<Piece> withoutMarks(List<Piece> pieces) {
    int marked = 0;
    for (Piece piece : pieces) {
      marked += piece.text().startsWith(">") ? 1 : 0;
    }
    if (marked == 0) {
      return pieces;
    }
    boolean most = marked * 10 >= pieces.size() * 6;
    List<Piece> out = new ArrayList<>(pieces.size());
    for (Piece piece : pieces) {
      out.add(piece.withText(withoutMarks(piece.text(), most)));
    }
    return out;
  }

  private static String withoutMarks(String text, boolean most) {
    int at = 0;
    while (at < text.length() && text.charAt(at) == '>') {
      int end = at;
      while (end < text.length() && text.charAt(end) == '>') {
        end++;
      }
      if (end == text.length()) {
        return "";
      }
      char next = text.charAt(end);
      if (next == ' ' || next == '[' || next == '<') {
        at = next == ' ' ? end + 1 : end;
      } else {
        at = most && at == 0 && end == 1 ? end : at;
        break;
      }
    }
    return text.substring(at);
  }

  private static List<Piece> withoutNumbers(List<Piece> pieces) {
    int numbered = 0;
    int following = 0;
    int rising = 0;
    long before = -1;
    char separator = 0;
    for (Piece piece : pieces) {
      int end = numberEnd(piece.text());
      if (end < 0) {
        continue;
      }
      char here = end < piece.text().length() ? piece.text().charAt(end) : ' ';
      long value = Long.parseLong(piece.text().substring(0, end).strip());
      if (numbered > 0 && here != separator && end < piece.text().length()) {
        return pieces;
      }
      separator = numbered == 0 ? here : separator;
      numbered++;
      if (before >= 0) {
        following += value == before + 1 ? 1 : 0;
        rising += value > before ? 1 : 0;
      }
      before = value;
    }
    boolean marked = separator == ':' || separator == '|' || separator == ')';
    int enough = marked ? rising : following;
    boolean listing =
        numbered >= FEWEST_NUMBERS
            && numbered * 4 >= pieces.size() * 3
            && enough * 10 >= (numbered - 1) * 8;
    if (!listing) {
      return pieces;
    }
    List<Piece> out = new ArrayList<>(pieces.size());
    for (Piece piece : pieces) {
      out.add(piece.withText(withoutNumber(piece.text())));
    }
    return out;
  }

  /** Offset after a number at the beginning that something separates from the rest, or -1. */
  private static int numberEnd(String text) {
    int at = 0;
    while (at < text.length() && at < 12 && text.charAt(at) == ' ') {
      at++;
    }
    int from = at;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    if (at == from || at > from + 7) {
      return -1;
    }
    boolean separated = at == text.length() || " :|)".indexOf(text.charAt(at)) >= 0;
    return separated ? at : -1;
  }

  private static String withoutNumber(String text) {
    int end = numberEnd(text);
    if (end < 0) {
      return text;
    }
    int at = end;
    at += at < text.length() && text.charAt(at) != ' ' ? 1 : 0;
    at += at < text.length() && text.charAt(at) == ' ' ? 1 : 0;
    return text.substring(at);
  }
}
