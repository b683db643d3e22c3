package standstill.disguise;

/** Sorts of identifiers, each with its words for a count. */
public enum Sort {
  SECRET("secret", "secrets"),
  OPTION("unknown value of the command line", "unknown values of the command line"),
  HOST("host name", "host names"),
  USER("user name", "user names"),
  EMAIL("e-mail address", "e-mail addresses"),
  URL("address of a file or page", "addresses of files or pages"),
  IP_ADDRESS("IP address", "IP addresses"),
  HARDWARE_ADDRESS("hardware address", "hardware addresses"),
  WIDE_NAME("worldwide name of a disk or adapter", "worldwide names of disks or adapters"),
  SERIAL("serial number", "serial numbers"),
  MACHINE("mark of a machine", "marks of a machine"),
  VOLUME("disk or volume", "disks or volumes"),
  ID("other long identifier", "other long identifiers"),
  NETWORK("network name", "network names"),
  UNIT("unit of its own", "units of their own");

  private final String one;
  private final String many;

  Sort(String one, String many) {
    this.one = one;
    this.many = many;
  }

  /** A count in words, such as "2 host names". */
  public String counted(int count) {
    return count + " " + (count == 1 ? one : many);
  }
}
