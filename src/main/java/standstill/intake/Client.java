package standstill.intake;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.SocketAddress;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.jetty.server.Request;
import org.jspecify.annotations.Nullable;

/**
 * Who a request is from, as far as limits go.
 *
 * @param key the address; of IPv6 the first 64 bits, which one household or machine has (RFC 6177)
 * @param proxied whether a trusted proxy passed the request on
 */
record Client(String key, boolean proxied) {
  private static final int LONGEST_HEADER = 2_000;

  static Client of(Request request, Addresses proxies) {
    Optional<InetAddress> peer = address(request.getConnectionMetaData().getRemoteSocketAddress());
    if (peer.isEmpty()) {
      return new Client("unknown", false);
    }
    if (!proxies.hold(peer.get())) {
      return new Client(key(peer.get()), false);
    }
    List<String> way = request.getHeaders().getValuesList("X-Forwarded-For");
    String all = String.join(",", way);
    String[] hops = all.length() > LONGEST_HEADER ? new String[0] : all.split(",", -1);
    // From the right: what stands left of the first address that is no proxy of ours was written
    // by whoever sent the request.
    for (int i = hops.length - 1; i >= 0; i--) {
      Optional<InetAddress> hop = Addresses.literal(hops[i].strip());
      if (hop.isEmpty()) {
        break;
      }
      if (!proxies.hold(hop.get())) {
        return new Client(key(hop.get()), true);
      }
    }
    return new Client(key(peer.get()), true);
  }

  /** Whether an address may stand for many people: this machine, or a proxy. */
  static boolean isShared(InetAddress address, Addresses proxies) {
    return address.isLoopbackAddress() || proxies.hold(address);
  }

  static Optional<InetAddress> address(@Nullable SocketAddress address) {
    return address instanceof InetSocketAddress inet
        ? Optional.ofNullable(inet.getAddress())
        : Optional.empty();
  }

  static String key(InetAddress address) {
    byte[] bytes = address.getAddress();
    if (bytes.length == 4) {
      return address.getHostAddress();
    }
    Arrays.fill(bytes, 8, 16, (byte) 0);
    StringBuilder key = new StringBuilder();
    for (int i = 0; i < 8; i += 2) {
      key.append(Integer.toHexString(((bytes[i] & 0xff) << 8) | (bytes[i + 1] & 0xff))).append(':');
    }
    return key.append(":/64").toString();
  }
}
