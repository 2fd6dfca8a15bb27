// @ts-check
// The ways in from the first screen: going on, preparing for the lab, checking oneself, and setting a scenario for a class.

import { h } from "./dom.js";
import { newSeed, routeTo } from "./route.js";
import { keptAttempts } from "./store.js";
import { agoText, t } from "./text.js";
import { icon } from "./icons.js";
import { button } from "./widgets.js";
/** @import { Kid, KnownScenario } from './types/page' */

const MOST_KEPT = 3;

/** @param {string} key @param {...Kid} more */
const way = (key, ...more) =>
  h("section", { class: `way way-${key}`, "aria-labelledby": `way-${key}` }, h("h2", { id: `way-${key}` }, t(`way-${key}`)), h("p", { class: "way-for pencil" }, t(`way-${key}_for`)), h("p", { class: "way-text" }, t(`way-${key}_text`)), more);

/**
 * Shows what happens behind a door: a scenario's worked example, or with null the instructor's screen. go(): where one begins from there.
 * @param {string} door @param {string | null} scenario @param {() => HTMLElement} go
 */
const look = (door, scenario, go) => h("button", { type: "button", class: "way-look", "aria-describedby": `way-${door}`, onclick: async () => (await import("./glimpse/index.js")).showGlimpse(door, scenario, go()) }, icon("play"), h("span", {}, t("way-glimpse")));

/**
 * Attempts kept on this device, latest first; nothing where there are none.
 * @param {KnownScenario[]} scenarios @param {(id: string, seed: string) => unknown} goOn
 */
export function keptWay(scenarios, goOn) {
  /** @param {string} id */
  const known = (id) => scenarios.find((one) => one.id === id);
  const kept = keptAttempts().filter((one) => known(one.scenario) || one.address).slice(0, MOST_KEPT);
  if (kept.length === 0) return null;
  return h("section", { class: "way-kept", "aria-labelledby": "way-kept" }, h("h2", { id: "way-kept" }, t(kept.every(({ over }) => over) ? "way-kept_over" : "way-kept")),
    h("ul", { class: "kept" }, kept.map(({ scenario, seed, at, title, address, over }) => h("li", {},
      address ? h("a", { href: `#a=${address}` }, title ?? scenario)
        : h("a", { href: routeTo(scenario, seed), onclick: (event) => { event.preventDefault(); goOn(scenario, seed); } }, known(scenario)?.brief.title),
      h("span", { class: "quiet" }, t(over ? "way-kept_from_over" : "way-kept_from", { seed, when: agoText(at) }))))));
}

/** @param {KnownScenario[]} scenarios */
const withExample = (scenarios) => scenarios.find((one) => one.brief.worked)?.id ?? scenarios[0].id;

/**
 * For a student before the lab: the first scenario.
 * @param {KnownScenario[]} scenarios
 */
export function rehearseWay(scenarios) {
  const go = () => h("a", { class: "btn btn-strong", href: routeTo(scenarios[0].id) }, t("way-rehearse_go", { title: scenarios[0].brief.title }));
  return way("rehearse", h("div", { class: "row" }, go(), look("rehearse", withExample(scenarios), go)));
}

/**
 * For a student who wants to know where they stand: some scenario that is done alone, with a heart of its own.
 * @param {KnownScenario[]} scenarios
 */
export function checkWay(scenarios) {
  const alone = scenarios.filter((one) => one.brief.help === "alone");
  const from = alone.length > 0 ? alone : scenarios;
  const go = (kind = "") => button(t("way-check_go"), () => {
    location.hash = routeTo(from[Math.floor(Math.random() * from.length)].id, newSeed());
  }, { kind });
  return way("check", h("div", { class: "row" }, go(), look("check", withExample(from), () => go("btn-strong"))));
}

/** For someone who comes back: the skill map and the notebook. */
export const standWay = () => way("stand", h("div", { class: "row" }, h("a", { class: "btn", href: "#skills" }, t("side-skills")), h("a", { class: "btn", href: "#notebook" }, t("side-notebook"))));

/** For an instructor: setting a scenario for a class, looking at what the class submitted, and what to know about it. */
export function assignWay() {
  const go = (kind = "") => h("a", { class: `btn ${kind}`, href: "#assign" }, t("way-assign_go"));
  return way("assign", h("div", { class: "row" }, go(), h("a", { class: "btn", href: "#class" }, t("way-assign_class")), h("a", { class: "btn btn-plain", href: "#teach" }, t("way-assign_guide")), look("assign", null, () => go("btn-strong"))));
}
