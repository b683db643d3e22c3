package standstill.log;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.zip.GZIPInputStream;

/**
 * Expands what was compressed with gzip (RFC 1952), within a bound.
 *
 * <p>A small file may expand to a thousand times its size, so the bound is on what comes out and is
 * checked while expanding. A log that was cut while being copied is still worth reading: what could
 * be expanded before the damage is kept.
 */
public final class Gunzip {
  private static final int CHUNK = 16_384;

  private Gunzip() {}

  /** Whether the bytes begin as a gzip file does (RFC 1952 section 2.3.1). */
  public static boolean isCompressed(byte[] bytes) {
    return bytes.length >= 3 && bytes[0] == 0x1f && bytes[1] == (byte) 0x8b && bytes[2] == 8;
  }

  /**
   * What came out.
   *
   * @param bytes the expanded bytes, up to the damage if there is any
   * @param whole whether the file was whole; false when it is damaged or was cut short
   */
  public record Expanded(byte[] bytes, boolean whole) {}

  /**
   * The expanded bytes; the bytes themselves when they aren't compressed. Several members in a row
   * are put together, as the standard has it.
   *
   * @param limit most bytes that may come out
   * @throws TooLargeException when more would come out
   */
  public static byte[] expand(byte[] bytes, long limit) throws TooLargeException {
    return read(bytes, limit).bytes();
  }

  /** The same, for whoever tells people that a file is damaged. */
  public static Expanded read(byte[] bytes, long limit) throws TooLargeException {
    if (!isCompressed(bytes)) {
      if (bytes.length > limit) {
        throw new TooLargeException(limit);
      }
      return new Expanded(bytes, true);
    }
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] chunk = new byte[CHUNK];
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(bytes), CHUNK)) {
      int count = in.read(chunk);
      while (count >= 0) {
        if ((long) out.size() + count > limit) {
          throw new TooLargeException(limit);
        }
        out.write(chunk, 0, count);
        count = in.read(chunk);
      }
    } catch (IOException e) {
      // What came out until here is the readable part.
      return new Expanded(out.toByteArray(), false);
    }
    return new Expanded(out.toByteArray(), true);
  }
}
