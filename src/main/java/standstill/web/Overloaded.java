package standstill.web;

/** There is too much to do at present; later there may not be. */
final class Overloaded extends RuntimeException {}
