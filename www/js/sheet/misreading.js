// The misreading that explains what was typed: which step it belongs to, and its words.

const FENCE = new Set(["one_too_many", "one_too_few"]); // which of the two it is would give the count away

/** {key, step} of a check's misreading: the stem of its words, and the open step that it explains (null: none). */
export function readingOf({ misreading, steps, truth }) {
  if (!misreading) return null;
  const open = steps.some((one) => one.step === misreading.step && ["wrong", "missing"].includes(one.verdict));
  const whole = misreading.id === "show_work"; // it is about the way through, not about one step
  return {
    key: `misreading-${FENCE.has(misreading.id) && !truth ? "fence" : misreading.id}`, args: misreading.args ?? {},
    step: open && !whole ? misreading.step : null,
  };
}
