// @ts-check
// Tables as text that a spreadsheet opens: cells by commas, lines by CR LF (RFC 4180).

/** @typedef {string | number | boolean | null | undefined} Cell */

/** @param {Cell[][]} lines */
export const csvText = (lines) => lines.map((cells) => cells.map(cell).join(",")).join("\r\n") + "\r\n";

/**
 * A cell; text that a spreadsheet would take for a formula gets a mark in front.
 * @param {Cell} value
 */
function cell(value) {
  if (value === null || value === undefined) return "";
  if (typeof value === "number") return String(Math.round(value * 1e6) / 1e6);
  const plain = String(value);
  const text = /^[=+\-@\t\r]/.test(plain) && !/^[+-]?[\d.,]+$/.test(plain) ? `'${plain}` : plain;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
