// @ts-check
// The subject's other hand: in the lap, out of sight; or reaching in from the near edge to the laptop or the unit's case.

import { attr, s } from "../dom.js";
import { drawPalm, enlarged } from "./palm.js";
/** @import { Part, Point } from '../types/names' */
/** @import { BenchView } from '../types/view' */

/** @typedef {import('../types/names').OtherHand} OtherHandPlace */

/** Where the hand's own middle lies when it touches a part, from that part's middle, and how it is turned (degrees). */
/** @type {Partial<Record<OtherHandPlace, { part: Part, at: (w: number, d: number) => Point, turn: number }>>} */
const REACH = {
  laptop: { part: "computer", at: (w, d) => [w * 0.2, d / 2 + 9], turn: -6 },
  case: { part: "recorder", at: (w, d) => [w * 0.06, d / 2 + 13], turn: -4 },
};

export class OtherHand {
  constructor() {
    const { skin, detail, sleeve, outline } = drawPalm("other-hand");
    const shadow = s("path", { class: "hand-shadow", d: outline, transform: "translate(-.5 .8)" });
    this.el = s("g", { class: "other-hand", visibility: "hidden" }, s("g", { transform: `scale(-1 1) ${enlarged}` }, shadow, skin, detail, sleeve));
  }

  /** @param {BenchView} bench */
  draw(bench) {
    const reach = REACH[bench.strap.other_hand];
    const part = reach && bench.parts.find((one) => one.id === reach.part);
    attr(this.el, "visibility", part ? "visible" : "hidden");
    if (!part) return;
    const [dx, dy] = reach.at(part.w, part.d);
    attr(this.el, "transform", `translate(${(part.x + dx).toFixed(2)} ${(part.y + dy).toFixed(2)}) rotate(${reach.turn})`);
  }
}
