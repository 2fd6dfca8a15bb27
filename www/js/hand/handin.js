// @ts-check
// Handing in: under the debrief, the attempt as a file and as a code. Nothing is sent; the student passes it on.

import { h, newId, prop, say, words } from "../dom.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
import { courseOf } from "./course.js";
import { copy, plainName } from "./file.js";
import { download } from "../download.js";
/** @import { Session } from '../session.js' */
/** @import { Assigned } from '../types/page' */
/** @import { View } from '../types/view' */

export class HandIn {
  /**
   * assigned: {student, tries, closing, own} of a link's assignment, or undefined.
   * @param {HTMLElement} root @param {Session} session @param {Assigned | null} assigned
   */
  constructor(root, session, assigned) {
    this.session = session;
    this.assigned = assigned;
    this.stamp = "";
    const id = newId("student"), codeId = newId("code");
    this.student = h("input", { id, class: "txt", autocomplete: "off", maxlength: "60", oninput: () => this.write() });
    this.student.value = assigned?.student ?? "";
    prop(this.student, "readOnly", Boolean(assigned?.own && assigned.student)); // the bench was made for this code
    /** @type {HTMLTextAreaElement} */
    this.code = h("textarea", { id: codeId, class: "txt code", readonly: true, rows: "3", spellcheck: "false", onfocus: () => this.code.select() });
    this.note = h("p", { class: "quiet", role: "status" });
    this.closing = h("div", { class: "said", hidden: true }, (assigned?.closing ?? "").split("\n").map((line) => h("p", { class: "pencil" }, line)));
    this.el = h("section", { class: "handin", "aria-labelledby": `${id}-h` },
      h("h2", { id: `${id}-h` }, t("hand-title")), this.closing, h("p", { class: "quiet" }, t("hand-about")),
      h("div", { class: "fld handin-who" }, h("label", { for: id }, t("hand-own_code")), this.student),
      h("div", { class: "row" }, button(t("hand-file"), () => this.save(), { kind: "btn-strong", pic: "save" }), button(t("hand-copy"), () => this.copy())),
      h("details", {}, h("summary", {}, t("hand-show_code")), h("div", { class: "fld" }, h("label", { for: codeId }, t("hand-code")), this.code)), this.note);
    const course = assigned && courseOf(assigned.address);
    if (course) this.el.append(h("p", { class: "handin-course" }, t("hand-course_part", { title: course.title }), " ", h("a", { class: "btn btn-plain", href: `#c=${course.address}` }, t("hand-course_back"))));
    root.append(this.el);
    session.onView((view) => this.show(view));
  }

  get about() {
    return { student: this.student.value.trim(), try: this.assigned?.tries ?? 0, begun_s: Math.round(this.session.begun / 1000), ended_s: Math.round(Date.now() / 1000) };
  }

  /** @param {View} view */
  show(view) {
    if (!this.el.isConnected) return;
    prop(this.closing, "hidden", !(this.assigned?.closing && view.over));
    const stamp = JSON.stringify([view.check?.try, view.over]);
    if (this.stamp === stamp) return;
    this.stamp = stamp;
    this.write();
  }

  write() {
    prop(this.code, "value", this.session.bench.code(this.about));
    words(this.note, "");
  }

  save() {
    const { scenario, seed } = this.session.view;
    const parts = [scenario?.id, plainName(this.student.value, 24), seed].filter(Boolean);
    download(`${parts.join("-")}.dicrotic-result.json`, this.session.bench.result(this.about));
    this.tell(t("hand-saved"));
  }

  async copy() {
    this.write();
    this.tell((await copy(this.code.value, this.code)) ? t("hand-copied") : t("hand-by_hand"));
  }

  /** @param {string} text */
  tell(text) {
    words(this.note, text);
    say(text);
  }
}
