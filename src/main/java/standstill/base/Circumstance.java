package standstill.base;

import java.util.List;
import java.util.Optional;
import standstill.text.Position;

/**
 * A respect in which installed systems differ so that their repairs do, such as the boot loader.
 *
 * @param id name
 * @param title for people
 * @param cases what it can be
 * @param where its place in the base
 */
public record Circumstance(String id, String title, List<Case> cases, Position where) {
  public Circumstance {
    cases = List.copyOf(cases);
  }

  /** The case of that name. */
  public Optional<Case> option(String word) {
    return cases.stream().filter(c -> c.id().equals(word)).findFirst();
  }

  /**
   * What a circumstance can be. Its word is unique in the base.
   *
   * @param id the word that steps name it by
   * @param title for people
   * @param circumstance id of the circumstance that it is a case of
   * @param tells lines of a log that show it
   */
  public record Case(String id, String title, String circumstance, List<Example> tells) {
    public Case {
      tells = List.copyOf(tells);
    }
  }
}
