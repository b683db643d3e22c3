package standstill.machine;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import standstill.base.ThingState;

/**
 * Units by any of their names. A line may give a unit's name, its description, both, or either one
 * shortened in the middle to the width of a screen, so that only its beginning and its end are
 * left.
 */
final class UnitDrafts {
  private static final int MOST = 1_000;
  private static final int MOST_TEXTS = 12;

  /** Searches through all units for one boot: a log of nothing but shortened names ends there. */
  private static final int MOST_SEARCHES = 5_000;

  private static final String JOIN = " - ";
  private static final String CUT = "...";
  private static final String DEVICE = ".device";
  private static final String SWAP = ".swap";

  /** A unit with all that lines have called it. */
  private static final class Called {
    private final Draft draft;
    private final Set<String> texts = new LinkedHashSet<>();
    private boolean whole;

    Called(String name) {
      draft = new Draft(name);
    }

    boolean mayBe(String text) {
      return texts.stream().anyMatch(own -> Names.same(own, text));
    }
  }

  private final Names names;
  private final List<Called> units = new ArrayList<>();
  private final Map<String, Called> byText = new HashMap<>();
  private int searches;

  UnitDrafts(Names names) {
    this.names = names;
  }

  /** All of them, in the order of their first lines. */
  List<Draft> all() {
    return units.stream().map(unit -> unit.draft).toList();
  }

  /** The unit of that text; empty when there are too many already. */
  Optional<Draft> of(String text) {
    String called = text.strip();
    if (called.startsWith(CUT)) {
      called = afterCut(called);
    }
    if (called.isEmpty()) {
      return Optional.empty();
    }
    return Names.isCut(called) ? ofShortened(called) : ofWhole(called);
  }

  /** What is left when the beginning is lost: the end of a name, or a whole description. */
  private static String afterCut(String text) {
    String rest = text.substring(CUT.length()).strip();
    String title = rest.startsWith("- ") ? rest.substring(2) : rest;
    return title.startsWith("/") || title.contains(JOIN) ? title : CUT + rest;
  }

  private Optional<Draft> ofWhole(String text) {
    int join = text.indexOf(JOIN);
    String id = join < 0 ? text : text.substring(0, join);
    String title = join < 0 ? "" : text.substring(join + JOIN.length());
    String path = path(id);
    Optional<Called> known = called(id).or(() -> called(path)).or(() -> called(title));
    if (known.isEmpty()) {
      known = first(u -> !u.whole && (u.mayBe(text) || u.mayBe(id) || u.mayBe(path)));
    }
    Optional<Called> unit = known.or(() -> added(path));
    unit.ifPresent(
        u -> {
          if (!u.whole || join > 0) {
            u.draft.rename(path);
          }
          u.whole = true;
          note(u, text);
          note(u, id);
          note(u, path);
          if (!title.isEmpty()) {
            u.draft.call(title.startsWith("/") ? "" : title);
            note(u, title);
          }
        });
    return unit.map(u -> u.draft);
  }

  private Optional<Draft> ofShortened(String text) {
    String shortened = withoutEndOfDevice(text);
    boolean endOnly = shortened.startsWith(CUT);
    String title = wholeTitle(shortened);
    Optional<Called> unit =
        called(shortened)
            .or(() -> called(title))
            .or(() -> called(path(title)))
            .or(() -> first(u -> u.whole && u.mayBe(shortened)))
            .or(() -> first(u -> !u.whole && !endOnly && u.mayBe(shortened)))
            .or(
                () ->
                    first(
                        u ->
                            !u.whole
                                && u.draft.state() == ThingState.STARTING
                                && u.mayBe(shortened)))
            .or(() -> added(title.startsWith("/") ? path(title) : shown(shortened)));
    unit.ifPresent(
        u -> {
          note(u, shortened);
          note(u, title);
        });
    return unit.map(u -> u.draft);
  }

  /** The description, where the text was shortened before it. */
  private static String wholeTitle(String text) {
    int join = text.indexOf(JOIN, text.indexOf(CUT));
    return join < 0 ? "" : text.substring(join + JOIN.length());
  }

  /** A shortened name of a device as the path that it is the beginning of. */
  private String shown(String text) {
    int cut = text.indexOf(CUT);
    if (!text.startsWith("dev-") || cut < 0) {
      return text;
    }
    String head = text.substring(0, cut);
    int escape = head.lastIndexOf('\\');
    if (escape >= 0 && escape > head.length() - 4) {
      head = head.substring(0, escape);
    }
    return path(head + DEVICE) + text.substring(cut);
  }

  /** A job of a device is shown with a rest of {@code .device/start}, which belongs to no name. */
  private static String withoutEndOfDevice(String text) {
    int cut = text.indexOf(CUT);
    String rest = text.substring(cut + CUT.length());
    boolean end = (DEVICE + "/start").endsWith(rest) || DEVICE.endsWith(rest);
    return text.startsWith("dev-") && end ? text.substring(0, cut + CUT.length()) : text;
  }

  private void note(Called unit, String text) {
    if (!text.isEmpty() && unit.texts.size() < MOST_TEXTS && unit.texts.add(text)) {
      byText.putIfAbsent(text, unit);
    }
  }

  private Optional<Called> called(String text) {
    return Optional.ofNullable(byText.get(text));
  }

  private Optional<Called> first(Predicate<Called> which) {
    if (searches++ > MOST_SEARCHES) {
      return Optional.empty();
    }
    return units.stream().filter(which).findFirst();
  }

  private Optional<Called> added(String name) {
    if (units.size() >= MOST) {
      return Optional.empty();
    }
    Called unit = new Called(name);
    units.add(unit);
    return Optional.of(unit);
  }

  /** Paths for devices and mounts, however they are written; the text itself for the rest. */
  private String path(String text) {
    String path = names.usual(text);
    return text.endsWith(SWAP) ? "swap on " + path : path;
  }
}
