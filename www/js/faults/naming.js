// @ts-check
// "What is wrong here?": the student names faults by first impression and can take them back. Nothing here judges.

import { attr, h, newId, prop, refill, say, words } from "../dom.js";
import { refusalText } from "../bench/index.js";
import { icon } from "../icons.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
import { faultWords } from "./words.js";
/** @import { Session } from '../session.js' */
/** @import { FaultBook, FaultWords } from '../types/page' */
/** @import { View } from '../types/view' */

export class Naming {
  /** @param {Session} session */
  constructor(session) {
    this.session = session;
    /** @type {FaultBook | null} */
    this.words = null; // of the catalogue, once they are there
    /** @type {{ el: HTMLElement, ids: string[] }[]} */
    this.counts = []; // how many of an impression are named
    const id = newId("naming"), listId = newId("named");
    this.choices = h("div", { class: "impressions" });
    this.problem = h("p", { class: "pencil sheet-note naming-problem", role: "status" });
    this.listHead = h("p", { class: "vh", id: listId }, t("naming-list"));
    this.notes = h("ul", { class: "named", "aria-labelledby": listId });
    this.none = h("p", { class: "named-none pencil" }, t("naming-none"));
    const whyId = newId("why");
    /** @type {HTMLInputElement} */
    this.why = h("input", { id: whyId, class: "txt", maxlength: "160", autocomplete: "off", onchange: () => session.act({ do: "explain", text: this.why.value }) });
    this.whyBox = h("div", { class: "fld naming-why" }, h("label", { for: whyId }, t("naming-why")), this.why);
    this.el = h("section", { class: "naming", "aria-labelledby": id },
      h("h3", { id, class: "naming-h" }, t("naming-title")), h("p", { class: "quiet" }, t("naming-about")),
      this.listHead, this.none, this.notes, this.problem, this.whyBox, this.choices);
    /** @type {Map<string, HTMLButtonElement>} */
    this.buttons = new Map();
    session.onRefusal((code, args, action) => action.do === "name" && words(this.problem, code === "out_of_range" ? t("refusal-enough_named", args) : refusalText(code, args)));
    this.bring();
  }

  async bring() {
    this.choices.replaceChildren(h("p", { class: "quiet" }, t("naming-loading")));
    let book;
    try {
      book = this.words = await faultWords();
    } catch (error) {
      this.choices.replaceChildren(h("p", { class: "problem", role: "alert" }, t("naming-failed", { told: error instanceof Error ? error.message : String(error) })), button(t("naming-again"), () => this.bring()));
      return;
    }
    this.choices.replaceChildren(...book.impressions.map((impression) => this.group(impression)), h("p", { class: "naming-read" }, h("a", { href: "#faults" }, t("naming-read"))));
    this.show(this.session.view);
  }

  /**
   * A first impression; opened, it shows its faults. One is open at a time.
   * @param {FaultBook["impressions"][number]} impression
   */
  group({ id, name, faults }) {
    const count = h("span", { class: "impression-n" });
    const kids = faults.map((fault) => {
      const one = h("button", { type: "button", class: "btn fault-name", data: { fault: fault.id }, onclick: () => this.turn(fault) }, fault.name);
      this.buttons.set(fault.id, one);
      return one;
    });
    this.counts.push({ el: count, ids: faults.map((fault) => fault.id) });
    return h("details", { class: "impression", name: "impression", data: { impression: id } }, h("summary", {}, h("span", {}, name), count), h("div", { class: "row" }, kids));
  }

  /** @param {FaultWords} fault */
  turn(fault) {
    const named = this.session.view.named.includes(fault.id);
    words(this.problem, "");
    if (this.session.act({ do: named ? "unname" : "name", fault: fault.id })) say(t(named ? "naming-taken_back" : "naming-named", { fault: fault.name }));
  }

  /** @param {View} view */
  show({ named, over, check, explained }) {
    prop(this.whyBox, "hidden", Boolean(check || over) && !explained);
    prop(this.why, "disabled", Boolean(check || over));
    if (document.activeElement !== this.why) prop(this.why, "value", explained);
    const book = this.words;
    if (!book) return;
    prop(this.none, "hidden", named.length > 0);
    prop(this.notes, "hidden", named.length === 0);
    const hadFocus = this.notes.contains(document.activeElement);
    const changed = refill(this.notes, [named, over], () => named.flatMap((id) => book.of(id) ?? []).map((fault) => this.note(fault, over)));
    if (changed && hadFocus) /** @type {HTMLElement | null} */ (this.notes.querySelector("button") ?? this.choices.querySelector("summary"))?.focus();
    for (const [id, el] of this.buttons) {
      attr(el, "aria-pressed", String(named.includes(id)));
      prop(el, "disabled", Boolean(over));
    }
    for (const { el, ids } of this.counts) {
      const n = ids.filter((id) => named.includes(id)).length;
      words(el, n > 0 ? "✎".repeat(n) : "");
    }
  }

  /** @param {FaultWords} fault @param {boolean} over */
  note(fault, over) {
    const label = t("naming-unname", { fault: fault.name });
    return h("li", { class: "pencil" }, h("span", {}, fault.name), !over && h("button", { type: "button", class: "btn btn-round btn-plain", "aria-label": label, title: label, onclick: () => this.turn(fault) }, icon("cross")));
  }
}
