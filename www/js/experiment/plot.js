// @ts-check
// The table as a picture, drawn by the core: by condition, or over time with the curve through it. It can be saved.

import { download } from "../download.js";
import { h } from "../dom.js";
import { t } from "../text.js";
import { offTheme, onTheme } from "../theme.js";
import { button } from "../widgets.js";
import { readingText, unitOf } from "./numbers.js";
/** @import { Session } from '../session.js' */
/** @import { AskedExperiment, Experiment, Measure } from '../types/experiment' */

const MAX_DPR = 3;
/** So wide a place has room for a condition's name, CSS px. */
const NAME_PX = 150;

export class Plot {
  /** @param {Session} session @param {AskedExperiment} asked @param {Measure} measure @param {string} name of the file */
  constructor(session, asked, measure, name) {
    this.session = session;
    this.asked = asked;
    this.measure = measure;
    this.canvas = h("canvas", { class: "experiment-plot", role: "img" });
    this.save = button(t("experiment-picture", { measure: t(`experiment-measure-${measure}`) }), () => this.canvas.toBlob((blob) => blob && download(`${name}-${measure}.png`, blob, "image/png")), { kind: "btn-plain" });
    this.el = h("figure", { class: "experiment-figure", hidden: true }, this.canvas, h("div", { class: "row" }, this.save));
    this.again = () => {
      if (session.ended) offTheme(this.again);
      else this.draw();
    };
    onTheme(this.again);
    new ResizeObserver(this.again).observe(this.canvas);
  }

  draw() {
    const { width, height } = this.canvas.getBoundingClientRect();
    if (this.el.hidden || width < 20 || height < 20) return;
    const dpr = Math.min(devicePixelRatio || 1, MAX_DPR);
    this.canvas.width = Math.round(width * dpr);
    this.canvas.height = Math.round(height * dpr);
    const { conditions } = this.asked;
    const named = width / conditions.length >= NAME_PX;
    this.session.bench.drawTable(this.canvas, this.measure, { unit: unitOf(this.measure), conditions: conditions.map(({ label }, i) => (named || i === 0 && this.asked.recovery ? label : String(i + 1))) }, dpr);
  }

  /** @param {Experiment} experiment */
  show({ rows }) {
    const mine = rows.filter((row) => row[this.measure]);
    this.el.hidden = this.asked.recovery ? !mine.some((row) => row.condition !== this.asked.conditions[0].id) : mine.length === 0;
    // What the picture shows, for whoever does not see it.
    const values = this.asked.conditions.map(({ id, label }) => `${label}: ${mine.filter((row) => row.condition === id).map((row) => readingText(row[this.measure])).join(", ") || "–"}`);
    this.canvas.setAttribute("aria-label", `${t(`experiment-measure-${this.measure}`)} (${unitOf(this.measure)}). ${values.join("; ")}`);
    this.draw();
  }
}
