// @ts-check
// How each item of the class did: what was wrong in which scenario. All figures are the core's; they are worked out when the part is
// opened, since few look at it.

import { h } from "../dom.js";
import { listed, num, t } from "../text.js";
import { state } from "./state.js";
import { named, NONE } from "./words.js";
/** @import { FaultBook } from '../types/page' */
/** @import { ClassItem } from '../types/told' */

export class Items {
  /** @param {FaultBook} faults */
  constructor(faults) {
    this.faults = faults;
    this.body = h("div", { class: "wide-table", tabindex: "0", role: "region", "aria-label": t("items-title") });
    /** @type {HTMLDetailsElement} */
    this.details = h("details", { class: "class-items", ontoggle: () => this.show() }, h("summary", {}, t("items-title")), h("p", { class: "quiet" }, t("items-about")), this.body);
    this.el = this.details;
  }

  /** The items of the class as it is now, where they are looked at. */
  show() {
    if (!this.details.open) return;
    const titles = new Map(state.course.setTold().map(({ id, title }) => [id, title]));
    const heads = ["item", "answers", "right", "discrimination", "misreading", "minutes"].map((key) => h("th", { scope: "col" }, t(`items-${key}`)));
    this.body.replaceChildren(h("table", {}, h("thead", {}, h("tr", {}, heads)), h("tbody", {}, state.course.items().map((item) => this.row(item, titles.get(item.named) ?? item.named)))));
    this.details.dataset.rows = String(this.body.querySelectorAll("tbody tr").length);
  }

  /** @param {ClassItem} item @param {string} title */
  row({ faults, n, right, discrimination, misreading, minutes }, title) {
    const wrong = faults.length > 0 ? listed(faults.map((id) => this.faults.of(id)?.name ?? id)) : t("items-nothing");
    const share = right === null ? NONE : t("items-percent", { n: num(100 * right, 0) });
    const cells = [n === null ? NONE : num(n, 0), share, discrimination === null ? NONE : num(discrimination, 2),
      misreading === null ? NONE : t("items-often", { name: named("class-misreading", misreading[0]), n: misreading[1] }), minutes === null ? NONE : num(minutes, 1)];
    return h("tr", {}, h("th", { scope: "row" }, h("b", {}, wrong), h("span", { class: "quiet" }, title)), cells.map((cell) => h("td", {}, cell)));
  }
}
