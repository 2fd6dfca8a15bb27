// @ts-check
// How cables lie: a smooth slack curve between two plugs, or through the points of the sensor's cable.

import { smooth } from "./pen.js";
/** @import { Point, ReadonlyPoint } from '../types/names' */

/** @param {ReadonlyPoint} a @param {ReadonlyPoint} b @param {number} k @returns {Point} */
const add = ([x, y], [u, v], k) => [x + u * k, y + v * k];
/** @param {number} v */
const r2 = (v) => v.toFixed(2);

/**
 * A curve that leaves a along da and reaches b against db; unit vectors point away from the plugs.
 * @param {Point} a @param {ReadonlyPoint} da @param {Point} b @param {ReadonlyPoint} db @param {number} [slack]
 */
export function slackCurve(a, da, b, db, slack = 0.45) {
  const reach = 5 + slack * Math.hypot(b[0] - a[0], b[1] - a[1]);
  const c1 = add(a, da, reach), c2 = add(b, db, reach);
  return `M${a.map(r2)}C${c1.map(r2)} ${c2.map(r2)} ${b.map(r2)}`;
}

const LOOP_CM = 23; // length of cable in one loop of the coil
const MOST_LOOPS = 4;

/**
 * The sensor's cable from plug to sensor, out of the plug along `aim`: a little sag between its points, the spare length coiled at the first handle.
 * @param {Point[]} points @param {ReadonlyPoint} aim @param {number} slackCm
 */
export function sensorCurve(points, aim, slackCm) {
  const loops = Math.min(MOST_LOOPS, Math.round(Math.max(0, slackCm) / LOOP_CM));
  /** @type {Point[]} */
  const path = [points[0], ...turning(points[0], aim, points[1])];
  points.slice(1).forEach((b, i) => {
    const a = points[i];
    const len = Math.hypot(b[0] - a[0], b[1] - a[1]);
    // Beside the plug it bows away from the part that the plug is in.
    const side = i === 0 ? Math.sign(aim[1] * (b[0] - a[0]) - aim[0] * (b[1] - a[1])) || 1 : i % 2 ? -1 : 1;
    const sag = Math.min(3, len * 0.07) * side;
    if (len > 4) path.push([(a[0] + b[0]) / 2 - ((b[1] - a[1]) / len) * sag, (a[1] + b[1]) / 2 + ((b[0] - a[0]) / len) * sag]);
    path.push(...(i === 0 && loops > 0 ? coil(a, b, points[2], loops) : [b]));
  });
  return smooth(path);
}

/**
 * How a cable turns on leaving its plug: straight on, or round in a small bow when it has to go back past the plug.
 * @param {ReadonlyPoint} from @param {ReadonlyPoint} aim @param {ReadonlyPoint} to @returns {Point[]}
 */
function turning(from, aim, to) {
  const [u, v] = towards(from, to);
  if (u * aim[0] + v * aim[1] > 0.1) return [add(from, aim, 1.4)];
  /** @type {Point} */
  const side = aim[0] * v - aim[1] * u >= 0 ? [-aim[1], aim[0]] : [aim[1], -aim[0]];
  return [add(add(from, aim, 2.4), side, 1), add(add(from, aim, 2.7), side, 4), add(add(from, aim, -0.4), side, 6.2)];
}

/**
 * Loops around a handle, each a little off the last as a hand lays them; coming from one point, leaving for another.
 * @param {ReadonlyPoint} from @param {ReadonlyPoint} at @param {ReadonlyPoint} to @param {number} loops
 */
function coil(from, [x, y], to, loops) {
  const start = Math.atan2(from[1] - y, from[0] - x);
  const end = Math.atan2(to[1] - y, to[0] - x);
  const whole = loops * 2 * Math.PI + ((end - start + 4 * Math.PI) % (2 * Math.PI));
  const steps = Math.ceil(whole / 0.6);
  /** @type {Point[]} */
  const round = [];
  for (let k = 0; k <= steps; k += 1) {
    const u = k / steps, angle = start + u * whole;
    const r = 3.2 + 2.6 * Math.abs(u - 0.5) + 0.75 * Math.sin(angle * 0.37 + 1);
    round.push([x + Math.cos(angle) * r + 0.5 * Math.sin(u * 7), y + Math.sin(angle) * r * 0.86 + 0.4 * Math.cos(u * 9)]);
  }
  return round;
}

/**
 * The unit vector from a to b.
 * @param {ReadonlyPoint} a @param {ReadonlyPoint} b @returns {Point}
 */
export function towards(a, b) {
  const len = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  return [(b[0] - a[0]) / len, (b[1] - a[1]) / len];
}
