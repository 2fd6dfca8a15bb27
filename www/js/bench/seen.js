// @ts-check
// A look around the table, in words: what any eye could see there now, always told in the same order, never why it is so.

import { listed, t } from "../text.js";
/** @import { Part, Point, ReadonlyPoint } from '../types/names' */
/** @import { BenchView, PartAt } from '../types/view' */

const ROUND_CM = 5; // an eye's measure
const BESIDE_CM = 5;
const TAUT_CM = 4, LOOPS_CM = 23; // spare length of the pad's lead at which it looks drawn tight, or lies in loops

/**
 * A bench as sentences.
 * @param {BenchView} bench
 */
export function seen(bench) {
  /** @param {Part} id */
  const part = (id) => bench.parts.find((one) => one.id === id);
  const { strap, hand, lamps, lead } = bench;
  const pilots = /** @type {const} */ (["unit", "strip", "charger"]);
  const loose = bench.ends.filter((end) => !end.socket).map((end) => t(`seen-end-${end.id}`));
  /** @param {Part} id */
  const toLead = (id) => away(Math.min(...along(lead.points).map((point) => gap(part(id), point))));
  const height = Math.round(hand.height_cm);
  return [
    sides("seen-lit", pilots.filter((id) => lamps[id])), sides("seen-dark", pilots.filter((id) => !lamps[id])),
    loose.length > 0 ? t("seen-loose", { list: listed(loose) }) : t("seen-all_in"),
    t(lead.slack_cm < TAUT_CM ? "seen-lead_taut" : lead.slack_cm > LOOPS_CM ? "seen-lead_loops" : "seen-lead_easy"),
    t("seen-lead_near", { strip: toLead("strip"), charger: toLead("charger") }),
    t("seen-phone", { far: toLead("phone") }),
    lamps.lamp ? t("seen-lamp_on", { far: away(gap(part("lamp"), [hand.finger_x, hand.finger_y])) }) : t("seen-lamp_off"),
    t(`seen-hand-${hand.looks}`, { where: height === 0 ? t("hand-level") : t(height > 0 ? "hand-above" : "hand-below", { cm: Math.abs(height) }) }),
    strap.on ? t("seen-pad_on", { place: t(`strap-place-${strap.place}`), face: t(`seen-face-${strap.face}`), strap: t(`seen-strap-${strap.feel}`) }) : t("seen-pad_off"),
    strap.shaded && t("seen-shaded"),
    t(`seen-other-${strap.other_hand}`),
    t(`seen-voice-${bench.voice}`),
  ].filter((line) => typeof line === "string");
}

/** @param {string} key @param {readonly Part[]} ids */
const sides = (key, ids) => ids.length > 0 && t(key, { list: listed(ids.map((id) => t(`part-${id}`))) });

/** @param {number} cm */
const away = (cm) => (cm < BESIDE_CM ? t("seen-beside") : t("seen-away", { cm: Math.round(cm / ROUND_CM) * ROUND_CM }));

/**
 * How far a point lies outside a part's footprint, cm.
 * @param {PartAt | undefined} part @param {ReadonlyPoint} point
 */
const gap = (part, [x, y]) => (part ? Math.hypot(Math.max(0, Math.abs(x - part.x) - part.w / 2), Math.max(0, Math.abs(y - part.y) - part.d / 2)) : Infinity);

/**
 * Points along a line of points, about a centimetre apart.
 * @param {Point[]} points
 */
function along(points) {
  return points.slice(1).flatMap(([x, y], i) => {
    const [x0, y0] = points[i];
    const steps = Math.max(1, Math.ceil(Math.hypot(x - x0, y - y0)));
    return Array.from({ length: steps + 1 }, (_, k) => /** @type {Point} */ ([x0 + ((x - x0) * k) / steps, y0 + ((y - y0) * k) / steps]));
  });
}
