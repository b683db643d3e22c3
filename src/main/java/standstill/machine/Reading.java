package standstill.machine;

/** How a statement is read from a machine. */
interface Reading {
  /** Whether it holds, and of what. */
  Said read(Machine machine);
}
