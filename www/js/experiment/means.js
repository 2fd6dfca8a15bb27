// @ts-check
// The means of the first and the last condition in words, and the curve of a recovery: the same beside the table and on the report.

import { fixed, t } from "../text.js";
import { unitOf, uText, valueText } from "./numbers.js";
/** @import { AskedExperiment, Experiment } from '../types/experiment' */

/** A sentence for each measure. @param {AskedExperiment} asked @param {Pick<Experiment, "contrasts">} experiment */
export function meanTexts({ conditions }, { contrasts }) {
  const ends = { first_of: conditions[0].label, last_of: conditions[conditions.length - 1].label };
  return contrasts.map(({ measure, first, last, difference }) => t("experiment-mean", {
    measure: t(`experiment-measure-${measure}`), first: valueText(first.value, first.u), first_u: uText(first), last: valueText(last.value, last.u), last_u: uText(last),
    d: valueText(difference.value, difference.u), u: uText(difference), unit: unitOf(measure), ...ends,
  }));
}

/** What the curve through the points says; what it needs, where there is none yet. @param {Pick<Experiment, "fit">} experiment */
export function curveText({ fit }) {
  if (!fit) return t("experiment-fit_none");
  const args = { rest: fixed(fit.rest, 0), tau: fixed(fit.tau_s, 0), low: fixed(fit.low_s, 0) };
  return fit.high_s === null ? t("experiment-fit_open", args) : t("experiment-fit", { ...args, high: fixed(fit.high_s, 0) });
}
