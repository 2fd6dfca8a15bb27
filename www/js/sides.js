// @ts-check
// The screens beside the bench, each brought when it is opened: the card index of faults, the skill map, the notebook, a report,
// pages to read, what this device keeps, one's own pulse.

import { h } from "./dom.js";
import { t } from "./text.js";
/** @import { SideName, ViewName, Ways } from './types/page' */

const cards = () => import("./faults/cards.js");
const read = () => import("./read.js");
/** @param {Ways} ways */
const back = ({ goBack, inLab }) => h("button", { type: "button", class: "btn", onclick: goBack }, t(inLab ? "side-back" : "side-back_start"));

/**
 * @typedef {{
 *   title: string, section?: ViewName, open(root: HTMLElement, turn: string, ways: Ways): Promise<void | { end(): void }>,
 *   turn?(root: HTMLElement, turn: string): Promise<unknown>,
 * }} Side
 */

/**
 * By name: the key of its title, its section where that has another name, open(root, turn, ways) which fills its section and may give what is to be ended when it is left, and for one that has places to turn to
 * turn(root, turn). ways: {inLab, goBack(), allLoaded()}.
 * @type {Record<SideName, Side>}
 */
export const SIDES = {
  faults: { title: "faults-title", open: async (root, _turn, ways) => (await cards()).showFaults(root, ways), turn: async (root, turn) => (await cards()).turnToCard(root, turn) },
  skills: { title: "side-skills", open: async (root, _turn, ways) => (await import("./skills/index.js")).showSkills(root, { ...ways, scenarios: await ways.allLoaded() }) },
  notebook: { title: "side-notebook", open: async (root, _turn, ways) => (await import("./notebook/index.js")).showNotebook(root, ways) },
  report: { title: "side-report", open: async (root, turn, ways) => (await import("./notebook/report.js")).showReport(root, turn, ways) },
  device: { title: "side-device", open: async (root, _turn, ways) => (await import("./device/index.js")).showDevice(root, ways) },
  own: { title: "own-title", open: async (root, _turn, ways) => (await import("./own/index.js")).showOwn(root, ways) },
  words: { title: "side-words", section: "read", open: async (root, _turn, ways) => (await read()).showWords(root, back(ways)) },
  teach: { title: "side-teach", section: "read", open: async (root, _turn, ways) => (await read()).showTeach(root, back(ways)) },
};

/**
 * The section that a screen fills.
 * @param {SideName} side @returns {ViewName}
 */
export const sectionOf = (side) => SIDES[side].section ?? /** @type {ViewName} */ (side);
