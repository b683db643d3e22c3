package standstill.intake;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A set of network addresses: single ones, and blocks such as {@code 192.0.2.0/24} (RFC 4632). */
public final class Addresses {
  private final List<Block> blocks;

  private record Block(byte[] start, int bits) {
    boolean holds(byte[] address) {
      if (address.length != start.length) {
        return false;
      }
      for (int i = 0; i < bits; i++) {
        int mask = 0x80 >> (i % 8);
        if (((address[i / 8] ^ start[i / 8]) & mask) != 0) {
          return false;
        }
      }
      return true;
    }
  }

  private Addresses(List<Block> blocks) {
    this.blocks = List.copyOf(blocks);
  }

  /** No address. */
  public static Addresses none() {
    return new Addresses(List.of());
  }

  /**
   * Reads addresses.
   *
   * @throws IllegalArgumentException when one of the texts is no address; its message is that text
   */
  public static Addresses of(List<String> texts) {
    List<Block> blocks = new ArrayList<>();
    for (String text : texts) {
      int slash = text.indexOf('/');
      InetAddress address =
          literal(slash < 0 ? text : text.substring(0, slash))
              .orElseThrow(() -> new IllegalArgumentException(text));
      int most = address.getAddress().length * 8;
      blocks.add(
          new Block(
              address.getAddress(),
              slash < 0 ? most : bits(text, text.substring(slash + 1), most)));
    }
    return new Addresses(blocks);
  }

  private static int bits(String text, String number, int most) {
    boolean digits = !number.isEmpty() && number.length() <= 3;
    if (!digits || !number.chars().allMatch(c -> c >= '0' && c <= '9')) {
      throw new IllegalArgumentException(text);
    }
    int bits = Integer.parseInt(number);
    if (bits > most) {
      throw new IllegalArgumentException(text);
    }
    return bits;
  }

  boolean hold(InetAddress address) {
    return blocks.stream().anyMatch(block -> block.holds(address.getAddress()));
  }

  /** The address that a text is, in digits or in brackets; no name is looked up. */
  static Optional<InetAddress> literal(String text) {
    String bare =
        text.startsWith("[") && text.endsWith("]") ? text.substring(1, text.length() - 1) : text;
    boolean six = bare.indexOf(':') >= 0;
    boolean four = bare.indexOf('.') > 0;
    boolean plain =
        bare.length() <= 45
            && bare.chars()
                .allMatch(
                    c ->
                        c == '.'
                            || (c >= '0' && c <= '9')
                            || (six && (c == ':' || Character.digit(c, 16) >= 0)));
    // Numbers without all four parts are names to a browser's eye: 127.1 is refused.
    if (!plain || !(six || (four && bare.chars().filter(c -> c == '.').count() == 3))) {
      return Optional.empty();
    }
    try {
      return Optional.of(InetAddress.getByName(bare));
    } catch (UnknownHostException e) {
      return Optional.empty();
    }
  }
}
