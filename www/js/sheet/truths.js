// @ts-check
// The truths, kept apart: what this window holds, how fast those beats followed one another, and the whole record.

import { h } from "../dom.js";
import { fixed, t } from "../text.js";
/** @import { Truth } from '../types/check' */
/** @import { Kid } from '../types/page' */

/**
 * A check's truth as a list; for an opened recording it is the detector's word, and told as such.
 * @param {Truth} truth @param {boolean} recording
 */
export function truthPart(truth, recording) {
  const { own_window: window, own_span: span, record } = truth;
  const asked = /** @type {[string, number | null][]} */ ([["range", truth.range_mv], ["amplitude", truth.amplitude_mv]]).filter(([, value]) => typeof value === "number");
  /** @type {[string, number | null | undefined, number, Kid][]} */
  const listed = [
    ["beats", truth.beats_in_window ?? window?.beats, 0, truth.unsure > 0 && t("truth-unsure", { n: truth.unsure })],
    ["window", window?.rate ?? truth.window_rate, 1, window && t("truth-window_how", { n: window.beats, s: fixed(window.seconds, 2) })],
    ["span", span?.rate, 1, span && t("truth-span_how", { n: span.intervals, s: fixed(span.seconds, 2) })],
    ["record", record?.rate ?? truth.record_rate, 1, record && t("truth-record_how", { n: record.intervals, s: fixed(record.seconds, 2) })],
  ];
  const rows = listed.filter(([name, value]) => typeof value === "number" || (name !== "span" && recording));
  rows.push(...asked.map(([name, value]) => /** @type {typeof rows[number]} */ ([name, value, 1, false])));
  if (rows.length === 0) return null;
  return h("div", { class: "truth" }, h("h3", {}, t(recording ? "truth-title_recording" : "truth-title")),
    h("dl", {}, rows.map(([name, value, digits, how]) => h("div", {}, h("dt", {}, t(`truth-${name}`)),
      h("dd", { data: { truth: name } }, typeof value === "number" ? fixed(value, digits) : t("truth-none")), how && h("dd", { class: "truth-how" }, how)))),
    h("p", { class: "quiet" }, t(recording ? "truth-note_recording" : asked.length > 0 ? "truth-note_range" : "truth-note")));
}
