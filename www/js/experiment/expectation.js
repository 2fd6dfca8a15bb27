// @ts-check
// What one expects of each measure, and why, before anything is recorded.

import { h, newId, prop, refill, say } from "../dom.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
import { Directions, fromTo } from "./choices.js";
/** @import { Session } from '../session.js' */
/** @import { AskedExperiment, Experiment } from '../types/experiment' */

export class Expectation {
  /** @param {Session} session @param {AskedExperiment} asked */
  constructor(session, asked) {
    this.session = session;
    const headId = newId("expect"), whyId = newId("why"), listId = newId("reasons");
    this.choices = asked.measures.map((measure) => new Directions("expect", measure, () => this.ready()));
    /** @type {HTMLInputElement} */
    this.why = h("input", { id: whyId, class: "txt", list: listId, maxlength: "160", autocomplete: "off", placeholder: t("experiment-why_own") });
    this.write = button(t("experiment-write"), () => this.put(), { kind: "btn-strong" });
    this.form = h("div", { class: "experiment-form" }, h("p", { class: "quiet" }, t("experiment-expect_about")), h("p", {}, fromTo(asked)),
      this.choices.map((one) => one.el),
      h("div", { class: "fld" }, h("label", { for: whyId }, t("experiment-why")), this.why, h("datalist", { id: listId }, asked.reasons.map((reason) => h("option", { value: reason })))),
      h("div", { class: "row" }, this.write));
    this.done = h("ul", { class: "experiment-said pencil" });
    this.fixed = h("p", { class: "quiet" }, t("experiment-expect_done"));
    this.el = h("section", { "aria-labelledby": headId }, h("h3", { id: headId }, t("experiment-expect")), this.form, this.done, this.fixed);
    this.filled = false;
    this.ready();
  }

  ready() {
    prop(this.write, "disabled", this.choices.some((one) => one.chosen === null));
  }

  put() {
    const reason = this.why.value.trim();
    const did = this.choices.map(({ measure, chosen: direction }) => direction && this.session.act({ do: "predict", measure, direction, reason }));
    if (did.every(Boolean)) say(t("experiment-written"));
  }

  /** @param {Experiment} experiment */
  show({ predicted, may_predict: may, closed }) {
    if (!this.filled && predicted.length > 0) {
      for (const { measure, direction, reason } of predicted) {
        this.choices.find((one) => one.measure === measure)?.choose(direction);
        this.why.value = reason;
      }
      this.filled = true;
      this.ready();
    }
    this.form.hidden = !may || closed;
    this.fixed.hidden = may || predicted.length === 0;
    this.done.hidden = predicted.length === 0;
    refill(this.done, predicted, () => predicted.map(({ measure, direction, reason }) => h("li", {}, `${t(`experiment-measure-${measure}`)}: ${t(`experiment-expect-${direction}`)}${reason ? ` – ${reason}` : ""}`)));
  }
}
