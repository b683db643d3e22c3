package standstill.rank;

/**
 * How far the causes' signs may decide what the boot ended in. At 1 stop and cause are weighed
 * jointly, at 0 the stop is found from its own signs alone and the causes only share what it has. A
 * stop shows itself plainly; the noise that looks like a cause must not move it.
 */
final class Pull {
  static final String NAME = "pull";

  private final double power;

  Pull(Model model, Corrections corrections) {
    this.power = corrections.on(NAME) ? model.number("pull") : 1;
  }

  /**
   * What a stop weighs.
   *
   * @param own by its own signs
   * @param growth what the mass of its causes grew by when their signs were looked at
   */
  double weight(double own, double growth) {
    return own * Math.pow(growth, power);
  }
}
