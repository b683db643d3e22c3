package standstill.cli;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The text of a new entry. What nobody has said yet is an empty text with a hint beside it, and
 * {@code check} reports each at its place: an entry fails until it is true.
 */
final class Skeleton {
  private final Map<String, String> answers;
  private final Map<String, Question> questions = new LinkedHashMap<>();
  private final Set<String> blanks = new LinkedHashSet<>();
  private final StringBuilder out = new StringBuilder();

  /**
   * A skeleton.
   *
   * @param questions what can be asked of the kind of entry
   * @param answers what was answered, by key
   */
  Skeleton(List<Question> questions, Map<String, String> answers) {
    questions.forEach(q -> this.questions.put(q.key(), q));
    this.answers = Map.copyOf(answers);
  }

  /**
   * A sign's line.
   *
   * @param pattern matches it
   * @param seen the text that it was made of
   */
  record SignLine(String pattern, String seen) {
    /** A sign without a log to take it from. */
    static final SignLine NONE = new SignLine("", "");
  }

  /** The keys that are still blank, in the order of the file; complete once the text was made. */
  List<String> blanks() {
    return List.copyOf(blanks);
  }

  String fault(String id, String family, SignLine sign, String today) {
    line("id: " + id);
    asked("", "title");
    line("kind: specific");
    line("family: [" + family + "]");
    asked("", "stage");
    asked("", "part");
    asked("", "how-common");
    asked("", "about");
    asked("", "symptoms");
    line("signs:");
    sign(sign);
    asked("    ", "shows");
    asked("    ", "elsewhere");
    seen(sign);
    line("leads-to: []");
    line("told-apart-by: []");
    line("fixes:");
    blank("  - ", "id", "names the repair within the fault for ever, such as write-loader-anew");
    blank("    ", "title", "what repairs it");
    list("    ", "steps", "one step each");
    blank("    ", "minutes", "how long it takes");
    blank("    ", "cures", "chance that it repairs this fault");
    blank("    ", "risk", "none, restart, settings, data, firmware, hands-inside");
    blank("    ", "prove", "what the next boot shows when it worked");
    blank("    ", "undo", "how to take it back");
    list("    ", "cautions", "what to beware of; [] when there is nothing");
    blank("", "prevent", "how to keep it from coming back");
    sources();
    reviewed("", today);
    return out.toString();
  }

  private void reviewed(String indent, String today) {
    out.append(indent).append("reviewed: {on: ").append(today).append(", by: ");
    inner("by", "who looked at the entry", "}");
  }

  String check(String id, String today) {
    line("id: " + id);
    asked("", "title");
    list("", "how", "one step each: what to do and what to look at");
    asked("", "minutes");
    asked("", "risk");
    line("needs: []");
    list("", "cautions", "what to beware of; [] when there is nothing");
    line("answers:");
    for (int i = 0; i < 2; i++) {
      blank("  - ", "id", "names the answer");
      blank("    ", "text", "what is seen");
      blank("    ", "otherwise", "chance of it when the cause does not mention this check");
    }
    sources();
    reviewed("", today);
    return out.toString();
  }

  /** A symptom, to be put at the end of the list of symptoms. */
  String symptom(String id, String today) {
    line("- id: " + id);
    asked("  ", "title");
    asked("  ", "stages");
    asked("  ", "look");
    list("  ", "words", "other words that people use; [] when there are none");
    reviewed("  ", today);
    return out.toString();
  }

  String trail(String id, String family, SignLine sign, String today) {
    line("id: " + id);
    asked("", "title");
    line("family: [" + family + "]");
    line("signs:");
    sign(sign);
    seen(sign);
    asked("", "why");
    asked("", "matters-when");
    sources();
    reviewed("", today);
    return out.toString();
  }

  private void sign(SignLine sign) {
    blank("  - ", "id", "names the sign for ever by what it shows, such as disk-link-is-down");
    if (sign.pattern().isEmpty()) {
      blank("    ", "line", "RE2 syntax, matched anywhere in the message");
    } else {
      line("    line: " + quoted(sign.pattern()));
    }
  }

  private void seen(SignLine sign) {
    if (sign.seen().isEmpty()) {
      list("    ", "seen", "a line that the pattern matches");
    } else {
      line("    seen: [" + quoted(sign.seen()) + "]");
    }
    list("    ", "unlike", "a near miss: a line much like it that must not match");
  }

  private void sources() {
    line("sources:");
    blank("  - ", "title", "where this comes from, or: common practice, no source");
    blank("    ", "where", "file, section or page; leave the key out for common practice");
  }

  private void asked(String indent, String key) {
    Question question = question(key);
    String answer = answers.getOrDefault(key, "");
    if (answer.isEmpty() && question.many()) {
      list(indent, key, question.hint());
    } else if (answer.isEmpty()) {
      blank(indent, key, question.hint());
    } else if (question.many()) {
      line(indent + key + ": [" + String.join(", ", question.parts(answer).toList()) + "]");
    } else {
      boolean plain = !question.allowed().isEmpty() || key.equals("minutes");
      line(indent + key + ": " + (plain ? answer : quoted(answer)));
    }
  }

  private Question question(String key) {
    Question question = questions.get(key);
    if (question == null) {
      throw new IllegalStateException("no question for '" + key + "'");
    }
    return question;
  }

  private void inner(String key, String hint, String end) {
    String answer = answers.getOrDefault(key, "");
    if (answer.isEmpty()) {
      blanks.add(key);
    }
    line(quoted(answer) + end + (answer.isEmpty() ? "  # " + hint : ""));
  }

  private void blank(String indent, String key, String hint) {
    blanks.add(key);
    line(indent + key + ": ''  # " + hint);
  }

  private void list(String indent, String key, String hint) {
    blanks.add(key);
    line(indent + key + ": ['']  # " + hint);
  }

  private void line(String text) {
    out.append(text).append('\n');
  }

  /** A YAML 1.1 scalar: single quotes, or double ones where something can't be printed. */
  static String quoted(String text) {
    if (text.codePoints().allMatch(Skeleton::isPrintable)) {
      return "'" + text.replace("'", "''") + "'";
    }
    StringBuilder quoted = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      if (c == '"' || c == '\\') {
        quoted.append('\\').append(c);
      } else if (isPrintable(c)) {
        quoted.append(c);
      } else {
        quoted.append(String.format("\\u%04x", (int) c));
      }
    }
    return quoted.append('"').toString();
  }

  /** The printable characters of YAML 1.1 section 5.1 that are no line breaks, within one plane. */
  private static boolean isPrintable(int c) {
    return (c >= ' ' && c <= '~')
        || (c >= 0xa0 && c < 0xd800 && c != 0x2028 && c != 0x2029)
        || (c >= 0xe000 && c <= 0xfffd && c != 0xfeff);
  }
}
