package standstill.account;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Optional;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * What follows from an account's line: a mark by which a change of password is seen, and proofs
 * that nobody can make without that line (HMAC with SHA-256, RFC 2104). They need no store of their
 * own, outlive a restart, and end with the password. The line can't be found from them: it holds
 * 128 random bits that they don't tell.
 */
final class Marks {
  private static final int DEVICE_BYTES = 12;
  private static final SecureRandom RANDOM = new SecureRandom();

  private Marks() {}

  static String of(String hash) {
    return hmac(hash, "mark");
  }

  static String proof(String name, String hash) {
    byte[] bytes = new byte[DEVICE_BYTES];
    RANDOM.nextBytes(bytes);
    String device = HexFormat.of().formatHex(bytes);
    return device + "." + hmac(hash, "device " + name + " " + device);
  }

  static Optional<String> device(String name, String hash, String proof) {
    int dot = proof.indexOf('.');
    if (dot != 2 * DEVICE_BYTES) {
      return Optional.empty();
    }
    String device = proof.substring(0, dot);
    String made = hmac(hash, "device " + name + " " + device);
    return Sessions.same(made, proof.substring(dot + 1)) ? Optional.of(device) : Optional.empty();
  }

  private static String hmac(String key, String text) {
    try {
      Mac mac = Mac.getInstance("HmacSHA256");
      mac.init(new SecretKeySpec(key.getBytes(StandardCharsets.UTF_8), "HmacSHA256"));
      return HexFormat.of().formatHex(mac.doFinal(text.getBytes(StandardCharsets.UTF_8)));
    } catch (GeneralSecurityException e) {
      // Every Java platform is required to have HmacSHA256.
      throw new IllegalStateException(e);
    }
  }
}
