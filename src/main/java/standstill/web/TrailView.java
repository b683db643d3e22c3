package standstill.web;

import java.util.List;
import standstill.base.Source;
import standstill.base.Trail;

/** A false trail, ready for its template. */
public record TrailView(
    String id,
    String title,
    String why,
    String mattersWhen,
    List<String> lines,
    List<String> sources) {

  static TrailView of(Trail trail) {
    return new TrailView(
        trail.id(),
        trail.title(),
        trail.why(),
        trail.mattersWhen(),
        trail.signs().stream().flatMap(sign -> sign.seen().stream()).toList(),
        trail.sources().stream().map(Source::toString).toList());
  }
}
