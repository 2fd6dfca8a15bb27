// @ts-check
// The scenarios on the first screen: a student's path by level, benches of one kind in one entry, and found by a word. What stands
// beside the path, the benches whose heading tells their fault, is folded away below it.

import { h, newId, prop, s, words } from "./dom.js";
import { routeTo } from "./route.js";
import { problemOf } from "./scenarios.js";
import { t } from "./text.js";
/** @import { KnownScenario, ScenarioEntry } from './types/page' */

const FEW = 8; // so many can be looked through without a search

/**
 * A level drawn as that many pulses.
 * @param {number} level
 */
function pulses(level) {
  let d = "M0 12";
  for (let i = 0; i < level; i += 1) d += "h2c1.500 0 1.800 -10 3 -10s1.700 6 3 6.200s1 -1.400 2 -1.400s1.500 5 4 5.200";
  return s("svg", { class: "pulses", viewBox: `-1 0 ${level * 14 + 6} 14`, width: (level * 14 + 6) * 1.5, height: 21, "aria-hidden": "true" }, s("path", { d: `${d}h3` }));
}

/**
 * A part for each level, with its entries.
 * @param {KnownScenario[]} scenarios @param {{ el: HTMLElement, text: string }[]} entries what can be found by a word
 */
function shelves(scenarios, entries) {
  const levels = [...new Set(scenarios.map((one) => one.brief.level))].sort((a, b) => a - b);
  return levels.map((level) => {
    const id = newId("level");
    const cards = series(scenarios.filter((one) => one.brief.level === level)).map((benches) => {
      const el = card(benches);
      entries.push({ el, text: benches.map(({ brief }) => `${brief.title} ${brief.aim}`).join(" ").toLowerCase() });
      return el;
    });
    return h("section", { class: "shelf", "aria-labelledby": id }, h("h3", { class: "level", id }, pulses(level), h("span", {}, t("start-levels", { v: level }))), h("ol", { class: "cards" }, cards));
  });
}

/**
 * The list: the path, and beside it what is folded away.
 * @param {ScenarioEntry[]} scenarios
 */
export function scenarioList(scenarios) {
  const bad = scenarios.filter(problemOf);
  const good = /** @type {KnownScenario[]} */ (scenarios.filter((one) => !problemOf(one)));
  /** @type {{ el: HTMLElement, text: string }[]} */
  const entries = [];
  const parts = shelves(good.filter((one) => one.path), entries);
  const beside = good.filter((one) => !one.path);
  return h("div", { class: "start-list" }, h("div", { class: "start-list-head" }, h("h2", { id: "scenarios-h", tabindex: "-1" }, t("start-all")), entries.length > FEW && finder(entries, parts)), parts,
    beside.length > 0 && h("details", { class: "beside" }, h("summary", {}, t("start-single")), h("p", { class: "quiet" }, t("start-single_about")), shelves(beside, [])),
    bad.length > 0 && h("ol", { class: "cards" }, bad.map((one) => h("li", { class: "card card-bad" }, h("h4", {}, one.id), h("p", { class: "aim" }, problemOf(one)?.message)))));
}

/**
 * A field that leaves only the entries with a word.
 * @param {{ el: HTMLElement, text: string }[]} entries @param {HTMLElement[]} parts
 */
function finder(entries, parts) {
  const id = newId("find");
  const none = h("p", { class: "quiet", role: "status" });
  const input = h("input", { id, class: "txt", type: "search", autocomplete: "off", oninput: () => {
    const word = input.value.trim().toLowerCase();
    for (const { el, text } of entries) prop(el, "hidden", !text.includes(word));
    for (const part of parts) prop(part, "hidden", !part.querySelector(".card:not([hidden])"));
    words(none, entries.every(({ el }) => el.hidden) ? t("start-found_none", { word: input.value.trim() }) : "");
  } });
  return h("div", { class: "finder" }, h("label", { for: id }, t("start-find")), input, none);
}

/**
 * Scenarios of one title and aim, which differ only in the number behind the title, belong to one entry: a list of lists, in order.
 * @param {KnownScenario[]} scenarios
 */
function series(scenarios) {
  /** @type {Map<string, KnownScenario[]>} */
  const kinds = new Map();
  for (const one of scenarios) {
    const key = `${kindOf(one)}|${one.brief.aim}`;
    kinds.set(key, [...(kinds.get(key) ?? []), one]);
  }
  return [...kinds.values()];
}

/** @param {KnownScenario} scenario */
const kindOf = ({ brief }) => brief.title.replace(/ \d+$/, "");

/** @param {KnownScenario[]} benches */
function card(benches) {
  const [first] = benches;
  const title = benches.length > 1 ? kindOf(first) : first.brief.title;
  /** @param {KnownScenario} one */
  const help = (one) => h("span", { class: "help" }, t(`start-help-${one.brief.help}`));
  return h("li", { class: `card${benches.length > 1 ? " card-series" : ""}` },
    benches.length > 1 ? h("h4", {}, title) : h("a", { href: routeTo(first.id) }, h("h4", {}, title)),
    benches.length > 1
      ? h("ul", { class: "benches" }, benches.map((one) => h("li", {}, h("a", { class: "bench-link", href: routeTo(one.id), "aria-label": one.brief.title }, one.brief.title.slice(title.length + 1)))))
      : h("p", { class: "level-line" }, help(first)),
    h("p", { class: "aim" }, first.brief.aim));
}
