// @ts-check
// What lies on the table, each drawn from above around its own middle: w and d are its footprint in cm.

import { s } from "../dom.js";
import { t } from "../text.js";
import { inked, label, stroke } from "./marks.js";
import { pen } from "./pen.js";
/** @import { Part } from '../types/names' */
/** @import { Kid } from '../types/page' */
/** @import { PartAt } from '../types/view' */

/** @param {number} w @param {number} d @param {number} [lift] */
const shadow = (w, d, lift = 1) => s("rect", { class: "shade", x: -w / 2 + 0.6 * lift, y: -d / 2 + 1.1 * lift, width: w, height: d, rx: 1.6 });

/**
 * A rocker switch that can be pressed; `id` as in the switch action.
 * @param {string} id @param {number} x @param {number} y
 */
function rocker(id, x, y) {
  const p = pen(`switch-${id}`, 0.05);
  return s("g", { class: "press rocker", data: { press: `switch:${id}` }, transform: `translate(${x} ${y})` },
    s("rect", { class: "hit", x: -3.4, y: -3, width: 6.8, height: 6 }),
    inked(() => p.rect(-2, -1.2, 4, 2.4, 0.6), "body-2"),
    s("g", { class: "rocker-on" }, stroke(p.rect(0, -0.9, 1.7, 1.8, 0.4), "solid"), stroke("M-1.100 -.5V.5")),
    s("g", { class: "rocker-off" }, stroke(p.rect(-1.7, -0.9, 1.7, 1.8, 0.4), "solid"), stroke("M.6 0a.5 .5 0 1 0 1 0a.5 .5 0 1 0 -1 0")),
    s("title", {}, t("bench-press_switch")));
}

/**
 * A lamp: a ring when dark; when lit a glow, a filled dot and rays, so that colour is not alone.
 * @param {string} id @param {number} x @param {number} y
 */
function lamp(id, x, y) {
  let rays = "";
  for (let i = 0; i < 8; i += 1) {
    const a = (i / 8) * 2 * Math.PI + 0.2;
    rays += `M${(1.3 * Math.cos(a)).toFixed(2)} ${(1.3 * Math.sin(a)).toFixed(2)}L${(2.1 * Math.cos(a)).toFixed(2)} ${(2.1 * Math.sin(a)).toFixed(2)}`;
  }
  return s("g", { class: "pilot", data: { lamp: id }, transform: `translate(${x} ${y})` },
    s("circle", { class: "pilot-glow", r: 4.2, fill: "url(#glow)" }), s("path", { class: "pilot-rays", d: rays }), s("circle", { class: "pilot-bulb", r: 0.8 }));
}

/**
 * The recorder: a flat box with its inputs at the short side that looks to the hand, behind a seam of their own; power and data at the far
 * side, the calibrator at the near one. What is written on it has a place that no line crosses, lying or turned.
 * @param {number} w @param {number} d
 */
function recorder(w, d) {
  const p = pen("recorder");
  const x = -w / 2, y = -d / 2, seam = w / 2 - 7.6;
  let ribs = "";
  for (const at of [0.9, 1.6]) ribs += p.line(x + at, y + 2.6, x + at, d / 2 - 2.6);
  const panel = [-4.6, 1.5, seam + 3, d / 2 - 2.9]; // switch and lamp
  return [shadow(w, d), inked(() => p.rect(x, y, w, d, 2)), stroke(ribs, "thin"),
    stroke(p.line(seam, y + 0.5, seam, d / 2 - 0.5) + p.line(seam + 0.6, y + 0.5, seam + 0.6, d / 2 - 0.5), "thin"),
    stroke(p.rect(panel[0], panel[1], panel[2], panel[3], 0.8), "thin"),
    stroke(p.rect(panel[0] + 0.5, panel[1] + 0.5, panel[2] - 1, panel[3] - 1, 0.6), "thin faint"),
    label(t("part-recorder"), x + 3.6, -0.7, "start name on-body", -w / 2 - 3.2, y),
    rocker("recorder", panel[0] + 4, panel[1] + panel[3] / 2), lamp("recorder", panel[0] + panel[2] - 3.4, panel[1] + panel[3] / 2)];
}

/** @param {number} w @param {number} d */
function computer(w, d) {
  const p = pen("computer");
  const x = -w / 2, hinge = -d / 2 + 3, top = hinge - 8; // the screen leans back over the far edge of its footprint
  let keys = "";
  for (let row = 0; row < 4; row += 1) {
    for (let col = 0; col < 12; col += 1) keys += p.rect(x + 5.4 + col * ((w - 8.4) / 12), hinge + 1.8 + row * 2, (w - 8.4) / 12 - 0.6, 1.35, 0.3);
  }
  return [shadow(w, d), inked(() => p.rect(x, hinge, w, d / 2 - hinge, 1.2)), stroke(keys, "thin faint"),
    stroke(p.rect(-4.2, hinge + 10.4, 8.4, Math.max(2.4, d / 2 - hinge - 11.6), 0.5), "thin"),
    s("path", { class: "fill-screen", d: `M${x + 1.8} ${top}H${w / 2 - 1.8}L${w / 2} ${hinge}H${x}Z` }),
    stroke(`M${x + 1.8} ${top}H${w / 2 - 1.8}L${w / 2} ${hinge}H${x}Z`), stroke(p.line(x + 2.6, top + 0.9, w / 2 - 2.6, top + 0.9), "thin faint"),
    s("g", { class: "press screen", data: { press: "rescan:" } }, s("rect", { class: "hit", x, y: top, width: w, height: hinge - top }),
      s("g", { class: "screen-seen" }, stroke(`M${x + 2.5} ${hinge - 2.6}h2c.8 0 1-4 1.600-4s.9 2.600 1.500 2.600s.9-.9 1.300-.9s1 2.300 2 2.300h1.500`, "amber"), label(t("bench-screen_seen"), x + 13.4, hinge - 2.6, "start small")),
      s("g", { class: "screen-none" }, stroke(`M${x + 2.5} ${hinge - 2.6}h9`, "thin dash"), label(t("bench-screen_none"), x + 13.4, hinge - 2.6, "start small")),
      s("title", {}, t("list-rescan")))];
}

/** @param {number} w @param {number} d */
function powerStrip(w, d) {
  const p = pen("power_strip");
  return [shadow(w, d), inked(() => p.rect(-w / 2, -d / 2, w, d, 2)), stroke(p.rect(-w / 2 + 1, -d / 2 + 1, w - 2, d - 2, 1.4), "thin faint")];
}

/** @param {number} w @param {number} d */
function charger(w, d) {
  const p = pen("charger");
  return [shadow(w, d, 1.3), inked(() => p.rect(-w / 2, -d / 2, w, d, 1.6)), stroke(p.rect(-w / 2 + 1.2, -d / 2 + 1.2, w - 2.4, d - 2.4, 1), "thin faint"),
    stroke(p.hatch(-w / 2 + 1.8, -d / 2 + 1.8, w - 5, d - 3.6, 0.8, 0.5), "thin faint"), lamp("charger", w / 2 - 2.4, d / 2 - 2)];
}

/** @param {number} w @param {number} d */
function phone(w, d) {
  const p = pen("phone");
  return [shadow(w, d, 0.7), inked(() => p.rect(-w / 2, -d / 2, w, d, 1.4)), s("path", { class: "fill-screen", d: p.rect(-w / 2 + 0.6, -d / 2 + 1.6, w - 1.2, d - 3.2, 0.4) }),
    stroke(p.rect(-w / 2 + 0.6, -d / 2 + 1.6, w - 1.2, d - 3.2, 0.4), "thin"), stroke(p.hatch(-w / 2 + 1, -d / 2 + 3, w * 0.4, d * 0.4, 0.9, 0.6), "thin faint")];
}

/** @param {number} w @param {number} d */
function deskLamp(w, d) {
  const p = pen("lamp");
  const r = Math.min(w, d) / 2;
  const [bx, by, hx, hy] = [r * 0.42, r * 0.4, -r * 0.28, -r * 0.26]; // the foot, and the head at the end of the arm; the rays stand out to where its name is, turned
  let rays = "";
  for (let i = 0; i < 7; i += 1) {
    const a = Math.PI * (0.72 + i * 0.14);
    rays += `M${(hx + Math.cos(a) * r * 0.76).toFixed(2)} ${(hy + Math.sin(a) * r * 0.76).toFixed(2)}l${(Math.cos(a) * r * 0.16).toFixed(2)} ${(Math.sin(a) * r * 0.16).toFixed(2)}`;
  }
  return [s("circle", { class: "lamp-pool", cx: hx, cy: hy, r: r * 3.1, fill: "url(#glow)" }), s("circle", { class: "shade", cx: bx + 0.6, cy: by + 1.1, r: r * 0.52 }), inked(() => p.circle(bx, by, r * 0.52)), stroke(p.circle(bx, by, r * 0.34), "thin faint"),
    s("circle", { class: "shade", cx: hx + 1, cy: hy + 1.8, r: r * 0.62 }), stroke(`M${bx - 0.5} ${by + 0.5}L${hx - 0.5} ${hy + 0.5}M${bx + 0.5} ${by - 0.5}L${hx + 0.5} ${hy - 0.5}`),
    inked(() => p.circle(hx, hy, r * 0.62)), stroke(p.circle(hx, hy, r * 0.46), "thin faint"), s("circle", { class: "lamp-bulb", cx: hx, cy: hy, r: r * 0.3 }), stroke(p.circle(hx, hy, r * 0.12), "thin"), stroke(rays, "thin faint lamp-rays")];
}

/** @param {number} w @param {number} d @param {string} id */
function plain(w, d, id) {
  const p = pen(id);
  return [shadow(w, d), inked(() => p.rect(-w / 2, -d / 2, w, d, 1)), label(t(`part-${id}`), 0, 1)];
}

/** @type {Partial<Record<Part, (w: number, d: number, id: string) => Kid[]>>} */
const ART = { recorder, computer, power_strip: powerStrip, charger, phone, lamp: deskLamp };

/**
 * The drawing of a part; a part unknown here is a plain box with its name.
 * @param {PartAt} part
 */
export const drawPart = (part) =>
  s("g", { class: `part part-${part.id}${part.movable ? " movable" : ""}`, data: { drag: part.movable ? `part:${part.id}` : "" } },
    (ART[part.id] ?? plain)(part.w, part.d, part.id));
