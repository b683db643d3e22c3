package standstill.web;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import standstill.base.Base;
import standstill.base.Fault;
import standstill.base.Given;
import standstill.disguise.Disguise;
import standstill.guide.Course;
import standstill.guide.Guidance;
import standstill.guide.Guide;
import standstill.guide.Limits;
import standstill.rank.Ranking;
import standstill.report.Report;
import standstill.report.WhatIsKnown;
import standstill.store.Edition;
import standstill.store.Pastes;

/**
 * Where a walk takes place: beside a pasted log, or without one.
 *
 * @param path address of the walk without its question mark
 * @param address of the log; empty without one
 * @param report of the log
 * @param boot number that the address asks for; 0 for the last
 * @param start ranking before anything was said
 * @param said what the person says of their system
 */
record WalkPlace(
    String path,
    String address,
    Optional<Report> report,
    int boot,
    Ranking start,
    Set<String> said) {

  /** The place that a request asks for. */
  static WalkPlace of(Context ctx, Edition edition, Pastes pastes) {
    Base base = edition.base();
    Set<String> said = SystemView.said(ctx, base);
    if (!ctx.pathParamMap().containsKey("address")) {
      return new WalkPlace("/walk", "", Optional.empty(), 0, edition.guide().withoutLog(), said);
    }
    String address = ctx.pathParam("address");
    Report report = pastes.get(address, edition).orElseThrow(NotFoundResponse::new);
    int boot = DiagnoseApi.number(ctx, "boot", 0);
    if (boot > report.log().boots().size()) {
      throw new NotFoundResponse();
    }
    if (boot > 0) {
      report = edition.diagnoser().diagnose(report.log(), boot);
    }
    if (report.diagnosis().isEmpty()) {
      throw new NotUnderstood(
          "This text is not a boot log, so there is nothing to start a walk from. Start from what you see"
              + " instead.");
    }
    return new WalkPlace(
        "/log/" + address + "/walk",
        address,
        Optional.of(report.saying(base, said)),
        boot,
        report.diagnosis().get().ranking(),
        said);
  }

  /** What is known for the repairs of a fault. */
  Given given(Base base, Fault fault) {
    return report
        .flatMap(Report::diagnosis)
        .map(d -> d.given(fault))
        .orElseGet(() -> Given.NOTHING.saying(base, said));
  }

  boolean log() {
    return report.isPresent();
  }

  Guidance guidance(Guide guide, Course course) {
    return guide.guide(start, course.observations(), limits(guide.base(), course));
  }

  /** What is not to be proposed, with what the log and the reader say of the system. */
  Limits limits(Base base, Course course) {
    return course.limits(log()).knowing(WhatIsKnown.of(base, report, said));
  }

  /** The address of a walk. */
  String to(Course course) {
    return path + WalkAddress.query(course, boot) + SystemView.query(said);
  }

  /** The address of another view of a walk. */
  String to(String view, Course course) {
    return path + "/" + view + WalkAddress.query(course, boot) + SystemView.query(said);
  }

  Disguise disguise() {
    return report.map(r -> Disguise.of(r.log())).orElseGet(() -> Disguise.of(List.of()));
  }
}
