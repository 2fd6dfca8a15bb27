// @ts-check
// How the student went about it: what went well first, then the rest, each as observation, question, next action.

import { h } from "../dom.js";
import { has, t } from "../text.js";
import { ask, doNext, glyph, see } from "./parts.js";
/** @import { Told } from '../types/names' */

const WELL = new Set(["process_tested"]);

/**
 * The remarks of a check, or null where there are none. Before the truth may be shown no fault is named and remarks of
 * one kind are told once; afterwards nameOf(id) gives each its name.
 * @param {Told[]} remarks @param {((id: string) => string) | null} nameOf
 */
export function processPart(remarks, nameOf) {
  const told = remarks.map(({ code, args }) => ({ code, args: { ...args, n: args.times } }));
  const kinds = [...new Set(told.map((one) => one.code))];
  const lines = nameOf ? told : kinds.flatMap((code) => told.find((one) => one.code === code) ?? []);
  if (lines.length === 0) return null;
  const order = [...lines.filter((one) => WELL.has(one.code)), ...lines.filter((one) => !WELL.has(one.code))];
  return h("section", { class: "process" }, h("h3", { class: "debrief-h" }, t("debrief-process")), h("ol", { class: "steps" }, order.map((one) => remark(one, nameOf))));
}

/** @param {Told} one @param {((id: string) => string) | null} nameOf */
function remark({ code, args }, nameOf) {
  const key = `process-${code}`;
  const well = WELL.has(code);
  const fault = nameOf && args.fault && has(`${key}.named`) ? nameOf(String(args.fault)) : null;
  return h("li", { class: `remark remark-${well ? "right" : "note"}` }, glyph(well ? "right" : "note"),
    h("div", {}, fault ? see(`${key}.named`, { ...args, fault }) : see(`${key}.see`, { ...args, fault: "" }), ask(`${key}.ask`, args), doNext(`${key}.do`, args)));
}
