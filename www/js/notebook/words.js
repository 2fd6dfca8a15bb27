// @ts-check
// A page of the notebook in words: when it was, what was read, how the debrief went.

import { has, languageNow, num, t } from "../text.js";
import { Settings } from "../trace/settings.js";
import { ratesText } from "../trace/units.js";
/** @import { NotebookPage } from '../types/page' */

/**
 * Day and time of a page, as the reader's language writes them.
 * @param {number} at
 */
export const whenText = (at) => new Intl.DateTimeFormat(languageNow(), { dateStyle: "medium", timeStyle: "short" }).format(new Date(at));
/**
 * A day.
 * @param {number} at
 */
export const dayText = (at) => new Intl.DateTimeFormat(languageNow(), { dateStyle: "medium" }).format(new Date(at));

/**
 * The recorder's settings in one line.
 * @param {Pick<NotebookPage, "recorder" | "time_base_s">} page
 */
export const settingsLine = ({ recorder, time_base_s: s }) => Settings.line({ recorder, time_base: { s } });

const ORDER = ["count_1", "seconds_1", "rate_1", "count", "seconds", "multiplier", "rate", "middle", "range", "amplitude", "uncertainty"];

/**
 * What was read, as [name, value] pairs; blanks that were left empty are left out.
 * @param {NotebookPage} page @returns {[string, string][]}
 */
export function readings(page) {
  return ORDER.map((field) => [field, page.read[field] ?? ""]).filter(([, text]) => text !== "").map(([field, text]) => [t(`field-${field}`), has(`field-unit-${field}`) ? `${text} ${t(`field-unit-${field}`)}` : text]);
}

/**
 * The heart rates that one beat more or less in the counting window would give, in beats/min; null where nothing was counted.
 * @param {Pick<NotebookPage, "check">} page
 */
export const bandText = ({ check: { band } }) => (band ? ratesText(band.low, band.high) : null);

/**
 * The debrief in one sentence or two.
 * @param {Pick<NotebookPage, "check">} page
 */
export function outcome({ check }) {
  const parts = [check.passed ? t("page-passed", { n: check.tries }) : check.first_wrong ? t("page-open", { step: t(`debrief-step-${check.first_wrong}`), n: check.tries }) : t("page-closed")];
  if (check.misreading && has(`misreading-${check.misreading}.see`) && check.truth) parts.push(t(`misreading-${check.misreading}.see`, { seconds: num(check.window_s ?? 0, 1) }));
  if (check.hints > 0) parts.push(t("page-hints", { n: check.hints }));
  return parts.join(" ");
}
