package standstill.report;

import java.util.List;

/**
 * Counts what a program does, independently of how fast the machine is.
 *
 * <p>{@link CountingLoader} puts calls to this class into the program: one for every method that is
 * entered and every turn of a loop. Calls of the class library that walk over a text or a list are
 * led through here, so that they count as many steps as they look at signs or elements.
 */
public final class Steps {
  private static long count;

  private Steps() {}

  /** Steps so far. */
  public static long count() {
    return count;
  }

  public static void one() {
    count++;
  }

  private static int found(int at, int from, int length) {
    count += Math.max(0, (at < 0 ? length : at) - from);
    return at;
  }

  private static int foundBackwards(int at, int from, int length) {
    count += Math.max(0, Math.min(from, length) - Math.max(at, 0));
    return at;
  }

  public static int indexOf(String text, int c) {
    return found(text.indexOf(c), 0, text.length());
  }

  public static int indexOf(String text, int c, int from) {
    return found(text.indexOf(c, from), from, text.length());
  }

  public static int indexOf(String text, String part) {
    return found(text.indexOf(part), 0, text.length());
  }

  public static int indexOf(String text, String part, int from) {
    return found(text.indexOf(part, from), from, text.length());
  }

  public static int lastIndexOf(String text, int c) {
    return foundBackwards(text.lastIndexOf(c), text.length(), text.length());
  }

  public static int lastIndexOf(String text, int c, int from) {
    return foundBackwards(text.lastIndexOf(c, from), from, text.length());
  }

  public static int lastIndexOf(String text, String part) {
    return foundBackwards(text.lastIndexOf(part), text.length(), text.length());
  }

  public static boolean contains(String text, CharSequence part) {
    return found(text.indexOf(part.toString()), 0, text.length()) >= 0;
  }

  public static String substring(String text, int from) {
    count += text.length() - from;
    return text.substring(from);
  }

  public static String substring(String text, int from, int to) {
    count += to - from;
    return text.substring(from, to);
  }

  public static String strip(String text) {
    count += text.length();
    return text.strip();
  }

  public static String stripTrailing(String text) {
    count += text.length();
    return text.stripTrailing();
  }

  public static String toString(StringBuilder text) {
    count += text.length();
    return text.toString();
  }

  public static StringBuilder delete(StringBuilder text, int from, int to) {
    count += text.length() - from;
    return text.delete(from, to);
  }

  public static StringBuilder insert(StringBuilder text, int at, String part) {
    count += text.length() - at;
    return text.insert(at, part);
  }

  public static Object remove(List<?> list, int at) {
    count += list.size() - at;
    return list.remove(at);
  }

  public static boolean contains(List<?> list, Object element) {
    count += list.size();
    return list.contains(element);
  }

  public static int indexOf(List<?> list, Object element) {
    count += list.size();
    return list.indexOf(element);
  }
}
