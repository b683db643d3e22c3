package standstill.base;

/**
 * How often a sign was seen in labelled boots that its fault did not stop.
 *
 * @param seen boots with the sign
 * @param boots boots looked at
 */
public record Rate(int seen, int boots) {
  public Rate {
    if (seen < 0 || seen > boots) {
      throw new IllegalArgumentException("seen must lie between 0 and boots");
    }
  }
}
