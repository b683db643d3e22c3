package standstill.disguise;

import standstill.text.Pattern;

/** Names of network interfaces. */
final class Interfaces {
  private static final Pattern KERNELS =
      Pattern.known(
          "^(?:eth|wlan|wwan|lo|usb|ib|sit|tun|tap|ppp|bond|team|br|dummy|ip6tnl|gre|gretap|erspan|vlan|veth|virbr|docker|lxcbr|lxdbr|wg|can|hci|end|ens|eno|enp|enP|wls|wlp|wlo|wlP|wwp|wwo|em|p)[0-9a-fsupnPd.]*$"
              + "|^(?:en|wl|ww|ib|sl)x[0-9a-f]{12}$");

  private Interfaces() {}

  /** Whether the kernel or udev gives such names (systemd.net-naming-scheme(7)). */
  static boolean isKernels(String name) {
    return KERNELS.foundIn(name);
  }
}
