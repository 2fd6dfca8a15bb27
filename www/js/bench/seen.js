// @ts-check
// A look at one place of the table, in words: what any eye could see there now, never why it is so.

import { listed, t } from "../text.js";
/** @import { End, LookAt, Part, Point, ReadonlyPoint } from '../types/names' */
/** @import { BenchView, PartAt } from '../types/view' */

/**
 * The places that one can look at, as the core names them.
 * @type {LookAt[]}
 */
export const SPOTS = ["recorder", "computer", "power_strip", "cable", "sensor", "subject", "around"];

const ROUND_CM = 5; // an eye's measure
const BESIDE_CM = 5;
const TAUT_CM = 4, LOOPS_CM = 23; // spare length of the sensor's cable at which it looks drawn tight, or lies in loops

/**
 * What is seen at a place of a bench, as sentences.
 * @param {BenchView} bench @param {LookAt} at
 */
export function seen(bench, at) {
  const { strap, hand, lamps, cable } = bench;
  /** @param {Part} id */
  const part = (id) => bench.parts.find((one) => one.id === id);
  /** @param {Part} id */
  const toCable = (id) => away(Math.min(...along(cable.points).map((point) => gap(part(id), point))));
  /** @param {End} id */
  const plug = (id) => plugged(bench, id);
  const height = Math.round(hand.height_cm);
  /** @type {Record<LookAt, () => (string | false)[]>} */
  const places = {
    recorder: () => [lit(bench, "recorder"), plug("power_recorder"), plug("power_wall"), plug("data_recorder"), plug("sensor")],
    computer: () => [plug("data_computer"), bench.other_program && t("seen-other_program")],
    power_strip: () => [lit(bench, "power_strip"), bench.charger_plugged && lit(bench, "charger"), plug("power_wall"), !bench.charger_plugged && t("seen-charger_out")],
    cable: () => [t(cable.slack_cm < TAUT_CM ? "seen-cable_taut" : cable.slack_cm > LOOPS_CM ? "seen-cable_loops" : "seen-cable_easy"),
      t("seen-cable_near", { strip: toCable("power_strip"), charger: toCable("charger") }), plug("sensor"), bench.plug_damp && t("seen-plug_damp"), cable.shield === "damaged" && t("seen-shield_torn")],
    sensor: () => [strap.on ? t("seen-sensor_on", { place: t(`strap-place-${strap.place}`), face: t(`seen-face-${strap.side}`), strap: t(`seen-strap-${strap.feel}`) }) : t("seen-sensor_off"), strap.on && bench.thumb_holds && t("seen-thumb"), bench.smeared && t("seen-smeared"), strap.shaded && t("seen-shaded")],
    subject: () => [t(`seen-hand-${hand.looks}`, { where: height === 0 ? t("hand-level") : t(height > 0 ? "hand-above" : "hand-below", { cm: Math.abs(height) }) }), bench.sleeve_tight && t("seen-sleeve_tight"), t(`seen-other-${strap.other_hand}`), t(`seen-voice-${bench.voice}`)],
    around: () => [t("seen-phone", { far: toCable("phone") }), t("seen-charger_lies", { far: toCable("charger") }), lamps.lamp ? t("seen-lamp_on", { far: away(gap(part("lamp"), [hand.finger_x, hand.finger_y])) }) : t("seen-lamp_off"), bench.shaken && t("seen-shaken")],
  };
  return (places[at]?.() ?? []).filter((line) => typeof line === "string");
}

/** @param {BenchView} bench @param {"recorder" | "power_strip" | "charger"} id */
const lit = ({ lamps }, id) => t(lamps[id] ? "seen-lit" : "seen-dark", { list: listed([t(`part-${id}`)]) });

/** @param {BenchView} bench @param {End} id */
function plugged({ ends }, id) {
  const socket = ends.find((end) => end.id === id)?.socket;
  return socket ? t("seen-plug_in", { end: t(`end-${id}`), socket: t(`socket-${socket}`) }) : t("seen-plug_out", { end: t(`end-${id}`) });
}

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
