package standstill.web;

import java.io.IOException;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Somebody with a browser of their own, without the browser: cookies, pages and their forms. */
final class Maintainer {
  private static final Pattern TOKEN = Pattern.compile("name=\"token\" value=\"([0-9a-f]*)\"");
  private static final Pattern FIELD =
      Pattern.compile(
          "<input type=\"hidden\" name=\"([^\"]+)\" value=\"([^\"]*)\"|<textarea[^>]*"
              + " name=\"(text)\"[^>]*>\\n"
              + "?([^<]*)</textarea>");

  private final String root;
  private final HttpClient client;
  private final String from;

  Maintainer(String root) {
    this(root, "");
  }

  /** Somebody whose requests come through a proxy, which says that they come from that address. */
  Maintainer(String root, String from) {
    this.from = from;
    this.root = root;
    this.client = HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
  }

  HttpResponse<String> get(String path) throws IOException, InterruptedException {
    return client.send(request(path).build(), HttpResponse.BodyHandlers.ofString());
  }

  private HttpRequest.Builder request(String path) {
    HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(root + path));
    return from.isEmpty() ? request : request.header("X-Forwarded-For", from);
  }

  String page(String path) throws IOException, InterruptedException {
    HttpResponse<String> answer = get(path);
    if (answer.statusCode() != 200) {
      throw new AssertionError(path + ": " + answer.statusCode() + "\n" + answer.body());
    }
    return answer.body();
  }

  HttpResponse<String> post(String path, Map<String, String> form)
      throws IOException, InterruptedException {
    StringBuilder body = new StringBuilder();
    form.forEach(
        (key, value) ->
            body.append(body.isEmpty() ? "" : "&")
                .append(URLEncoder.encode(key, StandardCharsets.UTF_8))
                .append('=')
                .append(URLEncoder.encode(value, StandardCharsets.UTF_8)));
    return client.send(
        request(path)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body.toString()))
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }

  /** Sends a form and gives the address that the answer leads to. */
  String sent(String path, Map<String, String> form) throws IOException, InterruptedException {
    HttpResponse<String> answer = post(path, form);
    if (answer.statusCode() != 303) {
      throw new AssertionError(path + ": " + answer.statusCode() + "\n" + answer.body());
    }
    return answer
        .headers()
        .firstValue("Location")
        .orElseThrow()
        .replaceFirst("^https?://[^/]+", "");
  }

  HttpResponse<String> signIn(String name, String password)
      throws IOException, InterruptedException {
    return signIn(name, password, "");
  }

  HttpResponse<String> signIn(String name, String password, String pass)
      throws IOException, InterruptedException {
    String token = token(page("/sign-in"));
    return post(
        "/sign-in",
        Map.of("token", token, "name", name, "password", password, "pass", pass, "to", "/changes"));
  }

  /** The token in a page's forms. */
  static String token(String page) {
    Matcher token = TOKEN.matcher(page);
    String last = "";
    while (token.find()) {
      last = token.group(1);
    }
    return last;
  }

  /** The hidden fields of a page and the text in its editor. */
  static Map<String, String> form(String page) {
    Map<String, String> form = new LinkedHashMap<>();
    Matcher field = FIELD.matcher(page);
    while (field.find()) {
      if (field.group(1) != null) {
        form.put(field.group(1), field.group(2));
      } else {
        form.put(field.group(3), unescaped(field.group(4)));
      }
    }
    return form;
  }

  static String unescaped(String html) {
    return html.replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&quot;", "\"")
        .replace("&#39;", "'")
        .replace("&amp;", "&");
  }
}
