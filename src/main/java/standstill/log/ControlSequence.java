package standstill.log;

/**
 * A control sequence as ECMA-48 section 5.4 has it: parameters, then one final character.
 *
 * @param end offset after it
 * @param kind the final character; {@code 0} when the sequence was cut short or is broken
 * @param parameters the parameter characters, with any private mark
 */
record ControlSequence(int end, char kind, String parameters) {
  private static final int LONGEST = 200;

  /** Reads the sequence whose parameters begin at an offset. */
  static ControlSequence at(String text, int from) {
    int at = from;
    int limit = Math.min(text.length(), from + LONGEST);
    while (at < limit && text.charAt(at) >= '0' && text.charAt(at) <= '?') {
      at++;
    }
    int parametersEnd = at;
    if (at < limit && text.charAt(at) >= ' ' && text.charAt(at) <= '/') {
      at++;
    }
    if (at < limit && text.charAt(at) >= '@' && text.charAt(at) <= '~') {
      char kind = parametersEnd == at ? text.charAt(at) : 'm';
      return new ControlSequence(at + 1, kind, text.substring(from, parametersEnd));
    }
    return new ControlSequence(parametersEnd, (char) 0, "");
  }

  /** A numeric parameter, counted from 0. */
  int parameter(int index, int otherwise) {
    int at = 0;
    for (int i = 0; i < index; i++) {
      at = parameters.indexOf(';', at) + 1;
      if (at == 0) {
        return otherwise;
      }
    }
    int value = 0;
    boolean any = false;
    while (at < parameters.length() && Character.digit(parameters.charAt(at), 10) >= 0) {
      value = Math.min(value * 10 + Character.digit(parameters.charAt(at), 10), 99_999);
      any = true;
      at++;
    }
    return any ? value : otherwise;
  }
}
