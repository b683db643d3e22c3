package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import standstill.intake.Intake;
import standstill.log.Gunzip;
import standstill.log.TooLargeException;

/** The log in a request: the body itself, a file of a form, or the paste box. */
final class Upload {
  /** Most lines that are read. */
  static final int MOST_LINES = 1_000_000;

  /**
   * How many times its size a compressed log may expand to. Boot logs come to 5 to 20 times, and
   * one that repeats a single line to about 200; the most that the format can do is 1,032.
   */
  private static final int MOST_EXPANSION = 250;

  private static final String FIELD = "log=";

  /** Up to this size nobody counts how often. */
  private static final int SMALL = 1 << 20;

  private Upload() {}

  /** Who sends it, for shares and limits. */
  static String client(Context ctx) {
    String client = ctx.attribute(Intake.CLIENT_KEY);
    return client == null ? ctx.ip() : client;
  }

  /** Ends the work on a request that was answered already, because it took too long. */
  static void stillWanted(Context ctx) {
    if (ctx.attribute(Intake.LATE) != null) {
      throw new Overloaded();
    }
  }

  /** The log's bytes, expanded when they were compressed. */
  static byte[] read(Context ctx) {
    return expand(raw(ctx));
  }

  static byte[] expand(byte[] bytes) {
    boolean compressed = Gunzip.isCompressed(bytes);
    long byRatio =
        compressed ? Math.max(SMALL, (long) MOST_EXPANSION * bytes.length) : Long.MAX_VALUE;
    byte[] expanded;
    try {
      expanded = Gunzip.expand(bytes, Math.min(Server.LARGEST_LOG, byRatio));
    } catch (TooLargeException e) {
      if (byRatio < Server.LARGEST_LOG) {
        throw new NotUnderstood(
            "The file expands to more than "
                + MOST_EXPANSION
                + " times its size, as no boot log does. Expand it and send the text.");
      }
      throw new TooLarge();
    }
    int lines = 0;
    for (byte b : expanded) {
      lines += b == '\n' ? 1 : 0;
    }
    if (lines > MOST_LINES) {
      throw new TooLarge();
    }
    return expanded;
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
      return text(ctx.formParam("log"));
    }
    return type.startsWith("application/x-www-form-urlencoded") && isForm(ctx)
        ? text(ctx.formParam("log"))
        : ctx.bodyAsBytes();
  }

  /**
   * Whether what is called a form is one with a log in it. Programs such as curl call any body a
   * form unless they are told otherwise. A log that is sent as it is doesn't begin with the field's
   * name, and has blanks or line ends, which a form writes otherwise.
   */
  private static boolean isForm(Context ctx) {
    byte[] body = ctx.bodyAsBytes();
    for (int i = 0; i < body.length; i++) {
      if ((i == 0 || body[i - 1] == '&') && begins(body, i)) {
        return true;
      }
      if (body[i] <= ' ') {
        return false;
      }
    }
    return body.length == 0;
  }

  private static boolean begins(byte[] body, int at) {
    for (int i = 0; i < FIELD.length(); i++) {
      if (at + i >= body.length || body[at + i] != FIELD.charAt(i)) {
        return false;
      }
    }
    return true;
  }

  private static byte[] text(@Nullable String text) {
    return text == null ? new byte[0] : text.getBytes(StandardCharsets.UTF_8);
  }
}
