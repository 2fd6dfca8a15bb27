// @ts-check
// What the table shows, in the student's own judgement; it closes the table.

import { h, newId, prop } from "../dom.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
import { Directions, fromTo } from "./choices.js";
/** @import { Session } from '../session.js' */
/** @import { AskedExperiment, Experiment } from '../types/experiment' */

export class Conclusion {
  /** @param {Session} session @param {AskedExperiment} asked */
  constructor(session, asked) {
    this.session = session;
    this.asked = asked;
    this.measured = false;
    const headId = newId("conclude");
    this.choices = asked.measures.map((measure) => new Directions("conclude", measure, () => this.ready()));
    this.put = button(t("experiment-conclude_do"), () => this.conclude(), { kind: "btn-strong" });
    this.needs = h("p", { class: "quiet" }, t("experiment-needs"));
    this.el = h("section", { "aria-labelledby": headId }, h("h3", { id: headId }, t("experiment-conclude")), h("p", { class: "quiet" }, t("experiment-conclude_about")), h("p", {}, fromTo(asked)),
      this.choices.map((one) => one.el), h("div", { class: "row" }, this.put, this.needs));
  }

  ready() {
    prop(this.put, "disabled", !this.measured || this.choices.some((one) => one.chosen === null));
  }

  conclude() {
    for (const { measure, chosen: direction } of this.choices) if (direction) this.session.act({ do: "conclude", measure, direction });
  }

  /** @param {Experiment} experiment */
  show({ contrasts, closed }) {
    this.measured = contrasts.length === this.asked.measures.length;
    this.needs.hidden = this.measured;
    this.el.hidden = closed;
    this.ready();
  }
}
