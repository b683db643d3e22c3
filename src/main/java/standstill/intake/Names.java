package standstill.intake;

import java.net.InetAddress;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * By which names browsers reach this server, and from whose pages they may send something.
 *
 * <p>A page can give its own name this machine's address; its visitor's browser then takes this
 * server for that page. So a name counts only when it is one that was told to the server. Addresses
 * in digits can't be given away like that: they count when the connection came in over them.
 */
public final class Names {
  private final Set<String> names = new HashSet<>();

  /** The usual names of the own machine, and these. */
  public Names(List<String> more) {
    names.add("localhost");
    more.forEach(name -> names.add(name.toLowerCase(Locale.ROOT)));
  }

  /** Whether a text can be a name: letters, digits, hyphens and dots (RFC 1123, section 2.1). */
  public static boolean isName(String text) {
    return !text.isEmpty()
        && text.length() <= 253
        && text.chars()
            .allMatch(
                c ->
                    c == '.'
                        || c == '-'
                        || (c >= '0' && c <= '9')
                        || (c >= 'a' && c <= 'z')
                        || (c >= 'A' && c <= 'Z'));
  }

  /**
   * A host and port as the Host header has them (RFC 9110, section 7.2).
   *
   * @param port as a text; empty for the usual one
   */
  record Authority(String host, String port) {
    static Optional<Authority> of(@Nullable String text) {
      if (text == null || text.isEmpty() || text.length() > 300) {
        return Optional.empty();
      }
      int colon = text.lastIndexOf(':');
      boolean hasPort = colon > text.lastIndexOf(']') && colon >= 0;
      String host = (hasPort ? text.substring(0, colon) : text).toLowerCase(Locale.ROOT);
      String port = hasPort ? text.substring(colon + 1) : "";
      boolean clean =
          !host.isEmpty()
              && (host.startsWith("[") || host.indexOf(':') < 0)
              && port.chars().allMatch(c -> c >= '0' && c <= '9');
      return clean ? Optional.of(new Authority(bare(host), port)) : Optional.empty();
    }

    private static String bare(String host) {
      String dotless = host.endsWith(".") ? host.substring(0, host.length() - 1) : host;
      return Addresses.literal(dotless).map(InetAddress::getHostAddress).orElse(dotless);
    }
  }

  /** Whether a request's Host is one of ours; {@code local} is the address it came in over. */
  boolean isOurs(@Nullable String host, @Nullable InetAddress local) {
    return Authority.of(host).filter(a -> isOurName(a.host(), local)).isPresent();
  }

  private boolean isOurName(String host, @Nullable InetAddress local) {
    if (names.contains(host)) {
      return true;
    }
    Optional<InetAddress> address = Addresses.literal(host);
    return address
        .filter(a -> a.isLoopbackAddress() || (local != null && sameAddress(a, local)))
        .isPresent();
  }

  private static boolean sameAddress(InetAddress one, InetAddress other) {
    return Arrays.equals(one.getAddress(), other.getAddress());
  }

  /**
   * Whether a page of ours sent a request, or none did.
   *
   * @param origin the Origin header (RFC 6454, section 7), which browsers send with each form
   * @param site the Sec-Fetch-Site header (W3C, Fetch Metadata Request Headers)
   * @param host the Host header
   * @param proxied whether a trusted proxy passed it on, whose own Host header may be another
   */
  boolean isOwnPage(
      @Nullable String origin, @Nullable String site, @Nullable String host, boolean proxied) {
    if (site != null && !site.equals("same-origin") && !site.equals("none")) {
      return false;
    }
    if (origin == null) {
      return true;
    }
    if (origin.equals("null")) {
      // Privacy settings hide the origin of a form; the browser's own word for it still stands.
      return "same-origin".equals(site);
    }
    int scheme = origin.indexOf("://");
    if (scheme < 0) {
      return false;
    }
    String usual = origin.startsWith("https:") ? "443" : "80";
    Optional<Authority> from = Authority.of(origin.substring(scheme + 3));
    Optional<Authority> to = Authority.of(host);
    if (from.isEmpty() || to.isEmpty()) {
      return false;
    }
    String port = from.get().port().isEmpty() ? usual : from.get().port();
    // Behind TLS the Host header has no port and this server can't see which scheme was used.
    Set<String> ports = to.get().port().isEmpty() ? Set.of("80", "443") : Set.of(to.get().port());
    return (from.get().host().equals(to.get().host()) && ports.contains(port))
        || (proxied && names.contains(from.get().host()) && !from.get().host().equals("localhost"));
  }
}
