// @ts-check
// A trial on paper: one page or two, with the trace, what was read, what the debrief said, and the caution.

import { h } from "../dom.js";
import { scenarioWords } from "../scenarios.js";
import { bringTexts, fixed, num, t } from "../text.js";
import { ratesText } from "../trace/units.js";
import { faultWords } from "../faults/words.js";
import { button } from "../widgets.js";
import { layPageAside, readPage } from "./pages.js";
import { experimentPart } from "./experiment.js";
import { drawing } from "./picture.js";
import { bandText, outcome, readings, settingsLine, whenText } from "./words.js";
/** @import { FaultBook, Kid, NotebookPage, Ways } from '../types/page' */

/**
 * Fills the section with the report of a kept page; goBack(): returns to what was there before.
 * @param {HTMLElement} root @param {string} id @param {Ways} ways
 */
export async function showReport(root, id, { goBack, inLab }) {
  let page = readPage(id);
  await Promise.all([...["notebook", "after", "points", ...(page?.experiment ? ["experiment"] : [])].map(bringTexts), page?.experiment && scenarioWords()]);
  const names = page?.named?.length ? await faultWords() : null;
  /** @type {HTMLElement} */
  let paper = h("div", { class: "report-sheet" }, h("h1", { id: "report-h", tabindex: "-1" }, t("report-none")));
  try {
    if (page) paper = sheet(page, names);
  } catch { // it is of no shape that can be shown
    page = null;
    layPageAside(id);
  }
  root.replaceChildren(
    h("div", { class: "row report-tools" }, page && button(t("report-print"), () => print(), { kind: "btn-strong", pic: "print" }), button(t(inLab ? "side-back" : "side-back_start"), goBack), h("a", { class: "btn btn-plain", href: "#notebook" }, t("side-notebook"))),
    paper);
}

/** @param {NotebookPage} page @param {FaultBook | null} names */
function sheet(page, names) {
  const { check } = page;
  const detected = check.truth?.source === "detector" || !page.scenario; // nobody knows the heart of an opened recording
  /** @param {string} key @param {Kid} value */
  const fact = (key, value) => value && h("div", {}, h("dt", {}, t(`report-${key}`)), h("dd", {}, value));
  const rates = /** @type {[string, string | number | null | undefined][]} */ ([["own", page.read.rate], ["band", bandText(page)], ["window", check.truth?.window], ["record", check.truth?.record]]).filter(([, value]) => value !== null && value !== undefined && value !== "");
  return h("article", { class: "report-sheet" },
    h("header", { class: "report-head" }, h("p", { class: "report-from pencil" }, t("report-from")), h("h1", { id: "report-h", tabindex: "-1" }, page.title)),
    h("dl", { class: "report-facts" },
      fact("when", whenText(page.at_ms)), fact("seed", page.seed), fact("settings", settingsLine(page)), fact("take", page.recording && t("report-recording_value", { v: page.recording.recording + 1, s: num(page.recording.duration_s, 0), label: page.recording.label || "–" })),
      fact("help", page.mode && t(`help-mode-${page.mode}`)), fact("name", t("report-name_line"))),
    page.picture && h("figure", { class: "report-strip" }, drawing(page.picture, { ...page.cursors, marks: page.marks, beats: check.beats ?? [], label: t("notebook-picture") }), h("figcaption", {}, t(!check.beats?.length ? "report-caption" : detected ? "report-caption_detector" : "report-caption_truth"))),
    experimentPart(page),
    h("div", { class: "report-two" },
      h("section", {}, h("h2", {}, t("report-read")),
        h("table", {}, h("tbody", {}, readings(page).map(([name, value]) => h("tr", {}, h("th", { scope: "row" }, name), h("td", {}, value))))),
        names && h("p", {}, t("report-named", { list: page.named.map((id) => names.of(id)?.name ?? id).join(", ") }))),
      h("section", {}, h("h2", {}, t("report-steps")), h("p", { class: "pencil" }, outcome(page)),
        h("ol", { class: "report-steps" }, check.steps.map(({ step, verdict }) => h("li", { class: verdict === "wrong" || verdict === "missing" ? "is-open" : "" }, h("span", {}, t(`debrief-step-${step}`)), h("span", {}, t(`verdict-${verdict}`))))))),
    rates.length > 1 && h("section", {}, h("h2", {}, t("report-truth")), h("dl", { class: "report-rates" }, rates.map(([key, value]) => h("div", {}, h("dt", {}, t(`report-rate_${key}${detected && (key === "window" || key === "record") ? "_detector" : ""}`)), h("dd", {}, typeof value === "number" ? fixed(value, 1) : value)))),
      check.others && h("p", {}, t("report-others", { n: check.others.n, rates: ratesText(check.others.low, check.others.high) }))),
    check.rubric && h("section", {}, h("h2", {}, t("report-rubric", { got: num(check.rubric.total, 1), of: check.rubric.of })),
      h("ul", { class: "report-rubric" }, check.rubric.rows.filter((row) => row.applies !== false).map(({ row, got, of }) => h("li", {}, h("span", {}, t(`rubric-${row}`)), h("b", {}, t("rubric-of", { got: num(got, 1), of }))))),
      check.rubric.rows.some((row) => row.applies === false) && h("p", {}, t("report-rubric_part"))),
    h("section", { class: "report-note" }, h("h2", {}, t("report-note")), page.note ? h("p", {}, page.note) : h("div", { class: "ruled", "aria-hidden": "true" }, h("i", {}), h("i", {}), h("i", {}))),
    h("footer", { class: "report-foot" }, h("p", {}, t("caution-short")), page.hash && h("p", { class: "report-hash" }, t("report-hash", { hash: page.hash.slice(0, 16) }))));
}
