package standstill.disguise;

/** Names of machines, with and without their domains. */
final class HostNames {
  private final Register register;

  HostNames(Register register) {
    this.register = register;
  }

  /** The stand-in of a name; the name itself when it names no machine. */
  String standIn(String name) {
    return standIn(name, true);
  }

  /**
   * The stand-in of a name that has a domain, by its look alone; its first label is not learnt,
   * since it is mostly one that many servers have.
   */
  String byLook(String name) {
    return standIn(name, false);
  }

  private String standIn(String name, boolean marked) {
    if (name.length() < 2
        || Trade.HOSTS.has(name)
        || Trade.isPublic(name)
        || Units.hasEnding(name)
        || isReverseZone(name)
        || StandIns.isMade(beforeDot(name))
        || name.chars().noneMatch(Character::isLetter)) {
      return name;
    }
    int dot = name.indexOf('.');
    if (dot <= 0) {
      String standIn = register.standIns().name("host", Sort.HOST, name);
      register.learn("host name", name, standIn);
      return standIn;
    }
    String first = name.substring(0, dot);
    String domain = name.substring(dot + 1);
    boolean own =
        register.names().knows(first)
            || marked && !Trade.isOfWords(first) && !Trade.HOSTS.has(first);
    String host = own ? standIn(first) : register.standIns().name("host", Sort.HOST, name);
    String standIn = host + "." + domain(domain);
    register.names().learn(name, standIn);
    return standIn;
  }

  /** The stand-in of a domain; an ending that many home networks have stays. */
  String domain(String domain) {
    int dot = domain.lastIndexOf('.');
    if (dot < 0 && Trade.isHostsEnd(domain)
        || Trade.isPublic(domain)
        || domain.isEmpty()
        || !Hex.hasLetter(domain)
        || StandIns.isMade(beforeDot(domain))) {
      return domain;
    }
    register
        .names()
        .learn(domain, register.standIns().name("network", Sort.NETWORK, domain) + ".example");
    return register.standIns().name("network", Sort.NETWORK, domain) + ".example";
  }

  /** The zone of a network rather than of an address (RFC 6303). */
  private static boolean isReverseZone(String name) {
    return name.endsWith("in-addr.arpa") || name.endsWith("ip6.arpa");
  }

  private static String beforeDot(String name) {
    int dot = name.indexOf('.');
    return dot < 0 ? name : name.substring(0, dot);
  }
}
