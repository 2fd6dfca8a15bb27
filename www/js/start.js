// @ts-check
// The first screen: what one can do here, the scenarios, and the list of faults.

import { h, s } from "./dom.js";
import { problemOf } from "./scenarios.js";
import { scenarioList } from "./shelf.js";
import { t } from "./text.js";
import { assignWay, checkWay, keptWay, rehearseWay, standWay } from "./ways.js";
/** @import { KnownScenario, ScenarioEntry } from './types/page' */

/** One pulse on a trace, with the names of its features beside it. */
function hero() {
  const beat = "c22 0 30 -4 40 -10s20 -128 46 -128s34 76 54 92s18 -24 42 -24s48 66 128 70";
  /** @type {(key: string, x: number, y: number, dx: number, dy: number) => SVGElement} */
  const name = (key, x, y, dx, dy) => s("g", {}, s("path", { class: "hero-tie", d: `M${x} ${y}q${dx * 0.15} ${dy * 0.7} ${dx} ${dy}` }), t(key).split("|").map((line, i) => s("text", { class: "hero-note", x: x + dx + (dx < 0 ? -8 : 8), y: y + dy + 5 + 20 * i, "text-anchor": dx < 0 ? "end" : "start" }, line)));
  return s("svg", { class: "hero-pulse", "aria-hidden": "true", viewBox: "0 0 1240 230", preserveAspectRatio: "xMidYMid slice" },
    s("path", { class: "hero-line", d: `M-1100 182${beat.repeat(10)}` }),
    name("hero-foot", 487, 179, -46, 26), name("hero-peak", 546, 44, 44, -18), name("hero-notch", 590, 142, 6, 62), name("hero-bump", 630, 108, 6, -38),
    s("path", { class: "hero-chrono", d: `M-40 216${"l78 0l2 -9l2 9".repeat(18)}` }));
}

/**
 * Fills the start section. openFile(): lets the student choose a file; goOn(id, seed): takes up a kept attempt.
 * @param {HTMLElement} root @param {ScenarioEntry[]} scenarios
 * @param {{ openFile: () => unknown, goOn: (id: string, seed: string) => unknown }} ways
 */
export function showStart(root, scenarios, { openFile, goOn }) {
  const told = /** @type {KnownScenario[]} */ (scenarios.filter((scenario) => !problemOf(scenario)));
  const path = told.filter((scenario) => scenario.path);
  root.replaceChildren(
    h("div", { class: "start-lead" }, h("h1", { id: "start-h" }, t("start-title")), h("p", { class: "lede" }, t("start-lede"))),
    h("div", { class: "ways" }, keptWay(told, goOn), path.length > 0 && [rehearseWay(path), checkWay(path), assignWay(), standWay()]),
    h("div", { class: "hero drum" }, h("div", { class: "trace-area" }, hero())),
    h("p", { class: "start-pulse" }, h("span", {}, t("start-pulse")), " ", h("a", { href: "#own" }, t("start-pulse_go"))),
    scenarioList(scenarios),
    h("div", { class: "start-own" }, h("h2", {}, t("start-faults_title")), h("p", {}, t("start-faults")), h("div", { class: "row" }, h("a", { class: "btn", href: "#faults" }, t("start-faults_go")), h("a", { class: "btn btn-plain", href: "#words" }, t("side-words")))),
    h("div", { class: "start-own" }, h("h2", {}, t("start-own_title")), h("p", {}, t("start-own")), h("div", { class: "row" }, h("button", { type: "button", class: "btn", onclick: openFile }, t("tools-open")), h("a", { class: "btn btn-plain", href: "#own" }, t("tools-own")))),
    h("div", { class: "caution" }, h("h2", {}, t("caution-title")), h("p", {}, t("caution-long"))));
}
