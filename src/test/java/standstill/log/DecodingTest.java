package standstill.log;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;

/** Bytes to text, and compressed bytes within a bound. */
class DecodingTest {
  private static final String TEXT = "[    1.000000] caf\u00e9\n[    2.000000] b\n";

  private static List<String> texts(byte[] bytes) {
    return Read.lines(TestForms.reader().read(bytes)).stream().map(LogLine::text).toList();
  }

  private static byte[] gzip(byte[] bytes) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
      gzip.write(bytes);
    }
    return out.toByteArray();
  }

  @Test
  void everyEncodingGivesTheSameLines() {
    List<String> expected = List.of("[    1.000000] caf\u00e9", "[    2.000000] b");
    for (String name :
        List.of("UTF-8", "UTF-16", "UTF-16LE", "UTF-16BE", "ISO-8859-1", "windows-1252")) {
      assertEquals(expected, texts(TEXT.getBytes(Charset.forName(name))), name);
    }
    assertEquals(expected, texts(("\ufeff" + TEXT).getBytes(StandardCharsets.UTF_8)));
    assertEquals(expected, texts(("\ufeff" + TEXT).getBytes(StandardCharsets.UTF_16LE)));
  }

  @Test
  void zeroBytesInBetweenGo() {
    assertEquals(
        List.of("[    1.000000] ab"),
        texts("[    1.000000] a\0b\n".getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void framesInTheFirmwaresCodePageGo() {
    byte[] frame = new byte[40];
    Arrays.fill(frame, (byte) 0xc4);
    frame[0] = (byte) 0xda;
    frame[39] = (byte) 0xbf;
    byte[] row = "\n: Boot menu :\n".getBytes(StandardCharsets.US_ASCII);
    row[1] = (byte) 0xb3;
    row[13] = (byte) 0xb3;
    byte[] all = Arrays.copyOf(frame, frame.length + row.length);
    System.arraycopy(row, 0, all, frame.length, row.length);
    assertEquals(List.of("Boot menu"), texts(all));
  }

  @Test
  void truncatedTwoByteTextIsRead() {
    byte[] bytes = TEXT.getBytes(StandardCharsets.UTF_16);
    assertEquals("[    1.000000] caf\u00e9", texts(Arrays.copyOf(bytes, bytes.length - 1)).get(0));
  }

  @Test
  void compressedBytesExpandWithinTheLimit() throws Exception {
    byte[] plain = TEXT.repeat(1_000).getBytes(StandardCharsets.UTF_8);
    byte[] packed = gzip(plain);
    assertArrayEquals(plain, Gunzip.expand(packed, plain.length));
    assertArrayEquals(plain, Gunzip.expand(plain, plain.length));
    assertThrows(TooLargeException.class, () -> Gunzip.expand(packed, plain.length - 1));
    assertThrows(TooLargeException.class, () -> Gunzip.expand(plain, plain.length - 1));
    assertThrows(
        TooLargeException.class, () -> Gunzip.expand(gzip(new byte[50_000_000]), 1_000_000));
  }

  @Test
  void severalMembersAreReadAndACutOneAsFarAsItGoes() throws Exception {
    byte[] a = gzip("one\n".getBytes(StandardCharsets.UTF_8));
    byte[] b = gzip("two\n".getBytes(StandardCharsets.UTF_8));
    byte[] both = Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    assertEquals("one\ntwo\n", new String(Gunzip.expand(both, 100), StandardCharsets.UTF_8));
    byte[] plain = Read.resource("services-login.log");
    byte[] packed = gzip(plain);
    byte[] part = Gunzip.expand(Arrays.copyOf(packed, packed.length / 2), 1_000_000);
    assertArrayEquals(Arrays.copyOf(plain, part.length), part);
    assertEquals(true, part.length > 500);
  }
}
