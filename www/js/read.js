// @ts-check
// Pages to read: the trade's words, and the page for instructors. Brought when they are opened.

import { h, newId, prop, words } from "./dom.js";
import { bringTexts, has, keysOf, languageNow, t } from "./text.js";
/** @import { Kid } from './types/page' */

/**
 * Fills the section with the glossary. back: the way back to where the reader was.
 * @param {HTMLElement} root @param {Kid} back
 */
export async function showWords(root, back) {
  await bringTexts("words");
  const order = new Intl.Collator(languageNow());
  const entries = keysOf("word-").map((key) => ({ key, name: t(key), text: t(`${key}.is`) })).sort((a, b) => order.compare(a.name, b.name));
  const rows = entries.map(({ key, name, text }) => h("div", { class: "term", id: key }, h("dt", {}, name), h("dd", {}, text)));
  const id = newId("find");
  const none = h("p", { class: "quiet", role: "status" });
  const input = h("input", { id, class: "txt", type: "search", autocomplete: "off", oninput: () => {
    const word = input.value.trim().toLowerCase();
    entries.forEach(({ name, text }, i) => prop(rows[i], "hidden", !`${name} ${text}`.toLowerCase().includes(word)));
    words(none, rows.every((row) => row.hidden) ? t("words-none", { word: input.value.trim() }) : "");
  } });
  page(root, [t("words-title"), t("words-lede")], back, h("div", { class: "finder" }, h("label", { for: id }, t("words-find")), input, none), h("dl", { class: "terms" }, rows));
}

/**
 * Fills the section with the page for instructors.
 * @param {HTMLElement} root @param {Kid} back
 */
export async function showTeach(root, back) {
  await bringTexts("teach");
  const parts = ["before", "links", "class", "fair", "safety", "hour", "limits"].map((part) => {
    const lines = ["a", "b", "c", "d", "e", "f"].map((line) => `teach-${part}.${line}`).filter(has);
    return h("section", { class: "teach-part" }, h("h2", {}, t(`teach-${part}`)), h("ul", {}, lines.map((line) => h("li", {}, t(line)))));
  });
  page(root, [t("teach-title"), t("teach-lede")], back, h("div", { class: "teach" }, parts));
}

/** @param {HTMLElement} root @param {[string, string]} heads @param {Kid} back @param {...Node} body */
function page(root, [title, lede], back, ...body) {
  root.replaceChildren(h("div", { class: "faults-head" }, h("h1", { id: "read-h", tabindex: "-1" }, title), back), h("p", { class: "lede" }, lede), ...body);
}
