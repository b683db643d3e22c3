package standstill.web;

import java.util.List;
import standstill.intake.Addresses;
import standstill.intake.Limits;

/**
 * How a server is reached and what it bears.
 *
 * @param names by which it is reached besides those of the own machine
 * @param proxies that stand before it and say who a request is from
 * @param limits on what comes in
 */
public record Settings(List<String> names, Addresses proxies, Limits limits) {
  /** A log of the largest size, where a form writes a byte as three, and its frame. */
  private static final long LARGEST_REQUEST = 3L * Server.LARGEST_LOG + (1 << 20);

  public Settings {
    names = List.copyOf(names);
  }

  /** For the own machine alone, with the usual limits. */
  public static Settings usual() {
    return of(List.of(), Addresses.none());
  }

  /** With the usual limits. */
  public static Settings of(List<String> names, Addresses proxies) {
    return new Settings(names, proxies, Limits.usual(LARGEST_REQUEST));
  }
}
