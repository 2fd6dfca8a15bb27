// @ts-check
// The misreading that explains what was typed: which step it belongs to, and its words.

/** @import { Check } from '../types/check' */
/** @import { Args, Step } from '../types/names' */

/** @typedef {{ key: string, args: Args, step: Step | null, words?: string }} Reading */

/**
 * {key, step} of a check's misreading: the stem of its words, and the open step that it explains (null: none).
 * words: the instructor's, where it is one of theirs.
 * @param {Check} check @returns {Reading | null}
 */
export function readingOf({ misreading, steps }) {
  if (!misreading) return null;
  const open = steps.some((one) => one.step === misreading.step && ["wrong", "missing"].includes(one.verdict));
  const whole = misreading.id === "show_work"; // it is about the way through, not about one step
  return {
    key: `misreading-${misreading.id}`, args: misreading.args ?? {},
    step: open && !whole ? misreading.step : null, words: misreading.words,
  };
}
