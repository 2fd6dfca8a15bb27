// @ts-check
// The experiment of a kept page on paper: question, expectation, how it was measured, table, picture, and what was concluded.

import { fromTo } from "../experiment/choices.js";
import { curveText, meanTexts } from "../experiment/means.js";
import { readingText, unitOf, valueText } from "../experiment/numbers.js";
import { h, s } from "../dom.js";
import { experimentInWords } from "../scenarios.js";
import { fixed, t } from "../text.js";
/** @import { AskedExperiment, ExperimentRow, Measure } from '../types/experiment' */
/** @import { NotebookPage } from '../types/page' */

const WIDTH = 1000, HEIGHT = 200, TOP = 16, FOOT = 164, SIDE = 120;

/** @param {NotebookPage} page @returns {HTMLElement | null} */
export function experimentPart({ experiment, scenario }) {
  if (!experiment || !scenario) return null;
  const asked = experimentInWords(scenario, experiment.asked);
  return h("section", { class: "report-experiment" }, h("h2", {}, t("report-experiment")),
    h("p", {}, h("b", {}, asked.question)),
    h("h3", {}, t("report-experiment_expected")), h("p", {}, fromTo(asked)), lines(experiment.predicted.map(({ measure, direction, reason }) => `${t(`experiment-measure-${measure}`)}: ${t(`experiment-expect-${direction}`)}.${reason && ` ${reason}`}`)),
    h("h3", {}, t("report-experiment_method")), h("p", {}, method(asked, experiment.rows)),
    h("div", { class: "experiment-scroll", tabindex: "0", role: "region", "aria-label": t("experiment-rows") }, table(asked, experiment.rows)),
    asked.measures.map((measure) => figure(asked, experiment.rows, measure)),
    meanTexts(asked, experiment).map((text) => h("p", {}, text)), h("p", {}, t("experiment-about_u")), asked.recovery && experiment.fit && h("p", {}, curveText(experiment)),
    h("h3", {}, t("report-experiment_concluded")), lines(experiment.judged.map(({ measure, said, outcome }) => `${t(`experiment-measure-${measure}`)}: ${t(`experiment-conclude-${said}`)}. ${t(`experiment-outcome-${outcome}`)}`)),
    h("h3", {}, t("report-experiment_limits")), lines([t("report-experiment_one"), t("report-experiment_mean"), ...(asked.measures.includes("amplitude") ? [t("report-experiment_height")] : [])]));
}

/** @param {string[]} texts */
const lines = (texts) => h("ul", {}, texts.map((text) => h("li", {}, text)));

/** How it was measured, from the table. @param {AskedExperiment} asked @param {ExperimentRow[]} rows */
function method({ conditions }, rows) {
  const lengths = rows.map(({ seconds }) => seconds);
  const counts = conditions.map(({ id, label }) => t("report-experiment_times", { condition: label, n: rows.filter((row) => row.condition === id).length }));
  const order = rows.map(({ condition }) => conditions.findIndex(({ id }) => id === condition) + 1).join(", ");
  return t("report-experiment_how", { n: rows.length, low: fixed(Math.min(...lengths), 1), high: fixed(Math.max(...lengths), 1), counts: counts.join("; "), order });
}

/** @param {AskedExperiment} asked @param {ExperimentRow[]} rows */
function table({ conditions, measures }, rows) {
  /** @param {string} name */
  const head = (name) => h("th", { scope: "col" }, t(`experiment-col-${name}`));
  return h("table", {}, h("thead", {}, h("tr", {}, head("n"), h("th", { scope: "col" }, t("experiment-condition")), ["since", "count", "seconds", ...measures, "note"].map(head))),
    h("tbody", {}, rows.map((row, i) => h("tr", {}, h("td", {}, String(i + 1)), h("th", { scope: "row" }, conditions.find(({ id }) => id === row.condition)?.label ?? row.label),
      h("td", {}, row.since_s === null ? "–" : fixed(row.since_s, 0)), h("td", {}, row.count === null ? "–" : String(row.count)), h("td", {}, fixed(row.seconds, 2)),
      measures.map((measure) => h("td", {}, readingText(row[measure]))), h("td", {}, row.note)))));
}

/** Each row as a dot with its uncertainty, in the order in which they were measured, a column a condition. @param {AskedExperiment} asked @param {ExperimentRow[]} rows @param {Measure} measure */
function figure({ conditions }, rows, measure) {
  const dots = rows.flatMap((row, i) => {
    const reading = row[measure];
    return reading ? [{ ...reading, row: i + 1, column: conditions.findIndex(({ id }) => id === row.condition) }] : [];
  });
  if (dots.length === 0) return null;
  const low = Math.min(...dots.map(({ value, u }) => value - u)), high = Math.max(...dots.map(({ value, u }) => value + u));
  /** @param {number} value */
  const y = (value) => (FOOT - 8 - ((value - low) / (high - low || 1)) * (FOOT - TOP - 16)).toFixed(1);
  const column = (WIDTH - SIDE) / conditions.length;
  /** @param {number} k @param {number} place @param {number} of */
  const x = (k, place, of) => (SIDE + column * (k + (place + 1) / (of + 1))).toFixed(1);
  const placed = dots.map((dot) => {
    const mine = dots.filter((other) => other.column === dot.column);
    return { ...dot, x: x(dot.column, mine.indexOf(dot), mine.length) };
  });
  const name = `${t(`experiment-measure-${measure}`)} (${unitOf(measure)})`;
  /** @param {number} value */
  const scale = (value) => [s("path", { class: "pic-chrono", d: `M${SIDE - 8} ${y(value)}h8` }), s("text", { class: "pic-time", x: SIDE - 14, y: Number(y(value)) + 6, "text-anchor": "end" }, fixed(value, high - low < 2 ? 2 : high - low < 20 ? 1 : 0))];
  return h("figure", { class: "report-strip" }, h("div", { class: "pic" }, s("svg", { viewBox: `0 -8 ${WIDTH} ${HEIGHT + 8}`, role: "img", "aria-label": `${name}. ${placed.map(({ row, value, u }) => `${row}: ${valueText(value, u)}`).join("; ")}` },
    s("path", { class: "pic-chrono", d: `M${SIDE} ${TOP}V${FOOT}H${WIDTH}` }), scale(low), scale(high),
    placed.map(({ x: at, value, u }) => [s("path", { class: "pic-line", d: `M${at} ${y(value - u)}V${y(value + u)}` }), s("circle", { class: "pic-dot", cx: at, cy: y(value), r: 6 })]),
    conditions.map(({ label }, k) => s("text", { class: "pic-time", x: x(k, 0, 1), y: FOOT + 26, "text-anchor": "middle" }, conditions.length > 3 ? String(k + 1) : label)))),
    h("figcaption", {}, t("report-experiment_figure", { name })));
}
