package standstill.decode;

import java.util.Locale;
import java.util.Map;
import standstill.text.Pattern;

/**
 * Error numbers, speeds and completion codes on USB. The error numbers are those of Linux, but on
 * this bus they say something more exact.
 */
final class Usb implements Codes {
  private static final String SOURCE = "Linux Documentation/driver-api/usb/error-codes.rst";
  private static final String SPEEDS =
      "Linux drivers/usb/core/hub.c; USB 2.0 and USB 3 specifications (rates)";
  private static final String COMPLETION = "Linux drivers/usb/host/xhci.h; xHCI 1.2 table 6-90";
  private static final Table CODES = Table.named("xhci-completion");
  private static final Map<Integer, String> ERRORS =
      Map.of(
          71, "no answer or a garbled one: signal, cable, port or power",
          84, "the checksum of an answer was wrong: signal or cable",
          62, "no answer within the time that the bus allows",
          110, "no answer before the request timed out",
          32, "the device refused the request (stall)",
          19, "the device is gone",
          75, "the device sent more than was asked for (babble)",
          121, "the device sent less than was asked for",
          108, "the device or its controller was shut down");
  private static final Pattern BUS =
      Pattern.known(
          "\\b(?:usb \\d|usb\\d|hub \\d|xhci|ehci|ohci|uhci|usbhid|usb-storage|device descriptor|device not accepting|USB)");
  private static final Pattern ERROR =
      Pattern.known("\\b(?:error|err|status|ret)(?: =|:|=)? ?\\(?(?P<code>-\\d{1,3})\\b");
  private static final Pattern SPEED =
      Pattern.known(
          "\\b(?P<code>(?:low|full|high)-speed|SuperSpeed(?: Plus)?(?: Gen ?\\dx?\\d?)?)(?: USB|\\b)");
  private static final Pattern CODE =
      Pattern.known("(?i)comp(?:letion)?[_ ]code:? (?P<code>\\d{1,3})\\b");

  @Override
  public void inLine(Findings line) {
    line.each(
        CODE,
        p ->
            CODES
                .number(Long.parseLong(p.get("code")))
                .ifPresent(
                    r ->
                        line.add(p, Kind.XHCI_COMPLETION, r.name() + ": " + r.text(), COMPLETION)));
    if (!BUS.foundIn(line.text())) {
      return;
    }
    line.each(SPEED, p -> line.add(p, Kind.USB_SPEED, speed(p.get("code")), SPEEDS));
    line.each(
        ERROR,
        p -> {
          int number = Integer.parseInt(p.get("code").substring(1));
          String said = ERRORS.get(number);
          if (said != null) {
            line.add(p, Kind.USB_ERROR, Errno.name(number) + " (" + number + "): " + said, SOURCE);
          }
        });
  }

  @Override
  public void alone(Number number, Findings code) {
    if (number.decimal()) {
      long value = number.value();
      String said = value < 0 && value > -200 ? ERRORS.get((int) -value) : null;
      if (said != null) {
        code.whole(
            Kind.USB_ERROR, "on USB, " + Errno.name(-value) + " (" + -value + "): " + said, SOURCE);
      }
      CODES
          .number(value)
          .ifPresent(r -> code.whole(Kind.XHCI_COMPLETION, r.name() + ": " + r.text(), COMPLETION));
    }
    code.each(SPEED, p -> code.add(p, Kind.USB_SPEED, speed(p.get("code")), SPEEDS));
    code.each(
        CODE,
        p ->
            CODES
                .number(Long.parseLong(p.get("code")))
                .ifPresent(
                    r ->
                        code.add(p, Kind.XHCI_COMPLETION, r.name() + ": " + r.text(), COMPLETION)));
  }

  private static String speed(String words) {
    return switch (words.toLowerCase(Locale.ROOT)) {
      case "low-speed" -> "USB 1.x, 1.5 Mbit/s";
      case "full-speed" -> "USB 1.x, 12 Mbit/s";
      case "high-speed" -> "USB 2.0, 480 Mbit/s";
      case "superspeed" -> "USB 3, 5 Gbit/s";
      case "superspeed plus gen 2x2" -> "USB 3.2, 20 Gbit/s on two lanes";
      case "superspeed plus gen 1x2" -> "USB 3.2, 10 Gbit/s on two lanes";
      default -> words.contains("Plus") ? "USB 3.1 and later, 10 Gbit/s" : "USB 3, 5 Gbit/s";
    };
  }
}
