package standstill.web;

/** A request holds a log that is larger than the server takes. */
final class TooLarge extends RuntimeException {}
