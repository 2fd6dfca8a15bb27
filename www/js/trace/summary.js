// @ts-check
// The trace in words, on demand: what a glance would tell, never the count.

import { num, t } from "../text.js";
/** @import { Summary } from '../types/told' */

/**
 * Noise of a tenth of the pulse and more is clear to the eye; the core tells two grades of it. The core's summary facts as sentences.
 * @param {Summary} facts
 */
export function summaryText(facts) {
  if (facts.state !== "trace") return t(`summary-${facts.state}`);
  const parts = [t("summary-trace", { s: num(facts.seconds, 1) }), t(`summary-fuzz-${facts.fuzz === "mild" ? "clear" : facts.fuzz}`), t(`summary-height-${facts.height}`)];
  if (facts.clipped) parts.push(t("summary-clipped"));
  if (facts.drift) parts.push(t("summary-drift"));
  return parts.join(" ");
}
