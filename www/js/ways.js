// @ts-check
// The ways in from the first screen: going on, rehearsing, checking oneself, and passing a scenario on to a class.

import { h } from "./dom.js";
import { newSeed, routeTo } from "./route.js";
import { keptAttempts } from "./store.js";
import { agoText, t } from "./text.js";
import { icon } from "./icons.js";
import { button } from "./widgets.js";
/** @import { Glimpse } from './start.js' */
/** @import { Kid, KnownScenario } from './types/page' */

const MOST_KEPT = 3;

/** @param {string} key @param {...Kid} more */
const way = (key, ...more) =>
  h("section", { class: `way way-${key}`, "aria-labelledby": `way-${key}` }, h("h2", { id: `way-${key}` }, t(`way-${key}`)), h("p", { class: "way-for pencil" }, t(`way-${key}_for`)), h("p", { class: "way-text" }, t(`way-${key}_text`)), more);

/**
 * Shows what happens behind a door; glimpse(door, opener).
 * @param {string} door @param {Glimpse} glimpse
 */
const look = (door, glimpse) => h("button", { type: "button", class: "way-look", onclick: (event) => glimpse(door, event.currentTarget), "aria-describedby": `way-${door}` }, icon("play"), h("span", {}, t("way-glimpse")));

/**
 * Attempts kept on this device, latest first; nothing where there are none.
 * @param {KnownScenario[]} scenarios @param {(id: string, seed: string) => unknown} goOn
 */
export function keptWay(scenarios, goOn) {
  /** @param {string} id */
  const known = (id) => scenarios.find((one) => one.id === id);
  const kept = keptAttempts().filter((one) => known(one.scenario) || one.address).slice(0, MOST_KEPT);
  if (kept.length === 0) return null;
  return h("section", { class: "way-kept", "aria-labelledby": "way-kept" }, h("h2", { id: "way-kept" }, t("way-kept")),
    h("ul", { class: "kept" }, kept.map(({ scenario, seed, at, title, address }) => h("li", {},
      address ? h("a", { href: `#a=${address}` }, title ?? scenario)
        : h("a", { href: routeTo(scenario, seed), onclick: (event) => { event.preventDefault(); goOn(scenario, seed); } }, known(scenario)?.brief.title),
      h("span", { class: "quiet" }, t("way-kept_from", { seed, when: agoText(at) }))))));
}

/**
 * For a student before the lab: the first scenario.
 * @param {KnownScenario[]} scenarios @param {Glimpse} glimpse
 */
export const rehearseWay = (scenarios, glimpse) =>
  way("rehearse", h("div", { class: "row" }, h("a", { class: "btn btn-strong", href: routeTo(scenarios[0].id) }, t("way-rehearse_go", { title: scenarios[0].brief.title })), look("rehearse", glimpse)));

/**
 * For a student who wants to know where they stand: some scenario that is done alone, with a heart of its own.
 * @param {KnownScenario[]} scenarios @param {Glimpse} glimpse
 */
export function checkWay(scenarios, glimpse) {
  const alone = scenarios.filter((one) => one.brief.help === "alone");
  const from = alone.length > 0 ? alone : scenarios;
  const go = button(t("way-check_go"), () => {
    location.hash = routeTo(from[Math.floor(Math.random() * from.length)].id, newSeed());
  });
  return way("check", h("div", { class: "row" }, go, look("check", glimpse)));
}

/** For someone who comes back: the skill map and the notebook. */
export const standWay = () => way("stand", h("div", { class: "row" }, h("a", { class: "btn", href: "#skills" }, t("side-skills")), h("a", { class: "btn", href: "#notebook" }, t("side-notebook"))));

/**
 * For an instructor: setting a bench for a class, and looking at what the class handed in.
 * @param {Glimpse} glimpse
 */
export const assignWay = (glimpse) =>
  way("assign", h("div", { class: "row" }, h("a", { class: "btn", href: "#assign" }, t("way-assign_go")), h("a", { class: "btn btn-plain", href: "#class" }, t("way-assign_class")), h("a", { class: "btn btn-plain", href: "#teach" }, t("side-teach")), look("assign", glimpse)));
