package standstill.log;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;

/**
 * Reads the clocks that logs are stamped with: RFC 3164, RFC 5424 and ISO 8601, ctime, seconds of
 * the epoch.
 *
 * <p>Only differences are of interest, so a stamp without a year is put into the year 2000, which
 * has a 29th of February; the turn of the year is for the caller to notice, see {@link #NO_YEAR}.
 */
final class Clock {
  /** Stamps before this lack a year. */
  static final double NO_YEAR =
      LocalDate.of(2001, 1, 2).atStartOfDay().toEpochSecond(ZoneOffset.UTC);

  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");

  private final String text;
  private int at;

  private Clock(String text) {
    this.text = text;
  }

  /** Seconds since 1970, or NaN when the text is no clock. */
  static double read(String text) {
    if (text.isEmpty()) {
      return Double.NaN;
    }
    try {
      return new Clock(text).read();
    } catch (DateTimeException | NumberFormatException e) {
      return Double.NaN;
    }
  }

  private double read() {
    int year = 2000;
    int month = 0;
    int day = 0;
    double time = Double.NaN;
    double offset = 0;
    while (at < text.length()) {
      char c = text.charAt(at);
      if (Character.isLetter(c)) {
        int named = month(word());
        month = named > 0 ? named : month;
      } else if (c >= '0' && c <= '9') {
        String number = digits();
        if (peek(':') && Double.isNaN(time)) {
          time = timeOfDay(Integer.parseInt(number));
          offset = zone();
        } else if (number.length() >= 9) {
          return Double.parseDouble(number + fraction());
        } else if (number.length() == 4) {
          year = Integer.parseInt(number);
          if (peek('-')) {
            at++;
            month = Integer.parseInt(digits());
            at++;
            day = Integer.parseInt(digits());
          }
        } else {
          day = day == 0 ? Integer.parseInt(number) : day;
        }
      } else {
        at++;
      }
    }
    if (Double.isNaN(time)) {
      return Double.NaN;
    }
    LocalDate date = LocalDate.of(year, Math.max(month, 1), Math.max(day, 1));
    return date.atStartOfDay().toEpochSecond(ZoneOffset.UTC) + time - offset;
  }

  private static int month(String word) {
    String lower = word.toLowerCase(Locale.ROOT);
    return lower.length() < 3 ? 0 : MONTHS.indexOf(lower.substring(0, 3)) + 1;
  }

  private double timeOfDay(int hours) {
    at++;
    double seconds = hours * 3600.0 + Integer.parseInt(digits()) * 60.0;
    if (peek(':')) {
      at++;
      seconds += Integer.parseInt(digits());
      if (peek(',') || peek('.')) {
        seconds += Double.parseDouble("0" + fraction());
      }
    }
    return seconds;
  }

  /** A fraction as {@code .digits}, or nothing. */
  private String fraction() {
    if (peek('.') || peek(',')) {
      at++;
      return "." + digits();
    }
    return "";
  }

  /** An offset from universal time right after the time of day, in seconds. */
  private double zone() {
    if (!peek('+') && !peek('-')) {
      return 0;
    }
    int sign = text.charAt(at) == '-' ? -1 : 1;
    at++;
    String hours = digits();
    if (hours.length() == 4) {
      int value = Integer.parseInt(hours);
      return sign * (value / 100 * 3600.0 + value % 100 * 60.0);
    }
    double minutes = 0;
    if (peek(':')) {
      at++;
      minutes = Integer.parseInt(digits());
    }
    return sign * (Integer.parseInt(hours) * 3600.0 + minutes * 60.0);
  }

  private boolean peek(char c) {
    return at < text.length() && text.charAt(at) == c;
  }

  private String word() {
    int from = at;
    while (at < text.length() && Character.isLetter(text.charAt(at))) {
      at++;
    }
    return text.substring(from, at);
  }

  private String digits() {
    int from = at;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    return text.substring(from, at);
  }
}
