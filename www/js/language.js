// @ts-check
// Which language the page speaks: the reader's choice, else the first of the browser's that there is, else English.

import { h } from "./dom.js";
import { keep, ofTab, recall, toTab } from "./device.js";
import { languageNow, t } from "./text.js";
import { choiceOf } from "./widgets.js";

const FIRST = "en";
const RIGHT_TO_LEFT = new Set(["ar", "fa", "he", "ur"]);
const there = () => (document.documentElement.dataset.languages ?? FIRST).split(" ");

/** The language to load; marks the document with it and with its direction. */
export function chooseLanguage() {
  const known = there();
  const wanted = [recall("language"), ofTab("language"), ...navigator.languages].filter((one) => typeof one === "string").map((one) => one.toLowerCase().split("-")[0]);
  const language = wanted.find((one) => known.includes(one)) ?? FIRST;
  document.documentElement.lang = language;
  document.documentElement.dir = RIGHT_TO_LEFT.has(language) ? "rtl" : "ltr";
  return language;
}

/**
 * From the next loading on this tab speaks a language, unless its reader has chosen one; false where no tab can keep that.
 * @param {string} language
 */
export function speakInTab(language) {
  toTab("language", language);
  return ofTab("language") === language;
}

/**
 * A choice among the languages, each by its own name, where there is one to make; changed(): called before the page is loaded anew.
 * @param {() => unknown} changed
 */
export function languageChoice(changed) {
  if (there().length < 2) return null;
  /** @param {string} language */
  const name = (language) => {
    const own = new Intl.DisplayNames([language], { type: "language" }).of(language) ?? language;
    return own.charAt(0).toLocaleUpperCase(language) + own.slice(1);
  };
  /** @type {HTMLSelectElement} */
  const select = h("select", { id: "language-choice", "aria-label": t("tools-language"), title: t("tools-language"), onchange: () => {
    keep("language", select.value);
    changed();
    location.reload();
  } }, there().map((language) => h("option", { value: language, lang: language, selected: language === languageNow() }, name(language))));
  return choiceOf(select, h("span", { class: "pick-code" }, languageNow().toUpperCase()), h("span", { class: "word" }, name(languageNow())));
}
