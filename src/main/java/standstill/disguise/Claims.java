package standstill.disguise;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The places of one line that finders have claimed, each with its stand-in. */
final class Claims {
  private record Claim(int start, int end, String standIn) {}

  private final LineView view;
  private final String text;
  private final List<Claim> claims = new ArrayList<>();
  private final int[] owners;

  Claims(LineView view) {
    this.view = view;
    this.text = view.text();
    this.owners = new int[text.length()];
    Arrays.fill(owners, -1);
  }

  /** The line as it is read. */
  String text() {
    return text;
  }

  LineView view() {
    return view;
  }

  /** Whether nobody has claimed any of these characters. */
  boolean isFree(int start, int end) {
    if (start >= end) {
      return false;
    }
    for (int i = start; i < end; i++) {
      if (owners[i] >= 0) {
        return false;
      }
    }
    return true;
  }

  /** Claims characters; the text itself as its stand-in claims that it stays. */
  void take(int start, int end, String standIn) {
    if (isFree(start, end)) {
      own(start, end, standIn);
    }
  }

  /** Claims characters even where others have claimed some. */
  void takeOver(int start, int end, String standIn) {
    if (start < end) {
      own(start, end, standIn);
    }
  }

  private void own(int start, int end, String standIn) {
    Arrays.fill(owners, start, end, claims.size());
    claims.add(new Claim(start, end, standIn));
  }

  /** The line with every claimed place replaced. */
  String replaced() {
    if (claims.isEmpty()) {
      return view.raw();
    }
    String raw = view.raw();
    StringBuilder out = new StringBuilder(raw.length());
    int done = 0;
    int at = 0;
    while (at < text.length()) {
      int owner = owners[at];
      int end = at + 1;
      while (end < text.length() && owners[end] == owner) {
        end++;
      }
      if (owner >= 0) {
        Claim claim = claims.get(owner);
        boolean whole = at == claim.start();
        out.append(raw, done, view.from(at));
        if (claim.standIn().contentEquals(text.substring(at, end))) {
          out.append(raw, view.from(at), view.to(end - 1));
        } else {
          out.append(whole ? view.written(claim.standIn(), at, end) : "");
          codes(out, at, end);
        }
        done = view.to(end - 1);
      }
      at = end;
    }
    return out.append(raw, done, raw.length()).toString();
  }

  /** Colour codes within what is replaced stay, because they colour what follows. */
  private void codes(StringBuilder out, int start, int end) {
    for (int i = start + 1; i < end; i++) {
      out.append(view.raw(), view.to(i - 1), view.from(i));
    }
  }
}
