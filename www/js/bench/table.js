// @ts-check
// The table from above as one SVG: layers for wood, parts, sockets, leads, plugs and hand; draw(bench) puts all in place.
// The whole table, or the part about the recorder or the finger, larger.

import { attr, flag, s, words } from "../dom.js";
import { t } from "../text.js";
import { Hand } from "./hand.js";
import { OtherHand } from "./other.js";
import { sensorCurve, slackCurve, towards } from "./cables.js";
import { Names } from "./names.js";
import { drawPart } from "./parts.js";
import { pen } from "./pen.js";
import { drawPlug, drawSocket, PLUG_LENGTH } from "./sockets.js";
/** @import { End, Part, Point, Shape, Socket } from '../types/names' */
/** @import { BenchView, EndAt, PartAt, SocketAt } from '../types/view' */

const SENSOR_RIM_CM = 1.7; // from the middle of the sensor to where its cable comes out
const FLAT_BELOW_V = 160; // between the two families of power lines, of 100 to 127 V and of 220 to 240 V
const CLOSER = 2.2; // how many times as large a part of the table is shown
/** @type {Record<"power" | "data", [End, End]>} */
const CABLES = { power: ["power_recorder", "power_wall"], data: ["data_recorder", "data_computer"] };

/** @typedef {import('../types/names').OtherHand} OtherHandPlace */
/** A bench as it is drawn: sensorAt is where a hand has the sensor while it is dragged. @typedef {BenchView & { sensorAt?: Point }} DrawnBench */

export class Table {
  /** @param {BenchView} bench */
  constructor(bench) {
    const { w, d } = bench.table;
    this.size = [w, d];
    const p = pen("table", 0.22);
    let wood = "";
    for (let i = 1; i < 10; i += 1) wood += p.line(2, (d * i) / 10, w - 2, (d * i) / 10 + p.off() * 2);
    this.wood = s("g", {}, s("rect", { class: "table-top", x: 0.4, y: 0.4, width: w - 0.8, height: d - 0.8, rx: 3 }), s("path", { class: "table-grain", d: wood }),
      s("path", { class: "ln thin faint", d: p.rect(1.2, 1.2, w - 2.4, d - 2.4, 2.4) }));

    /** @type {Point | null} */
    this.spot = null; // where the hand is, for what is said beside it
    /** @type {OtherHandPlace} */
    this.otherAt = "lap";
    /** @type {Map<Part, SVGElement>} */
    this.parts = new Map(bench.parts.filter((part) => !["hand", "cable1", "cable2"].includes(part.id)).map((part) => [part.id, drawPart(part)]));
    this.names = new Names();
    /** @type {Map<Socket, SVGElement>} */
    this.sockets = new Map();
    for (const socket of bench.sockets) this.sockets.set(socket.id, drawSocket(socket));
    /** @type {Map<string, SVGElement>} */
    this.cables = new Map(["power", "data", "charge", "feed", "sensor"].map((id) => [id, s("g", { class: `cable cable-${id}` }, s("path", { class: "cable-out" }), s("path", { class: "cable-in" }))]));
    /** @type {Map<End, SVGGElement>} */
    this.plugs = new Map(bench.ends.map((end) => [end.id, drawPlug(end)]));
    /** @type {Map<Part, SVGElement>} */
    this.grips = new Map(/** @type {const} */ (["cable1", "cable2"]).map((id) => [id, s("g", { class: "grip", data: { drag: `part:${id}` } }, s("circle", { class: "hit", r: 4.4 }), s("circle", { class: "grip-ring", r: 2 }), s("circle", { class: "grip-dot", r: 0.7 }), s("title", {}, t(`part-${id}`)))]));
    this.chargerPlug = s("g", { class: "charger-plug" }, s("circle", { class: "fill-plug", r: 1.9 }), s("circle", { class: "ln", r: 1.9 }), s("path", { class: "ln thin", d: "M-.8 0h1.600" }));
    /** @type {Point | null} */
    this.chargerAt = null; // where its plug is
    this.hand = new Hand();
    this.other = new OtherHand();
    this.speech = s("text", { class: "speech", "aria-hidden": "true" });
    this.bubble = s("g", { class: "bubble", visibility: "hidden" }, s("rect", { rx: 1.4 }), s("text", { class: "bubble-text" }));

    this.art = s("g", {}, this.wood, this.cables.get("feed"), [...this.parts.values()], [...this.sockets.values()], this.cables.get("charge"), this.chargerPlug, this.other.el,
      this.cables.get("data"), this.cables.get("power"), this.hand.below, this.cables.get("sensor"), this.hand.el, this.hand.strapped, this.hand.cloth, [...this.plugs.values()], [...this.grips.values()], this.names.el, this.speech, this.bubble);
    const glow = s("radialGradient", { id: "glow" }, s("stop", { offset: "0", class: "glow-0" }), s("stop", { offset: ".35", class: "glow-1" }), s("stop", { offset: "1", class: "glow-2" }));
    const clip = s("clipPath", { id: "table-edge" }, s("rect", { x: 0.4, y: 0.4, width: w - 0.8, height: d - 0.8, rx: 3 }));
    this.clipped = s("g", { "clip-path": "url(#table-edge)" }, this.art);
    this.svg = s("svg", { class: "table", "aria-hidden": "true", focusable: "false", viewBox: `0 0 ${w} ${d}` }, s("defs", {}, glow, clip), this.clipped);
  }

  /** Draws outlets and plugs as they are where the power line has so many volts. @param {number} volts */
  region(volts) {
    flag(this.svg, "is-flat", volts < FLAT_BELOW_V);
  }

  /**
   * Shows the whole table, or what lies about a place of it so many times as large.
   * @param {Point | null} middle @param {number} [times]
   */
  look(middle, times = CLOSER) {
    const [w, d] = this.size;
    const [width, depth] = middle ? [w / times, d / times] : [w, d];
    const [x, y] = middle ? [Math.max(0, Math.min(w - width, middle[0] - width / 2)), Math.max(0, Math.min(d - depth, middle[1] - depth / 2))] : [0, 0];
    attr(this.svg, "viewBox", [x, y, width, depth].map((v) => v.toFixed(2)).join(" "));
    flag(this.svg, "is-close", middle);
  }

  /**
   * The point of the table, in cm, under a point of the window.
   * @param {number} clientX @param {number} clientY @returns {Point}
   */
  under(clientX, clientY) {
    const at = new DOMPoint(clientX, clientY).matrixTransform(this.art.getScreenCTM()?.inverse());
    return [at.x, at.y];
  }

  /** Window pixels per cm. */
  get pxPerCm() {
    const m = this.art.getScreenCTM();
    return m ? Math.hypot(m.a, m.b) : 4;
  }

  /** @param {DrawnBench} bench */
  draw(bench) {
    /** @type {(el: Element | undefined, x: number, y: number, more?: string) => void} */
    const place = (el, x, y, more = "") => el && attr(el, "transform", `translate(${x.toFixed(2)} ${y.toFixed(2)})${more}`);
    for (const part of bench.parts) {
      const el = this.parts.get(part.id) ?? this.grips.get(part.id);
      if (el) place(el, part.x, part.y);
    }
    for (const socket of bench.sockets) {
      const el = this.sockets.get(socket.id);
      place(el, socket.x, socket.y);
      if (el) flag(el, "is-taken", socket.taken_by);
    }
    const ends = /** @type {Record<End, EndAt>} */ (Object.fromEntries(bench.ends.map((end) => [end.id, end])));
    const sensorSpot = this.hand.draw(bench.hand, bench.strap, bench.sensorAt);
    this.other.draw(bench);
    this.spot = [bench.hand.x, bench.hand.y];
    this.otherAt = bench.strap.other_hand;
    this.placeSpeech();
    const points = this.sensorPoints(bench, ends.sensor, sensorSpot);
    const aims = this.aims(bench, ends, points);
    for (const end of bench.ends) {
      const el = this.plugs.get(end.id);
      const [ux, uy] = aims[end.id];
      place(el, end.x, end.y, ` rotate(${((Math.atan2(uy, ux) * 180) / Math.PI - 90).toFixed(1)})`);
      if (el) flag(el, "is-in", end.socket);
    }
    /** @type {(id: End) => Point} */
    const tail = (id) => [ends[id].x + aims[id][0] * PLUG_LENGTH[id], ends[id].y + aims[id][1] * PLUG_LENGTH[id]];
    for (const [cable, [a, b]] of Object.entries(CABLES)) this.lay(cable, slackCurve(tail(a), aims[a], tail(b), aims[b]));
    this.lay("sensor", sensorCurve([tail("sensor"), ...points.slice(1)], aims.sensor, bench.cable.slack_cm));
    this.drawCharger(bench);
    const outlet = this.chargerAt;
    this.names.lay(bench, this.cables, [...bench.ends.map((end) => ({ at: /** @type {Point} */ ([end.x + aims[end.id][0] * 2, end.y + aims[end.id][1] * 2]), r: 3 })), ...bench.sockets.map(({ x, y }) => ({ at: /** @type {Point} */ ([x, y]), r: 3 })),
      ...bench.cable.handles.map((at) => ({ at, r: 6.5 })), { at: sensorSpot, r: 2.6 }, ...(outlet ? [{ at: outlet, r: 2.4 }] : [])], sensorSpot, this.size);
    flag(this.svg, "lit-recorder", bench.lamps.recorder);
    flag(this.svg, "lit-power_strip", bench.lamps.power_strip);
    flag(this.svg, "lit-charger", bench.lamps.charger);
    flag(this.svg, "lit-lamp", bench.lamps.lamp);
    flag(this.svg, "on-recorder", bench.switches.recorder);
    flag(this.svg, "on-power_strip", bench.switches.power_strip);
  }

  /** Names what a step speaks of, also where other names have no room. @param {string | null} id */
  pointOut(id) {
    this.names.pointOut(id);
    flag(this.svg, "names-recorder", id === "recorder");
  }

  /**
   * Lets the subject say something beside the hand; no words, no speech.
   * @param {string} text
   */
  speak(text) {
    words(this.speech, text);
    this.placeSpeech();
  }

  /** Speech stays upright and on the table, on whichever side of the hand there is room. */
  placeSpeech() {
    if (!this.speech.textContent || !this.spot) return;
    const [w, d] = this.size;
    const [x, y] = this.spot;
    const other = this.otherAt;
    const side = other === "lap" ? (x > w * 0.6 ? -1 : 1) : other === "case" ? 1 : -1;
    attr(this.speech, "text-anchor", side < 0 ? "end" : "start");
    attr(this.speech, "transform", `translate(${[x + side * 13, Math.min(y - 3, d - 4)].map((v) => v.toFixed(1))})`);
  }

  /** @param {string} id @param {string} d */
  lay(id, d) {
    for (const path of this.cables.get(id)?.children ?? []) attr(path, "d", d);
  }

  /**
   * The sensor cable's points from its plug to the sensor, whichever way the core lists them.
   * @param {BenchView} bench @param {EndAt} plug @param {Point} sensorSpot
   */
  sensorPoints(bench, plug, sensorSpot) {
    const points = bench.cable.points.map(([x, y]) => /** @type {Point} */ ([x, y]));
    /** @param {Point} point */
    const far = (point) => Math.hypot(point[0] - plug.x, point[1] - plug.y);
    if (far(points[0]) > far(points[points.length - 1])) points.reverse();
    points[0] = [plug.x, plug.y];
    const [ux, uy] = towards(sensorSpot, points[points.length - 2]);
    points[points.length - 1] = [sensorSpot[0] + SENSOR_RIM_CM * ux, sensorSpot[1] + SENSOR_RIM_CM * uy];
    return points;
  }

  /**
   * Which way each plug's lead leaves it: out of its part when plugged in, towards the other end when free.
   * @param {BenchView} bench @param {Record<End, EndAt>} ends @param {Point[]} points @returns {Record<End, Point>}
   */
  aims(bench, ends, points) {
    /** @type {Record<Exclude<End, "sensor">, End>} */
    const other = { power_recorder: "power_wall", power_wall: "power_recorder", data_recorder: "data_computer", data_computer: "data_recorder" };
    const aims = /** @type {Record<End, Point>} */ ({});
    for (const end of bench.ends) {
      /** @type {Point} */
      const next = end.id === "sensor" ? points[1] : [ends[other[end.id]].x, ends[other[end.id]].y];
      let aim = towards([end.x, end.y], next);
      const socket = end.socket && bench.sockets.find((one) => one.id === end.socket);
      const part = socket && bench.parts.find((one) => one.id === socket.part);
      if (part && socket.kind !== "outlet") {
        const u = (socket.x - part.x) / (part.w / 2), v = (socket.y - part.y) / (part.d / 2);
        aim = Math.abs(u) > Math.abs(v) ? [Math.sign(u), 0] : [0, Math.sign(v)];
      } else if (socket) {
        aim = [aim[0] * 0.3, Math.sign(aim[1] || 1)];
        const len = Math.hypot(...aim);
        aim = [aim[0] / len, aim[1] / len];
      }
      aims[end.id] = aim;
    }
    return aims;
  }

  /**
   * The charger's thin cables: to the power strip when plugged in, and to the computer; its own to the wall.
   * @param {BenchView} bench
   */
  drawCharger(bench) {
    /** @param {Part} id */
    const part = (id) => bench.parts.find((one) => one.id === id);
    const [charger, strip, computer] = [part("charger"), part("power_strip"), part("computer")];
    if (!charger || !strip || !computer) return;
    const outlet = bench.sockets.find((one) => one.taken_by === "charger");
    /** @type {Point} */
    const spot = outlet ? [outlet.x, outlet.y] : [charger.x + charger.w / 2 + 5, charger.y - charger.d / 2 - 1];
    this.chargerAt = spot;
    attr(this.chargerPlug, "transform", `translate(${spot.map((v) => v.toFixed(2))})`);
    const short = slackCurve([charger.x + charger.w / 2, charger.y], [1, 0], [spot[0], spot[1] + 1.9], [0, 1], 0.1);
    const rightOf = computer.x < charger.x ? 1 : -1;
    const long = slackCurve([charger.x - (rightOf * charger.w) / 2, charger.y], [-rightOf, 0], [computer.x + (rightOf * computer.w) / 2, computer.y - computer.d * 0.1], [rightOf, 0], 0.2);
    this.lay("charge", `${short}${long}`);
    const wall = bench.sockets.find((one) => one.id === "wall");
    if (wall) this.lay("feed", slackCurve([strip.x + strip.w / 2 - 0.5, strip.y], [1, 0], [wall.x, -2], [0, 1], 0.15));
  }

  /**
   * While a plug of a shape is dragged: lights the sockets that it fits, marks those near it, and names the nearest; one that it does
   * not fit says why. No shape, no plug in the hand.
   * @param {SocketAt[]} near @param {Shape} [kind]
   */
  showNear(near, kind) {
    const [nearest] = near;
    for (const [id, el] of this.sockets) {
      flag(el, "is-fit", kind !== undefined && el.classList.contains(`socket-${kind}`));
      flag(el, "is-near", near.some((one) => one.id === id));
      flag(el, "is-nearest", nearest?.id === id);
    }
    attr(this.bubble, "visibility", nearest ? "visible" : "hidden");
    if (!nearest) return;
    const [box, text] = /** @type {[SVGRectElement, SVGTextElement]} */ (/** @type {unknown} */ (this.bubble.children));
    const wrong = nearest.kind !== kind;
    flag(this.bubble, "is-wrong", wrong);
    text.textContent = wrong ? t("drag-wrong_shape", { socket: t(`socket-${nearest.id}`) }) : t(`socket-${nearest.id}`);
    attr(text, "y", -6.4);
    const size = text.getBBox();
    const [w] = this.size;
    const half = size.width / 2 + 2; // no letter of it beyond the table's edge
    attr(this.bubble, "transform", `translate(${Math.max(half, Math.min(w - half, nearest.x)).toFixed(2)} ${Math.max(10, nearest.y).toFixed(2)})`);
    for (const [name, value] of [["x", size.x - 1.4], ["y", size.y - 0.7], ["width", size.width + 2.8], ["height", size.height + 1.4]]) attr(box, String(name), value);
  }
}
