// @ts-check
// The misreading that explains what was typed: which step it belongs to, and its words.

/** @import { Check } from '../types/check' */
/** @import { Args, Step } from '../types/names' */

/** @typedef {{ key: string, args: Args, step: Step | null }} Reading */

/** @type {Record<string, Step[]>} */
const STEPS = {
  bumps_counted: ["count"], beats_missed: ["count"], one_too_many: ["count"], one_too_few: ["count"], spikes_counted: ["count"], breaths_counted: ["count"], hum_counted: ["count"],
  other_multiplier: ["multiplier", "rate"], turned_over: ["multiplier", "rate"], rounded_early: ["multiplier", "rate"],
  not_scaled: ["rate"], per_second: ["rate"], seconds_per_beat: ["rate"], too_many_digits: ["rate"],
  milliseconds: ["seconds", "rate"], other_window: ["seconds"], mixed_features: ["seconds"], window_too_short: ["window"], single_interval: ["window"],
};
const FENCE = new Set(["one_too_many", "one_too_few"]); // which of the two it is would give the count away

/**
 * {key, step} of a check's misreading: the stem of its words, and the open step that it explains (null: none).
 * @param {Check} check @returns {Reading | null}
 */
export function readingOf({ misreading, steps, truth }) {
  if (!misreading) return null;
  /** @param {Step} step */
  const open = (step) => steps.some((one) => one.step === step && ["wrong", "missing"].includes(one.verdict));
  return {
    key: `misreading-${FENCE.has(misreading.id) && !truth ? "fence" : misreading.id}`, args: misreading.args ?? {},
    step: (STEPS[misreading.id] ?? []).find(open) ?? null,
  };
}
