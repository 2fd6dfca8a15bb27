// @ts-check
// Values of an experiment's table as one writes them: as many digits as the uncertainty bears.

import { fixed, t } from "../text.js";
/** @import { Measure, Reading } from '../types/experiment' */

/** @param {number} u */
const digits = (u) => (u >= 2 ? 0 : u >= 0.2 ? 1 : 2);

/** @param {number} value @param {number} u */
export const valueText = (value, u) => fixed(value, digits(u));
/** @param {Reading} reading */
export const uText = ({ u }) => fixed(u, digits(u));
/** @param {Reading | null} reading */
export const readingText = (reading) => (reading ? t("experiment-value", { value: valueText(reading.value, reading.u), u: uText(reading) }) : "–");
/** @param {Measure} measure */
export const unitOf = (measure) => t(`experiment-unit-${measure}`);
