package standstill.web;

/** A request for which somebody has to be signed in, and nobody is. */
final class NotSignedIn extends RuntimeException {
  private static final long serialVersionUID = 1;
}
