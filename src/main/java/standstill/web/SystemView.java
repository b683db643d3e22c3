package standstill.web;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import standstill.base.Base;
import standstill.base.Circumstance;
import standstill.base.Fix;
import standstill.base.Given;
import standstill.base.Plan;

/**
 * In what respects a reader may say what their system is like: those on which the shown repairs
 * depend.
 */
public record SystemView(List<AskView> asks) {
  /** Name of the key in an address, given once for each word. */
  static final String KEY = "for";

  /** Nothing to say. */
  static final SystemView NONE = new SystemView(List.of());

  private static final int MOST = 20;

  /** A respect, and what it can be. */
  public record AskView(String title, List<OptionView> options) {}

  /** A case, and whether it is the one. */
  public record OptionView(String word, String title, boolean chosen) {}

  /**
   * What the reader of a page says of their system.
   *
   * @throws NotUnderstood when a word is none of the base's
   */
  static Set<String> said(Context ctx, Base base) {
    Set<String> words = new LinkedHashSet<>();
    for (String word : ctx.queryParams(KEY)) {
      if (!word.isEmpty() && (base.caseOf(word).isEmpty() || words.size() >= MOST)) {
        throw new NotUnderstood("The base knows no kind of system by this name: " + word + ".");
      }
      if (!word.isEmpty()) {
        words.add(word);
      }
    }
    return words;
  }

  /** The words as the end of an address, after a question mark and other keys. */
  static String query(Set<String> said) {
    return said.stream()
        .map(word -> "&" + KEY + "=" + URLEncoder.encode(word, StandardCharsets.UTF_8))
        .collect(Collectors.joining());
  }

  static SystemView of(Base base, Collection<Fix> fixes, Set<String> said, Given given) {
    Set<String> used = new LinkedHashSet<>();
    for (Fix fix : fixes) {
      Plan plan = Plan.of(fix, Given.NOTHING);
      Stream.concat(plan.rows().stream(), plan.others().stream())
          .flatMap(row -> row.on().stream())
          .forEach(c -> used.add(c.id()));
    }
    List<AskView> asks = new ArrayList<>();
    for (Circumstance circumstance : base.circumstances()) {
      if (circumstance.cases().stream().noneMatch(c -> used.contains(c.id()))) {
        continue;
      }
      Set<String> known = given.cases().getOrDefault(circumstance.id(), Set.of());
      asks.add(
          new AskView(
              circumstance.title(),
              circumstance.cases().stream()
                  .map(
                      c ->
                          new OptionView(
                              c.id(),
                              c.title(),
                              said.contains(c.id()) || known.size() == 1 && known.contains(c.id())))
                  .toList()));
    }
    return new SystemView(asks);
  }
}
