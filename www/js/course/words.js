// @ts-check
// What the student reads of the course site: the words before a try, and under the debrief where the result goes.

import { asked } from "../ask.js";
import { dialog as question, h, prop, words } from "../dom.js";
import { agoText, t } from "../text.js";
import { button } from "../widgets.js";
/** @import { Session } from '../session.js' */
/** @import { View } from '../types/view' */

/**
 * A text of the instructor's, line by line.
 * @param {string} text
 */
const lines = (text) => text.split("\n").map((line) => h("p", {}, line));

/**
 * The words before a try; true when it is to begin. away: whether one may turn away from it; host: where it all goes, to be told.
 * @param {{ title: string, opening: string, n: number, of: number | null, away: boolean, host: string }} what
 */
export async function mayBegin({ title, opening, n, of, away, host }) {
  const dialog = question();
  dialog.returnValue = "";
  dialog.replaceChildren(h("div", {}, h("h2", { id: "ask-h" }, title), opening && h("div", { class: "said" }, lines(opening)), away && h("p", {}, t("course-new_closes")), host && whatGoes(host),
    h("div", { class: "row" }, button(of ? t("course-begin_of", { n, of }) : t("course-begin", { n }), () => dialog.close("yes"), { kind: "btn-strong", autofocus: true }), away && button(t("course-stay"), () => dialog.close("no")))));
  await asked(dialog);
  return !away || dialog.returnValue === "yes";
}

/** @param {string} host */
const whatGoes = (host) => [h("p", {}, t("course-goes_where", { host })), h("p", { class: "quiet" }, t("course-goes_what"))];

/**
 * What leaves this device, and where to.
 * @param {string} host
 */
export async function tellWhatGoes(host) {
  const dialog = question();
  dialog.returnValue = "";
  dialog.replaceChildren(h("h2", { id: "ask-h" }, t("course-goes")), ...whatGoes(host), h("div", { class: "row" }, button(t("course-goes_close"), () => dialog.close(), { kind: "btn-strong", autofocus: true })));
  await asked(dialog);
}

/**
 * Whether to go on with an attempt that this device has and the site never took.
 * @param {number} at
 */
export async function mayGoOn(at) {
  const dialog = question();
  dialog.returnValue = "";
  dialog.replaceChildren(h("h2", { id: "ask-h" }, t("course-untaken_title")), h("p", {}, t("course-untaken", { when: agoText(at) })),
    h("div", { class: "row" }, button(t("course-untaken_yes"), () => dialog.close("yes"), { kind: "btn-strong", autofocus: true }), button(t("course-untaken_no"), () => dialog.close("no"))));
  await asked(dialog);
  return dialog.returnValue !== "no";
}

/** Under the debrief: that the site takes the result, and the instructor's closing words. */
export class Over {
  /**
   * save(): the result as a file; state(): what there is to be told.
   * @param {HTMLElement} root @param {Session} session
   * @param {{ closing: string, mastery: number, save: () => unknown, score: () => { points: number, left: number | null } }} ways
   */
  constructor(root, session, { closing, mastery, save, score }) {
    this.score = score;
    this.mastery = mastery;
    this.closing = h("div", { class: "said", hidden: true }, lines(closing));
    this.points = h("p", {});
    this.left = h("p", { class: "quiet" });
    this.el = h("section", { class: "handin", "aria-labelledby": "course-over-h" }, h("h2", { id: "course-over-h" }, t("course-over_title")), this.closing, this.points, h("p", { class: "quiet" }, t("course-over_about")), this.left,
      h("details", {}, h("summary", {}, t("course-lost_title")), h("p", { class: "quiet" }, t("course-lost_about")), button(t("course-save"), save, { pic: "save" })));
    this.hasClosing = closing !== "";
    root.append(this.el);
    session.onView((view) => this.show(view));
  }

  /** @param {View} view */
  show(view) {
    const { points, left } = this.score();
    prop(this.closing, "hidden", !(this.hasClosing && view.over));
    words(this.points, t("course-points", { n: points, need: this.mastery }));
    words(this.left, left === null ? "" : left === 0 ? t("course-left_none") : t("course-left", { n: left }));
  }
}
