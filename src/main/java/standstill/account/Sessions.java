package standstill.account;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Who is signed in: in memory only, bounded in number and time. What is kept is the digest of a
 * session's token, not the token. Thread-safe.
 */
public final class Sessions {
  private static final int TOKEN_BYTES = 32;
  private static final int MOST = 200;
  private static final int MOST_PER_NAME = 8;
  private static final long LONGEST_IDLE = Duration.ofHours(2).toNanos();
  private static final long LONGEST = Duration.ofHours(12).toNanos();

  private final LongSupplier nanos;
  private final SecureRandom random = new SecureRandom();
  private final Map<String, Kept> kept = new LinkedHashMap<>();

  private record Kept(Session session, long began, long used) {}

  /**
   * Somebody signed in.
   *
   * @param name of the account
   * @param mark of the account's password at that time; a session ends when it is another
   * @param formToken stands in each form of this session, so that no other page can post one
   */
  public record Session(String name, String mark, String formToken) {
    /** Whether a form carries this session's token; takes the same time for any wrong one. */
    public boolean owns(String token) {
      return same(formToken, token);
    }
  }

  /**
   * Nobody is signed in yet.
   *
   * @param nanos a clock that nobody sets, in nanoseconds
   */
  public Sessions(LongSupplier nanos) {
    this.nanos = nanos;
  }

  /** A token that can't be guessed: 256 random bits as hexadecimal digits. */
  public String token() {
    byte[] bytes = new byte[TOKEN_BYTES];
    random.nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  /** Whether two tokens are the same; takes the same time for any wrong one. */
  public static boolean same(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Begins a session and gives its token.
   *
   * @param mark of the account's password, as {@link Accounts#enter} gives it
   */
  public synchronized String begin(String name, String mark) {
    throwOut();
    long own = kept.values().stream().filter(k -> k.session().name().equals(name)).count();
    if (own >= MOST_PER_NAME) {
      kept.entrySet().stream()
          .filter(e -> e.getValue().session().name().equals(name))
          .map(Map.Entry::getKey)
          .findFirst()
          .ifPresent(kept::remove);
    }
    if (kept.size() >= MOST) {
      kept.remove(kept.keySet().iterator().next());
    }
    String token = token();
    long now = nanos.getAsLong();
    kept.put(digest(token), new Kept(new Session(name, mark, token()), now, now));
    return token;
  }

  /** The session of a token, which is used by this; empty when there is none, or no longer. */
  public synchronized Optional<Session> find(String token) {
    throwOut();
    String key = digest(token);
    Kept found = kept.get(key);
    if (found == null) {
      return Optional.empty();
    }
    kept.put(key, new Kept(found.session(), found.began(), nanos.getAsLong()));
    return Optional.of(found.session());
  }

  /** Ends a session. */
  public synchronized void end(String token) {
    kept.remove(digest(token));
  }

  private void throwOut() {
    long now = nanos.getAsLong();
    kept.values().removeIf(k -> now - k.began() >= LONGEST || now - k.used() >= LONGEST_IDLE);
  }

  private static String digest(String token) {
    try {
      return HexFormat.of()
          .formatHex(
              MessageDigest.getInstance("SHA-256").digest(token.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      // Every Java platform is required to have SHA-256.
      throw new IllegalStateException(e);
    }
  }
}
