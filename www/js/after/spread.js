// @ts-check
// How far a count in a window of this length can be trusted: its band, and, once the truth may be shown, what other windows of
// the same length give by counting in the same record.

import { h, refill, s } from "../dom.js";
import { fixed, t } from "../text.js";
import { ratesText, windowText } from "../trace/units.js";
/** @import { Check } from '../types/check' */

const HEIGHT = 150, FOOT = 118, DOT = 3.2, PITCH = 2.15 * DOT, ROWS = 11, SIDE = 12;

/** @typedef {import('../types/check').Spread} SpreadFound */

export class Spread {
  constructor() {
    /** @type {SpreadFound | null} */
    this.spread = null;
    /** @type {number | null} */
    this.record = null;
    this.drawing = h("div", { class: "spread-drawing" });
    this.words = h("p", { class: "spread-words" });
    this.note = h("p", { class: "quiet" });
    this.el = h("section", { class: "spread", "aria-labelledby": "spread-h", hidden: true }, h("h3", { class: "debrief-h", id: "spread-h" }, t("spread-title")), this.words, this.drawing, this.note);
    new ResizeObserver(() => this.draw()).observe(this.drawing);
  }

  /** @param {Check} check */
  show({ spread, truth }) {
    const there = spread?.band ? spread : null;
    this.el.hidden = !there;
    this.spread = there;
    this.record = truth?.record?.rate ?? truth?.record_rate ?? null;
    if (!there) return;
    const { window_s: seconds, band, others, count } = there;
    this.words.textContent = t("spread-band", { n: count, s: windowText(seconds), rate: fixed(band.rate, 0), low: fixed(band.low, 0), high: fixed(band.high, 0), one: fixed((band.high - band.low) / 2, 1) });
    this.note.textContent = others ? t("spread-others", { n: others.n, s: windowText(seconds), rates: ratesText(others.q05, others.q95) }) : t("spread-later");
    this.draw();
  }

  draw() {
    const width = Math.round(this.drawing.clientWidth);
    const { spread, record } = this;
    if (!spread || width < 60) return;
    refill(this.drawing, [spread, record, width], () => picture(spread, record, width));
  }
}

/**
 * Where the dots lie: those of one rate in a heap over it, as many abreast as it takes for the heap to have room.
 * @param {number[]} rates @param {(rate: number) => number} x
 */
function stacks(rates, x) {
  /** @type {Map<number, number>} */
  const heaps = new Map();
  for (const rate of rates) {
    const place = Math.round(x(rate) / PITCH);
    heaps.set(place, (heaps.get(place) ?? 0) + 1);
  }
  return [...heaps].flatMap(([place, n]) => {
    const abreast = Math.ceil(n / ROWS);
    return Array.from({ length: n }, (_, k) => [place * PITCH + ((k % abreast) - (abreast - 1) / 2) * PITCH, FOOT - 6 - Math.floor(k / abreast) * PITCH]);
  });
}

/**
 * The distribution in px: a band, a stack of dots, the record's own rate.
 * @param {Pick<SpreadFound, "band" | "others">} spread @param {number | null} record @param {number} width
 */
export function picture({ band, others }, record, width) {
  const all = [band.low, band.high, ...(others?.values ?? []), ...(others && record ? [record] : [])];
  const low = Math.floor(Math.min(...all) - 2), high = Math.ceil(Math.max(...all) + 2);
  /** @param {number} rate */
  const x = (rate) => SIDE + ((rate - low) / (high - low)) * (width - 2 * SIDE);
  /** @param {number} rate */
  const at = (rate) => x(rate).toFixed(1);
  const step = [1, 2, 5, 10, 20, 50].find((one) => ((high - low) / one) * 38 <= width) ?? 100;
  const ticks = Array.from({ length: Math.floor(high / step) - Math.ceil(low / step) + 1 }, (_, k) => (Math.ceil(low / step) + k) * step);
  const dots = stacks(others?.values ?? [], x).map(([cx, cy]) => s("circle", { class: "spread-dot", cx: cx.toFixed(1), cy: cy.toFixed(1), r: DOT }));
  /** @param {number} rate @param {number} y @param {string} words @param {string} kind */
  const label = (rate, y, words, kind) => s("text", { class: `spread-label ${kind}`, x: Math.max(46, Math.min(width - 46, x(rate))).toFixed(1), y, "text-anchor": "middle" }, words);
  return s("svg", { class: "spread-svg", width, height: HEIGHT, viewBox: `0 0 ${width} ${HEIGHT}`, role: "img", "aria-label": t("spread-picture") },
    s("rect", { class: "spread-band", x: at(band.low), y: 24, width: (x(band.high) - x(band.low)).toFixed(1), height: FOOT - 24 }),
    s("path", { class: "spread-own", d: `M${at(band.rate)} 20V${FOOT}` }), label(band.rate, 14, t("spread-own"), "is-own"),
    dots,
    others && record && [s("path", { class: "spread-record", d: `M${at(record)} ${FOOT}V34` }), label(record, 31, t("spread-record"), "is-record")],
    s("path", { class: "spread-axis", d: `M${SIDE} ${FOOT}H${width - SIDE}${ticks.map((rate) => `M${at(rate)} ${FOOT}v-5`).join("")}` }),
    ticks.map((rate) => s("text", { class: "spread-tick", x: at(rate), y: FOOT + 16, "text-anchor": "middle" }, String(rate))),
    s("text", { class: "spread-tick", x: width - SIDE, y: FOOT + 31, "text-anchor": "end" }, t("spread-unit")));
}
