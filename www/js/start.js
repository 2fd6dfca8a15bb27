// The first screen: what one can do here, and the scenarios as entries of an index, each with its level and aim.

import { h, s } from "./dom.js";
import { brief, CoreError } from "./core.js";
import { routeTo } from "./route.js";
import { t } from "./text.js";
import { assignWay, checkWay, keptWay, rehearseWay } from "./ways.js";

/** Loads the scenario index: a list of Entry. */
export async function loadScenarios() {
  const index = await (await get("scenarios/index.json")).json();
  return index.map((entry) => new Entry(entry));
}

/** One scenario of the index: {id, level, file}, after load() also its text `toml`. */
class Entry {
  constructor(entry) {
    Object.assign(this, entry);
  }
  /** Brings the text once, however often it is called; what failed is tried anew. */
  load() {
    this.loading ??= get(`scenarios/${this.file}`).then((answer) => answer.text()).then((text) => (this.toml = text)).catch((error) => {
      this.loading = null;
      throw error;
    });
    return this.loading;
  }
}

async function get(path) {
  const answer = await fetch(path);
  if (!answer.ok) throw new CoreError("not_found", { what: path });
  return answer;
}

/** Reads a loaded scenario's brief once the core is there. */
export function briefOf(scenario) {
  if (scenario.toml === undefined) throw new CoreError("not_found", { what: `scenarios/${scenario.file}` });
  scenario.brief ??= brief(scenario.toml);
  return scenario.brief;
}

/** A level drawn as that many pulses. */
function pulses(level) {
  let d = "M0 12";
  for (let i = 0; i < level; i += 1) d += "h2c1.500 0 1.800 -10 3 -10s1.700 6 3 6.200s1 -1.400 2 -1.400s1.500 5 4 5.200";
  return s("svg", { class: "pulses", viewBox: `-1 0 ${level * 14 + 6} 14`, width: (level * 14 + 6) * 1.5, height: 21, "aria-hidden": "true" }, s("path", { d: `${d}h3` }));
}

/** One pulse on a strip, with the names of its features pencilled beside it. */
function hero() {
  const beat = "c22 0 30 -4 40 -10s20 -128 46 -128s34 76 54 92s18 -24 42 -24s48 66 128 70";
  const name = (key, x, y, dx, dy) => s("g", {}, s("path", { class: "hero-tie", d: `M${x} ${y}q${dx * 0.15} ${dy * 0.7} ${dx} ${dy}` }), t(key).split("|").map((line, i) => s("text", { class: "hero-note", x: x + dx + (dx < 0 ? -8 : 8), y: y + dy + 5 + 20 * i, "text-anchor": dx < 0 ? "end" : "start" }, line)));
  return h("div", { class: "hero drum", "aria-hidden": "true" }, h("div", { class: "smoked" },
    s("svg", { viewBox: "0 0 1240 230", preserveAspectRatio: "xMidYMid slice" },
      s("path", { class: "hero-line", d: `M-1100 182${beat.repeat(10)}` }),
      name("hero.foot", 487, 179, -46, 26), name("hero.peak", 546, 44, 44, -18), name("hero.notch", 590, 142, -20, 36), name("hero.bump", 630, 108, 6, -38),
      s("path", { class: "hero-chrono", d: `M-40 216${"l78 0l2 -9l2 9".repeat(18)}` }))));
}

/** Fills the start section. openFile(): lets the student choose a file; goOn(id, seed): takes up a kept attempt. */
export function showStart(root, scenarios, { openFile, goOn }) {
  const told = scenarios.filter((scenario) => !problemOf(scenario));
  root.replaceChildren(
    h("div", { class: "start-lead" }, h("h1", { id: "start-h" }, t("start.title")), h("p", { class: "lede" }, t("start.lede"))),
    h("div", { class: "ways" }, keptWay(told, goOn), told.length > 0 && [rehearseWay(told), checkWay(told), assignWay(told)]),
    hero(),
    h("div", { class: "start-list" }, h("h2", {}, t("start.all")), h("ol", { class: "cards" }, scenarios.map((scenario) => card(scenario)))),
    h("div", { class: "start-own" }, h("h2", {}, t("start.own_title")), h("p", {}, t("start.own")), h("button", { type: "button", class: "btn", onclick: openFile }, t("tools.open"))),
    h("div", { class: "caution" }, h("h2", {}, t("caution.title")), h("p", {}, t("caution.long"))));
}

function problemOf(scenario) {
  try {
    briefOf(scenario);
    return null;
  } catch (error) {
    return error;
  }
}

function card(scenario) {
  const problem = problemOf(scenario);
  if (problem) return h("li", { class: "card card-bad" }, h("h3", {}, scenario.id), h("p", { class: "aim" }, problem.message));
  const told = scenario.brief;
  return h("li", { class: "card" },
    h("a", { href: routeTo(scenario.id) }, h("h3", {}, told.title)),
    h("p", { class: "level" }, pulses(told.level), h("span", {}, t("start.level", { v: told.level })), h("span", {}, t(`start.help.${told.help}`))),
    h("p", { class: "aim" }, told.aim));
}
