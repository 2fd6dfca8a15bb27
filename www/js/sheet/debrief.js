// The debrief: each step as observation, question, next action; and the truth once the core gives it.

import { h, refill } from "../dom.js";
import { fixed, has, num, t } from "../text.js";

const GLYPHS = { right: "✓", edge: "≈", wrong: "?", note: "•", missing: "○" };
const DIGITS = { seconds: 2, need: 0, typed: 2, window: 2, ratio: 2, fill: 0, share: 0 };

export class Debrief {
  /** view: the session's; what the scenario asks for is told beside what was found. */
  constructor({ kind, scenario }) {
    this.recording = kind === "recording";
    this.asked = scenario?.pass ?? {};
    this.el = h("div", { class: "debrief", tabindex: "-1", role: "region", "aria-label": t("debrief.title"), hidden: true });
  }

  focus() {
    this.el.focus({ preventScroll: true });
    this.el.scrollIntoView({ block: "nearest", behavior: "auto" });
  }

  show({ check }) {
    this.el.hidden = !check;
    if (!check) return;
    const first = check.steps.findIndex((step) => ["wrong", "missing"].includes(step.verdict));
    refill(this.el, check, () => [
      h("h3", { class: "debrief-h" }, t(this.headline(check))),
      check.steps.length > 0 && h("ol", { class: "steps" }, check.steps.map((step, i) => this.step(step, i === first))),
      check.truth && this.truth(check.truth),
      check.over && !this.recording && h("p", { class: "pencil" }, t("debrief.over")),
    ]);
  }

  headline({ passed, steps, over, try: n }) {
    if (passed) return "debrief.passed";
    if (steps.length === 0) return "debrief.revealed";
    return over ? "debrief.closed" : n > 1 ? "debrief.second" : "debrief.first";
  }

  step({ step, verdict, code, args }, first) {
    const key = `step.${code}`;
    const shown = readable(args, this.asked);
    const say = (part, kind) => has(`${key}.${part}`) && h("p", { class: kind }, t(`${key}.${part}`, shown));
    return h("li", { class: `step step-${verdict}${first ? " is-first" : ""}` },
      h("span", { class: "glyph", "aria-hidden": "true" }, GLYPHS[verdict] ?? "•"),
      h("div", {}, h("p", { class: "step-name" }, t(`debrief.step.${step}`), h("span", { class: "verdict" }, t(`verdict.${verdict}`))),
        say("see", "see"), say("ask", "ask pencil"), say("do", "do")));
  }

  truth(truth) {
    const rows = [["truth.beats", truth.beats_in_window, 0], ["truth.window_rate", truth.window_rate, 1], ["truth.record_rate", truth.record_rate, 1]];
    return h("div", { class: "truth" }, h("h3", {}, t(this.recording ? "truth.title_recording" : "truth.title")),
      h("dl", {}, rows.map(([key, value, digits]) => h("div", {}, h("dt", {}, t(key)), h("dd", {}, value === null || value === undefined ? t("truth.none") : fixed(value, digits))))),
      h("p", { class: "quiet" }, t(this.recording ? "truth.note_recording" : "truth.note")));
  }
}

/** Shares as percent, the rest rounded for reading; a share near what is asked for gets a decimal, one near nothing is told as such. */
function readable(args, asked) {
  const shown = { low: num((asked.fill_min ?? 0) * 100, 0), high: num((asked.fill_max ?? 1) * 100, 0) };
  for (const [name, value] of Object.entries(args ?? {})) {
    if (typeof value !== "number") shown[name] = value;
    else if (name === "share" && value < 0.01) shown[name] = t("debrief.under_one");
    else if (name === "fill" || name === "share") shown[name] = num(value * 100, [asked.fill_min, asked.fill_max].some((limit) => Math.abs(value - limit) < 0.01) ? 1 : 0);
    else shown[name] = num(value, DIGITS[name] ?? 2);
  }
  return shown;
}
