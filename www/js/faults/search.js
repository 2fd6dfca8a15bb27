// @ts-check
// Finding cards by what is seen: every word that was typed has to stand on a card, in any place and in any form that begins with it.

import { h, newId, words } from "../dom.js";
import { t } from "../text.js";
/** @import { FaultBook } from '../types/page' */

/** @param {string} text */
const plain = (text) => text.toLowerCase().normalize("NFD").replace(/\p{M}/gu, "");

/**
 * A field over the cards of the catalogue. root: where they stand; found(): what is shown is other than it was.
 * @param {HTMLElement} root @param {FaultBook} book
 */
export function searchField(root, { impressions }) {
  const id = newId("search");
  const said = h("p", { class: "quiet", role: "status" });
  const texts = impressions.flatMap(({ id: impression, name, faults }) => faults.map((fault) => ({ id: fault.id, text: ` ${plain([name, t(`atlas-words_${impression}`), fault.name, fault.seen, fault.test, fault.cause].join(" ")).replace(/[^\p{L}\p{N}]+/gu, " ")}` })));
  /** @type {HTMLInputElement} */
  const field = h("input", { id, class: "txt", type: "search", autocomplete: "off", spellcheck: "false", oninput: () => show() });
  const show = () => {
    const asked = plain(field.value).split(/[^\p{L}\p{N}]+/u).filter(Boolean);
    const hits = new Set(texts.filter(({ text }) => asked.every((word) => text.includes(` ${word}`))).map((one) => one.id));
    for (const card of root.querySelectorAll(".fault-card")) /** @type {HTMLElement} */ (card).hidden = !hits.has(card.id.slice("fault-".length));
    for (const drawer of root.querySelectorAll(".drawer")) /** @type {HTMLElement} */ (drawer).hidden = !drawer.querySelector(".fault-card:not([hidden])");
    words(said, asked.length === 0 ? "" : t("atlas-found", { n: hits.size }));
  };
  return { el: h("div", { class: "faults-search", role: "search" }, h("div", { class: "fld" }, h("label", { for: id }, t("atlas-search")), field), said), clear: () => {
    field.value = "";
    show();
  } };
}
