// @ts-check
// The measuring panel of an opened take: both cursors as numbers, what lies between them, the beat marks as a list, and the
// looking closer.

import { h, newId, prop, refill, words } from "../dom.js";
import { decimalSign, num, t } from "../text.js";
import { button, Tick } from "../widgets.js";
import { heightText, hundredths, timeText, windowText } from "./units.js";
/** @import { Act } from '../types/action' */
/** @import { Which } from '../types/names' */
/** @import { View } from '../types/view' */
/** @import { Cursors } from './cursors.js' */

export class Measure {
  /**
   * zoom(): shows the stretch between the cursors, or all again; turnSnap(on): marks and dragged cursors go to the nearest peak;
   * undo(): takes the last deed back; heights: whether the height between the cursors is asked for.
   * @param {{ act: Act, cursors: Cursors, markAt: (time: number | null) => unknown, saves: HTMLElement, zoom: (closer: boolean) => unknown, turnSnap: (on: boolean) => unknown, undo: () => unknown, heights: boolean }} ways
   */
  constructor({ act, cursors, markAt, saves, zoom, turnSnap, undo, heights }) {
    this.heights = heights;
    this.act = act;
    this.cursors = cursors;
    /** @type {number | null} */
    this.number = null;
    this.fields = { a: this.field("a"), b: this.field("b") };
    this.interval = h("output", { class: "big" });
    this.height = h("output", { class: "big" });
    this.count = h("output", { class: "big" });
    this.countBox = h("p", { class: "reading" }, h("span", { class: "lbl" }, t("measure-marked")), this.count);
    this.heightBox = h("p", { class: "reading is-value" }, h("span", { class: "lbl" }, t("measure-height")), this.height);
    this.noteList = h("ul", { class: "mark-list note-list" });
    this.notes = h("details", { class: "marks" }, h("summary", {}, t("notes-list")), this.noteList);
    this.list = h("ul", { class: "mark-list" });
    this.clear = button(t("marks-clear"), () => act({ do: "marks_clear" }), { kind: "btn-plain" });
    this.zoomIn = button(t("measure-closer"), () => zoom(true), { kind: "btn-plain btn-sign", pic: "zoom", title: t("measure-closer") });
    this.zoomOut = button(t("zoom-out"), () => zoom(false), { kind: "btn-plain btn-sign", pic: "whole", title: t("zoom-out") });
    this.snap = new Tick(t("measure-snap"), turnSnap);
    const labelId = newId("label");
    /** @type {HTMLInputElement} */
    this.label = h("input", { id: labelId, class: "txt", maxlength: "80", autocomplete: "off", onchange: () => this.number !== null && act({ do: "label", recording: this.number, text: this.label.value }) });
    this.labelBox = h("div", { class: "fld take-label" }, h("label", { for: labelId }, t("take-label")), this.label);
    this.undoMark = button(t("marks-undo"), undo, { kind: "btn-plain btn-sign", pic: "undo", title: t("marks-undo") });
    this.more = h("details", { class: "measure-more", onkeydown: (event) => event.key === "Escape" && this.close() }, h("summary", { class: "btn btn-plain" }, t("measure-more")), h("div", { class: "measure-rest" },
      this.labelBox, this.snap.el,
      h("div", { class: "row" }, button(t("marks-at_a"), () => markAt(this.cursors.times.a)), button(t("marks-at_b"), () => markAt(this.cursors.times.b)), this.clear),
      h("details", { class: "marks" }, h("summary", {}, t("marks-list")), this.list),
      this.notes, saves, h("p", { class: "quiet" }, t("measure-hint"))));
    this.el = h("div", { class: "measure", role: "group", "aria-label": t("measure-title") }, this.fields.a.el, this.fields.b.el,
      h("p", { class: "reading is-value" }, h("span", { class: "lbl" }, t("measure-between")), this.interval),
      this.heightBox, this.countBox, this.undoMark, this.zoomIn, this.zoomOut, this.more);
    /** @param {PointerEvent} event */
    this.outside = (event) => {
      if (this.more.open && event.target instanceof Node && !this.more.contains(event.target)) this.more.open = false;
    };
    addEventListener("pointerdown", this.outside);
  }

  close() {
    this.more.open = false;
    /** @type {HTMLElement | null} */ (this.more.querySelector("summary"))?.focus();
  }

  end() {
    removeEventListener("pointerdown", this.outside);
  }

  /** @param {Which} which */
  field(which) {
    const id = newId("cursor");
    /** @type {HTMLInputElement} */
    const input = h("input", { id, class: "txt", inputmode: "decimal", autocomplete: "off", onchange: () => this.typed(which, input) });
    return { input, el: h("div", { class: "fld" }, h("label", { for: id }, t(`measure-${which}`)), input) };
  }

  /** @param {Which} which @param {HTMLInputElement} input */
  typed(which, input) {
    const text = input.value.trim().replace(decimalSign(), ".").replace(",", ".");
    const time = text === "" ? null : Number(text);
    if (time === null) this.act({ do: "cursor", which, t: null });
    else if (Number.isFinite(time)) this.act({ do: "cursor", which, t: time });
    this.times(this.cursors.times);
  }

  /**
   * Shows the cursors, at rest or in the hand.
   * @param {{ a: number | null, b: number | null }} times
   */
  times({ a, b }) {
    for (const [field, time] of /** @type {const} */ ([[this.fields.a, a], [this.fields.b, b]])) prop(field.input, "value", time === null ? "" : hundredths(time));
    words(this.interval, a === null || b === null ? t("measure-none") : windowText(Math.abs(b - a)));
  }

  /** @param {View} view */
  show(view) {
    const { cursors, trace, recordings } = view;
    this.times(this.cursors.times);
    words(this.height, typeof cursors.amplitude === "number" ? heightText(cursors.amplitude) : t("measure-none"));
    this.heightBox.hidden = !this.heights || view.kind === "recording"; // nobody knows the unit of its values
    this.countBox.hidden = !(view.count_shown ?? true);
    words(this.count, num(view.marks_in_window));
    this.number = trace.recording;
    const kept = recordings.find((one) => one.recording === trace.recording);
    this.labelBox.hidden = view.kind === "recording";
    if (document.activeElement !== this.label) prop(this.label, "value", kept?.label ?? "");
    this.snap.el.hidden = !view.help || view.help === "alone";
    this.snap.set(view.snap);
    prop(this.zoomIn, "disabled", !cursors.interval_s);
    this.zoomOut.hidden = !trace.zoomed;
    prop(this.clear, "disabled", view.marks.length === 0);
    prop(this.notes, "hidden", view.notes.length === 0);
    refill(this.noteList, view.notes, () =>
      view.notes.map(({ at_s, length_s, text }) => h("li", {}, h("button", { type: "button", class: "btn btn-plain", onclick: () => this.act({ do: "scroll", start_s: Math.max(0, at_s - view.trace.time_base_s / 2) }) }, length_s === null ? t("notes-one", { s: timeText(at_s), text }) : t("notes-long", { s: timeText(at_s), length: timeText(length_s), text })))));
    refill(this.list, view.marks, () =>
      view.marks.length
        ? view.marks.map((mark) => h("li", {}, h("button", { type: "button", class: "btn btn-plain", "aria-label": t("marks-remove", { s: timeText(mark) }), onclick: () => this.act({ do: "unmark", t: mark }) }, timeText(mark), h("span", { "aria-hidden": "true" }, " ×"))))
        : h("li", { class: "quiet" }, t("marks-none")));
  }
}
