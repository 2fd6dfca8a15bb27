// @ts-check
// Saving from the trace: the recording as a file for other programs, the trace as a picture.

import { h } from "../dom.js";
import { icon } from "../icons.js";
import { stripTheme } from "../theme.js";
import { t } from "../text.js";
/** @import { Geometry } from '../types/told' */

const RECORDINGS = [["csv", "csv", "text/csv"], ["edf", "edf", "application/octet-stream"], ["wfdb", "zip", "application/zip"]];

/**
 * The row of buttons. saveRecording(format, ending, type), savePicture("png" or "svg").
 * @param {(format: string, ending: string, type: string) => unknown} saveRecording
 * @param {(kind: "png" | "svg") => unknown} savePicture
 */
export function saveRow(saveRecording, savePicture) {
  /** @param {string} key @param {() => unknown} onclick */
  const one = (key, onclick) => h("button", { type: "button", class: "btn btn-plain", "aria-label": t(`save-${key}.long`), title: t(`save-${key}.long`), onclick }, t(`save-${key}`));
  return h("div", { class: "row saves", role: "group", "aria-label": t("save-title") }, h("span", { class: "lbl" }, icon("save"), t("save-take")),
    RECORDINGS.map(([format, ending, type]) => one(format, () => saveRecording(format, ending, type))), h("span", { class: "lbl" }, t("save-strip")), /** @type {const} */ (["png", "svg"]).map((kind) => one(kind, () => savePicture(kind))));
}

/**
 * The trace as it stands on the page, with cursors and marks, as a PNG. canvases: the layers from below; caption: what else is to be
 * known of it, or "".
 * @param {{ canvases: HTMLCanvasElement[], geometry: Geometry, cursors: { a: number | null, b: number | null }, marks: number[], caption: string }} what
 */
export function picture({ canvases, geometry, cursors, marks, caption }) {
  const [first] = canvases;
  const sheet = h("canvas", { width: first.width, height: first.height });
  const pen = /** @type {CanvasRenderingContext2D} */ (sheet.getContext("2d"));
  const { ground, accent, axis } = stripTheme();
  pen.fillStyle = ground;
  pen.fillRect(0, 0, sheet.width, sheet.height);
  for (const layer of canvases) pen.drawImage(layer, 0, 0);
  const { left, width, top, height, t0, t1 } = geometry;
  pen.scale(first.width / first.clientWidth, first.height / first.clientHeight);
  pen.fillStyle = pen.strokeStyle = accent;
  pen.font = "bold 13px serif";
  /** @param {number} time */
  const x = (time) => left + ((time - t0) / (t1 - t0)) * width;
  /** @type {(time: number | null) => time is number} */
  const seen = (time) => time !== null && time >= t0 && time <= t1;
  for (const mark of marks.filter(seen)) {
    pen.beginPath();
    pen.moveTo(x(mark), top + 9);
    pen.lineTo(x(mark) - 4, top + 2);
    pen.lineTo(x(mark) + 4, top + 2);
    pen.fill();
  }
  for (const [name, time] of /** @type {const} */ ([["A", cursors.a], ["B", cursors.b]])) {
    if (!seen(time)) continue;
    pen.fillRect(x(time) - 0.5, top, 1, height);
    pen.fillText(name, x(time) + 4, top + height - 6);
  }
  pen.font = "12px serif";
  pen.fillStyle = axis;
  if (caption) pen.fillText(caption, left + 6, top + 26, width - 12);
  return /** @type {Promise<Blob>} */ (new Promise((done, fail) => sheet.toBlob((blob) => (blob ? done(blob) : fail(new Error("no picture"))), "image/png")));
}
