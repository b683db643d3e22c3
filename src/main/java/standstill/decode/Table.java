package standstill.decode;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A table of codes: {@code number|name|meaning} a line, {@code #} begins a comment. Immutable.
 * Numbers may be decimal or hexadecimal; names are found whatever their case.
 */
final class Table {
  /** A row of a table; {@code key} is the number as it is written there. */
  record Row(String key, long number, String name, String text) {}

  private final List<Row> rows;
  private final Map<Long, Row> byNumber = new HashMap<>();
  private final Map<String, Row> byName = new HashMap<>();
  private final Map<String, Row> byKey = new HashMap<>();

  private Table(List<Row> rows) {
    this.rows = List.copyOf(rows);
    for (Row row : rows) {
      byNumber.putIfAbsent(row.number(), row);
      byName.putIfAbsent(row.name().toLowerCase(Locale.ROOT), row);
      byKey.putIfAbsent(row.key(), row);
    }
  }

  /** The table of that name; it is part of the program, so a missing one is a broken build. */
  static Table named(String name) {
    String file = name + ".txt";
    try (InputStream in = Table.class.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its table " + file);
      }
      List<Row> rows = new ArrayList<>();
      BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (!line.startsWith("#") && !line.isBlank()) {
          rows.add(row(file, line));
        }
      }
      return new Table(rows);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Row row(String file, String line) {
    String[] parts = line.split("\\|", 3);
    if (parts.length != 3) {
      throw new IllegalStateException(file + ": not three fields: " + line);
    }
    String key = parts[0];
    long number = key.startsWith("0x") ? Long.parseLong(key.substring(2), 16) : Long.parseLong(key);
    return new Row(key, number, parts[1], parts[2]);
  }

  Optional<Row> number(long number) {
    return Optional.ofNullable(byNumber.get(number));
  }

  Optional<Row> name(String name) {
    return Optional.ofNullable(byName.get(name.toLowerCase(Locale.ROOT)));
  }

  /** The row whose first field is written exactly so. */
  Optional<Row> key(String key) {
    return Optional.ofNullable(byKey.get(key));
  }

  List<Row> rows() {
    return rows;
  }
}
