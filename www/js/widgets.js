// @ts-check
// Small controls shared by the panels: a stepper with a choice in its middle, a labelled choice, a switch, a button.

import { attr, h, newId, prop, refill, words } from "./dom.js";
import { icon } from "./icons.js";
/** @import { Kid } from './types/page' */

/** @typedef {readonly [string | number, string]} Option */

/**
 * A button with words, and perhaps a picture.
 * @param {string} label @param {(event: MouseEvent) => unknown} onclick
 * @param {{ kind?: string, pic?: string | null, [attribute: string]: unknown }} [more]
 */
export const button = (label, onclick, { kind = "", pic = null, ...more } = {}) =>
  h("button", { type: "button", class: `btn ${kind}`, onclick, ...more }, pic && icon(pic), h("span", { class: "word" }, label));

/** A labelled choice. options: [[value, words]…]; pick(value string). */
export class Choice {
  /** @param {string} label @param {(value: string) => unknown} pick @param {Record<string, unknown>} [attrs] */
  constructor(label, pick, attrs = {}) {
    const id = newId("choice");
    /** @type {HTMLSelectElement} */
    this.select = h("select", { id, onchange: () => pick(this.select.value), ...attrs });
    this.el = h("div", { class: "fld" }, h("label", { for: id }, label), this.select);
  }
  /** @param {readonly Option[]} options @param {unknown} value */
  set(options, value) {
    refill(this.select, options, () => options.map(([key, text]) => h("option", { value: key }, text)));
    prop(this.select, "value", String(value));
  }
}

/**
 * A small choice for the head: what is chosen is seen as a sign, with its word where there is room; the control lies over both.
 * @param {HTMLSelectElement} select @param {...Kid} shown
 */
export const choiceOf = (select, ...shown) => h("div", { class: "pick" }, h("span", { class: "pick-shown", "aria-hidden": "true" }, shown), select);

/**
 * Lets the arrow keys open a list instead of stepping through it: for lists of which some entries are refused, where a step
 * would be taken back before the next one. Browsers without showPicker keep their own way.
 * @param {HTMLSelectElement} select
 */
export function opensByArrow(select) {
  select.addEventListener("keydown", (event) => {
    if (!["ArrowDown", "ArrowUp"].includes(event.key) || event.altKey || !select.showPicker) return;
    event.preventDefault();
    try {
      select.showPicker();
    } catch { /* not allowed here: nothing happens, Space still opens it */ }
  });
  return select;
}

/** A stepper: less, the value as a choice, more. Options run from least to most. */
export class Stepper {
  /** short: what is seen of the label where it stands on a frame. @param {string} label @param {string} less @param {string} more @param {(value: string) => unknown} pick @param {string | null} [short] */
  constructor(label, less, more, pick, short = null) {
    this.pick = pick;
    /** @type {readonly Option[]} */
    this.options = [];
    this.down = false; // whether more stands before less in the list
    const id = newId("step");
    /** @type {HTMLSelectElement} */
    this.select = h("select", { id, onchange: () => pick(this.select.value) });
    this.less = h("button", { type: "button", class: "btn btn-round", "aria-label": less, title: less, onclick: () => this.go(-1) }, icon("minus"));
    this.more = h("button", { type: "button", class: "btn btn-round", "aria-label": more, title: more, onclick: () => this.go(1) }, icon("plus"));
    this.el = h("div", { class: "fld stepper" }, h("label", { for: id, data: short ? { short } : undefined }, short ? h("span", { class: "vh" }, label) : label), h("div", { class: "step-row" }, this.less, this.select, this.more));
  }
  /** @param {number} by */
  go(by) {
    const next = this.options[this.at() + (this.down ? -by : by)];
    if (next) this.pick(String(next[0]));
  }
  at() {
    return this.options.findIndex(([key]) => String(key) === this.select.value);
  }
  /** @param {readonly Option[]} options @param {unknown} value */
  set(options, value) {
    this.options = options;
    refill(this.select, options, () => options.map(([key, text]) => h("option", { value: key }, text)));
    prop(this.select, "value", String(value));
    const [first, last] = this.down ? [this.more, this.less] : [this.less, this.more];
    attr(first, "aria-disabled", this.at() <= 0 ? "true" : null);
    attr(last, "aria-disabled", this.at() >= options.length - 1 ? "true" : null);
  }
}

/** A switch with its words. */
export class Tick {
  /** @param {string} label @param {(on: boolean) => unknown} turn */
  constructor(label, turn) {
    /** @type {HTMLInputElement} */
    this.box = h("input", { type: "checkbox", role: "switch", onchange: () => turn(this.box.checked) });
    this.text = h("span", {}, label);
    this.el = h("label", { class: "tick" }, this.box, this.text);
  }
  /** @param {unknown} on */
  set(on) {
    prop(this.box, "checked", Boolean(on));
  }
}

/** A set of choices of which one is on, as buttons with aria-pressed. */
export class Segments {
  /** @param {string} label @param {(key: string) => unknown} pick */
  constructor(label, pick) {
    this.pick = pick;
    this.el = h("div", { class: "segs", role: "group", "aria-label": label });
  }
  /** Of each its key, its words, a picture, and what is seen of the words on a small screen. @param {readonly (readonly [string, string, (string | null)?, string?])[]} options @param {unknown} value */
  set(options, value) {
    refill(this.el, options, () =>
      options.map(([key, text, pic, short]) => h("button", { type: "button", class: "seg", data: short ? { key, short } : { key }, onclick: () => this.pick(key) }, pic && icon(pic), h("span", {}, text))));
    for (const kid of this.el.children) attr(kid, "aria-pressed", String(kid.getAttribute("data-key") === String(value)));
  }
}

/**
 * Sets the words of a button made here.
 * @param {Element} el @param {string} text
 */
export const relabel = (el, text) => words(el.querySelector(".word") ?? el, text);
