// @ts-check
// The subject's right hand, palm down, with sleeve, finger sensor and strap. Drawn in a frame of its own (cm) and then
// turned and scaled so that the index fingertip lies where the core says.

import { attr, flag, s } from "../dom.js";
import { t } from "../text.js";
import { inked, stroke } from "./marks.js";
import { drawPalm, enlarged, KNUCKLE, LARGER, TIP } from "./palm.js";
import { pen, smooth } from "./pen.js";
/** @import { Point, ReadonlyPoint } from '../types/names' */
/** @import { HandAt, Strap } from '../types/view' */

/** Where along the index finger the sensor sits: share of the way from tip to knuckle. */
const PLACE = { pulp: 0.12, middle: 0.42, joint: 0.27 };

/**
 * The cradle seen from above, in the finger's frame: round at the tip, open where the finger leaves it; and the rim of its hollow.
 * @param {() => number} off
 */
const CRADLE = (off) => smooth(/** @type {ReadonlyPoint[]} */ ([[-1.5, 2.05], [-1.68, 0.9], [-1.68, -0.6], [-1.35, -1.75], [-0.7, -2.4], [0, -2.6], [0.7, -2.4], [1.35, -1.75], [1.68, -0.6], [1.68, 0.9], [1.5, 2.05], [0.8, 1.85], [-0.8, 1.85]]).map(([x, y]) => /** @type {Point} */ ([x + off(), y + off()])), true);
const HOLLOW = "M-1.180 1.850C-1.350 .6 -1.400 -.5 -1.050 -1.400C-.7 -2.150 .7 -2.150 1.050 -1.400C1.400 -.5 1.350 .6 1.180 1.850";

/**
 * The hem of a cloth laid over the fingertip and the sensor, in the finger's frame.
 * @type {ReadonlyPoint[]}
 */
const CLOTH = [[-4.2, -3.2], [-1.6, -4.1], [1.4, -3.7], [4, -3.4], [4.5, -0.6], [4.1, 2.2], [4.6, 4.6], [1.7, 4.1], [-1.2, 4.8], [-4.3, 4.3], [-4, 1.6], [-4.7, -0.8]];

export class Hand {
  constructor() {
    this.bandKey = ""; // the breadth that the band is drawn for
    /** @type {Point} */
    this.spot = [0, 0]; // where the sensor lies on the table
    const p = pen("hand-sensor", 0.05);
    const { skin, detail, sleeve, outline } = drawPalm("hand");
    const [tipX, tipY] = TIP;
    this.dusk = s("g", { class: "dusk" }, s("path", { class: "dusk-fill", d: `M${tipX} ${tipY + 0.75}L${tipX + 0.07} ${tipY + 3}`, "stroke-width": 1.35, "stroke-linecap": "round" }),
      stroke(`M${tipX - 0.6} ${tipY + 1.1}l.9 -.8M${tipX - 0.6} ${tipY + 2}l1.200 -1M${tipX - 0.6} ${tipY + 2.9}l1.300 -1.100`, "thin"));
    this.motion = s("g", { class: "motion" }, stroke("M-5 -14.200q-1 1.600 -.6 3.600M-6.200 -14.800q-1.600 2.400 -1 5.200M-1.500 -15.700q-.9 -1 -2.300 -1M-.9 -17q-1.600 -1.500 -3.800 -1.400", "thin"));

    // The sensor is a cradle that the fingertip lies in, with a strap over it. In the finger's frame, the finger running down the page.
    // Its hollow is lined with the sensing film; turned away from the skin, one sees its hull instead.
    this.hull = s("g", { class: "sensor-disc" }, inked(() => CRADLE(p.off), "plug"));
    this.sensorFace = s("g", { class: "sensor-face" }, stroke(HOLLOW, "thin"), stroke("M-.75 -1.650h1.500M-1.100 -1.050h2.200M-1.150 -.450h2.300M-1.150 .15h2.300M-1.150 .75h2.300M-1.100 1.350h2.200", "film"));
    this.sensorBack = s("g", { class: "sensor-back" }, stroke("M0 -2.450V1.900", "thin"), stroke("M-1.250 -1.200l.35 -.6M-1.450 -.3l.6 -1M-1.450 .6l.6 -1M-1.400 1.400l.6 -1M.85 1.400l.6 -1M.85 .6l.6 -1M.85 -.3l.6 -1M.9 -1.200l.35 -.6", "thin faint"));
    this.strapOff = s("g", { class: "strap-off" }, stroke("M-1.600 .2c-2 -.5 -2.700 1.400 -4.600 .8M1.600 .2c1.800 .6 2.400 -1.200 4.400 -.4", "strap-tail"));
    this.below = s("g", { class: "sensor", data: { drag: "sensor:" } }, s("circle", { class: "hit", r: 3.2 }), this.strapOff, this.hull, this.sensorFace, this.sensorBack);
    this.band = s("g", { class: "band" });
    this.pinch = s("g", { class: "pinch" }, stroke("M-1.700 -1.500l.7 .6M1.700 -1.500l-.7 .6M-1.700 1.900l.7 -.6M1.700 1.900l-.7 -.6", "thin"));
    this.strapped = s("g", { class: "press sensor", data: { press: "tap:", drag: "sensor:" } }, s("circle", { class: "hit", r: 3.2 }), this.band, this.pinch,
      s("circle", { class: "tap-ring", r: 2.6 }), stroke("M-4.600 -.1H-2.600M-3.300 -.8L-2.500 -.1L-3.300 .6M4.600 -.1H2.600M3.300 -.8L2.500 -.1L3.300 .6", "push amber"), s("title", {}, t("list-tap_sensor")));

    const edge = smooth(CLOTH, true);
    this.cloth = s("g", { class: "cloth" }, s("path", { class: "hand-shadow", d: edge, transform: "translate(.4 .6)" }), s("path", { class: "cloth-fill", d: edge }), stroke(edge), stroke(smooth(CLOTH.map(([x, y]) => /** @type {Point} */ ([0.86 * x + p.off(), 0.86 * y + 0.25 + p.off()])), true), "thin faint dash"),
      stroke("M-2.600 -2.800C-2 -1.200 -1.700 1 -2 3.600M.2 -3.300C-.3 -1.400 -.1 1.800 .4 4M2.500 -2.400C1.900 -.6 2.200 1.600 2.900 3.200", "thin faint"));

    this.shadow = s("path", { class: "hand-shadow", d: outline });
    this.hit = s("path", { class: "hit", d: "M-9 -15.500H7V30H-9Z" });
    const larger = s("g", { transform: enlarged }, skin, detail, this.dusk, this.motion, sleeve);
    const shade = s("g", { transform: enlarged }, this.shadow);
    this.turned = s("g", {}, shade, larger, this.hit);
    this.el = s("g", { class: "part part-hand movable", data: { drag: "part:hand" } }, this.turned);
  }

  /**
   * Draws the hand as the core says; returns the point where the cable meets the sensor.
   * @param {HandAt} hand @param {Strap} strap @param {Point} [sensorAt] Where a hand has the sensor while it is dragged. @returns {Point}
   */
  draw(hand, strap, sensorAt) {
    const dx = hand.finger_x - hand.x, dy = hand.finger_y - hand.y;
    const scale = Math.hypot(dx, dy) / Math.hypot(...TIP) || 1;
    const turn = ((Math.atan2(dy, dx) - Math.atan2(TIP[1], TIP[0])) * 180) / Math.PI;
    attr(this.el, "transform", `translate(${hand.x.toFixed(2)} ${hand.y.toFixed(2)})`);
    attr(this.turned, "transform", `rotate(${turn.toFixed(2)}) scale(${scale.toFixed(3)})`);
    const lift = Math.max(0, hand.height_cm + 2);
    attr(this.shadow, "transform", `translate(${(0.5 + lift * 0.06).toFixed(2)} ${(0.7 + lift * 0.09).toFixed(2)})`);
    flag(this.el, "is-moving", hand.looks === "moving");
    flag(this.el, "is-dusky", hand.looks === "dusky");

    // the index finger's own direction on the table, from the tip to the knuckle
    const rad = (turn * Math.PI) / 180;
    /** @type {(point: ReadonlyPoint) => Point} */
    const map = ([x, y]) => [hand.x + scale * (x * Math.cos(rad) - y * Math.sin(rad)), hand.y + scale * (x * Math.sin(rad) + y * Math.cos(rad))];
    const tip = map(TIP), root = map(KNUCKLE);
    const along = strap.on ? (PLACE[strap.place] ?? PLACE.pulp) : 0;
    const spot = sensorAt ?? (strap.on ? [tip[0] + (root[0] - tip[0]) * along, tip[1] + (root[1] - tip[1]) * along] : /** @type {Point} */ ([tip[0] - 8, tip[1] - 1]));
    this.spot = spot;
    const finger = strap.on ? (Math.atan2(root[1] - tip[1], root[0] - tip[0]) * 180) / Math.PI - 90 : -24;
    const place = `translate(${spot.map((v) => v.toFixed(2))}) rotate(${finger.toFixed(1)}) scale(${(scale * LARGER).toFixed(3)})`;
    for (const el of [this.below, this.strapped, this.cloth]) {
      attr(el, "transform", place);
      for (const [name, on] of /** @type {[string, boolean][]} */ ([["is-on", strap.on], ["is-away", strap.side === "away"], ["is-tight", strap.on && strap.feel === "tight"], ["is-shaded", strap.shaded]])) flag(el, name, on);
    }
    this.drawBand(strap);
    return spot;
  }

  /**
   * The strap over the finger, from one side of the cradle to the other: a loose one stands off, a tight one cuts in.
   * @param {Strap} strap
   */
  drawBand(strap) {
    const half = 2.15 - 0.85 * strap.tightness;
    const key = half.toFixed(2);
    if (this.bandKey === key) return;
    this.bandKey = key;
    const p = pen("band", 0.035);
    this.band.replaceChildren(...inked(() => p.rect(-half, -0.65, 2 * half, 1.5, 0.35), "plug").flat(), stroke(`M${-half + 0.25} -.2H${half - 0.25}M${-half + 0.25} .4H${half - 0.25}`, "thin faint"));
  }
}
