// The worksheet: a notebook page with four blanks, a check, and under it the debrief.

import { attr, flag, h, newId, prop, words } from "../dom.js";
import { coded, has, t } from "../text.js";
import { button } from "../widgets.js";
import { refusalText } from "../bench/index.js";
import { Naming } from "../faults/naming.js";
import { askedOfRecording, askedPage } from "./asked.js";
import { Debrief } from "./debrief.js";

const FIELDS = ["count", "seconds", "multiplier", "rate"];
const TYPING_MS = 700;
const SHEET_DEEDS = new Set(["answer", "check", "reveal"]);

export class SheetPane {
  /** settle(): puts cursors still in the hand to the core; again(): opens a new seed. */
  constructor(root, session, { settle, again }) {
    Object.assign(this, { session, settle });
    this.recording = session.bench.kind === "recording";
    this.blanks = Object.fromEntries(FIELDS.map((field) => [field, this.blank(field)]));
    this.check = button(t("sheet-check"), () => this.judge(), { kind: "btn-strong" });
    this.reveal = button(t(this.recording ? "sheet-reveal_recording" : "sheet-reveal"), () => this.doReveal());
    this.again = button(t("sheet-again"), again, { pic: "again" });
    this.note = h("p", { class: "pencil sheet-note", role: "status" });
    this.debrief = new Debrief(session.view);
    this.naming = session.view.scenario?.name_faults ? new Naming(session) : null;
    const criteria = session.view.scenario?.pass;
    this.asked = criteria ? askedPage(criteria) : askedOfRecording();
    root.replaceChildren(
      h("div", { class: "page" },
        h("h2", { id: "sheet-h" }, t("sheet-title")),
        h("p", { class: "quiet" }, t(this.recording ? "sheet-about_recording" : "sheet-about")),
        this.naming?.el,
        h("ol", { class: "blanks" }, FIELDS.map((field) => this.blanks[field].el)),
        h("div", { class: "row" }, this.check, this.reveal, !this.recording && this.again), this.note),
      this.debrief.el, this.asked);
    session.onView((view) => this.show(view));
    session.onRefusal((code, args, action) => SHEET_DEEDS.has(action.do) && words(this.note, refusalText(code, args)));
  }

  blank(field) {
    const id = newId(field), problemId = newId("problem");
    const input = h("input", { id, class: "blank", inputmode: "decimal", autocomplete: "off", "aria-describedby": problemId, onchange: () => this.put(field), oninput: () => this.typing(field),
      onkeydown: (event) => event.key === "Enter" && this.judge() });
    const problem = h("span", { class: "problem", id: problemId });
    const key = `sheet-line-${field}`;
    const [before, after] = [t(key), has(`${key}.after`) ? t(`${key}.after`) : ""];
    return { input, problem, timer: 0, el: h("li", { class: `line line-${field}` }, h("label", { for: id }, before), input, h("span", { class: "after", "aria-hidden": "true" }, after), problem) };
  }

  typing(field) {
    const blank = this.blanks[field];
    clearTimeout(blank.timer);
    blank.timer = setTimeout(() => this.put(field), TYPING_MS);
  }

  /** Puts what is typed in a blank to the core, as typed. */
  put(field) {
    const { input, timer } = this.blanks[field];
    clearTimeout(timer);
    if (input.value !== this.session.view.worksheet[field].text) this.session.act({ do: "answer", field, text: input.value });
  }

  judge() {
    words(this.note, "");
    this.settle();
    for (const field of FIELDS) this.put(field);
    if (this.session.act({ do: "check" })) this.debrief.focus();
  }

  doReveal() {
    if (!this.session.view.check) return words(this.note, t("sheet-check_first"));
    words(this.note, "");
    this.settle();
    for (const field of FIELDS) this.put(field);
    if (this.session.act({ do: "reveal" })) this.debrief.focus();
    return undefined;
  }

  show(view) {
    const over = Boolean(view.check?.over);
    for (const field of FIELDS) {
      const { input, problem } = this.blanks[field];
      const answer = view.worksheet[field];
      if (document.activeElement !== input) prop(input, "value", answer.text);
      const wrong = answer.problem && !(answer.problem === "empty" && !view.check);
      words(problem, wrong ? coded("problem", answer.problem) : "");
      attr(input, "aria-invalid", wrong ? "true" : null);
      prop(input, "readOnly", over);
    }
    for (const one of [this.check, this.reveal]) prop(one, "disabled", over);
    flag(this.again, "btn-strong", over);
    this.naming?.show(view);
    this.debrief.show(view);
    prop(this.asked, "hidden", Boolean(view.check));
  }
}
