// @ts-check
// The debrief: each step as observation, question, next action; how it was gone about; and the truth once the core gives it.

import { h, refill } from "../dom.js";
import { faultWords } from "../faults/words.js";
import { has, listed, num, t } from "../text.js";
import { Settings } from "../trace/settings.js";
import { rangeText } from "../trace/units.js";
import { readingOf } from "./misreading.js";
import { ask, doNext, glyph, own, see } from "./parts.js";
import { processPart } from "./process.js";
import { truthPart } from "./truths.js";
/** @import { Check, Finding, Truth } from '../types/check' */
/** @import { Args } from '../types/names' */
/** @import { FaultBook, FaultWords } from '../types/page' */
/** @import { Criteria, DisplayView, View } from '../types/view' */
/** @import { Reading } from './misreading.js' */

/** @type {Record<string, number>} */
const DIGITS = { seconds: 2, need: 0, typed: 2, window: 2, fill: 0, costs: 1, beat: 1, from_s: 1, to_s: 1 };

export class Debrief {
  /**
   * view: the session's; what the scenario asks for is told beside what was found.
   * @param {View} view
   */
  constructor({ kind, scenario, task }) {
    this.recording = kind === "recording";
    /** @type {Partial<Criteria>} */
    this.asked = scenario?.pass ?? {};
    /** @type {((from: number, to: number) => unknown) | null} */
    this.goTo = null; // shows a stretch of the recording, once there is who can
    /** @type {Promise<void> | null} */
    this.bringing = null;
    /** @type {string | null} */
    this.failed = null; // why the catalogue's words did not come
    this.naming = Boolean(scenario?.name_faults);
    this.placed = task.reads === "stretch"; // the recording is given: only A and B can be moved
    /** @type {FaultBook | null} */
    this.words = null; // of the catalogue, once the truth needs them
    this.head = h("div", { class: "debrief-head" });
    this.hints = h("div", { class: "hints-place" }); // filled by after/, as are the other two places
    this.truths = h("div", { class: "truths-place" });
    this.spread = h("div", { class: "spread-place" });
    this.how = h("div", { class: "how-place" });
    this.rubric = h("div", { class: "rubric-place" });
    this.el = h("div", { class: "debrief", tabindex: "-1", role: "group", "aria-label": t("debrief-title"), hidden: true },
      this.head, this.hints, this.truths, this.spread, this.how, this.rubric);
  }

  focus() {
    this.el.focus({ preventScroll: true });
    const view = this.el.parentElement;
    if (!view) return;
    view.scrollTop = 0;
    if (view.getBoundingClientRect().top < 0 || view.getBoundingClientRect().top > innerHeight / 2) view.scrollIntoView({ block: "start", behavior: "auto" });
  }

  /** @param {Pick<View, "check" | "named" | "explained" | "display">} view */
  show({ check, named, explained, display }) {
    this.el.hidden = !check;
    if (!check) return;
    this.last = { check, named, explained, display };
    const { words: book } = this;
    if (check.truth && (this.naming || check.truth.faults?.length > 0) && !this.words) this.bringWords();
    const first = check.steps.findIndex((step) => ["wrong", "missing"].includes(step.verdict));
    const reading = readingOf(check);
    refill(this.head, [check, named, Boolean(this.words)], () => [
      h("h3", { class: "debrief-h" }, t(this.headline(check))), display && check.steps.length > 0 && judgedBy(display),
      check.steps.length > 0 && h("ol", { class: "steps" }, check.steps.map((step, i) => this.step(step, i === first, reading)), reading && !reading.step && this.reading(reading)),
    ]);
    refill(this.truths, [check.truth, named, Boolean(this.words), this.failed], () => check.truth && [truthPart(check.truth, this.recording), this.faults(check.truth, named ?? [], explained)]);
    refill(this.how, [check.process, Boolean(check.truth), Boolean(this.words), check.over], () => [
      processPart(check.process ?? [], check.truth && book ? (id) => book.of(id)?.name ?? id : null),
      check.over && !this.recording && h("p", { class: "pencil" }, t("debrief-over")),
    ]);
  }

  /** Brings the catalogue's words and shows the debrief again; without them the faults stay unnamed, and that is told. */
  bringWords() {
    this.bringing ??= faultWords().then((words) => (this.words = words), (error) => (this.failed = error.message)).then(() => this.last && this.show(this.last));
  }

  /** @param {Check} check */
  headline({ passed, steps, over, try: n }) {
    if (passed) return this.recording ? "debrief-agrees" : "debrief-passed";
    if (steps.length === 0) return "debrief-revealed";
    return over ? "debrief-closed" : n > 1 ? "debrief-second" : "debrief-first";
  }

  /** @param {Finding} finding @param {boolean} first @param {Reading | null} reading */
  step({ step, verdict, code, args, place }, first, reading) {
    const key = `step-${code}`;
    const shown = readable(args, this.asked);
    const told = reading?.step === step && ["wrong", "missing"].includes(verdict) ? reading : null;
    const more = told ? readable(told.args, this.asked) : {};
    return h("li", { class: `step step-${verdict}${first ? " is-first" : ""}` }, glyph(verdict),
      h("div", {}, h("p", { class: "step-name" }, t(`debrief-step-${step}`), h("span", { class: "verdict" }, t(`verdict-${verdict}`))),
        see(`${key}.see`, shown), told?.words ? own(told.words) : told ? [see(`${told.key}.see`, more), ask(`${told.key}.ask`, more), doNext(`${told.key}.do`, more)] : [ask(`${key}.ask`, shown), doNext(this.placed && has(`${key}.placed`) ? `${key}.placed` : `${key}.do`, shown)],
        place && h("p", {}, h("button", { type: "button", class: "btn btn-plain step-place", onclick: () => this.goTo?.(...place) }, t("debrief-show")))));
  }

  /**
   * A misreading that explains no open step is a remark of its own.
   * @param {Reading} reading
   */
  reading({ key, args, words }) {
    const shown = readable(args, this.asked);
    return (words || has(`${key}.see`)) && h("li", { class: "step step-note" }, glyph("note"),
      h("div", {}, h("p", { class: "step-name" }, t("debrief-step-reading"), h("span", { class: "verdict" }, t("verdict-note"))), words ? own(words) : [see(`${key}.see`, shown), ask(`${key}.ask`, shown), doNext(`${key}.do`, shown)]));
  }

  /**
   * Which faults there were, each with cause, look, test and remedy; and what was named beside them.
   * @param {Truth} truth @param {string[]} named @param {string} [explained]
   */
  faults({ faults: there = [], also = [] }, named, explained) {
    if (this.recording || (there.length === 0 && !this.naming)) return null;
    const head = h("h3", { class: "debrief-h" }, t("truth-faults"));
    if (this.failed) return h("section", { class: "there" }, head, h("p", { class: "quiet" }, t("naming-failed", { told: this.failed })));
    const book = this.words;
    if (there.length > 0 && !book) return h("section", { class: "there" }, head, h("p", { class: "quiet" }, t("naming-loading")));
    /** @param {string} id */
    const nameOf = (id) => book?.of(id)?.name ?? id;
    const beside = named.filter((id) => also.includes(id)), others = named.filter((id) => !there.includes(id) && !also.includes(id));
    /** @param {FaultWords} fault @param {"cause" | "seen" | "test" | "remedy"} key */
    const row = (fault, key) => h("div", {}, h("dt", {}, t(`fault-${key}`)), h("dd", {}, fault[key]));
    return h("section", { class: "there" }, head,
      explained && h("p", { class: "there-why" }, t("truth-why"), " ", h("q", { dir: "auto" }, explained)),
      there.length === 0 && h("p", {}, t("truth-no_faults")),
      there.flatMap((id) => book?.of(id) ?? []).map((fault) => h("article", { class: "there-fault" },
        h("h4", {}, fault.name, named.includes(fault.id) && h("span", { class: "verdict" }, ` ✓ ${t("truth-you_named")}`)),
        h("dl", {}, /** @type {const} */ (["cause", "seen", "test", "remedy"]).map((key) => row(fault, key))))),
      beside.length > 0 && book && h("p", { class: "quiet" }, t("truth-also", { list: listed(beside.map(nameOf)) })),
      others.length > 0 && book && h("p", { class: "quiet" }, t("truth-not_there", { list: listed(others.map(nameOf)) })));
  }
}

/**
 * With what a reading of an opened recording is compared, and how the recording was shown then: the detector reads what is shown.
 * @param {DisplayView} display
 */
const judgedBy = (display) => h("p", { class: "quiet judged-by" }, t("debrief-judged_by"), " ", t("debrief-shown", { ways: Settings.waysOf(display) || t("shown-as_in_file"), range: rangeText(display.range_v, display.unit) }));

/**
 * Shares as percent, the rest rounded for reading; a share near what is asked for gets a decimal.
 * @param {Args} args @param {Partial<Criteria>} asked
 */
function readable(args, asked) {
  /** @type {Args} */
  const shown = { low: num((asked.fill_min ?? 0) * 100, 0), high: num((asked.fill_max ?? 1) * 100, 0) };
  for (const [name, value] of Object.entries(args ?? {})) {
    if (typeof value !== "number") shown[name] = value;
    else if (name === "fill") shown[name] = num(value * 100, [asked.fill_min, asked.fill_max].some((limit) => limit !== undefined && Math.abs(value - limit) < 0.01) ? 1 : 0);
    else if (name === "ratio" || name === "limit") {
      // Of the pulse's height; near what is asked for with a decimal, so that nobody reads 10 % against 10 %.
      shown[name === "ratio" ? "percent" : name] = num(value * 100, typeof args.limit === "number" && Math.abs(Number(args.ratio) - args.limit) < 0.01 ? 1 : 0);
    } else if (name === "height") shown.percent = num(value * 100, 0);
    else shown[name] = num(value, DIGITS[name] ?? 2);
  }
  return shown;
}
