// @ts-check
// The same bench as a plain list: every lead, switch and part, for the keyboard, a screen reader, or whoever prefers it.

import { attr, flag, h, newId, prop, words } from "../dom.js";
import { explain, explainAll, explainButton } from "../explain.js";
import { icon } from "../icons.js";
import { coded, t } from "../text.js";
import { button, Choice, opensByArrow, Tick } from "../widgets.js";
/** @import { Act } from '../types/action' */
/** @import { End, Face, Manoeuvre, Place, Socket, Switch } from '../types/names' */
/** @import { Kid } from '../types/page' */
/** @import { BenchView, SocketAt } from '../types/view' */
/** @import { Option } from '../widgets.js' */

// What the subject may be asked, with fixed measures.
/** @type {Record<string, Manoeuvre>} */
const DEEDS = {
  rest: "rest", deep_breath: "deep_breath", paced_breathing: { paced_breathing: { per_min: 6 } }, breath_hold: "breath_hold",
  stand_up: "stand_up", sit_down: "sit_down", exercise: { exercise: { seconds: 60, effort: 0.5 } }, talk: "talk", laugh: "laugh",
  grip: "grip", cold_other_hand: "cold_other_hand", ice_water: "ice_water", valsalva: "valsalva", face_immersion: "face_immersion",
};
// What can harm in a room exists here in simulation only; a caution says so as soon as it is chosen.
const RISKY = new Set(["ice_water", "valsalva", "face_immersion"]);

const NUDGE_CM = 2;
const REST_MS = 220; // a slider that rests for this long is put to the world; what it passed on the way is not

export class PartsList {
  /** @param {BenchView} bench @param {Act} act */
  constructor(bench, act) {
    this.act = act;
    this.bench = bench;
    this.ends = bench.ends.map((end) => /** @type {[End, Choice]} */ ([end.id, this.endRow(end.id)]));
    this.switches = /** @type {const} */ (["strip", "unit"]).map((id) => /** @type {[Switch, Tick]} */ ([id, new Tick(t(`switch-${id}`), (on) => act({ do: "switch", id, on }))]));
    this.charger = new Tick(t("switch-charger"), (plugged) => act({ do: "charger", plugged }));
    this.lamp = new Tick(t("switch-lamp"), (on) => act({ do: "switch", id: "lamp", on }));
    this.strapOn = new Tick(t("strap-on"), (on) => act({ do: on ? "strap_on" : "strap_off" }));
    this.place = new Choice(t("strap-place"), (place) => act({ do: "pad_place", place: /** @type {Place} */ (place) }));
    this.face = new Choice(t("strap-face"), (face) => act({ do: "pad_face", face: /** @type {Face} */ (face) }));
    this.tight = this.slider("strap-tightness", "strap-slide", { min: 0, max: 100, step: 1 }, (v) => act({ do: "strap", tightness: v / 100 }));
    this.height = this.slider("hand-height", "", { min: -50, max: 50, step: 1 }, (v) => act({ do: "hand_height", cm: v }));
    this.part = new Choice(t("list-part"), () => this.showPart());
    this.x = this.coordinate("x", bench.table.w);
    this.y = this.coordinate("y", bench.table.d);
    this.feel = h("p", { class: "pencil feel" });
    this.heightSays = h("p", { class: "quiet" });
    attr(this.tight.input, "aria-describedby", (this.feel.id = newId("feel")));
    for (const [widget, key] of /** @type {[{ el: HTMLElement }, string][]} */ ([[this.strapOn, "strap_on"], [this.tight, "tightness"], [this.place, "place"], [this.face, "face"], [this.height, "height"], ...this.switches.map(([id, tick]) => [tick, `switch_${id}`]), [this.charger, "charger"], [this.lamp, "lamp"]])) explain(widget.el, `explain-${key}`);
    this.el = h("div", { class: "list" },
      explainAll(this.group("list-leads", this.ends.map(([, choice]) => choice.el), "list-leads"), "explain-end"),
      this.group("list-finger", [this.strapOn.el, this.tight.el, this.feel, h("div", { class: "pair" }, this.place.el, this.face.el), this.height.el, this.heightSays, this.asking()], "list-finger"),
      h("div", { class: "list-side" }, this.group("list-power", [...this.switches.map(([, tick]) => tick.el), this.charger.el, this.lamp.el], "list-power")),
      this.mover(bench), explainButton());
  }

  /** @param {string} key @param {Kid} kids @param {string} kind */
  group(key, kids, kind) {
    const id = newId("group");
    return h("div", { class: `group ${kind}`, role: "group", "aria-labelledby": id }, h("h3", { id }, t(key)), kids);
  }

  /** @param {string} key @param {string} kind @param {{ min: number, max: number, step: number }} range @param {(value: number) => unknown} move */
  slider(key, kind, range, move) {
    const id = newId("slide");
    const rest = { timer: 0, due: false };
    const put = () => {
      clearTimeout(rest.timer);
      if (!rest.due) return;
      rest.due = false;
      move(Number(input.value));
    };
    const moved = () => {
      rest.due = true;
      clearTimeout(rest.timer);
      rest.timer = setTimeout(put, REST_MS);
    };
    const input = h("input", { id, type: "range", class: kind, ...range, oninput: moved, onchange: moved, onpointerup: put, onblur: put });
    /** @param {number} value */
    const show = (value) => rest.due || prop(input, "value", String(value));
    return { input, show, el: h("div", { class: "fld" }, h("label", { for: id }, t(key)), input) };
  }

  /**
   * A plug: which socket it is in, and a button to wiggle it.
   * @param {End} end
   */
  endRow(end) {
    const choice = new Choice(t(`end-${end}`), (socket) => this.act(socket ? { do: "plug", end, socket: /** @type {Socket} */ (socket) } : { do: "unplug", end }));
    opensByArrow(choice.select);
    const name = t("list-wiggle", { end: t(`end-${end}`) });
    choice.el.append(h("button", { type: "button", class: "btn btn-round", "aria-label": name, title: name, onclick: () => this.act({ do: "wiggle", end }) }, icon("wiggle")));
    return choice;
  }

  /** @param {string} axis @param {number} most */
  coordinate(axis, most) {
    const id = newId(axis);
    const input = h("input", { id, class: "txt", type: "number", step: 1, min: 0, max: most, onchange: () => this.moveTo() });
    return { input, el: h("div", { class: "fld" }, h("label", { for: id }, t(`list-${axis}`)), input) };
  }

  /** What else the subject can be asked to do. */
  asking() {
    const caution = h("p", { class: "ask-caution", role: "status" });
    const asked = new Choice(t("ask-title"), (what) => words(caution, RISKY.has(what) ? t("ask-caution") : ""));
    explain(asked.el, "explain-ask");
    asked.set(Object.keys(DEEDS).map((id) => /** @type {Option} */ ([id, t(`ask-${id}`)])), "deep_breath");
    return h("div", { class: "asking" }, asked.el, button(t("ask-do"), () => this.act({ do: "manoeuvre", what: DEEDS[asked.select.value] })), caution);
  }

  /** @param {BenchView} bench */
  mover(bench) {
    this.part.set(bench.parts.filter((part) => part.movable).map((part) => /** @type {Option} */ ([part.id, t(`part-${part.id}`)])), bench.parts.find((part) => part.movable)?.id);
    explain(this.part.el, "explain-move");
    /** @param {number} dx @param {number} dy @param {string} name */
    const nudge = (dx, dy, name) => h("button", { type: "button", class: `btn btn-round nudge-${name}`, "aria-label": t(`list-nudge_${name}`), onclick: () => this.nudge(dx, dy) }, icon(name));
    return h("details", { class: "group list-move" }, h("summary", {}, t("list-move")),
      h("div", { class: "mover" }, this.part.el, this.x.el, this.y.el, h("div", { class: "row nudges" }, nudge(-NUDGE_CM, 0, "left"), nudge(NUDGE_CM, 0, "right"), nudge(0, -NUDGE_CM, "up"), nudge(0, NUDGE_CM, "down"))));
  }

  chosen() {
    return this.bench.parts.find((part) => part.id === this.part.select.value);
  }
  /** @param {number} dx @param {number} dy */
  nudge(dx, dy) {
    const part = this.chosen();
    if (part) this.act({ do: "move", part: part.id, x: part.x + dx, y: part.y + dy });
  }
  moveTo() {
    const part = this.chosen();
    if (part) this.act({ do: "move", part: part.id, x: Number(this.x.input.value), y: Number(this.y.input.value) });
  }
  showPart() {
    const part = this.chosen();
    if (!part) return;
    prop(this.x.input, "value", String(Math.round(part.x * 10) / 10));
    prop(this.y.input, "value", String(Math.round(part.y * 10) / 10));
  }

  /** @param {BenchView} bench */
  show(bench) {
    this.bench = bench;
    for (const [id, choice] of this.ends) choice.set([["", t("socket-none")], ...bench.sockets.map((socket) => /** @type {Option} */ ([socket.id, socketWords(socket, id)]))], bench.ends.find((end) => end.id === id)?.socket ?? "");
    for (const [id, tick] of this.switches) tick.set(bench.switches[id]);
    this.charger.set(bench.charger_plugged);
    this.lamp.set(bench.switches.lamp);
    const { strap } = bench;
    this.strapOn.set(strap.on);
    this.place.set(["pulp", "middle", "joint"].map((id) => /** @type {Option} */ ([id, t(`strap-place-${id}`)])), strap.place);
    this.face.set(["to_skin", "away"].map((id) => /** @type {Option} */ ([id, t(`strap-face-${id}`)])), strap.face);
    this.tight.show(Math.round(strap.tightness * 100));
    prop(this.tight.input, "disabled", !strap.on);
    attr(this.tight.input, "aria-valuetext", coded("feel", strap.feel));
    words(this.feel, coded("feel", strap.feel));
    flag(this.feel, "is-off", strap.feel === "off");
    const cm = Math.round(bench.hand.height_cm);
    this.height.show(cm);
    const where = cm === 0 ? t("hand-level") : t(cm > 0 ? "hand-above" : "hand-below", { cm: Math.abs(cm) });
    attr(this.height.input, "aria-valuetext", where);
    words(this.heightSays, where);
    this.showPart();
  }
}

/**
 * A socket in the list of one plug, with who else is in it.
 * @param {SocketAt} socket @param {End} end
 */
function socketWords({ id, taken_by: by }, end) {
  const name = t(`socket-${id}`);
  if (!by || by === end) return name;
  return t("socket-taken", { socket: name, by: t(`taken-${by}`) });
}
