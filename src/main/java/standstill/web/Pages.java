package standstill.web;

import io.javalin.http.Context;
import io.pebbletemplates.pebble.PebbleEngine;
import io.pebbletemplates.pebble.loader.ClasspathLoader;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/**
 * Renders templates. They are strict: a name that is not there is an error, and everything is
 * escaped.
 */
final class Pages {
  private final PebbleEngine engine;
  private final boolean editing;

  /** Templates; those that lead to the pages for editing do so only where these exist. */
  Pages(boolean editing) {
    this.editing = editing;
    ClasspathLoader loader = new ClasspathLoader();
    loader.setPrefix("templates");
    loader.setSuffix(".html");
    engine =
        new PebbleEngine.Builder()
            .loader(loader)
            .strictVariables(true)
            .autoEscaping(true)
            .defaultLocale(Locale.ROOT)
            .build();
  }

  /** Answers with a page. */
  void show(Context ctx, String template, Map<String, Object> values) {
    Map<String, Object> all = new HashMap<>(values);
    all.put("notice", BaseView.Notice.of(InUse.state(ctx)));
    ctx.html(render(template, all));
  }

  /** A page that says something, made without looking at the base. */
  String message(String title, String text) {
    return render("message", Map.of("title", title, "text", text, "notice", BaseView.Notice.NONE));
  }

  /** A page as text. */
  String render(String template, Map<String, Object> values) {
    Map<String, Object> all = new HashMap<>(values);
    all.put("editing", editing);
    all.putIfAbsent("me", "");
    all.putIfAbsent("token", "");
    StringWriter out = new StringWriter();
    try {
      engine.getTemplate(template).evaluate(out, all, Locale.ROOT);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }
}
