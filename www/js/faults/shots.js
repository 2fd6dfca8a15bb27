// @ts-check
// What a fault looks like: a screen of the bench with it and one without it, with the same heart, and the table with the part where it
// is put right.

import { tablePicture } from "../bench/picture.js";
import { Bench } from "../core.js";
import { attr, flag, h, s, words } from "../dom.js";
import { placeOf } from "../help/places.js";
import { num, t } from "../text.js";
import { Segments } from "../widgets.js";
import { shownBench } from "./shown.js";
import { drawScreen, fillScreen } from "./strip.js";
/** @import { Action } from '../types/action' */
/** @import { FaultWords } from '../types/page' */
/** How a screen is shown. @typedef {{ shown_s: number | null, shown_range_v: number | null, shown_fresh: boolean }} Shown */
/** @import { InSight } from './insight.js' */

const SEED = "11"; // any will do: it is the same for all of them
const CLOSER = 1.9; // so many times as large a part of the table is drawn
const LEAST_RING_CM = 4, MOST_RING_CM = 11;

/** Filters that may hide something, turned off. @type {Action[]} */
const BARE = [{ do: "notch", hz: null }, { do: "low_pass", hz: null }];

/**
 * A bench with a fault, or without, whose screen is full, and how often the link was lost on it.
 * @param {FaultWords} fault @param {number | null} severity null for none @param {Shown} as @param {boolean} bare with the filters off
 */
function shownAt(fault, severity, as, bare) {
  const bench = Bench.fresh(shownBench(severity === null ? null : { name: fault.id, severity }, fault.sensor), SEED);
  if (severity !== null && as.shown_range_v !== null) bench.act({ do: "range", v: as.shown_range_v });
  if (bare) for (const deed of BARE) bench.act(deed);
  return { bench, losses: fillScreen(bench, as.shown_s, as.shown_fresh) };
}

/**
 * Where on the table the first deed that mends a fault is done, as a selector; null where that is nowhere on it: a request to the
 * subject, a setting, a recording.
 * @param {Action} deed
 */
function partOf(deed) {
  const { do: kind } = deed;
  if (kind === "rescan" || kind === "close_programs") return ".part-computer";
  if (kind === "dry_plug") return '.plug[data-end="sensor"]';
  if (kind === "swap_cable") return '[data-drag="part:cable1"]';
  if (kind === "other_hand") return ".other-hand";
  if (kind === "rest_arm" || kind === "push_up_sleeve" || kind === "hand_height") return ".part-hand .hit";
  if (["strap_on", "strap_off", "strap", "sensor_place", "sensor_side", "wipe_sensor", "shade"].includes(kind)) return ".sensor";
  if (["plug", "unplug", "wiggle", "switch", "move", "charger"].includes(kind)) return placeOf(deed).find;
  return null;
}

/** Whether the live trace tells a fault: with one that lies in the recording or the paper work it is the same. @param {FaultWords} fault */
export const hasTrace = (fault) => fault.impression !== "paper" || fault.shown_s !== null;

/**
 * One screen: a figure that draws itself when draw() is called; with another time base and range where those are told.
 * @param {FaultWords} fault @param {() => number | null} severity @param {() => string} caption @param {Shown} [as] @param {boolean} [bare] with the filters off
 */
export function shot(fault, severity, caption, as = fault, bare = false) {
  const canvas = h("canvas", { class: "shot", role: "img", "aria-label": `${fault.name}. ${severity() === null ? t("atlas-without") : fault.seen}` });
  const none = h("p", { class: "shot-none", hidden: true }, t("atlas-no_recorder"));
  const told = h("figcaption", {});
  const el = h("figure", {}, h("div", { class: "shot-field" }, canvas, none), told);
  const draw = () => {
    const { bench, losses } = shownAt(fault, severity(), as, bare);
    try {
      const { link, trace } = bench.view();
      words(told, [caption(), link.seen && t("atlas-across", { s: num(trace.time_base_s, trace.time_base_s < 1 ? 1 : 0) }), link.seen && losses > 0 && t("atlas-losses", { n: losses })].filter(Boolean).join(" · "));
      none.hidden = link.seen;
      flag(canvas, "is-empty", !link.seen);
      canvas.setAttribute("aria-label", `${fault.name}: ${told.textContent}. ${severity() === null ? "" : link.seen ? fault.seen : t("atlas-no_recorder")}`.trim());
      if (link.seen) drawScreen(bench, canvas);
    } finally {
      bench.free();
    }
  };
  return { el, draw };
}

/**
 * Draws the table with the fault into a place, larger about the part where it is put right, with a ring about that; nothing where that is
 * no part of the table.
 * @param {HTMLElement} place @param {FaultWords} fault @param {number} severity
 */
function drawPart(place, fault, severity) {
  const bench = Bench.fresh(shownBench({ name: fault.id, severity }, fault.sensor), SEED);
  const picture = tablePicture(bench.view());
  bench.free();
  const find = partOf(fault.mends);
  const part = find ? picture?.querySelector(find) : null;
  if (!picture || !part) return place.replaceChildren();
  place.replaceChildren(picture, h("p", { class: "quiet" }, t("atlas-part")));
  const svg = /** @type {SVGSVGElement} */ (picture);
  const box = part.getBoundingClientRect(), back = svg.getScreenCTM()?.inverse();
  const at = new DOMPoint(box.x + box.width / 2, box.y + box.height / 2).matrixTransform(back);
  const r = Math.min(MOST_RING_CM, Math.max(LEAST_RING_CM, (0.6 * Math.max(box.width, box.height) * (back?.a ?? 0))));
  svg.append(s("circle", { class: "shot-ring", cx: at.x.toFixed(1), cy: at.y.toFixed(1), r: r.toFixed(1) }));
  const { width, height } = svg.viewBox.baseVal;
  const w = width / CLOSER, d = height / CLOSER;
  /** @param {number} middle @param {number} shown @param {number} all */
  const from = (middle, shown, all) => Math.max(0, Math.min(all - shown, middle - shown / 2)).toFixed(1);
  attr(svg, "viewBox", `${from(at.x, w, width)} ${from(at.y, d, height)} ${w.toFixed(1)} ${d.toFixed(1)}`);
}

/**
 * The pictures of a card: what is seen first, and for who opens it the screen without the fault and the table.
 * @param {FaultWords} fault @param {(el: HTMLElement, make: () => unknown) => InSight} pictured makes a picture when it comes into sight
 */
export function shots(fault, pictured) {
  const [mild, strong] = fault.severity;
  let much = strong;
  const degreed = mild !== strong;
  const with_it = shot(fault, () => much, () => t(!degreed ? "atlas-with" : much === mild ? "atlas-with_mild" : "atlas-with_strong"));
  const without = shot(fault, () => null, () => t("atlas-without"));
  const bare = fault.shown_bare ? shot(fault, () => much, () => t("atlas-bare"), fault, true) : null;
  const table = h("div", { class: "shot-table" });
  const more = h("div", { class: "shots" }, bare?.el ?? null, without.el, table);
  const pictures = pictured(with_it.el, with_it.draw);
  pictured(more, () => {
    bare?.draw();
    without.draw();
    drawPart(table, fault, much);
  });
  if (degreed) {
    /** @param {string} value */
    const turn = (value) => {
      much = value === "mild" ? mild : strong;
      degree.set([["mild", t("atlas-mild")], ["strong", t("atlas-strong")]], value);
    };
    const degree = new Segments(t("atlas-degree"), (value) => {
      turn(value);
      pictures.alter(with_it.el);
      pictures.alter(more);
    });
    turn("strong");
    more.prepend(degree.el);
  }
  return { first: with_it.el, more };
}
