package standstill.mine;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A stretch of a message between blanks.
 *
 * @param wide whether more than one blank stands before it
 * @param parts its words and values; a value in quotes may hold blanks
 */
record Token(boolean wide, List<Part> parts) {
  Token {
    parts = List.copyOf(parts);
  }

  /** The tokens of a message. */
  static List<Token> of(String message) {
    List<Token> tokens = new ArrayList<>();
    List<Part> open = new ArrayList<>();
    boolean wide = false;
    for (Part part : Parts.of(message)) {
      if (part.kind().isPresent()) {
        open.add(part);
        continue;
      }
      String text = part.text();
      int from = 0;
      for (int i = 0; i <= text.length(); i++) {
        boolean blank = i < text.length() && Character.isWhitespace(text.charAt(i));
        if ((blank || i == text.length()) && i > from) {
          open.add(part.withText(text.substring(from, i)));
        }
        if (blank) {
          if (!open.isEmpty()) {
            tokens.add(new Token(wide, open));
            open.clear();
            wide = text.charAt(i) != ' ';
          } else {
            wide = true;
          }
          from = i + 1;
        }
      }
    }
    if (!open.isEmpty()) {
      tokens.add(new Token(wide, open));
    }
    return tokens;
  }

  /** Whether another message says the same here, but for its values. */
  boolean isLike(Token other) {
    if (parts.size() != other.parts.size()) {
      return false;
    }
    for (int i = 0; i < parts.size(); i++) {
      if (!parts.get(i).isLike(other.parts.get(i))) {
        return false;
      }
    }
    return true;
  }

  /** What stands there. */
  String text() {
    return parts.stream().map(Part::text).collect(Collectors.joining());
  }

  /** The numbers and names that tell causes apart, of a whole message. */
  static String causes(List<Token> tokens) {
    return tokens.stream()
        .flatMap(token -> token.parts.stream())
        .filter(Part::tellsCause)
        .map(Part::text)
        .collect(Collectors.joining(" "));
  }

  /** The token with the wildcard for its values. */
  String masked() {
    return parts.stream()
        .map(part -> part.kind().isPresent() ? TemplateTree.WILDCARD : part.text())
        .collect(Collectors.joining());
  }
}
