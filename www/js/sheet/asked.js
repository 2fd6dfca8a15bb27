// What the scenario asks of a reading, as a page beside the worksheet until the debrief takes its place.

import { h } from "../dom.js";
import { num, t } from "../text.js";

/** The page for an opened recording: there is nothing to tune, and nothing known. */
export const askedOfRecording = () => page([t("asked-long"), t("asked-count"), t("asked-work"), t("asked-compared")]);

const page = (lines) => h("div", { class: "asked" }, h("h3", { class: "debrief-h" }, t("asked-title")), h("ol", { class: "asked-list" }, lines.map((line) => h("li", {}, line))));

/** The page for a scenario's criteria (shares as 0..1, times in s). */
export function askedPage({ record_s: record, window_s: window, fill_min: low, fill_max: high, hum_ratio: hum }) {
  const percent = (share) => num(share * 100, 0);
  const lines = [
    t("asked-fill", { low: percent(low), high: percent(high) }), t("asked-hum", { hum: percent(hum) }), t("asked-clip"),
    t("asked-record", { s: record }), t("asked-window", { s: window }), t("asked-count"), t("asked-work"),
  ];
  return page(lines);
}
