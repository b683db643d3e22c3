package standstill.disguise;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import standstill.text.Pattern;

/** Addresses with a scheme (RFC 3986), e-mail addresses (RFC 5322), and dotted names of hosts. */
final class UrlFinder implements Finder {
  private static final String HOST = "[\\pL\\pN][\\pL\\pN.-]*";
  private static final Pattern URL =
      Pattern.known(
          "(?<scheme>[A-Za-z][A-Za-z0-9+.-]{1,15}:(?://|\\\\/\\\\/))"
              + "(?<login>[^\\s/@\"'<>]+@)?"
              + "(?<host>\\[[0-9A-Fa-f:.%]{2,}\\]|"
              + HOST
              + ")?(?<port>:\\d{1,5})?(?<path>(?:/|\\\\/|\\?)[^\\s\"'<>,;)\\]]*)?");
  private static final Pattern EMAIL =
      Pattern.known(
          "(?<local>[\\pL\\pN][\\pL\\pN._%+-]*)(?<at>@|%40| ?\\(at\\) ?| ?\\[at\\] ?)(?<host>"
              + HOST
              + "\\.[\\pL]{2,24})");
  private static final Pattern DOTTED =
      Pattern.known("(?<host>[\\pL\\pN][\\pL\\pN_-]*(?:\\.[\\pL\\pN][\\pL\\pN_-]*){1,8})");

  private final Register register;
  private final HostNames hosts;
  private final UserNames users;

  UrlFinder(Register register, HostNames hosts, UserNames users) {
    this.register = register;
    this.hosts = hosts;
    this.users = users;
  }

  @Override
  public void find(Claims claims) {
    String text = claims.text();
    if (text.contains("://") || text.contains(":\\/\\/")) {
      urls(claims, text);
    }
    if (text.indexOf('@') >= 0
        || text.contains("%40")
        || text.contains("(at)")
        || text.contains("[at]")) {
      emails(claims, text);
    }
    if (text.indexOf('.') >= 0) {
      names(claims, text);
    }
  }

  private void urls(Claims claims, String text) {
    int from = 0;
    while (from < text.length()) {
      Optional<Pattern.Match> found = URL.find(text, from);
      if (found.isEmpty()) {
        return;
      }
      Pattern.Match match = found.get();
      String login = match.values().getOrDefault("login", "");
      String host = match.values().getOrDefault("host", "");
      String path = match.values().getOrDefault("path", "");
      String scheme = match.values().getOrDefault("scheme", "").toLowerCase(Locale.ROOT);
      int at = match.start() + scheme.length();
      if (!login.isEmpty()) {
        String name = login.substring(0, login.length() - 1);
        claims.takeOver(
            at, at + name.length(), register.standIns().name("secret", Sort.SECRET, name));
        at += login.length();
      }
      boolean isPublic = Trade.isPublic(host);
      if (!host.isEmpty() && !host.startsWith("[") && Hex.hasLetter(host)) {
        claims.take(at, at + host.length(), hosts.byLook(trimmed(host)));
      }
      boolean local = scheme.startsWith("file") || scheme.startsWith("unix") || host.isEmpty();
      int end = match.end();
      if (path.length() > 1
          && !(local && path.indexOf('?') < 0)
          && !(isPublic && login.isEmpty())) {
        int start = end - path.length();
        String slash = path.startsWith("\\/") ? "\\/" : path.substring(0, 1);
        String rest = trimmed(path.substring(slash.length()));
        if (!rest.isEmpty() && !StandIns.isMade(rest)) {
          claims.take(
              start + slash.length(),
              start + slash.length() + rest.length(),
              register.standIns().name("path", Sort.URL, rest));
        }
      }
      from = Math.max(end, match.start() + 1);
    }
  }

  private void emails(Claims claims, String text) {
    int from = 0;
    while (from < text.length()) {
      Optional<Pattern.Match> found = EMAIL.find(text, from);
      if (found.isEmpty()) {
        return;
      }
      Pattern.Match match = found.get();
      String local = Objects.requireNonNull(match.values().get("local"));
      String host = trimmed(Objects.requireNonNull(match.values().get("host")));
      from = match.end();
      boolean builders = Trade.ACCOUNTS.has(local) || Trade.isPublic(host);
      if (Units.hasEnding(host)
          || Trade.UNITS.has(local)
          || builders
          || host.equals("example.org")) {
        continue;
      }
      int end = match.end() - (match.values().get("host").length() - host.length());
      claims.take(match.start(), end, users.email(local + "@" + host));
      register
          .names()
          .learn(local, register.standIns().name("user", Sort.EMAIL, local + "@" + host));
    }
  }

  private void names(Claims claims, String text) {
    int from = 0;
    while (from < text.length()) {
      Optional<Pattern.Match> found = DOTTED.find(text, from);
      if (found.isEmpty()) {
        return;
      }
      Pattern.Match match = found.get();
      String name = Objects.requireNonNull(match.values().get("host"));
      from = match.end();
      String last = name.substring(name.lastIndexOf('.') + 1);
      boolean within =
          match.start() > 0
              && "_.-@\\$".indexOf(text.charAt(match.start() - 1)) >= 0
              && text.charAt(match.start() - 1) != '@';
      boolean file =
          match.start() > 0
              && text.charAt(match.start() - 1) == '/'
              && !isShare(text, match.start());
      if (!Trade.isHostsEnd(last) || within || file || Trade.isOfWords(name)) {
        continue;
      }
      String standIn = hosts.byLook(name);
      if (!standIn.equals(name)) {
        claims.take(match.start(), match.end(), standIn);
      }
    }
  }

  /** Whether two slashes stand before a name, as before the server of a share. */
  private static boolean isShare(String text, int start) {
    return start > 1 && text.charAt(start - 2) == '/';
  }

  private static String trimmed(String text) {
    int end = text.length();
    while (end > 0 && ".,:;!?-\\".indexOf(text.charAt(end - 1)) >= 0) {
      end--;
    }
    return text.substring(0, end);
  }
}
