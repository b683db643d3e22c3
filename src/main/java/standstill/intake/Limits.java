package standstill.intake;

import java.time.Duration;

/**
 * How much, how slowly and for how long.
 *
 * @param largestBody most bytes of one request's body
 * @param bodyBytes most bytes of bodies and answers held at once; one client has half of it
 * @param window in which the bytes of a body or of an answer are counted
 * @param leastInWindow fewest bytes of a body that have to arrive in a window
 * @param unfinished most bodies of one client that are waited for
 * @param connections most connections
 * @param connectionsOfOne most connections of one client; those of this machine and of trusted
 *     proxies stand for many people and have all
 * @param silence after which a connection is closed
 * @param head longest time from a request's first byte to the end of its header
 * @param answer longest time in which a request is answered
 */
public record Limits(
    long largestBody,
    long bodyBytes,
    Duration window,
    int leastInWindow,
    int unfinished,
    int connections,
    int connectionsOfOne,
    Duration silence,
    Duration head,
    Duration answer) {
  /** What suits a program with this one's memory. */
  public static Limits usual(long largestBody) {
    long memory = Runtime.getRuntime().maxMemory();
    return new Limits(
        largestBody,
        // A body is held about four times while a form is taken apart.
        Math.max(2 * largestBody, memory / 16),
        Duration.ofSeconds(8),
        8 << 10,
        24,
        1_000,
        60,
        Duration.ofSeconds(20),
        Duration.ofSeconds(15),
        Duration.ofSeconds(30));
  }
}
