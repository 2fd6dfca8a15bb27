// @ts-check
// How the recorder's values read: volts as mV, short times as ms, and so on. Reading only; values stay in V, s and Hz.

import { fixed, num, t } from "../text.js";

/** @param {number} value */
const tidy = (value) => Number(value.toPrecision(6));

/**
 * A range to either side of zero; 0 is the whole height of an opened recording, whose values have a unit of their own, or none.
 * @param {number} v @param {string} [unit]
 */
export function rangeText(v, unit = "V") {
  if (v === 0) return t("unit-range_whole");
  if (unit !== "V") return unit ? t("unit-range_of", { v: num(tidy(v), 12), unit }) : t("unit-range_plain", { v: num(tidy(v), 12) });
  return v >= 1 || v < 1e-3 ? t("unit-range_v", { v: num(tidy(v), 12) }) : t("unit-range_mv", { v: num(tidy(v * 1000)) });
}
/** @param {number} s */
export const spanText = (s) => (s < 1 ? t("unit-ms", { v: num(tidy(s * 1000)) }) : t("unit-s", { v: num(tidy(s)) }));
/** @param {number} hz */
export const hzText = (hz) => t("unit-hz", { v: num(tidy(hz), 3) });
/** @param {number} ms */
export const msText = (ms) => t("unit-ms", { v: num(tidy(ms)) });
/** @param {number} v */
export const voltsText = (v) => t("unit-mv", { v: num(tidy(v * 1000)) });
/**
 * A value of an opened recording, to three figures.
 * @param {number} v @param {string} unit
 */
export const valueText = (v, unit) => (unit === "V" ? t("unit-mv", { v: num(Number((v * 1000).toPrecision(3)), 12) }) : `${num(Number(v.toPrecision(3)), 12)} ${unit}`.trim());
/**
 * The same without its unit, where a field has that in its name.
 * @param {number} s
 */
export const hundredths = (s) => fixed(s, 2);
/**
 * A time to a hundredth of a second.
 * @param {number} s
 */
export const timeText = (s) => t("unit-s", { v: fixed(s, 2) });
/**
 * A length of time as m:ss, for the recording clock.
 * @param {number} s
 */
export const clockText = (s) => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, "0")}`;
/**
 * A window's length to three figures, as a reading of it can be trusted.
 * @param {number} s
 */
export const windowText = (s) => t("unit-s", { v: threeFigures(s) });
/**
 * A height in V as mV, to three figures.
 * @param {number} v
 */
export const heightText = (v) => t("unit-mv", { v: threeFigures(v * 1000) });

/**
 * Three figures, without a power of ten: 15.3, 1.25, .842.
 * @param {number} value
 */
export function threeFigures(value) {
  const size = Math.abs(value);
  return fixed(value, size >= 99.95 ? 0 : size >= 9.995 ? 1 : size >= 0.9995 ? 2 : 3);
}

/**
 * Two whole rates as a range; one of them where they are the same.
 * @param {number} low @param {number} high
 */
export const ratesText = (low, high) => (fixed(low, 0) === fixed(high, 0) ? fixed(low, 0) : t("value-rates", { low: fixed(low, 0), high: fixed(high, 0) }));
