package standstill.store;

import java.util.List;
import standstill.text.Problem;

/** A base has errors and can't be used. */
public final class RefusedBaseException extends Exception {
  private static final long serialVersionUID = 1;

  private final transient List<Problem> errors;

  RefusedBaseException(List<Problem> errors) {
    super(errors.size() == 1 ? "1 error" : errors.size() + " errors");
    this.errors = List.copyOf(errors);
  }

  /** The errors, in the order of their places. */
  public List<Problem> errors() {
    return errors;
  }
}
