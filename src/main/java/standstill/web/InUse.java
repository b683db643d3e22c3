package standstill.web;

import io.javalin.http.Context;
import java.util.Objects;
import standstill.store.BaseInUse;
import standstill.store.Edition;

/**
 * What a request uses from its start to its end: the edition that was in use when it came in. The
 * base may be replaced meanwhile; a page made of two editions would have links that lead nowhere.
 */
final class InUse {
  private static final String KEY = "standstill.in-use";

  private InUse() {}

  /** Fixes it for a request. */
  static void begin(Context ctx, BaseInUse inUse) {
    ctx.attribute(KEY, inUse.now());
  }

  static BaseInUse.State state(Context ctx) {
    return Objects.requireNonNull(ctx.attribute(KEY), "a request began without a base");
  }

  static Edition edition(Context ctx) {
    return state(ctx).edition();
  }
}
