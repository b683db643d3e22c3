package standstill.search;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Family;
import standstill.base.Fault;
import standstill.base.LineForm;
import standstill.base.Sign;
import standstill.base.SignForm;
import standstill.base.Trail;
import standstill.text.Pattern;
import standstill.text.Prefilter;

/**
 * Finds the entries whose signs match a text as a line of a log. Conditions on the place in a log
 * ("at the end", "at least three times") are left out of account: of one line they can't be known.
 */
final class SignLines {
  /** Shortest match that counts; a word or two prove nothing. */
  private static final int SHORTEST_MATCH = 10;

  private final List<Owner> owners = new ArrayList<>();
  private final List<LineForm> forms;
  private final Prefilter prefilter;

  private record Owner(Kind kind, String id, Pattern line, double strength) {}

  /**
   * An entry with a sign that matches.
   *
   * @param kind fault or false trail
   * @param id its id
   * @param strength how much more often the sign shows with the fault than otherwise
   */
  record Owned(Kind kind, String id, double strength) {}

  SignLines(Base base) {
    forms = base.families().stream().map(Family::lineForms).flatMap(Collection::stream).toList();
    for (Fault fault : base.faults()) {
      for (Sign sign : fault.signs()) {
        if (sign.form() instanceof SignForm.OnLine on) {
          double strength = sign.shows().value() / sign.elsewhere().value();
          // A general fault steps back behind one that says more.
          double share = fault.general() ? 0.25 : 1;
          owners.add(
              new Owner(
                  Kind.FAULT,
                  fault.id(),
                  on.line(),
                  strength * share * Math.sqrt(fault.howCommon().weight())));
        }
      }
    }
    for (Trail trail : base.trails()) {
      for (Trail.TrailSign sign : trail.signs()) {
        // Below every sign that says something, above those that don't.
        owners.add(new Owner(Kind.TRAIL, trail.id(), sign.line(), 4));
      }
    }
    prefilter = new Prefilter(owners.stream().map(Owner::line).toList());
  }

  /** Entries of which a sign matches, strongest first. */
  List<Owned> in(String text) {
    Set<String> ways = new LinkedHashSet<>();
    ways.add(text.strip());
    String rest = text.strip();
    for (int depth = 0; depth < 3; depth++) {
      Optional<String> shorter = withoutPrefix(rest);
      if (shorter.isEmpty()) {
        break;
      }
      rest = shorter.get();
      ways.add(rest);
    }
    Map<Integer, Integer> found = new HashMap<>();
    for (String way : ways) {
      for (int candidate : prefilter.candidates(way)) {
        owners
            .get(candidate)
            .line()
            .find(way)
            .filter(match -> match.end() - match.start() >= SHORTEST_MATCH)
            .ifPresent(m -> found.merge(candidate, m.end() - m.start(), Math::max));
      }
    }
    Map<String, Owned> byEntry = new HashMap<>();
    found.forEach(
        (place, length) -> {
          Owner owner = owners.get(place);
          // Of two signs that are as strong, the one that says more of the line.
          double strength = owner.strength() * length;
          byEntry.merge(
              owner.kind() + " " + owner.id(),
              new Owned(owner.kind(), owner.id(), strength),
              (a, b) -> a.strength() >= b.strength() ? a : b);
        });
    return byEntry.values().stream()
        .sorted(Comparator.comparingDouble(Owned::strength).reversed().thenComparing(Owned::id))
        .toList();
  }

  private Optional<String> withoutPrefix(String text) {
    return forms.stream()
        .filter(form -> !text.isEmpty() && form.prefix().mayBeginWith(text.charAt(0)))
        .flatMap(form -> form.prefix().findAtStart(text).stream())
        .filter(match -> match.end() > 0 && match.end() < text.length())
        .max(Comparator.comparingInt(Pattern.Match::end))
        .map(match -> text.substring(match.end()).strip());
  }
}
