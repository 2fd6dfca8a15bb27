// @ts-check
// What comes after a check, brought when the first one is made: the hint ladder, the course of the attempt beside the trace, the
// spread of windows, the rubric.

import { h, refill } from "../dom.js";
import { bringTexts, t } from "../text.js";
import { Trail } from "./trail.js";
import { Ladder } from "./ladder.js";
import { Rubric } from "./rubric.js";
import { Spread } from "./spread.js";
/** @import { Session } from '../session.js' */
/** @import { Debrief } from '../sheet/debrief.js' */
/** @import { TracePane } from '../trace/index.js' */

/**
 * Fills the places that the trace and the debrief hold ready. report(): opens the printed page of this attempt, or null.
 * @param {Session} session @param {TracePane} trace @param {Debrief} debrief @param {(() => unknown) | null} report
 */
export async function showAfter(session, trace, debrief, report) {
  await Promise.all(["after", "hints", "points"].map(bringTexts));
  if (session.ended) return; // left meanwhile
  const ladder = new Ladder(session, trace);
  const spread = new Spread();
  const trail = new Trail(session, trace);
  const rubric = new Rubric(trail);
  debrief.goTo = (from, to) => trace.showPlace(from, to);
  debrief.hints.replaceChildren(ladder.el);
  const concluded = h("div", { class: "after-concluded" }); // of an experiment, whose words are there by then
  debrief.spread.replaceChildren(concluded, spread.el);
  const bench = session.bench.kind !== "recording"; // a recording has no bench to be ready for
  debrief.rubric.replaceChildren(...[bench && rubric.el, report && h("p", { class: "row after-ways" }, h("button", { type: "button", class: "btn", onclick: report }, t("after-report")), bench && h("a", { class: "btn btn-plain", href: "#skills" }, t("after-skills")))].filter((one) => one instanceof Node));
  trace.trail.replaceChildren(trail.el);
  session.onView((view) => {
    trace.trail.hidden = !view.check?.course?.length;
    ladder.show(view);
    if (!view.check) return;
    const judged = view.experiment?.judged ?? [];
    refill(concluded, judged, () => judged.map(({ measure, said, right }) => h("p", {}, t(`experiment-line_${right ? "right" : "wrong"}`, { measure: t(`experiment-measure-${measure}`), said: t(`experiment-conclude-${said}`) }))));
    spread.show(view.check);
    trail.show(view.check);
    rubric.show(view.check.rubric);
  });
}
