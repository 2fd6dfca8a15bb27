// @ts-check
// The drawn line: paths with the slight, repeatable unsteadiness of a stylus. Decoration only; lengths in cm of table.

/** @import { Point, ReadonlyPoint } from '../types/names' */

/**
 * A small repeatable stream of numbers in 0..1 for a name, so that a part looks the same each time.
 * @param {string} name
 */
function stream(name) {
  let state = 2166136261;
  for (const char of name) state = Math.imul(state ^ char.charCodeAt(0), 16777619);
  return () => {
    state = Math.imul(state ^ (state >>> 15), 2246822519) + 374761393;
    return ((state ^ (state >>> 13)) >>> 0) / 4294967296;
  };
}

/** @param {number} v */
const r2 = (v) => Math.round(v * 100) / 100;
/** @param {ReadonlyPoint} point */
const at = ([x, y]) => `${r2(x)} ${r2(y)}`;

/**
 * A smooth path through points (Catmull-Rom as cubics).
 * @param {readonly ReadonlyPoint[]} points @param {boolean} [closed] @param {number} [tension]
 */
export function smooth(points, closed = false, tension = 6) {
  const n = points.length;
  /** @param {number} i */
  const get = (i) => (closed ? points[(i + n) % n] : points[Math.max(0, Math.min(n - 1, i))]);
  let d = `M${at(points[0])}`;
  for (let i = 0; i < (closed ? n : n - 1); i += 1) {
    const [p0, p1, p2, p3] = [get(i - 1), get(i), get(i + 1), get(i + 2)];
    /** @type {Point} */
    const c1 = [p1[0] + (p2[0] - p0[0]) / tension, p1[1] + (p2[1] - p0[1]) / tension];
    /** @type {Point} */
    const c2 = [p2[0] - (p3[0] - p1[0]) / tension, p2[1] - (p3[1] - p1[1]) / tension];
    d += `C${at(c1)} ${at(c2)} ${at(p2)}`;
  }
  return closed ? `${d}Z` : d;
}

/** @typedef {ReturnType<typeof pen>} Pen */

/**
 * A pen of its own unsteadiness: `shake` in cm.
 * @param {string} name @param {number} [shake]
 */
export function pen(name, shake = 0.11) {
  const next = stream(name);
  const off = () => (next() - 0.5) * 2 * shake;

  /** @param {number} x1 @param {number} y1 @param {number} x2 @param {number} y2 */
  const line = (x1, y1, x2, y2) => {
    const len = Math.hypot(x2 - x1, y2 - y1);
    const n = Math.max(2, Math.round(len / 5));
    /** @type {Point[]} */
    const points = [];
    for (let i = 0; i <= n; i += 1) points.push([x1 + ((x2 - x1) * i) / n + off(), y1 + ((y2 - y1) * i) / n + off()]);
    return smooth(points);
  };

  /** @param {number} x @param {number} y @param {number} w @param {number} h @param {number} [r] */
  const rect = (x, y, w, h, r = 1) => {
    /** @type {Point[]} */
    const points = [];
    /** @type {(x1: number, y1: number, x2: number, y2: number) => void} */
    const side = (x1, y1, x2, y2) => {
      const n = Math.max(2, Math.round(Math.hypot(x2 - x1, y2 - y1) / 4));
      for (let i = 0; i <= n; i += 1) points.push([x1 + ((x2 - x1) * i) / n + off(), y1 + ((y2 - y1) * i) / n + off()]);
    };
    /** @type {(cx: number, cy: number, from: number) => void} */
    const corner = (cx, cy, from) => {
      const a = from + Math.PI / 4;
      points.push([cx + r * Math.cos(a), cy + r * Math.sin(a)]);
    };
    side(x + r, y, x + w - r, y);
    corner(x + w - r, y + r, -Math.PI / 2);
    side(x + w, y + r, x + w, y + h - r);
    corner(x + w - r, y + h - r, 0);
    side(x + w - r, y + h, x + r, y + h);
    corner(x + r, y + h - r, Math.PI / 2);
    side(x, y + h - r, x, y + r);
    corner(x + r, y + r, Math.PI);
    return smooth(points, true);
  };

  /** @param {number} cx @param {number} cy @param {number} r */
  const circle = (cx, cy, r) => {
    const n = Math.max(8, Math.round(r * 4));
    /** @type {Point[]} */
    const points = [];
    for (let i = 0; i < n; i += 1) {
      const a = (i / n) * 2 * Math.PI;
      points.push([cx + r * Math.cos(a) + off(), cy + r * Math.sin(a) + off()]);
    }
    return smooth(points, true);
  };

  /**
   * Slanting shade strokes inside a box, each a little different in length.
   * @param {number} x @param {number} y @param {number} w @param {number} h @param {number} [gap] @param {number} [lean]
   */
  const hatch = (x, y, w, h, gap = 1.1, lean = 0.7) => {
    let d = "";
    for (let u = 0; u < w; u += gap) {
      const cut = h * (0.72 + 0.28 * next());
      d += `M${at([x + u + off(), y + h])}L${at([x + u + cut * lean + off(), y + h - cut])}`;
    }
    return d;
  };

  return { line, rect, circle, hatch, off, next };
}
