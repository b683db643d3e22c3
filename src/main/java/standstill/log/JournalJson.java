package standstill.log;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * Reads a journal that was exported as JSON, one object a line or spread over several.
 *
 * <p>The field names are those of systemd.journal-fields(7). A message that isn't UTF-8 comes as an
 * array of bytes; one that was too long as null.
 */
final class JournalJson {
  private static final int MOST_LINES = 200;

  /** It stands before every line of a message. */
  private static final int LONGEST_NAME = 64;

  private static final String MESSAGE = "\"MESSAGE\"";

  private static final ObjectMapper MAPPER =
      new ObjectMapper(
          JsonFactory.builder()
              .streamReadConstraints(
                  StreamReadConstraints.builder()
                      .maxNestingDepth(8)
                      .maxStringLength(Terminal.LONGEST)
                      .maxNumberLength(40)
                      .build())
              .build());

  private JournalJson() {}

  /** Whether a line can be, or begin, an entry. */
  static boolean mayBegin(String text) {
    int at = start(text);
    return at < text.length()
        && text.charAt(at) == '{'
        && (text.length() == at + 1 || text.contains(MESSAGE));
  }

  private static int start(String text) {
    return text.startsWith("data: ") ? 6 : 0;
  }

  /**
   * Reads the entry that begins at a piece and adds its lines.
   *
   * @return how many pieces it took; 0 when there is no entry
   */
  static int read(List<Piece> pieces, int index, List<Entry> out, Cells cells, CutIns cutIns) {
    Piece first = pieces.get(index);
    String text = first.text().substring(start(first.text()));
    int taken = 1;
    Piece message = first;
    if (text.equals("{")) {
      taken = linesOfObject(pieces, index);
      StringBuilder all = new StringBuilder(text);
      for (Piece part : pieces.subList(index + 1, index + taken)) {
        all.append(part.text());
        message = part.text().contains(MESSAGE) ? part : message;
      }
      text = all.toString();
    }
    if (!text.contains(MESSAGE)) {
      return 0;
    }
    try {
      JsonNode entry = MAPPER.readTree(text);
      if (!entry.isObject()) {
        return 0;
      }
      Piece last = pieces.get(index + taken - 1);
      Piece place = new Piece(message.number(), last.last(), "", first.afterClear());
      add(entry, place, out, cells, cutIns);
      return taken;
    } catch (JsonProcessingException e) {
      return 0;
    }
  }

  /**
   * How many pieces the object takes whose brace stands alone on a piece; 1 when no end is found. A
   * further brace alone begins an object of its own, so no piece is looked at for two objects.
   */
  private static int linesOfObject(List<Piece> pieces, int index) {
    int end = Math.min(pieces.size(), index + MOST_LINES);
    for (int i = index + 1; i < end; i++) {
      String text = pieces.get(i).text();
      if (text.startsWith("}")) {
        return i - index + 1;
      }
      if (text.equals("{")) {
        return 1;
      }
    }
    return 1;
  }

  private static void add(
      JsonNode entry, Piece place, List<Entry> out, Cells cells, CutIns cutIns) {
    OptionalDouble seconds = seconds(entry);
    String process = process(entry);
    OptionalInt level = Severity.ofWord(entry.path("PRIORITY").asText(""));
    double clock = micros(entry.path("__REALTIME_TIMESTAMP")).orElse(Double.NaN);
    Prefix prefix = new Prefix(1, seconds, false, clock, level, process, false);
    String pid = entry.path("_PID").asText(entry.path("SYSLOG_PID").asText(""));
    boolean numbered = isShortNumber(pid) && !process.isEmpty() && !process.equals("kernel");
    String tag = process.isEmpty() ? "" : process + (numbered ? "[" + pid + "]: " : ": ");
    String stamp =
        seconds.isPresent() ? String.format(Locale.ROOT, "[%12.6f] ", seconds.getAsDouble()) : "";
    String boot = entry.path("_BOOT_ID").asText("");
    for (String line : lines(entry.path("MESSAGE"), cells, cutIns)) {
      String message = Forum.clean(line);
      if (!message.isBlank()) {
        Piece piece = place.withText(stamp + tag + message);
        out.add(new Entry(piece, prefix, message.strip(), boot, false));
      }
    }
  }

  private static List<String> lines(JsonNode message, Cells cells, CutIns cutIns) {
    String text;
    if (message.isArray()) {
      byte[] bytes = new byte[message.size()];
      for (int i = 0; i < bytes.length; i++) {
        bytes[i] = (byte) message.get(i).asInt();
      }
      text = Decoding.decode(bytes);
    } else {
      text = message.asText("");
    }
    List<String> shown = new ArrayList<>();
    Terminal.read(RawLines.of(text), cells, cutIns).forEach(piece -> shown.add(piece.text()));
    return shown;
  }

  private static String process(JsonNode entry) {
    String name = entry.path("SYSLOG_IDENTIFIER").asText(entry.path("_COMM").asText(""));
    name = name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) : name;
    return name.isEmpty() && entry.path("_TRANSPORT").asText("").equals("kernel") ? "kernel" : name;
  }

  /** The kernel's own stamp; when there is none, the time at which the journal got the message. */
  private static OptionalDouble seconds(JsonNode entry) {
    OptionalDouble source = micros(entry.path("_SOURCE_MONOTONIC_TIMESTAMP"));
    return source.isPresent() ? source : micros(entry.path("__MONOTONIC_TIMESTAMP"));
  }

  private static OptionalDouble micros(JsonNode value) {
    String text = value.asText("");
    return isShortNumber(text)
        ? OptionalDouble.of(Long.parseLong(text) / 1e6)
        : OptionalDouble.empty();
  }

  private static boolean isShortNumber(String text) {
    return !text.isEmpty()
        && text.length() <= 18
        && text.chars().allMatch(c -> c >= '0' && c <= '9');
  }
}
