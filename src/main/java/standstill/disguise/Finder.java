package standstill.disguise;

/** Finds identifiers of one sort in a line, in time linear in the line. */
interface Finder {
  void find(Claims claims);
}
