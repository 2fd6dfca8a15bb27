// @ts-check
// The names on the table: each on a plate of the table's colour, put where nothing lies under it. Where a name can go is tried in order,
// at a part round its four sides, at a cable along its way; the first free place is taken, else the one where least lies.

import { attr, flag, s } from "../dom.js";
import { t } from "../text.js";
/** @import { Part, Point } from '../types/names' */
/** @import { BenchView } from '../types/view' */

/** Left, top, right, bottom, in cm of the table. @typedef {[number, number, number, number]} Box */
/** @typedef {"power" | "data" | "sensor"} NamedCable */

/** @type {NamedCable[]} */
const CABLES = ["power", "data", "sensor"];
/** The parts that have a name beside them; the recorder has its own on its lid. @type {Part[]} */
const PARTS = ["power_strip", "charger", "lamp", "phone", "computer"];
const RIM_CM = 1.6; // between a name and the table's edge
const PAD_X_CM = 0.8, PAD_Y_CM = 0.35; // of a plate beyond its letters
const OFF_CM = 1.1; // between a plate and what it names
/** Where a cable is short and much lies about it, its name stands farther off. */
const FARTHER_CM = [0, 3, 6, 10, 15];
const LED_CM = 4.5;
const CROWDED = 8, STEP_CM = 5;
const POINTS = 36; // of a cable that are looked at
/** How much of a part is drawn beyond its footprint: left, top, right, bottom. @type {Partial<Record<Part, Box>>} */
const BEYOND = { computer: [1.4, 6, 0.8, 1], lamp: [3, 3, 1.5, 1.5], recorder: [0.5, 0.5, 2, 3], hand: [1, 1, 1, 1] };

/** A name that is laid: its group, its letters, and what it belongs to. */
class Name {
  /** @param {string} text @param {string} id */
  constructor(text, id) {
    this.letters = s("text", { class: "letter small name" }, text);
    this.plate = s("rect", { class: "plate", rx: 0.8 });
    this.leader = s("path", { class: "leader" });
    this.el = s("g", { class: "tag", data: { names: id } }, this.leader, this.plate, this.letters);
  }
}

export class Names {
  constructor() {
    /** @type {Map<string, Name>} */
    this.all = new Map([...PARTS.map((id) => /** @type {const} */ ([id, new Name(t(`part-${id}`), id)])), ...CABLES.map((id) => /** @type {const} */ ([id, new Name(t(`name-${id}`), id)]))]);
    this.el = s("g", {}, [...this.all.values()].map((name) => name.el));
    this.stands = "";
    /** Points of a cable as it was drawn last. @type {Map<string, { d: string | null, points: Point[] }>} */
    this.ways = new Map();
  }

  /** The one that is named where there is no room for all of them; null: none. @param {string | null} id */
  pointOut(id) {
    for (const [one, { el }] of this.all) flag(el, "is-told", one === id);
  }

  /**
   * Lays the names of a bench. cables: as they are drawn; spots: of plugs, handles and the like, around which nothing is written.
   * sensor: where it is.
   * @param {BenchView} bench @param {Map<string, SVGElement>} cables @param {{ at: Point, r: number }[]} spots @param {Point} sensor @param {number[]} size
   */
  lay(bench, cables, spots, sensor, [w, d]) {
    const stands = [...[...this.all.values()].map(({ letters }) => letters.getComputedTextLength().toFixed(1)), ...[...cables.values()].map((el) => el.firstElementChild?.getAttribute("d")), ...bench.parts.map(({ x, y }) => `${x} ${y}`), ...spots.map(({ at }) => `${at}`)].join();
    if (stands === this.stands) return; // nothing that a name could lie on has moved
    this.stands = stands;
    const ways = [...cables].map(([id, el]) => ({ id, points: this.pointsOf(id, el) }));
    /** @type {{ id: string, box: Box }[]} */
    const solids = bench.parts.filter(({ w: width }) => width > 0).map((part) => ({ id: part.id, box: around(part) }));
    /** @type {Box[]} */
    const taken = [];
    for (const [id, { el, letters, plate, leader }] of this.all) {
      const part = bench.parts.find((one) => one.id === id);
      const way = ways.find((one) => one.id === id);
      const long = letters.getComputedTextLength();
      if (long === 0 || (!part && !way)) continue; // it is not seen
      const size = parseFloat(getComputedStyle(letters).fontSize) || 3;
      const half = long / 2 + PAD_X_CM, tall = size * 0.5 + PAD_Y_CM;
      const places = part ? besidePart(around(part), half, tall) : id === "sensor" ? besidePart(boxOf(sensor, 3), half, tall) : alongCable(way?.points ?? [], half, tall);
      let best = places[0], least = Infinity;
      /** @param {Point} place @param {number} cost */
      const look = ([x0, y0], cost) => {
        const x = Math.max(RIM_CM + half, Math.min(w - RIM_CM - half, x0)), y = Math.max(RIM_CM + tall, Math.min(d - RIM_CM - tall, y0));
        /** @type {Box} */
        const box = [x - half, y - tall, x + half, y + tall];
        const load = 40 * taken.filter((other) => meet(box, other)).length + 30 * solids.filter((other) => meet(box, other.box)).length
          + 12 * spots.filter(({ at, r }) => within(at, box, r)).length + ways.reduce((sum, one) => sum + one.points.filter((point) => within(point, box, 0.9)).length * 3, 0) + Math.hypot(x - x0, y - y0) + cost;
        if (load < least) [best, least] = [[x, y], load];
        return load;
      };
      for (const place of places) if (look(place, 0) === 0) break;
      // Where all about it lies something the whole table is looked at, the near places first in favour.
      const home = part ? [part.x, part.y] : id === "sensor" ? sensor : way?.points[POINTS >> 1] ?? [w / 2, d / 2];
      if (least > CROWDED) for (let x = STEP_CM; x < w; x += STEP_CM) for (let y = STEP_CM; y < d; y += STEP_CM) look([x, y], 0.6 * Math.hypot(x - home[0], y - home[1]));
      const [x, y] = best;
      taken.push([x - half, y - tall, x + half, y + tall]);
      // A name that stands off has a line to what it names.
      const edge = [Math.max(x - half, Math.min(x + half, home[0])), Math.max(y - tall, Math.min(y + tall, home[1]))];
      const off = !part && Math.hypot(edge[0] - home[0], edge[1] - home[1]) > LED_CM;
      attr(leader, "d", off ? `M${(edge[0] - x).toFixed(2)} ${(edge[1] - y).toFixed(2)}L${(home[0] - x).toFixed(2)} ${(home[1] - y).toFixed(2)}` : "M0 0");
      attr(el, "transform", `translate(${x.toFixed(2)} ${y.toFixed(2)})`);
      attr(letters, "y", (size * 0.3).toFixed(2));
      for (const [name, value] of /** @type {const} */ ([["x", -half], ["y", -tall], ["width", 2 * half], ["height", 2 * tall]])) attr(plate, name, value.toFixed(2));
    }
  }

  /** @param {string} id @param {SVGElement} el */
  pointsOf(id, el) {
    const path = /** @type {SVGPathElement} */ (el.firstElementChild), d = path.getAttribute("d");
    const known = this.ways.get(id);
    if (known?.d === d) return known.points;
    const long = d ? path.getTotalLength() : 0;
    /** @type {Point[]} */
    const points = long === 0 ? [] : Array.from({ length: POINTS + 1 }, (_, k) => {
      const { x, y } = path.getPointAtLength((long * k) / POINTS);
      return [x, y];
    });
    this.ways.set(id, { d, points });
    return points;
  }
}

/** @param {BenchView["parts"][number]} part @returns {Box} */
function around({ id, x, y, w, d }) {
  const [l, t0, r, b] = BEYOND[id] ?? [0.4, 0.4, 0.4, 0.8];
  return [x - w / 2 - l, y - d / 2 - t0, x + w / 2 + r, y + d / 2 + b];
}

/** @type {(at: Point, r: number) => Box} */
const boxOf = ([x, y], r) => [x - r, y - r, x + r, y + r];
/** @type {(a: Box, b: Box) => boolean} */
const meet = ([a, b, c, d], [u, v, w, x]) => a < w && u < c && b < x && v < d;
/** @type {(point: Point, box: Box, room: number) => boolean} */
const within = ([x, y], [a, b, c, d], room) => x > a - room && x < c + room && y > b - room && y < d + room;

/**
 * Under a part, over it, at its sides; each also moved along.
 * @param {Box} box @param {number} half @param {number} tall @returns {Point[]}
 */
function besidePart([l, t0, r, b], half, tall) {
  const x = (l + r) / 2, y = (t0 + b) / 2, below = b + tall + 0.3, above = t0 - tall - 0.3;
  const slide = Math.max(4, half * 0.7);
  return [[x, below], [x, above], [x + slide, below], [x - slide, below], [x + slide, above], [x - slide, above], [r + half + 0.4, y], [l - half - 0.4, y], [r + half, below], [l - half, below], [r + half, above], [l - half, above], [x, below + 4], [x, above - 4]];
}

/**
 * Along a cable, from its middle to its ends, on either side.
 * @param {Point[]} points @param {number} half @param {number} tall @returns {Point[]}
 */
function alongCable(points, half, tall) {
  if (points.length < 3) return [[80, 45]];
  const last = points.length - 1;
  /** @type {Point[][]} */
  const tiers = FARTHER_CM.map(() => []);
  for (const share of [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9]) {
    const k = Math.max(1, Math.min(last - 1, Math.round(share * last)));
    const [x, y] = points[k], [u, v] = [points[k + 1][0] - points[k - 1][0], points[k + 1][1] - points[k - 1][1]];
    const len = Math.hypot(u, v) || 1;
    const nx = -v / len, ny = u / len;
    const out = OFF_CM + Math.abs(nx) * half + Math.abs(ny) * tall;
    for (const [i, far] of FARTHER_CM.entries()) tiers[i].push([x + nx * (out + far), y + ny * (out + far)], [x - nx * (out + far), y - ny * (out + far)]);
  }
  return tiers.flat();
}
