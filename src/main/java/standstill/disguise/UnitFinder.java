package standstill.disguise;

import java.util.Objects;
import java.util.Optional;
import standstill.text.Pattern;

/**
 * Units that no distribution ships: their names, their instances, and the descriptions beside them.
 * Units of devices and mounts are paths, whose parts {@link PathNames} knows.
 */
final class UnitFinder implements Finder {
  private static final String DESCRIPTION = " - ";
  private static final Pattern TEMPLATE_OF_DEVICE =
      Pattern.known("^(?:dev|sys|home|mnt|media|run|srv|var|tmp|boot|sysroot|usr|data)-");

  private final Register register;
  private final PathNames paths;

  UnitFinder(Register register, PathNames paths) {
    this.register = register;
    this.paths = paths;
  }

  @Override
  public void find(Claims claims) {
    String text = claims.text();
    if (text.indexOf('.') < 0) {
      return;
    }
    int from = 0;
    while (from < text.length()) {
      Optional<Pattern.Match> match = Units.next(text, from);
      if (match.isEmpty()) {
        return;
      }
      String name = Objects.requireNonNull(match.get().values().get("name"));
      String ending = Objects.requireNonNull(match.get().values().get("ending"));
      int start = match.get().start();
      unit(claims, start, name, ending);
      from = start + name.length() + ending.length() + 1;
    }
  }

  private void unit(Claims claims, int start, String name, String ending) {
    int end = start + name.length();
    switch (ending) {
      case "device", "mount", "automount", "swap" -> paths.unit(claims, start, end);
      default -> {
        int at = name.indexOf('@');
        int baseEnd = at < 0 ? end : start + at;
        if (at >= 0) {
          instance(claims, start + at + 1, end);
        }
        base(claims, start, baseEnd, end + ending.length() + 1);
      }
    }
  }

  private void base(Claims claims, int start, int baseEnd, int end) {
    String text = claims.text();
    String base = text.substring(start, baseEnd);
    if (Units.isKnown(base) || !claims.isFree(start, baseEnd)) {
      return;
    }
    String standIn = register.named("unit", Sort.UNIT, base);
    register.lookAt(
        base, "a unit of one's own, replaced; its own lines may still say what it does");
    claims.take(start, baseEnd, standIn);
    if (text.startsWith(DESCRIPTION, end)) {
      int from = end + DESCRIPTION.length();
      int to = text.length();
      while (to > from && ". \t\r\n".indexOf(text.charAt(to - 1)) >= 0) {
        to--;
      }
      if (to > from && !text.substring(from, to).equals("a unit of one's own")) {
        claims.takeOver(from, to, "a unit of one's own");
      }
    }
  }

  private void instance(Claims claims, int start, int end) {
    if (start >= end) {
      return;
    }
    String instance = claims.text().substring(start, end);
    if (TEMPLATE_OF_DEVICE.foundIn(instance)) {
      paths.unit(claims, start, end);
      return;
    }
    if (Trade.isOfWords(instance)
        || Trade.DEVICES.has(instance)
        || Trade.UNITS.has(instance)
        || Trade.VOLUMES.has(instance)
        || Interfaces.isKernels(instance)
        || instance.length() < 2) {
      return;
    }
    register.names().find(claims);
    if (claims.isFree(start, end) && !StandIns.isMade(instance)) {
      claims.take(start, end, register.named("instance", Sort.UNIT, instance));
    }
  }
}
