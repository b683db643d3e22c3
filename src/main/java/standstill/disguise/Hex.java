package standstill.disguise;

/** Reading of hexadecimal and decimal groups in a text. */
final class Hex {
  private Hex() {}

  static boolean isDigit(char c) {
    return c >= '0' && c <= '9' || c >= 'a' && c <= 'f' || c >= 'A' && c <= 'F';
  }

  /** The end of the letters and digits that begin at a place. */
  static int wordEnd(String text, int from) {
    int at = from;
    while (at < text.length() && Character.isLetterOrDigit(text.charAt(at))) {
      at++;
    }
    return at;
  }

  static boolean isAll(String text, int from, int to) {
    for (int i = from; i < to; i++) {
      if (!isDigit(text.charAt(i))) {
        return false;
      }
    }
    return to > from;
  }

  static boolean hasLetter(String text) {
    return text.chars().anyMatch(Character::isLetter);
  }

  static boolean hasDigit(String text) {
    return text.chars().anyMatch(c -> c >= '0' && c <= '9');
  }
}
