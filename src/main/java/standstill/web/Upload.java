package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import standstill.log.Gunzip;
import standstill.log.TooLargeException;

/** The log in a request: the body itself, a file of a form, or the paste box. */
final class Upload {
  private Upload() {}

  /** The log's bytes, expanded when they were compressed. */
  static byte[] read(Context ctx) {
    byte[] bytes = raw(ctx);
    try {
      byte[] expanded = Gunzip.expand(bytes, Server.LARGEST_LOG);
      if (expanded.length > Server.LARGEST_LOG) {
        throw new TooLarge();
      }
      return expanded;
    } catch (TooLargeException e) {
      throw new TooLarge();
    }
  }

  private static byte[] raw(Context ctx) {
    String type = ctx.contentType() == null ? "" : ctx.contentType();
    if (ctx.isMultipartFormData()) {
      UploadedFile file = ctx.uploadedFile("file");
      if (file != null && file.size() > 0) {
        try (InputStream in = file.content()) {
          return in.readAllBytes();
        } catch (IOException e) {
          throw new NotUnderstood("The file did not arrive whole. Send it again.");
        }
      }
    }
    if (ctx.isMultipartFormData() || type.startsWith("application/x-www-form-urlencoded")) {
      String text = ctx.formParam("log");
      return text == null ? new byte[0] : text.getBytes(StandardCharsets.UTF_8);
    }
    return ctx.bodyAsBytes();
  }
}
