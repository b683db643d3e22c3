package standstill.disguise;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Paths in which a part names somebody: homes, media, and volumes under /dev. */
final class PathNames implements Finder {
  private static final Set<String> HOMES = Set.of("home", "users");
  private static final Set<String> MOUNTS =
      Set.of("mnt", "media", "srv", "data", "export", "exports");
  private static final int LONGEST = 300;

  /** A part of a path: where it stands, and its text. */
  private record Part(int start, int end, String text) {}

  private final UserNames users;
  private final VolumeNames volumes;

  PathNames(UserNames users, VolumeNames volumes) {
    this.users = users;
    this.volumes = volumes;
  }

  @Override
  public void find(Claims claims) {
    String text = claims.text();
    int at = text.indexOf('/');
    while (at >= 0) {
      List<Part> parts = new ArrayList<>();
      int begin = at;
      while (begin < text.length() && text.charAt(begin) == '/' && begin - at < LONGEST) {
        int end = begin + 1;
        while (end < text.length() && isPart(text.charAt(end))) {
          end++;
        }
        parts.add(new Part(begin + 1, end, text.substring(begin + 1, end)));
        begin = end;
      }
      parts(claims, parts);
      at = text.indexOf('/', Math.max(begin, at + 1));
    }
  }

  private static boolean isPart(char c) {
    return c > ' ' && "/\"'<>|;,()[]{}:*?`".indexOf(c) < 0;
  }

  /** A unit's name, in which hyphens stand for slashes unless they are escaped. */
  void unit(Claims claims, int start, int end) {
    String text = claims.text();
    List<Part> parts = new ArrayList<>();
    int from = start;
    for (int i = start; i <= end; i++) {
      if (i == end || text.charAt(i) == '-' && !claims.view().isEscaped(i)) {
        parts.add(new Part(from, i, text.substring(from, i)));
        from = i + 1;
      }
    }
    parts(claims, parts);
  }

  private void parts(Claims claims, List<Part> parts) {
    for (int i = 0; i + 1 < parts.size(); i++) {
      String part = parts.get(i).text();
      boolean first = i == 0;
      if (HOMES.contains(part.toLowerCase(java.util.Locale.ROOT))) {
        user(claims, parts.get(i + 1));
      } else if (part.equals("media") && (first || parts.get(i - 1).text().equals("run"))) {
        boolean deeper = i + 2 < parts.size();
        if (deeper) {
          user(claims, parts.get(i + 1));
          label(claims, parts.get(i + 2));
        } else {
          label(claims, parts.get(i + 1));
        }
      } else if (MOUNTS.contains(part)
          && (first || i == 1 && parts.get(0).text().equals("sysroot"))) {
        label(claims, parts.get(i + 1));
      } else if (part.equals("dev") && first) {
        device(claims, parts);
      } else if (part.equals("sysroot") && first && i + 2 < parts.size()) {
        continue;
      } else if (part.equals("mail") || part.equals("crontabs") || part.equals("linger")) {
        user(claims, parts.get(i + 1));
      }
    }
  }

  private void user(Claims claims, Part part) {
    String plain = part.text();
    int tilde = plain.startsWith(".") ? 1 : 0;
    String name = trimmed(plain.substring(tilde));
    int start = part.start() + tilde;
    if (!name.isEmpty() && claims.isFree(start, start + name.length())) {
      claims.take(start, start + name.length(), users.standIn(name));
    }
  }

  private void label(Claims claims, Part part) {
    String name = trimmed(part.text());
    if (!name.isEmpty() && claims.isFree(part.start(), part.start() + name.length())) {
      claims.take(part.start(), part.start() + name.length(), volumes.volume(name));
    }
  }

  private static String trimmed(String name) {
    int end = name.length();
    while (end > 0 && ".!?".indexOf(name.charAt(end - 1)) >= 0) {
      end--;
    }
    return name.substring(0, end);
  }

  /** {@code /dev/group/volume}, {@code /dev/mapper/name}, {@code /dev/md/name}. */
  private void device(Claims claims, List<Part> parts) {
    Part kind = parts.get(1);
    if (kind.text().equals("mapper") && parts.size() > 2) {
      // In a unit's name what follows may hold hyphens of its own.
      Part last = parts.get(parts.size() - 1);
      int start = parts.get(2).start();
      String name = trimmed(claims.text().substring(start, last.end()));
      if (name.indexOf('/') >= 0) {
        name = trimmed(parts.get(2).text());
      }
      if (!name.isEmpty() && claims.isFree(start, start + name.length())) {
        claims.take(start, start + name.length(), volumes.mapped(name));
      }
    } else if (kind.text().equals("md") && parts.size() > 2) {
      label(claims, parts.get(2));
    } else if (kind.text().equals("zvol") && parts.size() > 2) {
      parts.subList(2, parts.size()).forEach(part -> label(claims, part));
    } else if (parts.size() == 3 && !Trade.DEVICES.has(kind.text())) {
      label(claims, kind);
      label(claims, parts.get(2));
    }
  }
}
