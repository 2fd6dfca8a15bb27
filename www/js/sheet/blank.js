// @ts-check
// One blank of the worksheet: a sentence with a place to write in. What is typed goes to the core as typed.

import { attr, h, newId, prop, words } from "../dom.js";
import { coded, has, t } from "../text.js";
/** @import { Session } from '../session.js' */
/** @import { Field } from '../types/names' */
/** @import { View } from '../types/view' */

const TYPING_MS = 700;

// While something is being pressed nothing may move under the finger: a complaint that makes its line taller waits for the release.
/** @type {Map<Element, string>} */
const waiting = new Map();
let pressed = false;
addEventListener("pointerdown", () => (pressed = true), true);
for (const name of ["pointerup", "pointercancel"]) {
  addEventListener(name, () => setTimeout(() => {
    pressed = false;
    for (const [el, text] of waiting) words(el, text);
    waiting.clear();
  }), true);
}

/** @param {Element} el @param {string} text */
function tell(el, text) {
  if (pressed) waiting.set(el, text);
  else words(el, text);
}

export class Blank {
  /**
   * key: of its sentence; done(): Enter was pressed.
   * @param {Field} field @param {string} key @param {Session} session
   * @param {{ done: () => unknown, optional: boolean }} ways
   */
  constructor(field, key, session, { done, optional }) {
    this.field = field;
    this.session = session;
    this.optional = optional;
    const id = newId(field), problemId = newId("problem");
    this.input = h("input", { id, class: "blank", inputmode: "decimal", autocomplete: "off", "aria-describedby": problemId, data: { field }, onchange: () => this.put(), oninput: () => this.typing(),
      onkeydown: (event) => event.key === "Enter" && done() });
    this.problem = h("span", { class: "problem", id: problemId });
    const after = has(`${key}.after`) ? t(`${key}.after`) : "";
    this.el = h("li", { class: `line line-${field}` }, h("p", { class: "line-name" }, h("label", { for: id }, t(key)), optional && [" ", h("span", { class: "line-may" }, t("sheet-may"))]), this.input, h("span", { class: "after", "aria-hidden": "true" }, after), this.problem);
  }

  typing() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.put(), TYPING_MS);
  }

  /** Puts what is typed to the core. */
  put() {
    clearTimeout(this.timer);
    const now = this.session.view.worksheet[this.field];
    if (now && this.input.value !== now.text) this.session.act({ do: "answer", field: this.field, text: this.input.value });
  }

  /** @param {View} view */
  show({ worksheet, check, hint }) {
    const answer = worksheet[this.field];
    if (!answer) return;
    if (document.activeElement !== this.input) prop(this.input, "value", answer.text);
    const wrong = answer.problem === "empty" && (!check || this.optional) ? null : answer.problem;
    tell(this.problem, wrong ? coded("problem", wrong) : "");
    attr(this.input, "aria-invalid", wrong ? "true" : null);
    prop(this.input, "readOnly", Boolean(check?.over));
    this.el.classList.toggle("is-pointed", hint?.locate?.field === this.field);
  }
}
