// @ts-check
// How a hand is drawn, palm down with its sleeve, in a frame of its own (cm). A right hand; mirrored, it is a left one.

import { s } from "../dom.js";
import { stroke } from "./marks.js";
import { pen, smooth } from "./pen.js";
/** @import { Point, ReadonlyPoint } from '../types/names' */

/**
 * The index fingertip.
 * @type {ReadonlyPoint}
 */
export const TIP = [-3.1, -13.1];
/** Drawn larger than life from the fingertip on, as a hand that one draws is. */
export const LARGER = 1.22;
/** The index knuckle, as it is drawn. */
export const KNUCKLE = /** @type {Point} */ ([-2.6, -4.2].map((v, i) => TIP[i] + LARGER * (v - TIP[i])));

/** @typedef {{ from: ReadonlyPoint, tip: ReadonlyPoint, breadth: number[] }} Finger */

/**
 * Each finger: where it leaves the palm, its tip, and its breadth at the web, both joints and behind the nail.
 * @type {Record<"index" | "middle" | "ring" | "little", Finger>}
 */
const FINGERS = {
  index: { from: [-2.85, -6.6], tip: TIP, breadth: [2, 2.05, 1.85, 1.55] },
  middle: { from: [-0.42, -6.9], tip: [-0.6, -14.5], breadth: [2, 2.08, 1.9, 1.6] },
  ring: { from: [1.95, -6.6], tip: [2.55, -13.3], breadth: [1.95, 2, 1.8, 1.5] },
  little: { from: [4.05, -5.3], tip: [5.5, -10.3], breadth: [1.75, 1.7, 1.54, 1.3] },
};
const JOINTS = [0, 0.42, 0.74, 0.92];

/**
 * A point of a finger: `along` from its web to its tip, `aside` breadths to its right.
 * @param {Finger} finger @param {number} along @param {number} aside @returns {Point}
 */
function onFinger({ from, tip, breadth }, along, aside) {
  const [dx, dy] = [tip[0] - from[0], tip[1] - from[1]];
  const len = Math.hypot(dx, dy);
  const k = JOINTS.findLastIndex((joint) => joint <= along);
  const next = Math.min(k + 1, JOINTS.length - 1);
  const u = next === k ? 0 : (along - JOINTS[k]) / (JOINTS[next] - JOINTS[k]);
  const wide = breadth[k] + u * (breadth[next] - breadth[k]);
  return [from[0] + along * dx - (dy / len) * aside * wide, from[1] + along * dy + (dx / len) * aside * wide];
}

/**
 * Up the left side of a finger, round its tip, and down the right side.
 * @param {Finger} finger
 */
const around = (finger) => [...[0.03, ...JOINTS.slice(1)].map((u) => onFinger(finger, u, -0.5)), onFinger(finger, 0.985, -0.27), finger.tip, onFinger(finger, 0.985, 0.27), ...[...JOINTS.slice(1).reverse(), 0.03].map((u) => onFinger(finger, u, 0.5))];

/** @type {ReadonlyPoint[]} */
const THUMB = [[-3.7, 3], [-5.1, 1.3], [-6.5, -0.9], [-7.7, -3.1], [-8.35, -4.6], [-8.3, -5.6], [-7.75, -5.95], [-7.1, -5.55], [-6.45, -4.1], [-5.75, -2.75], [-4.85, -2]];
/** @type {ReadonlyPoint[]} */
const OUTLINE = [
  [-2.9, 14], [-2.85, 9], [-2.95, 5.2], ...THUMB, [-4.1, -3.2], ...around(FINGERS.index), [-1.63, -6.5],
  ...around(FINGERS.middle), [0.78, -6.7], ...around(FINGERS.ring), [3, -5.7], ...around(FINGERS.little), [4.75, -3.2], [4.85, -0.6], [4.25, 2.4], [3.2, 4.9], [3.2, 8], [3.9, 14],
];
const SLEEVE = "M-4.200 6.900C-1.500 6 2.300 6 4.700 7C6.200 13 9.500 26 13 56H-7.500C-5.500 36 -4.100 16 -4.200 6.900Z";

/**
 * A short arc across a finger, bowed towards the palm.
 * @param {Finger} finger @param {number} along @param {number} [half]
 */
function crease(finger, along, half = 0.34) {
  const [a, b, dip] = [onFinger(finger, along, -half), onFinger(finger, along, half), onFinger(finger, along - 0.05, 0)];
  return `M${a}Q${dip} ${b}`;
}

/**
 * The nail: a rounded plate behind the tip.
 * @param {Finger} finger
 */
function nail(finger) {
  /** @param {number} along @param {number} aside */
  const p = (along, aside) => onFinger(finger, along, aside);
  return `M${p(0.85, -0.27)}C${p(0.83, -0.1)} ${p(0.83, 0.1)} ${p(0.85, 0.27)}L${p(0.955, 0.3)}C${p(0.985, 0.12)} ${p(0.985, -0.12)} ${p(0.955, -0.3)}Z`;
}

/**
 * A hand's drawing by the name of its pen: its groups, and the outline for a shadow.
 * @param {string} name
 */
export function drawPalm(name) {
  const p = pen(name, 0.05);
  const shape = smooth(OUTLINE);
  const again = smooth(OUTLINE.map(([x, y]) => [x + p.off(), y + p.off()]));
  const all = Object.values(FINGERS);
  const creases = all.map((finger) => crease(finger, 0.42, 0.3) + crease(finger, 0.74, 0.26)).join("");
  const knuckles = "M-3.400 -4.100Q-2.700 -4.700 -1.900 -4.200M-1.100 -4.800Q-.3 -5.400 .5 -4.800M1.200 -4.500Q1.900 -5 2.600 -4.300M3.300 -3.100Q3.900 -3.500 4.400 -2.800M-6.900 -2.900Q-6.300 -3.100 -6 -3.500";
  const sinews = "M-2.500 -3.200C-2.200 -1.800 -1.800 -.6 -1.400 .4M-.3 -3.900C-.1 -2.400 0 -1.200 0 0M1.700 -3.500C1.500 -2.200 1.300 -1 1.100 .1";
  const thumbNail = "M-8.200 -4.900C-8 -5.300 -7.500 -5.500 -7.200 -5.300L-7.600 -5.800C-7.900 -5.900 -8.200 -5.700 -8.250 -5.400Z";
  const skin = s("g", {}, s("path", { class: "skin", d: shape }), s("path", { class: "ln", d: shape }), s("path", { class: "ln ln-2", d: again }));
  const detail = s("g", {}, stroke(creases + knuckles, "thin"), stroke(all.map(nail).join("") + thumbNail, "nail"), stroke(sinews, "thin faint"),
    stroke("M4.100 -1.900l-.9 1.500M4.300 -.7l-1.200 2M4.100 .9l-1.100 1.800M3.700 2.300l-.8 1.300", "thin faint"), stroke("M-2.400 5.600Q.2 6.400 2.700 5.500", "thin faint"));
  const sleeve = s("g", {}, s("path", { class: "fill-body-2", d: SLEEVE }), stroke(SLEEVE), stroke("M-4.200 8.700C-1.500 7.800 2.500 7.800 5.200 8.800", "thin"), stroke("M-2.600 9.600l-.3 4M.6 9.200l.2 5M3.600 9.600l.8 4", "thin faint"));
  return { skin, detail, sleeve, outline: `${shape}Z${SLEEVE}` };
}

/** Draws what is given larger from the fingertip on. */
export const enlarged = `translate(${TIP}) scale(${LARGER}) translate(${TIP.map((v) => -v)})`;
