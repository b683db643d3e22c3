package standstill.intake;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.function.BiFunction;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * An answer that says no, and what to do instead.
 *
 * @param status of HTTP (RFC 9110, section 15; 421 section 15.5.20)
 * @param title what is wrong
 * @param advice what to do
 */
record Refusal(int status, String title, String advice) {
  private static final String SECONDS_TO_WAIT = "10";

  /**
   * Sends it and ends the connection: what is left of the request is not waited for.
   *
   * @param page makes a page of title and advice
   */
  void send(
      Request request,
      Response response,
      Callback callback,
      HttpFields headers,
      BiFunction<String, String, String> page) {
    boolean api = request.getHttpURI().getPath().startsWith("/api/");
    String text =
        api
            ? "{\"error\":" + quoted(title) + ",\"advice\":" + quoted(advice) + "}"
            : page.apply(title, advice);
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    response.setStatus(status);
    response.getHeaders().clear();
    response
        .getHeaders()
        .add(headers)
        .put(HttpHeader.CONTENT_TYPE, (api ? "application/json" : "text/html") + ";charset=utf-8")
        .put(HttpHeader.CONTENT_LENGTH, bytes.length)
        .put(HttpHeader.CONNECTION, "close");
    if (status == 503) {
      response.getHeaders().put(HttpHeader.RETRY_AFTER, SECONDS_TO_WAIT);
    }
    response.write(true, ByteBuffer.wrap(bytes), callback);
  }

  /** Our own words as a JSON string; they hold neither quotation marks nor control characters. */
  private static String quoted(String text) {
    return '"' + text + '"';
  }
}
