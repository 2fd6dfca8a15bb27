// @ts-check
// The parts of a remark: its sign, what was seen, the question, the next action; a part without words is left out.

import { h } from "../dom.js";
import { has, t } from "../text.js";
/** @import { Args, Verdict } from '../types/names' */
/** @import { Kid } from '../types/page' */

const GLYPHS = { right: "✓", edge: "≈", wrong: "?", note: "•", missing: "○" };

/** @param {Verdict} verdict */
export const glyph = (verdict) => h("span", { class: "glyph", "aria-hidden": "true" }, GLYPHS[verdict] ?? "•");

/** @type {(kind: string) => (key: string, args: Args) => Kid} */
const line = (kind) => (key, args) => has(key) && h("p", { class: kind }, t(key, args));

/** Each takes a message's key and its arguments. */
export const see = line("see");
export const ask = line("ask pencil");
export const doNext = line("do");
/**
 * Words of the instructor's own, as they are.
 * @param {string} words
 */
export const own = (words) => words.trim().split("\n").map((line) => h("p", { class: "pencil own-words" }, line));
