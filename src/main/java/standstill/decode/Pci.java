package standstill.decode;

import java.util.Locale;
import java.util.Optional;
import standstill.text.Pattern;

/** Classes, addresses, and the pairs of vendor and device by which drivers know their devices. */
final class Pci implements Codes {
  private static final String SOURCE =
      "PCI Code and ID Assignment Specification; class list of pci.ids; Linux include/linux/pci_ids.h";
  private static final String ADDRESS_SOURCE =
      "PCI Local Bus Specification; Linux drivers/pci/probe.c";
  private static final Table CLASSES = Table.named("pci-class");
  private static final Pattern CLASS = Pattern.known("\\bclass (?P<code>0x[0-9a-f]{6})\\b");
  private static final Pattern ADDRESS =
      Pattern.known(
          "\\b(?P<code>(?P<domain>[0-9a-f]{4}):(?P<bus>[0-9a-f]{2}):(?P<device>[0-9a-f]{2})\\.(?P<function>[0-9a-f]))\\b");
  private static final Pattern ID =
      Pattern.known("\\[(?P<code>(?P<vendor>[0-9a-f]{4}):(?P<device>[0-9a-f]{4}))\\]");
  private static final Pattern ID_ALONE =
      Pattern.known("^\\[?(?P<code>(?P<vendor>[0-9a-fA-F]{4}):(?P<device>[0-9a-fA-F]{4}))\\]?$");

  @Override
  public void inLine(Findings line) {
    line.each(
        CLASS,
        p ->
            named(p.get("code").substring(2))
                .ifPresent(m -> line.add(p, Kind.PCI_CLASS, m, SOURCE)));
    line.each(ADDRESS, p -> line.add(p, Kind.PCI_ADDRESS, address(p), ADDRESS_SOURCE));
    line.each(ID, p -> line.add(p, Kind.PCI_ID, id(p), SOURCE));
  }

  @Override
  public void alone(Number number, Findings code) {
    if (number.known() && number.digits().length() == 6) {
      named(number.digits().toLowerCase(Locale.ROOT))
          .ifPresent(m -> code.whole(Kind.PCI_CLASS, m, SOURCE));
    }
    code.each(
        CLASS,
        p ->
            named(p.get("code").substring(2))
                .ifPresent(m -> code.add(p, Kind.PCI_CLASS, m, SOURCE)));
    code.each(ADDRESS, p -> code.add(p, Kind.PCI_ADDRESS, address(p), ADDRESS_SOURCE));
    code.each(ID_ALONE, p -> code.add(p, Kind.PCI_ID, id(p), SOURCE));
  }

  /** Two digits of base class, two of class, two of programming interface. */
  private static Optional<String> named(String digits) {
    Optional<Table.Row> interfaceRow = CLASSES.key("0x" + digits);
    String inside = interfaceRow.map(r -> ", " + r.text()).orElse("");
    return CLASSES
        .key("0x" + digits.substring(0, 4))
        .map(r -> r.text() + inside)
        .or(() -> CLASSES.key("0x" + digits.substring(0, 2)).map(Table.Row::text));
  }

  private static String address(Findings.Place place) {
    long device = Bits.hex(place.get("device"));
    long function = Bits.hex(place.get("function"));
    if (device > 0x1f) {
      return "not a valid PCI address: the device is above 1f";
    }
    if (function > 7) {
      return "not a valid PCI address: the function is above 7";
    }
    return "PCI domain "
        + Bits.hex(place.get("domain"))
        + ", bus "
        + Bits.hex(place.get("bus"))
        + ", device "
        + device
        + ", function "
        + function;
  }

  private static String id(Findings.Place place) {
    return "vendor "
        + place.get("vendor").toLowerCase(Locale.ROOT)
        + ", device "
        + place.get("device").toLowerCase(Locale.ROOT)
        + " (hexadecimal identifiers on PCI or USB)";
  }
}
