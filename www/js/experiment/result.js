// @ts-check
// What is said of the conclusions and of the way there.

import { h, newId, refill } from "../dom.js";
import { coded, t } from "../text.js";
import { unitOf, valueText } from "./numbers.js";
/** @import { AskedExperiment, Experiment, JudgedConclusion } from '../types/experiment' */

export class Result {
  /** @param {AskedExperiment} asked */
  constructor(asked) {
    this.asked = asked;
    const headId = newId("said");
    this.body = h("div", { role: "status" });
    this.el = h("section", { class: "experiment-result", "aria-labelledby": headId }, h("h3", { id: headId }, t("experiment-result")), this.body);
  }

  /** @param {Experiment} experiment */
  show(experiment) {
    const { judged, remarks, closed } = experiment;
    this.el.hidden = !closed;
    refill(this.body, [judged, remarks], () => [
      judged.map((one) => this.outcome(one, experiment)),
      h("ul", {}, remarks.map(({ code, args }) => h("li", {}, coded("experiment-remark", code, args)))),
      judged.every(({ truth }) => truth === null) && h("p", {}, t("experiment-next")),
    ]);
  }

  /** @param {JudgedConclusion} one @param {Experiment} experiment */
  outcome({ measure, said, outcome, right, u, truth }, { predicted }) {
    const expected = predicted.find((other) => other.measure === measure)?.direction;
    return h("div", { class: right ? "experiment-right" : "experiment-wrong" },
      h("p", {}, h("b", {}, t(`experiment-measure-${measure}`), ": ", t(`experiment-conclude-${said}`), ". "), t(`experiment-outcome-${outcome}`)),
      right && h("p", { class: "quiet" }, t(expected === said ? "experiment-as_expected" : "experiment-not_expected")),
      truth !== null && h("p", {}, t("experiment-truth", { truth: valueText(truth, u), unit: unitOf(measure) })));
  }
}
