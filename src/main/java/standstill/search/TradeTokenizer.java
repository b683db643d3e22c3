package standstill.search;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.apache.lucene.analysis.Tokenizer;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.analysis.tokenattributes.OffsetAttribute;
import org.apache.lucene.analysis.tokenattributes.PositionIncrementAttribute;

/**
 * Cuts text into the tokens of this trade, and keeps them whole beside their parts.
 *
 * <p>Between blanks stands a chunk. It is one token, without the punctuation around it; where it
 * holds inner punctuation, so are its pieces between equals signs, commas and brackets, and its
 * runs of letters and digits. {@code unknown-block(0,0)} is found by itself, by "unknown-block" and
 * by "block"; {@code exitcode=0x00007f00} by "0x7f00"; {@code ret=-110} by "-110" and by "110".
 * Tokens are lower-case; zeros after 0x don't count. A chunk and its first part share a position,
 * so that phrases of plain words work.
 */
final class TradeTokenizer extends Tokenizer {
  private static final int LONGEST_TOKEN = 200;
  private static final int SHORTEST_NAME = 3;
  private static final String OPENING = "\"'`“”‘’([{<,;:.!?|*+=~…»«>)]}";
  private static final String CLOSING = "\"'`“”‘’([{<,;:.!?|*+=~…»«>)]}/-";
  private static final String BETWEEN = "=,;()[]{}<>\"'`|";

  private final CharTermAttribute term = addAttribute(CharTermAttribute.class);
  private final OffsetAttribute offset = addAttribute(OffsetAttribute.class);
  private final PositionIncrementAttribute step = addAttribute(PositionIncrementAttribute.class);
  private List<Token> tokens = List.of();
  private int next;
  private int length;

  /**
   * A token.
   *
   * @param start offset of its first character
   * @param end offset after its last
   * @param text lower-case
   */
  record Token(int start, int end, String text) {}

  @Override
  public boolean incrementToken() throws IOException {
    if (next >= tokens.size()) {
      return false;
    }
    clearAttributes();
    Token token = tokens.get(next);
    boolean sharesPlace = next > 0 && tokens.get(next - 1).start() == token.start();
    next++;
    term.append(token.text());
    offset.setOffset(correctOffset(token.start()), correctOffset(token.end()));
    step.setPositionIncrement(sharesPlace ? 0 : 1);
    return true;
  }

  @Override
  public void reset() throws IOException {
    super.reset();
    StringBuilder text = new StringBuilder();
    char[] buffer = new char[2048];
    for (int n = input.read(buffer); n >= 0; n = input.read(buffer)) {
      text.append(buffer, 0, n);
    }
    length = text.length();
    tokens = new ArrayList<>();
    chunks(text).forEach(tokens::addAll);
    next = 0;
  }

  @Override
  public void end() throws IOException {
    super.end();
    offset.setOffset(correctOffset(length), correctOffset(length));
  }

  /** The tokens of each chunk: the chunk itself first, parts in the order of their places. */
  static List<List<Token>> chunks(CharSequence text) {
    List<List<Token>> chunks = new ArrayList<>();
    int at = 0;
    while (at < text.length()) {
      if (Character.isWhitespace(text.charAt(at))) {
        at++;
        continue;
      }
      int start = at;
      while (at < text.length() && !Character.isWhitespace(text.charAt(at))) {
        at++;
      }
      List<Token> tokens = chunk(text, start, at);
      if (!tokens.isEmpty()) {
        chunks.add(tokens);
      }
    }
    return chunks;
  }

  private static List<Token> chunk(CharSequence text, int from, int to) {
    List<Token> all = new ArrayList<>();
    addTrimmed(text, from, to, all);
    int piece = from;
    for (int i = from; i <= to; i++) {
      if (i == to || BETWEEN.indexOf(text.charAt(i)) >= 0) {
        addTrimmed(text, piece, i, all);
        piece = i + 1;
      }
    }
    int run = -1;
    for (int i = from; i <= to; i++) {
      boolean inside = i < to && Character.isLetterOrDigit(text.charAt(i));
      if (inside && run < 0) {
        run = i;
      } else if (!inside && run >= 0) {
        add(text, run, i, all);
        addName(text, run, i, all);
        run = -1;
      }
    }
    all.sort(
        Comparator.comparingInt(Token::start)
            .thenComparing(Comparator.comparingInt(Token::end).reversed()));
    return all;
  }

  /** The name before a number: nvme of nvme0n1p2, ata of ata1. */
  private static void addName(CharSequence text, int from, int to, List<Token> all) {
    int end = from;
    while (end < to && Character.isLetter(text.charAt(end))) {
      end++;
    }
    if (end < to && end - from >= SHORTEST_NAME) {
      add(text, from, end, all);
    }
  }

  private static void addTrimmed(CharSequence text, int from, int to, List<Token> all) {
    int start = from;
    int end = to;
    while (start < end && isOpening(text, start, end)) {
      start++;
    }
    while (start < end && isClosing(text, start, end)) {
      end--;
    }
    add(text, start, end, all);
  }

  private static boolean isOpening(CharSequence text, int at, int end) {
    char c = text.charAt(at);
    if (c == '-') {
      return at + 1 >= end || !Character.isDigit(text.charAt(at + 1));
    }
    return OPENING.indexOf(c) >= 0;
  }

  private static boolean isClosing(CharSequence text, int start, int end) {
    char c = text.charAt(end - 1);
    if (c == ')' || c == ']') {
      char opens = c == ')' ? '(' : '[';
      for (int i = start; i < end; i++) {
        if (text.charAt(i) == opens) {
          return false;
        }
      }
    }
    return CLOSING.indexOf(c) >= 0;
  }

  private static void add(CharSequence text, int start, int end, List<Token> all) {
    if (end <= start || end - start > LONGEST_TOKEN) {
      return;
    }
    for (Token token : all) {
      if (token.start() == start && token.end() == end) {
        return;
      }
    }
    all.add(new Token(start, end, normal(text.subSequence(start, end).toString())));
  }

  private static String normal(String text) {
    String lower = text.toLowerCase(Locale.ROOT).replace('’', '\'');
    if (lower.startsWith("0x")) {
      int zeros = 2;
      while (zeros < lower.length() - 1 && lower.charAt(zeros) == '0') {
        zeros++;
      }
      return "0x" + lower.substring(zeros);
    }
    return lower;
  }
}
