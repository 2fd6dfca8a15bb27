// @ts-check
// Hands on the table: dragging plugs, parts, the cable and the sensor, pressing switches, tapping the sensor. Mouse, pen and touch alike.

/** @import { Act } from '../types/action' */
/** @import { End, Part, Point, Switch } from '../types/names' */
/** @import { BenchView, SocketAt } from '../types/view' */
/** @import { Thing } from './card.js' */
/** @import { DrawnBench, Table } from './table.js' */

const CLICK_PX = 5;
const FINGER_PX = 22; // half of what a fingertip covers
const FINGER_CM = 7; // so near the fingertip the sensor is put on it
const REST_MS = 260; // a part that rests in the hand for this long is put to the world, so that its effect is seen

/** What a finger takes hold of. */
const TOUCHED = '[data-press], [data-drag]:not([data-drag=""])';

/**
 * What is in the hand: something to press, the end of a cable, a part, or the sensor.
 * @typedef {{
 *   target: Element, press: string | undefined, end: End | null, part: Part | null, sensor: boolean, from: Point, px: Point, start: Point, moved: boolean, at: Point,
 *   timer: number, near: SocketAt[], put?: Point,
 * }} HeldThing
 */

export class Hands {
  /**
   * table: Table; now(): the core's bench; act(action): boolean; redraw(ghost|null): draws the bench, or a ghost of it;
   * touched(thing, box): something was touched and not moved.
   * @param {Table} table
   * @param {{ now: () => BenchView, act: Act, redraw: (ghost: DrawnBench | null) => unknown, rests: Map<End, Point>, touched: (thing: Thing | null, box: DOMRect) => unknown }} ways
   */
  constructor(table, { now, act, redraw, rests, touched }) {
    this.touched = touched;
    this.table = table;
    this.now = now;
    this.act = act;
    this.redraw = redraw;
    this.rests = rests;
    /** @type {HeldThing | null} */
    this.held = null;
    const svg = table.svg;
    svg.addEventListener("pointerdown", (event) => this.take(event));
    svg.addEventListener("pointermove", (event) => this.move(event));
    svg.addEventListener("pointerup", () => this.drop());
    svg.addEventListener("pointercancel", () => this.letGo());
    // Within a drawing no style keeps a finger from scrolling the page away under what it drags.
    svg.addEventListener("touchstart", (event) => {
      const target = event.target;
      const touch = event.changedTouches[0];
      if (event.cancelable && touch && this.aimed({ target, clientX: touch.clientX, clientY: touch.clientY, pointerType: "touch" })) event.preventDefault();
    }, { passive: false });
  }

  /** @param {PointerEvent} event */
  take(event) {
    if (event.button > 0 || this.held) return;
    const target = this.aimed(event);
    if (!target) return void this.touched(null, new DOMRect());
    const press = /** @type {SVGElement | null} */ (target.closest("[data-press]"));
    const drag = /** @type {SVGElement | null} */ (target.closest("[data-drag]"));
    const [kind, id] = (drag?.dataset.drag || ":").split(":");
    const end = kind === "end" ? /** @type {End} */ (id) : null;
    const part = kind === "part" ? /** @type {Part} */ (id) : null;
    const sensor = kind === "sensor";
    if (!press && !end && !part && !sensor) return;
    event.preventDefault();
    this.table.svg.setPointerCapture(event.pointerId);
    const at = this.table.under(event.clientX, event.clientY);
    const bench = this.now();
    const what = end ? bench.ends.find((one) => one.id === end) : bench.parts.find((one) => one.id === part);
    const start = /** @type {Point} */ (what ? [what.x, what.y] : sensor ? this.table.hand.spot : at);
    this.held = { target, press: press?.dataset.press, end, part, sensor, from: at, px: [event.clientX, event.clientY], start, moved: false, at: start, timer: 0, near: [] };
  }

  /** @param {PointerEvent} event */
  move(event) {
    const held = this.held;
    if (!held) return;
    if (!held.moved && Math.hypot(event.clientX - held.px[0], event.clientY - held.px[1]) < CLICK_PX) return;
    held.moved = true; // what slid under the hand was not pressed
    if (!held.end && !held.part && !held.sensor) return;
    this.table.svg.classList.add("is-dragging");
    const [x, y] = this.table.under(event.clientX, event.clientY);
    const [w, d] = this.table.size;
    held.at = [Math.max(0, Math.min(w, held.start[0] + x - held.from[0])), Math.max(0, Math.min(d, held.start[1] + y - held.from[1]))];
    if (held.end) {
      held.near = this.nearSockets(held.at);
      this.table.showNear(held.near, this.now().ends.find((one) => one.id === held.end)?.kind);
    } else if (held.part) {
      clearTimeout(held.timer);
      held.timer = setTimeout(() => this.putDown(), REST_MS);
    }
    this.redraw(ghostOf(this.now(), held));
  }

  drop() {
    const held = this.held;
    if (!held) return;
    clearTimeout(held.timer);
    if (!held.moved) this.click(held);
    else if (held.end) this.dropEnd(held.end, held);
    else if (held.sensor) this.dropSensor(held.at);
    else this.putDown();
    this.letGo();
  }

  letGo() {
    if (this.held) clearTimeout(this.held.timer);
    this.held = null;
    this.table.svg.classList.remove("is-dragging");
    this.table.showNear([]);
    this.redraw(null);
  }

  /** Puts the held part where it is, without letting go of it. */
  putDown() {
    const { held } = this;
    if (!held?.part) return;
    const { part: id, at, put, from, start } = held;
    const x = Math.round(at[0] * 2) / 2, y = Math.round(at[1] * 2) / 2;
    if (put?.[0] === x && put[1] === y) return;
    held.put = [x, y];
    if (!this.act({ do: "move", part: id, x, y })) return;
    const part = this.now().parts.find((one) => one.id === id);
    if (!part) return;
    held.from = [from[0] + at[0] - start[0] - (at[0] - part.x), from[1] + at[1] - start[1] - (at[1] - part.y)];
    held.start = [part.x, part.y];
  }

  /** @param {End} id @param {HeldThing} held */
  dropEnd(id, held) {
    const end = this.now().ends.find((one) => one.id === id);
    const target = held.near[0];
    if (target) {
      if (target.id !== end?.socket) this.act({ do: "plug", end: id, socket: target.id });
      return;
    }
    this.rests.set(id, held.at);
    if (end?.socket) this.act({ do: "unplug", end: id });
  }

  /** The sensor let go near the fingertip is put on; anywhere else it is off. @param {Point} at */
  dropSensor([x, y]) {
    const { hand, strap } = this.now();
    const on = Math.hypot(hand.finger_x - x, hand.finger_y - y) < FINGER_CM;
    if (on !== strap.on) this.act({ do: on ? "strap_on" : "strap_off" });
  }

  /**
   * What was touched and not moved: a switch turns; everything else says what can be done with it.
   * @param {HeldThing} held
   */
  click({ press, end, part, sensor, target }) {
    const [verb, name] = (press ?? ":").split(":");
    if (verb === "switch") {
      const id = /** @type {Switch} */ (name);
      this.act({ do: "switch", id, on: !this.now().switches[id] });
      return;
    }
    /** @type {Thing | null} */
    const thing = end ? `end:${end}` : sensor || verb === "tap" ? "sensor" : verb === "rescan" ? "part:computer" : part ? `part:${part}` : null;
    if (thing) this.touched(thing, (target.closest("[data-drag], [data-press]") ?? target).getBoundingClientRect());
  }

  /**
   * What a hand is aiming at: what lies under it, or, for a finger, the nearest small thing that it covers.
   * @param {{ target: EventTarget | null, clientX: number, clientY: number, pointerType: string }} event
   */
  aimed({ target, clientX: x, clientY: y, pointerType }) {
    const under = target instanceof Element ? target.closest(TOUCHED) : null;
    if (pointerType === "mouse" || (under && !under.matches(".part"))) return under;
    let best = under, least = under ? FINGER_PX / 2 : FINGER_PX;
    for (const one of this.table.svg.querySelectorAll(TOUCHED)) {
      if (one.matches(".part")) continue;
      const box = one.getBoundingClientRect();
      const far = Math.hypot(Math.max(box.left - x, x - box.right, 0), Math.max(box.top - y, y - box.bottom, 0));
      if (box.width > 0 && far < least) [best, least] = [one, far];
    }
    return best;
  }

  /**
   * Sockets a hand could be aiming at, nearest first: by distance alone, never by what is right.
   * @param {Point} at
   */
  nearSockets([x, y]) {
    const reach = Math.max(6, 30 / this.table.pxPerCm);
    return this.now().sockets
      .map((socket) => ({ ...socket, far: Math.hypot(socket.x - x, socket.y - y) }))
      .filter((socket) => socket.far < reach)
      .sort((a, b) => a.far - b.far);
  }
}

/**
 * The bench as it would look with the held thing where the hand has it.
 * @param {BenchView} bench @param {HeldThing} held
 */
function ghostOf(bench, held) {
  /** @type {DrawnBench} */
  const ghost = structuredClone(bench);
  if (held.end) {
    const end = ghost.ends.find((one) => one.id === held.end);
    if (!end) return ghost;
    // A plug snaps into the nearest socket that it fits.
    const [into] = held.near;
    [end.x, end.y] = into && into.kind === end.kind && !into.taken_by ? [into.x, into.y] : held.at;
    end.socket = null;
    return ghost;
  }
  if (held.sensor) {
    ghost.sensorAt = held.at;
    return ghost;
  }
  const part = ghost.parts.find((one) => one.id === held.part);
  if (!part) return ghost;
  const dx = held.at[0] - part.x, dy = held.at[1] - part.y;
  part.x += dx;
  part.y += dy;
  for (const socket of ghost.sockets) {
    if (socket.part !== held.part) continue;
    socket.x += dx;
    socket.y += dy;
    const end = ghost.ends.find((one) => one.socket === socket.id);
    if (end) { end.x += dx; end.y += dy; }
  }
  if (held.part === "hand") {
    const { hand } = ghost;
    ghost.hand = { ...hand, x: hand.x + dx, y: hand.y + dy, finger_x: hand.finger_x + dx, finger_y: hand.finger_y + dy };
  }
  if (held.part?.startsWith("cable")) {
    const old = [part.x - dx, part.y - dy];
    const point = ghost.cable.points.find((one) => Math.hypot(one[0] - old[0], one[1] - old[1]) < 0.5);
    if (point) { point[0] = part.x; point[1] = part.y; }
  }
  return ghost;
}
