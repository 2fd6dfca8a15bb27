// @ts-check
// The card index of faults: by first impression, each card with the test that tells it from its look-alikes, which are linked.

import { h } from "../dom.js";
import { t } from "../text.js";
import { faultWords } from "./words.js";
/** @import { FaultBook, FaultWords, Ways } from '../types/page' */

const NARROW = matchMedia("(max-width: 43.75em)");

/**
 * Fills the section; goBack(): returns to what was there before; inLab: whether that is a bench.
 * @param {HTMLElement} root @param {Ways} ways
 */
export async function showFaults(root, { goBack, inLab }) {
  const back = () => h("button", { type: "button", class: "btn", onclick: goBack }, t(inLab ? "faults-back" : "faults-back_start"));
  const lead = h("div", { class: "faults-lead" }, h("h1", { id: "faults-h", tabindex: "-1" }, t("faults-title")), h("p", { class: "lede" }, t("faults-lede")), back());
  root.replaceChildren(lead);
  const { impressions, of } = await faultWords();
  root.replaceChildren(lead,
    h("nav", { class: "faults-jump", "aria-label": t("faults-jump") }, impressions.map(({ id, name, faults }) => h("a", { href: `#faults=${id}` }, name, h("span", { class: "n", "aria-hidden": "true" }, faults.length)))),
    h("div", { class: "faults-order" }, h("h2", {}, t("faults-order_title")), h("ol", {}, t("faults-order").split("|").map((step) => h("li", {}, step)))),
    ...impressions.map(({ id, name, faults }) => h("section", { class: "drawer", id: `impression-${id}`, "aria-labelledby": `drawer-${id}` },
      h("h2", { id: `drawer-${id}`, tabindex: "-1" }, name), h("div", { class: "fault-cards" }, faults.map((fault) => card(fault, of))))),
    h("p", {}, back()));
}

/** @param {FaultWords} fault @param {FaultBook["of"]} of */
function card(fault, of) {
  /** @param {"test" | "remedy" | "cause"} key */
  const row = (key) => h("div", { class: `fault-${key}` }, h("dt", {}, t(`fault-${key}`)), h("dd", {}, fault[key]));
  return h("details", { class: "fault-card", id: `fault-${fault.id}`, open: !NARROW.matches },
    h("summary", {}, h("h3", {}, fault.name), h("p", { class: "pencil" }, fault.seen)),
    h("dl", {}, row("test"), row("remedy"), row("cause")),
    fault.confused_with.length > 0 && h("p", { class: "alike" }, h("span", { class: "lbl" }, t("fault-alike")), " ", fault.confused_with.map((id) => h("a", { href: `#faults=${id}` }, of(id)?.name ?? id))));
}

/**
 * Brings a card, or an impression, into sight and gives it the focus; without a name the top of the page.
 * @param {HTMLElement} root @param {string} id
 */
export function turnToCard(root, id) {
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
