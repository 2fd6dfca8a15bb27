// @ts-check
// Every control of the bench as a small thing of its own: an element, and what shows the bench in it. The list holds one of each; the
// card of a touched part is made of those that belong to the part.

import { attr, flag, h, newId, prop, words } from "../dom.js";
import { explain } from "../explain.js";
import { icon } from "../icons.js";
import { coded, t } from "../text.js";
import { button, Choice, opensByArrow, Segments, Tick } from "../widgets.js";
/** @import { Act, Action } from '../types/action' */
/** @import { End, Face, Manoeuvre, OtherHand, Place, Socket } from '../types/names' */
/** @import { BenchView, SocketAt } from '../types/view' */
/** @import { Option } from '../widgets.js' */

/** show(bench): brings it up to what is so; a control without it is always the same. @typedef {{ el: HTMLElement, show?: (bench: BenchView) => unknown }} Control */

// What the subject may be asked, with fixed measures.
/** @type {Record<string, Manoeuvre>} */
const ASKED = {
  rest: "rest", deep_breath: "deep_breath", paced_breathing: { paced_breathing: { per_min: 6 } }, breath_hold: "breath_hold",
  stand_up: "stand_up", sit_down: "sit_down", exercise: { exercise: { seconds: 60, effort: 0.5 } }, talk: "talk", laugh: "laugh",
  grip: "grip", cold_other_hand: "cold_other_hand", ice_water: "ice_water", valsalva: "valsalva", face_immersion: "face_immersion",
};
// What can harm in a room exists here in simulation only; a caution says so as soon as it is chosen.
const RISKY = new Set(["ice_water", "valsalva", "face_immersion"]);
// What a class does, and not everybody in it may.
const EFFORT = new Set(["exercise", "breath_hold", "grip", "cold_other_hand"]);
const OTHER_HAND = /** @type {OtherHand[]} */ (["lap", "laptop", "case"]);
const PASSES_S = [60, 300]; // as long as the core lets one wait at a time
const REST_MS = 220; // a slider that rests for this long is put to the world; what it passed on the way is not

/** @param {string} key @param {string} kind @param {{ min: number, max: number, step: number }} range @param {(value: number) => unknown} move */
function slider(key, kind, range, move) {
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
  const set = (value) => rest.due || prop(input, "value", String(value));
  return { input, set, el: h("div", { class: "fld" }, h("label", { for: id }, t(key)), input) };
}

/**
 * The controls of a bench. act(action): does it.
 * @param {Act} act
 */
export function controlsOf(act) {
  /** @type {(key: string, action: Action) => Control} */
  const does = (key, action) => ({ el: button(t(`list-${key}`), () => act(action)) });

  return {
    does,

    /**
     * A plug: which socket it is in, and a button to wiggle it.
     * @param {End} end @returns {Control}
     */
    plug(end) {
      const choice = new Choice(t(`end-${end}`), (socket) => act(socket ? { do: "plug", end, socket: /** @type {Socket} */ (socket) } : { do: "unplug", end }));
      opensByArrow(choice.select);
      const name = t("list-wiggle", { end: t(`end-${end}`) });
      choice.el.append(h("button", { type: "button", class: "btn btn-round", "aria-label": name, title: name, onclick: () => act({ do: "wiggle", end }) }, icon("wiggle")));
      return { el: choice.el, show: ({ sockets, ends }) => choice.set([["", t("socket-none")], ...sockets.map((socket) => /** @type {Option} */ ([socket.id, socketWords(socket, end)]))], ends.find((one) => one.id === end)?.socket ?? "") };
    },

    /**
     * The same for a hand: the sockets of its shape, one press each.
     * @param {End} end @returns {Control}
     */
    fits(end) {
      const way = new Segments(t("card-plug_into"), (socket) => act(socket ? { do: "plug", end, socket: /** @type {Socket} */ (socket) } : { do: "unplug", end }));
      const show = (/** @type {BenchView} */ { sockets, ends }) => {
        const own = ends.find((one) => one.id === end);
        const of = sockets.filter((socket) => socket.kind === own?.kind);
        way.set([...of.map((socket) => /** @type {[string, string]} */ ([socket.id, socketWords(socket, end)])), ["", t("socket-none")]], own?.socket ?? "");
      };
      return { el: way.el, show };
    },

    /** @param {End} end @returns {Control} */
    wiggle: (end) => ({ el: button(t("card-wiggle"), () => act({ do: "wiggle", end }), { pic: "wiggle" }) }),

    /** In a list it is called by its thing; on the card of the thing, which has its name already, by what it does. @param {"power_strip" | "recorder" | "lamp"} id @param {boolean} [onCard] @returns {Control} */
    power(id, onCard = false) {
      const tick = new Tick(t(onCard ? "switch-on" : `switch-${id}`), (on) => act({ do: "switch", id, on }));
      explain(tick.el, id === "lamp" ? "explain-lamp" : `explain-switch_${id}`);
      return { el: tick.el, show: ({ switches }) => tick.set(switches[id]) };
    },
    /** @param {boolean} [onCard] @returns {Control} */
    charger(onCard = false) {
      const tick = new Tick(t(onCard ? "switch-plugged" : "switch-charger"), (plugged) => act({ do: "charger", plugged }));
      explain(tick.el, "explain-charger");
      return { el: tick.el, show: ({ charger_plugged: plugged }) => tick.set(plugged) };
    },

    /** @returns {Control} */
    strapOn() {
      const tick = new Tick(t("strap-on"), (on) => act({ do: on ? "strap_on" : "strap_off" }));
      explain(tick.el, "explain-strap_on");
      return { el: tick.el, show: ({ strap }) => tick.set(strap.on) };
    },
    /** How tight, and what the subject says of it. @returns {Control} */
    tightness() {
      const { input, set, el } = slider("strap-tightness", "strap-slide", { min: 0, max: 100, step: 1 }, (v) => act({ do: "strap", tightness: v / 100 }));
      const feel = h("p", { class: "pencil feel", id: newId("feel") });
      attr(input, "aria-describedby", feel.id);
      explain(el, "explain-tightness");
      return {
        el: h("div", { class: "strap-way" }, el, feel), show: ({ strap }) => {
          set(Math.round(strap.tightness * 100));
          prop(input, "disabled", !strap.on);
          attr(input, "aria-valuetext", coded("feel", strap.feel));
          words(feel, coded("feel", strap.feel));
          flag(feel, "is-off", strap.feel === "off");
        },
      };
    },
    /** @returns {Control} */
    place() {
      const choice = new Choice(t("strap-place"), (place) => act({ do: "sensor_place", place: /** @type {Place} */ (place) }));
      explain(choice.el, "explain-place");
      return { el: choice.el, show: ({ strap }) => choice.set(["pulp", "middle", "joint"].map((id) => /** @type {Option} */ ([id, t(`strap-place-${id}`)])), strap.place) };
    },
    /** @returns {Control} */
    face() {
      const choice = new Choice(t("strap-face"), (face) => act({ do: "sensor_side", side: /** @type {Face} */ (face) }));
      explain(choice.el, "explain-face");
      return { el: choice.el, show: ({ strap }) => choice.set(["to_skin", "away"].map((id) => /** @type {Option} */ ([id, t(`strap-face-${id}`)])), strap.side) };
    },
    /** @returns {Control} */
    height() {
      const { input, set, el } = slider("hand-height", "", { min: -50, max: 50, step: 1 }, (v) => act({ do: "hand_height", cm: v }));
      const says = h("p", { class: "quiet" });
      explain(el, "explain-height");
      return {
        el: h("div", { class: "strap-way" }, el, says), show: ({ hand }) => {
          const cm = Math.round(hand.height_cm);
          set(cm);
          const where = cm === 0 ? t("hand-level") : t(cm > 0 ? "hand-above" : "hand-below", { cm: Math.abs(cm) });
          attr(input, "aria-valuetext", where);
          words(says, where);
        },
      };
    },
    /** What else the subject can be asked to do. @returns {Control} */
    asking() {
      const caution = h("p", { class: "ask-caution", role: "status" });
      const asked = new Choice(t("ask-title"), (what) => words(caution, RISKY.has(what) ? t("ask-caution") : EFFORT.has(what) ? t("ask-caution_effort") : ""));
      explain(asked.el, "explain-ask");
      asked.set(Object.keys(ASKED).map((id) => /** @type {Option} */ ([id, t(`ask-${id}`)])), "deep_breath");
      return { el: h("div", { class: "asking" }, asked.el, button(t("ask-do"), () => act({ do: "manoeuvre", what: ASKED[asked.select.value] })), caution) };
    },
    /** Waits at once for what takes minutes. @returns {Control} */
    waiting() {
      const ways = PASSES_S.map((s) => button(t("wait-minutes", { n: s / 60 }), () => act({ do: "let_pass", s })));
      return { el: explain(h("div", { class: "row", role: "group", "aria-label": t("wait-title") }, h("span", { class: "lbl" }, t("wait-title")), ways), "explain-wait") };
    },
    /** @returns {Control} */
    shade() {
      const tick = new Tick(t("list-shade"), (on) => act({ do: "shade", on }));
      return { el: tick.el, show: ({ strap }) => tick.set(strap.shaded) };
    },
    /** Where the other hand is. @returns {Control} */
    other() {
      const way = new Segments(t("other-title"), (on) => act({ do: "other_hand", on: /** @type {OtherHand} */ (on) }));
      const hint = h("p", { class: "quiet", id: newId("other") }, t("other-hint"));
      attr(way.el, "aria-describedby", hint.id);
      return { el: h("div", { class: "other-way" }, way.el, hint), show: ({ strap }) => way.set(OTHER_HAND.map((id) => /** @type {[string, string]} */ ([id, t(`other-${id}`)])), strap.other_hand) };
    },
  };
}

/** @typedef {ReturnType<typeof controlsOf>} Controls */

/**
 * A socket in the list of one plug, with who else is in it.
 * @param {SocketAt} socket @param {End} end
 */
function socketWords({ id, taken_by: by }, end) {
  const name = t(`socket-${id}`);
  if (!by || by === end) return name;
  return t("socket-taken", { socket: name, by: t(`taken-${by}`) });
}
