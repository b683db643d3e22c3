package standstill.search;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Marks the words of a query in the texts of an entry, and picks the text that fits best. */
final class Highlight {
  private static final int LONGEST_EXCERPT = 240;
  private static final int BEFORE = 60;

  private final Set<String> terms;

  Highlight(Set<String> terms) {
    this.terms = terms;
  }

  Found found(Entry entry, boolean bySign) {
    Entry.Unit best = null;
    double most = -1;
    for (Entry.Unit unit : entry.units()) {
      if (unit.field() == Entry.Field.TITLE || unit.field() == Entry.Field.NAME) {
        continue;
      }
      double fit = fit(unit, bySign);
      if (fit > most) {
        best = unit;
        most = fit;
      }
    }
    List<Segment> excerpt = best == null ? List.of() : excerpt(best.text());
    return new Found(
        entry.kind(),
        entry.id(),
        Segment.cut(entry.title(), spans(entry.title())),
        bySign,
        best == null ? "" : best.where(),
        excerpt);
  }

  private double fit(Entry.Unit unit, boolean bySign) {
    Set<String> seen = new HashSet<>();
    double letters = 0;
    for (List<TradeTokenizer.Token> chunk : TradeTokenizer.chunks(unit.text())) {
      for (TradeTokenizer.Token token : chunk) {
        String stem = TradeAnalyzer.stem(token.text());
        if (terms.contains(stem) && seen.add(stem)) {
          // Long words tell more than short ones; that is enough to choose an excerpt by.
          letters += Math.min(12, stem.length());
        }
      }
    }
    double about = unit.field() == Entry.Field.ABOUT ? 0.5 : 0;
    double sign = bySign && unit.field() == Entry.Field.SIGNS ? 100 : 0;
    return letters * (1 + unit.field().boost() / 10) + about + sign;
  }

  private List<Segment> excerpt(String text) {
    String flat = text.strip().replaceAll("\\s+", " ");
    List<int[]> spans = spans(flat);
    int from = 0;
    if (flat.length() > LONGEST_EXCERPT && !spans.isEmpty()) {
      from = Math.max(0, Math.min(spans.get(0)[0] - BEFORE, flat.length() - LONGEST_EXCERPT));
      while (from > 0 && flat.charAt(from - 1) != ' ') {
        from--;
      }
    }
    int to = Math.min(flat.length(), from + LONGEST_EXCERPT);
    while (to < flat.length() && to > from + BEFORE && flat.charAt(to) != ' ') {
      to--;
    }
    String window = flat.substring(from, to);
    List<Segment> segments = new ArrayList<>();
    if (from > 0) {
      segments.add(new Segment("… ", false));
    }
    segments.addAll(Segment.cut(window, spans(window)));
    if (to < flat.length()) {
      segments.add(new Segment(" …", false));
    }
    return segments;
  }

  private List<int[]> spans(String text) {
    List<int[]> spans = new ArrayList<>();
    int end = 0;
    for (List<TradeTokenizer.Token> chunk : TradeTokenizer.chunks(text)) {
      for (TradeTokenizer.Token token : chunk) {
        if (token.start() >= end && terms.contains(TradeAnalyzer.stem(token.text()))) {
          spans.add(new int[] {token.start(), token.end()});
          end = token.end();
        }
      }
    }
    return spans;
  }
}
