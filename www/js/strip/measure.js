// The measuring panel of an opened take: both cursors as numbers, the interval, the beat marks as a list.

import { h, newId, prop, refill, words } from "../dom.js";
import { decimalSign, num, t } from "../text.js";
import { button } from "../widgets.js";
import { timeText } from "./units.js";

export class Measure {
  constructor({ act, cursors, markAt, saves }) {
    this.act = act;
    this.cursors = cursors;
    this.fields = { a: this.field("a"), b: this.field("b") };
    this.interval = h("output", { class: "big" });
    this.count = h("output", { class: "big" });
    this.noteList = h("ul", { class: "mark-list note-list" });
    this.notes = h("details", { class: "marks" }, h("summary", {}, t("notes-list")), this.noteList);
    this.list = h("ul", { class: "mark-list" });
    this.clear = button(t("marks-clear"), () => act({ do: "marks_clear" }), { kind: "btn-plain" });
    this.el = h("div", { class: "measure", role: "group", "aria-label": t("measure-title") },
      h("div", { class: "measure-cursors" }, this.fields.a.el, this.fields.b.el,
        h("p", { class: "reading" }, h("span", { class: "lbl" }, t("measure-interval")), this.interval),
        h("p", { class: "reading" }, h("span", { class: "lbl" }, t("measure-marks")), this.count)),
      h("div", { class: "row" }, button(t("marks-at_a"), () => markAt(this.cursors.times.a)), button(t("marks-at_b"), () => markAt(this.cursors.times.b)), this.clear),
      h("details", { class: "marks" }, h("summary", {}, t("marks-list")), this.list),
      this.notes,
      saves,
      h("p", { class: "quiet" }, t("measure-hint")));
  }

  field(which) {
    const id = newId("cursor");
    const input = h("input", { id, class: "txt", inputmode: "decimal", autocomplete: "off", onchange: () => this.typed(which, input) });
    return { input, el: h("div", { class: "fld" }, h("label", { for: id }, t(`cursor-${which}_s`)), input) };
  }

  typed(which, input) {
    const text = input.value.trim().replace(decimalSign(), ".").replace(",", ".");
    const time = text === "" ? null : Number(text);
    if (time === null) this.act({ do: "cursor", which, t: null });
    else if (Number.isFinite(time)) this.act({ do: "cursor", which, t: time });
    this.times(this.cursors.times);
  }

  /** Shows the cursors, at rest or in the hand. */
  times({ a, b }) {
    for (const [which, time] of [["a", a], ["b", b]]) prop(this.fields[which].input, "value", time === null ? "" : time.toFixed(2).replace(".", decimalSign()));
    words(this.interval, a === null || b === null ? t("measure-none") : timeText(Math.abs(b - a)));
  }

  show(view) {
    this.times(this.cursors.times);
    words(this.count, num(view.marks_in_window));
    prop(this.clear, "disabled", view.marks.length === 0);
    prop(this.notes, "hidden", view.notes.length === 0);
    refill(this.noteList, view.notes, () =>
      view.notes.map(({ at_s, length_s, text }) => h("li", {}, h("button", { type: "button", class: "btn btn-plain", onclick: () => this.act({ do: "scroll", start_s: Math.max(0, at_s - view.strip.time_base_s / 2) }) }, length_s === null ? t("notes-one", { s: timeText(at_s), text }) : t("notes-long", { s: timeText(at_s), length: timeText(length_s), text })))));
    refill(this.list, view.marks, () =>
      view.marks.length
        ? view.marks.map((mark) => h("li", {}, h("button", { type: "button", class: "btn btn-plain", "aria-label": t("marks-remove", { s: timeText(mark) }), onclick: () => this.act({ do: "unmark", t: mark }) }, timeText(mark), h("span", { "aria-hidden": "true" }, " ×"))))
        : h("li", { class: "quiet" }, t("marks-none")));
  }
}
