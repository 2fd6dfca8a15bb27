// @ts-check
// What can be done with a part that was touched, beside the part; on a small screen as a sheet at the foot of the window. The list
// of parts holds the same for the keyboard, so the card is brought by a hand alone.

import { h, style, words } from "../dom.js";
import { icon } from "../icons.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
import { controlsOf } from "./controls.js";
/** @import { Act } from '../types/action' */
/** @import { End, LookAt, Part } from '../types/names' */
/** @import { BenchView } from '../types/view' */
/** @import { Control, Controls } from './controls.js' */

/** A thing on the table that can be touched: the end of a cable, a part, the sensor. @typedef {`end:${End}` | `part:${Part}` | "sensor"} Thing */

const GAP_PX = 10, WIDTH_PX = 304, LEAST_PX = 196;

export class Card {
  /** @param {HTMLElement} place @param {Act} act */
  constructor(place, act) {
    this.place = place;
    this.act = act;
    this.make = controlsOf(act);
    /** @type {Thing | null} */
    this.thing = null;
    /** @type {Control[]} */
    this.controls = [];
    this.title = h("h3", { class: "card-h" });
    this.body = h("div", { class: "card-body" });
    // What the bench says is repeated at the button that asked for it: on a small screen the card lies over the bench's own words.
    this.said = h("div", { class: "card-said pencil", "aria-hidden": "true" });
    this.el = h("div", { class: "touch-card", role: "group", hidden: true, onkeydown: (event) => event.key === "Escape" && this.close() },
      h("div", { class: "card-head" }, this.title, h("button", { type: "button", class: "btn btn-round btn-plain", "aria-label": t("card-close"), onclick: () => this.close() }, icon("cross"))), this.body);
    place.append(this.el);
    /** @param {PointerEvent} event */
    this.outside = (event) => {
      if (!this.thing || !(event.target instanceof Element) || this.el.contains(event.target) || event.target.closest(".table")) return;
      if (this.atFoot && event.target.closest(".strip")) return; // the trace is looked at, and its range set, while the card is open
      this.close();
    };
    // Whoever comes to the blanks by keys, or by the next field of a phone's keyboard, sees them and their check.
    /** @param {FocusEvent} event */
    this.away = (event) => {
      if (this.thing && this.atFoot && event.target instanceof Element && event.target.closest(".sheet")) this.close();
    };
    addEventListener("pointerdown", this.outside, true);
    addEventListener("focusin", this.away);
  }

  /**
   * Opens the card of a thing whose drawing stands in a box of the window.
   * @param {Thing} thing @param {DOMRect} box @param {BenchView} bench
   */
  open(thing, box, bench) {
    this.thing = thing;
    words(this.title, nameOf(thing));
    this.el.setAttribute("aria-label", nameOf(thing));
    this.controls = this.of(thing);
    this.body.replaceChildren(...this.controls.map((control) => control.el));
    this.el.hidden = false;
    this.el.scrollTop = 0; // the card before may have been rolled down
    this.show(bench);
    this.lay(box);
    if (this.atFoot) this.place.scrollIntoView({ block: "start", behavior: "auto" }); // so that bench and trace are seen above it
  }

  /** Whether it stands at the foot of the window, as on a small screen. */
  get atFoot() {
    return getComputedStyle(this.el).position === "fixed";
  }

  /** Says what the bench said, under the button that was pressed. @param {Element} note */
  tell(note) {
    const pressed = this.body.contains(document.activeElement) && document.activeElement?.closest(".card-body > *");
    this.said.replaceChildren(...[...note.cloneNode(true).childNodes]);
    if (!note.textContent || !pressed) return this.said.remove();
    pressed.after(this.said);
    return this.said.scrollIntoView({ block: "nearest", behavior: "auto" });
  }

  close() {
    this.thing = null;
    this.controls = [];
    this.el.hidden = true;
    this.body.replaceChildren();
  }

  /** @param {BenchView} bench */
  show(bench) {
    for (const control of this.controls) control.show?.(bench);
  }

  /**
   * Beside the thing and not over it: on the side with more room, as wide as fits there; under or above it where neither side has any.
   * @param {DOMRect} box
   */
  lay(box) {
    const room = this.place.getBoundingClientRect();
    const right = room.right - box.right - GAP_PX, left = box.left - room.left - GAP_PX;
    const wide = Math.min(WIDTH_PX, room.width, Math.max(right, left));
    const beside = wide >= LEAST_PX;
    style(this.el, "--w", `${Math.floor(beside ? wide : Math.min(WIDTH_PX, room.width))}px`);
    const own = this.el.getBoundingClientRect();
    const within = (/** @type {number} */ v, /** @type {number} */ most) => Math.max(0, Math.min(v, most));
    const x = beside ? (right >= left ? box.right + GAP_PX : box.left - GAP_PX - own.width) - room.left : within(box.left - room.left, room.width - own.width);
    const below = box.bottom + GAP_PX + own.height <= room.bottom;
    const y = beside ? within(box.top - room.top - GAP_PX, room.height - own.height) : below ? box.bottom + GAP_PX - room.top : within(box.top - GAP_PX - own.height - room.top, room.height - own.height);
    style(this.el, "--x", `${Math.round(x)}px`);
    style(this.el, "--y", `${Math.round(y)}px`);
  }

  /** @param {Thing} thing @returns {Control[]} */
  of(thing) {
    const { make, act } = this;
    /** @param {LookAt} at @returns {Control} */
    const look = (at) => ({ el: button(t("card-look"), () => act({ do: "look", at })) });
    const [kind, id] = thing.split(":");
    if (kind === "end") return [make.fits(/** @type {End} */ (id)), make.wiggle(/** @type {End} */ (id)), ...(id === "sensor" ? [make.does("dry_plug", { do: "dry_plug" })] : []), look(id === "sensor" ? "cable" : "recorder")];
    if (thing === "sensor") return [make.strapOn(), make.tightness(), beside(make.place(), make.face()), make.does("tap_sensor", { do: "tap_sensor" }), make.does("press_finger", { do: "press_finger" }), make.does("wipe_sensor", { do: "wipe_sensor" }), make.shade(), look("sensor")];
    return PARTS[/** @type {Part} */ (id)]?.(make, look) ?? [];
  }

  end() {
    removeEventListener("pointerdown", this.outside, true);
    removeEventListener("focusin", this.away);
    this.close();
  }
}

/**
 * Two controls in one row.
 * @param {...Control} two @returns {Control}
 */
const beside = (...two) => ({ el: h("div", { class: "pair" }, two.map((one) => one.el)), show: (bench) => two.forEach((one) => one.show?.(bench)) });

/** @param {Thing} thing */
function nameOf(thing) {
  if (thing === "sensor") return t("card-sensor");
  const [kind, id] = thing.split(":");
  return t(`${kind === "end" ? "end" : "part"}-${id}`);
}

/** @type {Partial<Record<Part, (make: Controls, look: (at: LookAt) => Control) => Control[]>>} */
const PARTS = {
  recorder: (make, look) => [make.power("recorder", true), look("recorder"), make.other()],
  computer: (make, look) => [make.does("rescan", { do: "rescan" }), make.does("close_programs", { do: "close_programs" }), look("computer"), make.other()],
  power_strip: (make, look) => [make.power("power_strip", true), look("power_strip")],
  charger: (make, look) => [make.charger(true), look("power_strip")],
  phone: (make, look) => [look("around")],
  lamp: (make, look) => [make.power("lamp", true), look("around")],
  hand: (make, look) => [make.strapOn(), make.tightness(), make.does("ask_still", { do: "ask_still" }), make.does("ask_quiet", { do: "ask_quiet" }), make.does("ask_finger", { do: "ask_finger" }), make.asking(), make.waiting(), make.height(),
    make.does("warm_hand", { do: "manoeuvre", what: "warm_hand" }), make.does("rest_arm", { do: "rest_arm" }), make.does("push_up_sleeve", { do: "push_up_sleeve" }), look("subject")],
  cable1: (make, look) => [look("cable"), make.does("swap_cable", { do: "swap_cable" })],
  cable2: (make, look) => [look("cable"), make.does("swap_cable", { do: "swap_cable" })],
};
