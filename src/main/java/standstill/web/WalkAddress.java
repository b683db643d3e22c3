package standstill.web;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Stage;
import standstill.guide.Course;

/**
 * A walk as an address: ids and replies, never text of a log. Replies are keyed by their step, so
 * that one can be taken back without losing the others; the order of the keys is the order in which
 * they were given.
 */
final class WalkAddress {
  private static final Set<String> SET_ASIDE =
      Set.of("boot", "begun", "depth", "as", SystemView.KEY);

  private WalkAddress() {}

  /**
   * The walk that a request's address holds.
   *
   * @throws NotUnderstood when it does not fit the base
   */
  static Course read(Context ctx, Base base) {
    Optional<Stage> stage = Optional.empty();
    Set<String> sees = new LinkedHashSet<>();
    Set<String> lacks = new LinkedHashSet<>();
    Set<String> before = new LinkedHashSet<>();
    List<Course.Turn> turns = new ArrayList<>();
    for (Map.Entry<String, List<String>> entry : ctx.queryParamMap().entrySet()) {
      String key = entry.getKey();
      List<String> values = entry.getValue();
      switch (key) {
        case "stage" -> {
          if (!one(values).isEmpty()) {
            stage = Stage.of(one(values));
            if (stage.isEmpty()) {
              throw broken();
            }
          }
        }
        case "sees" -> sees.addAll(values);
        case "lacks" -> lacks.addAll(values);
        case "before" -> before.addAll(values);
        case "log" -> turns.add(new Course.Turn(Course.Kind.LOG, "log", one(values)));
        default -> {
          if (key.startsWith("check.")) {
            turns.add(new Course.Turn(Course.Kind.CHECK, key.substring(6), one(values)));
          } else if (key.startsWith("fix.")) {
            turns.add(new Course.Turn(Course.Kind.FIX, key.substring(4), one(values)));
          } else if (key.startsWith("walk.")) {
            turns.add(new Course.Turn(Course.Kind.WALK, key.substring(5), one(values)));
          } else if (!SET_ASIDE.contains(key)) {
            throw broken();
          }
        }
      }
    }
    Course course = new Course(stage, sees, lacks, before, turns);
    if (!course.problems(base).isEmpty()) {
      throw broken();
    }
    return course.renewed(base);
  }

  private static String one(List<String> values) {
    if (values.size() != 1) {
      throw broken();
    }
    return values.get(0);
  }

  private static NotUnderstood broken() {
    return new NotUnderstood(
        "This address does not fit the fault base: it may have been cut off, or the base has changed since."
            + " Start the walk again.");
  }

  /** A name and its value in an address or a form. */
  public record Pair(String name, String value) {}

  /** The walk as names and values, in order. */
  static List<Pair> pairs(Course course, int boot) {
    List<Pair> pairs = new ArrayList<>();
    if (boot > 0) {
      pairs.add(new Pair("boot", Integer.toString(boot)));
    }
    pairs.add(new Pair("begun", "yes"));
    course.stage().ifPresent(s -> pairs.add(new Pair("stage", s.word())));
    course.sees().forEach(s -> pairs.add(new Pair("sees", s)));
    course.lacks().forEach(s -> pairs.add(new Pair("lacks", s)));
    course.before().forEach(s -> pairs.add(new Pair("before", s)));
    for (Course.Turn turn : course.turns()) {
      String kind = turn.kind().name().toLowerCase(Locale.ROOT);
      pairs.add(
          new Pair(turn.kind() == Course.Kind.LOG ? kind : kind + "." + turn.id(), turn.reply()));
    }
    return pairs;
  }

  /** The walk as what stands behind the question mark. */
  static String query(Course course, int boot) {
    StringBuilder out = new StringBuilder();
    for (Pair pair : pairs(course, boot)) {
      out.append(out.length() == 0 ? "?" : "&")
          .append(encoded(pair.name()))
          .append('=')
          .append(encoded(pair.value()));
    }
    return out.toString();
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("%2F", "/");
  }
}
