package standstill.base.yaml;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * One file of the base.
 *
 * @param name path below the base's folder, with slashes, for example {@code faults/root/x.yaml}
 * @param shownAs the name to show in messages
 * @param text the content; a byte that is not UTF-8 stands there as {@link #isStray a stray}
 */
public record BaseText(String name, String shownAs, String text) {
  private static final char FIRST_STRAY = '\uDC00';

  /**
   * A file out of its bytes. Bytes that are not UTF-8 become lone low surrogates, which no UTF-8
   * text holds, so that they can be reported at their place with everything else (the idea is that
   * of PEP 383).
   */
  public static BaseText of(String name, String shownAs, byte[] bytes) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(in, out, true);
    while (result.isError()) {
      for (int i = 0; i < result.length(); i++) {
        out.put((char) (FIRST_STRAY + (in.get() & 0xFF)));
      }
      result = decoder.decode(in, out, true);
    }
    return new BaseText(name, shownAs, out.flip().toString());
  }

  /** Whether the character at a place stands for a byte that is not UTF-8. */
  static boolean isStray(String text, int at) {
    char c = text.charAt(at);
    return c >= FIRST_STRAY
        && c <= FIRST_STRAY + 0xFF
        && (at == 0 || !Character.isHighSurrogate(text.charAt(at - 1)));
  }

  /** The byte that a stray stands for. */
  static int byteOf(char stray) {
    return stray - FIRST_STRAY;
  }

  /** The file's name without folders and without {@code .yaml}. */
  String stem() {
    String last = name.substring(name.lastIndexOf('/') + 1);
    return last.endsWith(".yaml") ? last.substring(0, last.length() - 5) : last;
  }

  /** The folder that holds it, without slashes at either end; empty at the top. */
  String folder() {
    int slash = name.lastIndexOf('/');
    return slash < 0 ? "" : name.substring(0, slash);
  }
}
