package standstill.text;

import com.google.re2j.Matcher;
import com.google.re2j.PatternSyntaxException;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A regular expression that runs in time linear in the text (RE2 syntax: no look-around, no
 * back-references).
 *
 * <p>The text may be hostile, the pattern may be careless: neither can make matching explode, which
 * is why no other engine is used for patterns of the base. Thread-safe.
 */
public final class Pattern {
  /** Longest accepted pattern, in characters; RE2/J's program grows with it. */
  public static final int LONGEST = 2_000;

  /** Most that a part of a pattern may be repeated by a count such as {@code {0,60}}. */
  public static final int MOST_TIMES = 250;

  /** Most parts that a pattern may have when its repetitions are written out, beyond its own. */
  public static final int MOST_PARTS = 500;

  private final com.google.re2j.Pattern compiled;
  private final List<String> groups;
  private final List<String> literals;
  private final BitSet firstCharacters;
  private final int repeatedParts;
  private volatile @Nullable Pattern blind;

  private Pattern(com.google.re2j.Pattern compiled, int repeatedParts) {
    this.compiled = compiled;
    this.repeatedParts = repeatedParts;
    this.groups =
        compiled.namedGroups().entrySet().stream()
            .sorted(Map.Entry.comparingByValue())
            .map(Map.Entry::getKey)
            .toList();
    this.literals = Literals.of(compiled.pattern());
    this.firstCharacters = FirstCharacters.of(compiled.pattern());
  }

  /**
   * Compiles a pattern.
   *
   * @throws SyntaxException when it is not RE2 syntax, too long, or repeats too much; the message
   *     says what is wrong
   */
  public static Pattern of(String source) throws SyntaxException {
    if (source.length() > LONGEST) {
      throw new SyntaxException(
          "has " + source.length() + " characters; at most " + LONGEST + " are allowed", 0);
    }
    int repeated = Expansion.repeated(source, MOST_TIMES, MOST_PARTS);
    try {
      return new Pattern(com.google.re2j.Pattern.compile(source), repeated);
    } catch (PatternSyntaxException e) {
      String part = e.getPattern() == null ? "" : e.getPattern();
      String what = part.isEmpty() ? e.getDescription() : e.getDescription() + ": `" + part + "`";
      throw new SyntaxException("is not RE2 syntax: " + what, Math.max(source.indexOf(part), 0));
    } catch (StackOverflowError e) {
      throw new SyntaxException("is nested too deeply", 0);
    }
  }

  /** A pattern written in this program's own source, which must be right. */
  public static Pattern known(String source) {
    try {
      return of(source);
    } catch (SyntaxException e) {
      throw new IllegalArgumentException(e);
    }
  }

  /**
   * The same pattern, blind to case, for {@link #find} and {@link #foundIn}; made when it is first
   * asked for. Its literals and first characters are those of this one.
   */
  public Pattern blindToCase() {
    Pattern made = blind;
    if (made == null) {
      // Letters of classes such as \S are no part of the text, so the source can't be changed.
      made =
          new Pattern(
              com.google.re2j.Pattern.compile(source(), com.google.re2j.Pattern.CASE_INSENSITIVE),
              repeatedParts);
      blind = made;
    }
    return made;
  }

  /** The source of the pattern. */
  public String source() {
    return compiled.pattern();
  }

  /** Names of the groups, in the order of their numbers. */
  public List<String> groups() {
    return groups;
  }

  /**
   * Literals of which at least one stands in every text that matches, longest possible; empty when
   * none can be told. A text without any of them can be skipped without running the engine.
   */
  public List<String> literals() {
    return literals;
  }

  /** Parts that its counted repetitions add; see {@link #MOST_PARTS}. */
  public int repeatedParts() {
    return repeatedParts;
  }

  /**
   * Whether a match can begin with this character. A text for whose first character this is false
   * need not be tried with {@link #findAtStart}.
   */
  public boolean mayBeginWith(char c) {
    return FirstCharacters.contains(firstCharacters, c);
  }

  /** Whether the pattern matches somewhere in the text. */
  public boolean foundIn(CharSequence text) {
    return compiled.matcher(text).find();
  }

  /** The first match in the text. */
  public Optional<Match> find(CharSequence text) {
    return find(text, 0);
  }

  /** The first match at or after an offset. */
  public Optional<Match> find(CharSequence text, int from) {
    Matcher matcher = compiled.matcher(text);
    return matcher.find(from) ? Optional.of(match(matcher)) : Optional.empty();
  }

  /** The match that begins at the beginning of the text, if there is one. */
  public Optional<Match> findAtStart(CharSequence text) {
    Matcher matcher = compiled.matcher(text);
    return matcher.lookingAt() ? Optional.of(match(matcher)) : Optional.empty();
  }

  private Match match(Matcher matcher) {
    Map<String, String> values = new LinkedHashMap<>();
    for (String group : groups) {
      String value = matcher.group(group);
      if (value != null) {
        values.put(group, value);
      }
    }
    return new Match(matcher.start(), matcher.end(), values);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Pattern pattern && pattern.source().equals(source());
  }

  @Override
  public int hashCode() {
    return source().hashCode();
  }

  @Override
  public String toString() {
    return source();
  }

  /**
   * Where a pattern matched and what its named groups caught.
   *
   * @param start offset of the first character
   * @param end offset after the last character
   * @param values caught values by group name, in the order of the groups; groups that caught
   *     nothing are absent
   */
  public record Match(int start, int end, Map<String, String> values) {
    public Match {
      values = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }
  }

  /** A pattern that the engine does not take. */
  public static final class SyntaxException extends Exception {
    private final int offset;

    SyntaxException(String message, int offset) {
      super(message);
      this.offset = offset;
    }

    /** Offset of the trouble in the pattern's source, from 0. */
    public int offset() {
      return offset;
    }
  }
}
