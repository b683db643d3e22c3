package standstill.base;

/**
 * How often a sign was seen in labelled boots that its fault did not stop.
 *
 * @param seen boots of any other cause, or none, with the sign
 * @param boots such boots that were looked at
 * @param rivalsSeen boots with the sign among those that ended in a stop of its fault for another
 *     reason
 * @param rivals such boots that were looked at
 */
public record Rate(int seen, int boots, int rivalsSeen, int rivals) {
  public Rate {
    if (seen < 0 || seen > boots || rivalsSeen < 0 || rivalsSeen > rivals) {
      throw new IllegalArgumentException("seen must lie between 0 and boots");
    }
  }
}
