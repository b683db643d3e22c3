package standstill.intake;

import java.util.Set;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** Lets in what came under one of the server's names, and writes only from its own pages. */
final class Door extends Handler.Wrapper {
  private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");

  private final Intake intake;

  Door(Intake intake) {
    this.intake = intake;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) throws Exception {
    Client client = Client.of(request, intake.proxies());
    request.setAttribute(Intake.CLIENT_KEY, client.key());
    String host = request.getHeaders().get(HttpHeader.HOST);
    boolean ours =
        intake
            .names()
            .isOurs(
                host,
                Client.address(request.getConnectionMetaData().getLocalSocketAddress())
                    .orElse(null));
    if (!ours) {
      intake.refuse(
          request,
          response,
          callback,
          new Refusal(
              421,
              "Not under this name",
              "This server does not answer to the name in the address. Use the address that it"
                  + " printed when it started, or start it with --name NAME."));
      return true;
    }
    boolean own =
        READING.contains(request.getMethod())
            || intake
                .names()
                .isOwnPage(
                    request.getHeaders().get(HttpHeader.ORIGIN),
                    request.getHeaders().get("Sec-Fetch-Site"),
                    host,
                    client.proxied());
    if (!own) {
      intake.refuse(
          request,
          response,
          callback,
          new Refusal(
              403,
              "Not from another page",
              "This was sent by a page of another server. Open this server's own page and send it"
                  + " from there."));
      return true;
    }
    return super.handle(request, response, callback);
  }
}
