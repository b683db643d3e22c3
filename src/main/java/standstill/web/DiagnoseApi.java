package standstill.web;

import io.javalin.http.Context;
import standstill.log.BootLog;
import standstill.report.Diagnoser;
import standstill.report.JsonReport;

/** {@code POST /api/diagnose}: a log in, the report as JSON out; nothing is kept. */
final class DiagnoseApi {
  private static final int MOST_CAUSES = 50;

  private final Turns turns;

  DiagnoseApi(Turns turns) {
    this.turns = turns;
  }

  void diagnose(Context ctx) {
    Diagnoser diagnoser = InUse.edition(ctx).diagnoser();
    int boot = number(ctx, "boot", 0);
    int top = Math.max(1, Math.min(MOST_CAUSES, number(ctx, "top", 10)));
    byte[] bytes = Upload.read(ctx);
    String report =
        turns.take(
            Upload.client(ctx),
            bytes.length,
            () -> {
              Upload.stillWanted(ctx);
              BootLog log = diagnoser.read(bytes);
              Upload.stillWanted(ctx);
              if (boot > log.boots().size()) {
                throw new NotUnderstood(
                    "No boot " + boot + " in this log; it has " + log.boots().size() + ".");
              }
              return JsonReport.write(diagnoser.diagnose(log, boot), top);
            });
    ctx.contentType("application/json; charset=utf-8");
    ctx.result(report);
  }

  /** A number from the address, at least 0. */
  static int number(Context ctx, String name, int otherwise) {
    String text = ctx.queryParam(name);
    if (text == null || text.isEmpty()) {
      return otherwise;
    }
    try {
      int number = Integer.parseInt(text);
      if (number >= 0) {
        return number;
      }
    } catch (NumberFormatException e) {
      // Answered below, together with negative numbers.
    }
    throw new NotUnderstood("'" + name + "' is a whole number from 0.");
  }
}
