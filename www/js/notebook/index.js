// @ts-check
// The notebook: every trial that was checked, latest first, with its trace, its readings and a line to write on; to be printed,
// exported, deleted and put back.

import { h, newId, s, say, words } from "../dom.js";
import { icon } from "../icons.js";
import { routeTo } from "../route.js";
import { agoText, bringTexts, t } from "../text.js";
import { button } from "../widgets.js";
import { download } from "../download.js";
import { pastEvidence } from "../evidence.js";
import { chooseFiles } from "../hand/file.js";
import { asCsv, asJson } from "./export.js";
import { takeNotebook } from "./import.js";
import { asideNote } from "../device/aside.js";
import { addressOf, titleOf } from "../device/titles.js";
import { aside } from "../device.js";
import { keptAttempts } from "../store.js";
import { allPages, dropPage, keepPage, layPageAside } from "./pages.js";
import { drawing } from "./picture.js";
import { bandText, outcome, readings, settingsLine, whenText } from "./words.js";
/** @import { NotebookPage, Ways } from '../types/page' */

const NOTE_MS = 500;

/**
 * Fills the section; goBack(): returns to what was there before; inLab: whether that is a bench.
 * @param {HTMLElement} root @param {Ways} ways
 */
export async function showNotebook(root, { goBack, inLab }) {
  await Promise.all([bringTexts("notebook"), bringTexts("after")]);
  const before = aside().length;
  new Notebook(root, goBack, inLab).show();
  const note = await asideNote(before);
  if (note) root.querySelector(".side-lead")?.after(note);
}

class Notebook {
  /** @param {HTMLElement} root @param {() => unknown} goBack @param {boolean} inLab */
  constructor(root, goBack, inLab) {
    /** @type {NotebookPage[]} */
    this.pages = [];
    this.problem = h("p", { class: "problem", role: "alert" });
    this.list = h("ol", { class: "pages" });
    this.attempts = h("section", { class: "device-part", "aria-labelledby": "notebook-attempts-h" });
    this.none = h("div", {}, h("div", { class: "blank-page" },
      s("svg", { class: "blank-strip", viewBox: "0 0 600 70", preserveAspectRatio: "none", "aria-hidden": "true", focusable: "false" }, s("path", { d: "M0 48H600" })),
      h("p", { class: "pencil" }, t("notebook-none")), h("a", { class: "btn", href: "#" }, t("notebook-begin"))));
    this.undo = h("p", { class: "undo", role: "status" });
    this.exports = h("div", { class: "row" },
      button(t("notebook-json"), () => download("dicrotic-notebook.json", asJson(this.pages, pastEvidence())), { pic: "save" }),
      button(t("notebook-csv"), () => download("dicrotic-notebook.csv", asCsv(this.pages), "text/csv"), { pic: "save" }),
      button(t("notebook-drop_all"), () => this.drop(this.pages), { kind: "btn-plain", pic: "bin" }));
    root.replaceChildren(
      h("div", { class: "side-lead" }, h("h1", { id: "notebook-h", tabindex: "-1" }, t("notebook-title")), h("p", { class: "lede" }, t("notebook-lede")),
        h("div", { class: "row" }, button(t(inLab ? "side-back" : "side-back_start"), goBack), h("a", { class: "btn btn-plain", href: "#skills" }, t("side-skills")), button(t("notebook-take"), () => chooseFiles(".json,application/json", ([file]) => this.take(file)), { kind: "btn-plain" }))),
      this.attempts, this.exports, this.problem, this.undo, this.none, this.list);
  }

  show() {
    this.pages = allPages();
    this.none.hidden = this.pages.length > 0;
    this.exports.hidden = this.pages.length === 0;
    const kept = keptAttempts();
    this.attempts.hidden = kept.length === 0;
    this.attempts.replaceChildren(h("h2", { id: "notebook-attempts-h" }, t("notebook-attempts")), h("ul", { class: "device-list" }, kept.map((one) => h("li", {}, h("a", { href: addressOf(one) }, titleOf(one)),
      h("span", { class: "quiet" }, one.tries ? t("notebook-attempt_try", { n: one.tries, when: agoText(one.at) }) : t("notebook-attempt", { when: agoText(one.at) }))))));
    this.list.replaceChildren(...this.pages.flatMap((page) => this.shown(page)));
  }

  /**
   * A page in the list; what cannot be shown after all is laid aside.
   * @param {NotebookPage} page
   */
  shown(page) {
    try {
      return [h("li", {}, this.page(page))];
    } catch {
      layPageAside(page.id);
      return [];
    }
  }

  /** @param {NotebookPage} page */
  page(page) {
    const id = newId("page"), noteId = newId("note");
    /** @type {HTMLTextAreaElement} */
    const note = h("textarea", { id: noteId, class: "note", rows: "2", maxlength: "600", onchange: () => this.note(page, note.value), oninput: () => {
      clearTimeout(this.noting);
      this.noting = setTimeout(() => this.note(page, note.value), NOTE_MS);
    } });
    note.value = page.note;
    return h("article", { class: "trial-page", "aria-labelledby": id, data: { page: page.id } },
      h("div", { class: "trial-head" }, h("h2", { id }, page.title), h("p", { class: "quiet" }, [whenText(page.at_ms), page.seed && t("where-seed", { v: page.seed }), settingsLine(page)].filter(Boolean).join(" · "))),
      page.picture ? drawing(page.picture, { ...page.cursors, marks: page.marks, label: t("notebook-picture") }) : h("p", { class: "quiet" }, t("notebook-no_picture")),
      h("div", { class: "trial-body" },
        h("dl", { class: "trial-read" }, [...readings(page), .../** @type {[string, string | null][]} */ ([[t("page-band"), bandText(page)]])].map(([name, value]) => value && h("div", {}, h("dt", {}, name), h("dd", {}, value)))),
        h("div", { class: "trial-told" }, h("p", { class: `pencil outcome${page.check.passed ? " is-passed" : ""}` }, outcome(page)), page.check.rubric && h("p", { class: "quiet" }, t("page-rubric", { got: page.check.rubric.total, of: page.check.rubric.of }))),
        h("div", { class: "fld trial-note" }, h("label", { for: noteId }, t("notebook-note")), note)),
      h("div", { class: "row" },
        h("a", { class: "btn", href: `#report=${encodeURIComponent(page.id)}` }, icon("print"), h("span", {}, t("notebook-report"))),
        page.scenario && h("a", { class: "btn btn-plain", href: page.address ? `#a=${page.address}` : routeTo(page.scenario, page.seed) }, t("notebook-open")),
        button(t("notebook-drop"), () => this.drop([page]), { kind: "btn-plain", pic: "bin", "aria-label": t("notebook-drop_one", { title: page.title, when: whenText(page.at_ms) }) })));
  }

  /** @param {NotebookPage} page @param {string} text */
  note(page, text) {
    clearTimeout(this.noting);
    page.note = text;
    words(this.problem, keepPage(page) ? "" : t("notebook-not_kept"));
  }

  /**
   * Puts what stands in a file among what is kept.
   * @param {File | undefined} file
   */
  async take(file) {
    if (!file) return;
    const taken = takeNotebook(await file.text());
    words(this.problem, typeof taken === "string" ? t(taken === "full" ? "notebook-not_kept" : "notebook-take_unknown") : "");
    this.show();
    if (typeof taken === "string") return;
    const told = t("notebook-taken", taken);
    this.undo.replaceChildren(told);
    say(told);
  }

  /**
   * Takes pages out, and keeps them in the hand until this screen is left.
   * @param {NotebookPage[]} pages
   */
  drop(pages) {
    for (const page of pages) dropPage(page.id);
    this.show();
    const back = button(t("notebook-put_back"), () => {
      const kept = pages.map(keepPage).every(Boolean);
      words(this.problem, kept ? "" : t("notebook-not_kept"));
      this.undo.replaceChildren(t("notebook-is_back"));
      this.show();
    }, { kind: "btn-strong" });
    this.undo.replaceChildren(h("span", {}, t("notebook-dropped", { n: pages.length })), " ", back);
    back.focus();
    say(t("notebook-dropped", { n: pages.length }));
  }
}
