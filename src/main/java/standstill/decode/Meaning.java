package standstill.decode;

/**
 * What a code means.
 *
 * @param start offset of its first character in the line
 * @param end offset after its last character
 * @param code the code as it stands in the line
 * @param kind what sort of code it is
 * @param meaning what it says, in plain words
 * @param source the standard, manual or source file that defines it
 */
public record Meaning(int start, int end, String code, Kind kind, String meaning, String source) {
  public Meaning {
    if (start < 0 || end < start) {
      throw new IllegalArgumentException("a code from " + start + " to " + end);
    }
  }
}
