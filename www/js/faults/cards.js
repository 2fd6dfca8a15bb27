// @ts-check
// The card index of faults: by first impression, each card with what is seen, drawn by the bench itself, and with the test that tells it
// from its look-alikes, which are linked.

import { h } from "../dom.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
import { showAlike } from "./alike.js";
import { InSight } from "./insight.js";
import { searchField } from "./search.js";
import { hasTrace, shots } from "./shots.js";
import { faultWords } from "./words.js";
/** @import { FaultBook, FaultWords, Ways } from '../types/page' */

/** @type {InSight | null} */
let pictures = null; // of the screen that stands there
/** @type {(() => void) | null} */
let clearSearch = null;

/**
 * Fills the section; goBack(): returns to what was there before; inLab: whether that is a bench.
 * @param {HTMLElement} root @param {Ways} ways
 */
export async function showFaults(root, { goBack, inLab }) {
  const back = () => h("button", { type: "button", class: "btn", onclick: goBack }, t(inLab ? "faults-back" : "faults-back_start"));
  const lead = h("div", { class: "faults-lead" }, h("h1", { id: "faults-h", tabindex: "-1" }, t("faults-title")), h("p", { class: "lede" }, t("faults-lede")), back());
  root.replaceChildren(lead);
  const book = await faultWords();
  const { impressions, of } = book;
  /** @type {Map<Element, () => unknown>} */
  const made = new Map();
  pictures?.end();
  const shown = (pictures = new InSight((el) => made.get(el)?.()));
  const search = searchField(root, book);
  clearSearch = search.clear;
  /** @param {HTMLElement} el @param {() => unknown} make */
  const pictured = (el, make) => {
    made.set(el, make);
    shown.add(el);
    return shown;
  };
  root.replaceChildren(lead, search.el,
    h("nav", { class: "faults-jump", "aria-label": t("faults-jump") }, impressions.map(({ id, name, faults }) => h("a", { href: `#faults=${id}` }, name, h("span", { class: "n", "aria-hidden": "true" }, faults.length)))),
    h("div", { class: "faults-order" }, h("h2", {}, t("faults-order_title")), h("ol", {}, t("faults-order").split("|").map((step) => h("li", {}, step)))),
    ...impressions.map(({ id, name, faults }) => h("section", { class: "drawer", id: `impression-${id}`, "aria-labelledby": `drawer-${id}` },
      h("h2", { id: `drawer-${id}`, tabindex: "-1" }, name), h("div", { class: "fault-cards" }, faults.map((fault) => card(fault, of, pictured))))),
    h("p", {}, back()));
}

/** @param {FaultWords} fault @param {FaultBook["of"]} of @param {Parameters<typeof shots>[1]} pictured */
function card(fault, of, pictured) {
  /** @param {"test" | "remedy" | "cause"} key */
  const row = (key) => h("div", { class: `fault-${key}` }, h("dt", {}, t(`fault-${key}`)), h("dd", {}, fault[key]));
  const { first, more } = hasTrace(fault) ? shots(fault, pictured) : { first: h("p", { class: "shot-none" }, t("atlas-paper")), more: null };
  return h("details", { class: "fault-card", id: `fault-${fault.id}` },
    h("summary", {}, h("h3", {}, fault.name), h("p", { class: "pencil" }, fault.seen), first),
    h("dl", {}, row("test"), row("remedy"), row("cause")), more,
    fault.confused_with.length > 0 && h("p", { class: "alike" }, h("span", { class: "lbl" }, t("fault-alike")), " ", fault.confused_with.map((id) => h("a", { href: `#faults=${id}` }, of(id)?.name ?? id)),
      hasTrace(fault) && button(t("atlas-alike"), () => showAlike(fault, of), { kind: "btn-small", "aria-label": t("atlas-alike_of", { name: fault.name }) })));
}

/**
 * Brings a card, or an impression, into sight and gives it the focus; without a name the top of the page.
 * @param {HTMLElement} root @param {string} id
 */
export function turnToCard(root, id) {
  clearSearch?.();
  const found = id && root.querySelector(`#fault-${CSS.escape(id)}, #impression-${CSS.escape(id)}`);
  if (!found) {
    scrollTo({ top: 0 });
    root.querySelector("h1")?.focus({ preventScroll: true });
    return;
  }
  if (found instanceof HTMLDetailsElement) found.open = true;
  found.scrollIntoView({ block: "start" });
  /** @type {HTMLElement} */ (found.querySelector("summary, h2") ?? found).focus({ preventScroll: true });
}
