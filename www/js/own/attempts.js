// @ts-check
// What was measured so far, in the order in which it was, and how the last two compare. It lives in the page's memory alone.

import { h } from "../dom.js";
import { num, t } from "../text.js";
import { rateText } from "./parts.js";

/** @typedef {{ way: "touch" | "count" | "camera", seconds: number, rate: number, off: number | null }} Measured */

/** @type {Measured[]} */
const all = [];
const MOST = 12;

/** The list, with its comparison. */
export class Attempts {
  /** @param {Promise<typeof import('../desk.js')>} core */
  constructor(core) {
    this.core = core;
    this.list = h("ol", { class: "own-list" });
    this.told = h("p", { class: "own-compared", role: "status" });
    this.el = h("section", { class: "own-attempts", "aria-labelledby": "own-list-h" }, h("h2", { id: "own-list-h" }, t("own-list_title")), this.told, this.list);
    this.show();
  }

  /** @param {Measured} one */
  async add(one) {
    all.push(one);
    all.splice(0, all.length - MOST);
    await this.show();
  }

  async show() {
    this.list.replaceChildren(...all.map(({ way, seconds, rate, off }) => h("li", {}, h("span", {}, t(`own-list_${way}`, { s: num(seconds, 0) })), " ", h("b", {}, rateText(rate, off)))));
    const [last, before] = all.slice(-2).reverse();
    if (!last) return void this.told.replaceChildren(t("own-list_none"));
    const { compared } = await this.core;
    if (before?.off == null || last.off == null) return void this.told.replaceChildren(t("own-list_one"));
    const { difference_bpm: apart, within } = compared(before.rate, before.off, last.rate, last.off);
    this.told.replaceChildren(t(within ? "own-compare_within" : "own-compare_beyond", { d: num(apart, 0) }));
  }
}
