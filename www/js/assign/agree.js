// @ts-check
// Whether a bench keeps its word: where brief, task, criteria and faults ask for different things it is said, before anybody gets it.

import { contradictionsOf } from "../desk.js";
import { h } from "../dom.js";
import { coded, t } from "../text.js";
import { button } from "../widgets.js";
/** @import { FaultBook } from '../types/page' */

export class Agree {
  /** add(fault): it becomes a fault of the bench. @param {{ faults: FaultBook, add: (fault: string) => unknown }} ways */
  constructor({ faults, add }) {
    this.faults = faults;
    this.add = add;
    this.list = h("ul", { class: "intake-wrong" });
    this.el = h("section", { class: "agree", role: "group", "aria-label": t("assign-agree"), hidden: true }, h("h2", {}, t("assign-agree")), h("p", { class: "quiet" }, t("assign-agree_about")), this.list);
  }

  /** @param {string | null} toml Nothing while it cannot be used. */
  show(toml) {
    const found = toml === null ? [] : contradictionsOf(toml);
    this.el.hidden = found.length === 0;
    this.list.replaceChildren(...found.map(({ code, args }) => {
      const id = String(args.fault ?? "");
      const name = this.faults.of(id)?.name ?? id;
      return h("li", { data: { code } }, coded("assign-agree", code, { ...args, name }), id && " ", id && button(t("assign-agree_add"), () => this.add(id), { kind: "btn-small", "aria-label": t("assign-agree_add_of", { name }) }));
    }));
  }
}
