// @ts-check
// The recorder's settings: those of the axes (range, zero, time base), and the rest along the signal's path. An opened recording has no
// recorder: the same controls say how it is shown.

import { attr, h, prop } from "../dom.js";
import { explain } from "../explain.js";
import { t } from "../text.js";
import { button, Choice, Stepper, Tick } from "../widgets.js";
import { Path } from "./path.js";
import { hzText, msText, rangeText, spanText, valueText, voltsText } from "./units.js";
/** @import { Act } from '../types/action' */
/** @import { DisplayView, RecorderSettings, RecorderView, View } from '../types/view' */
/** @import { Option } from '../widgets.js' */

/** @param {number[]} values */
const ascending = (values) => [...new Set(values)].sort((a, b) => a - b);

/**
 * The ranges of an opened recording as the core orders them, the tallest first; 0 is the whole height. The one that is set stands among them.
 * @param {number[]} values @param {number} now
 */
const withNow = (values, now) => (values.includes(now) ? values : [now, ...values]);

const PASSES = /** @type {const} */ (["high_pass", "low_pass"]);
const FILTERS = /** @type {const} */ ([...PASSES, "notch"]);

export class Settings {
  /** @param {Act} act @param {{ recorder: boolean }} which */
  constructor(act, { recorder }) {
    /** @type {RecorderView | DisplayView | null} */
    this.now = null;
    /** @param {string} text */
    const number = (text) => (text === "" ? null : Number(text));
    this.time = new Stepper(t("set-time_base"), t("set-time_less"), t("set-time_more"), (v) => act({ do: "time_base", s: Number(v) }), t("axis-time_base"));
    this.range = new Stepper(t("set-range"), t("set-range_less"), t("set-range_more"), (v) => act({ do: "range", v: Number(v) }), t("axis-range"));
    this.zero = button(t("axis-zero"), () => act({ do: "zero" }));
    this.zeroClear = button(t("set-zero_clear"), () => act({ do: "zero_clear" }), { kind: "btn-plain" });
    this.zeroSays = h("span", { class: "quiet" });
    this.invert = new Tick(t("set-invert"), (on) => act({ do: "invert", on }));
    this.filters = FILTERS.map((id) => /** @type {const} */ ([id, new Choice(t(`set-${id}`), (v) => act({ do: id, hz: number(v) }))]));
    this.orders = PASSES.map((id) => /** @type {const} */ ([id, new Choice(t(`set-${id}_order`), (n) => act({ do: id, hz: this.now?.[`${id}_hz`] ?? null, order: Number(n) }))]));
    this.average = new Choice(t("set-average"), (v) => act({ do: "average", ms: number(v) }));
    this.integral = new Tick(t("set-integral"), (on) => act({ do: "integral", on }));
    this.buffered = new Tick(t("set-buffered"), (on) => act({ do: "buffered", on }));
    this.calibrator = new Tick(t("set-calibrator"), (on) => act({ do: "calibrator", on }));
    this.input = new Choice(t("set-input"), (v) => act({ do: "input", n: Number(v) }));
    this.rate = new Choice(t("set-rate"), (v) => act({ do: "rate", hz: Number(v) }));
    this.bits = new Choice(t("set-bits"), (v) => act({ do: "bits", n: Number(v) }));
    this.antiAlias = new Tick(t("set-anti_alias"), (on) => act({ do: "anti_alias", on }));
    this.shown = new Tick(t("set-shown"), (on) => act({ do: "shown", on }));
    this.scale = new Choice(t("set-scale"), (by) => act({ do: "scale", by: Number(by) }));
    for (const [widget, key] of /** @type {[{ el: HTMLElement }, string][]} */ ([[this.time, "time_base"], [this.range, recorder ? "range" : "range_shown"], [this.invert, "invert"], [this.shown, "shown"], ...this.filters.map(([id, choice]) => [choice, id]), ...this.orders.map(([, choice]) => [choice, "order"]),
      [this.average, "average"], [this.integral, "integral"], [this.buffered, "buffered"], [this.calibrator, "calibrator"], [this.input, "input"], [this.rate, "rate"], [this.bits, "bits"], [this.antiAlias, "anti_alias"], [this.scale, "scale"]])) explain(widget.el, `explain-${key}`);
    // Range and zero stand at the value axis, the time base at the time axis; the rest along the way of the signal.
    this.range.el.classList.add("range-at");
    this.time.el.classList.add("time-at");
    this.values = h("div", { class: "axis-values" }, this.range.el, explain(h("div", { class: "zero" }, this.zero, this.zeroClear, this.zeroSays), recorder ? "explain-zero" : "explain-zero_shown"));
    this.range.down = !recorder; // the whole height stands first, the finest range last
    /** @param {HTMLElement | false} average */
    const filters = (average) => [...this.orders.map(([, order], i) => h("div", { class: "pair" }, this.filters[i][1].el, order.el)), average ? h("div", { class: "pair" }, this.filters[2][1].el, average) : this.filters[2][1].el, this.integral.el];
    this.path = recorder ? new Path([
      ["sensor", [this.input.el, this.buffered.el, this.calibrator.el]], ["amplifier", [this.invert.el, this.scale.el]],
      ["filters", filters(this.average.el)],
      ["converter", [this.rate.el, this.bits.el, this.antiAlias.el]], ["screen", [this.shown.el]],
    ]) : new Path([["amplifier", [this.invert.el, this.scale.el]], ["filters", filters(false)], ["screen", [h("p", { class: "quiet" }, t("shown-about"))]]]);
  }

  /** @param {Pick<View, "recorder" | "display" | "time_base">} view */
  show({ recorder, display, time_base: time }) {
    /** @type {(values: number[], show: (v: number) => string) => Option[]} */
    const list = (values, show) => ascending(values).map((v) => [v, show(v)]);
    this.time.set(list(time.choices.includes(time.s) ? time.choices : [...time.choices, time.s], spanText), time.s); // a zoomed take has a span of its own
    const set = recorder ?? display;
    if (!set) return;
    this.now = set;
    const { choices, zero_v: zero } = set;
    const unit = display?.unit ?? "V";
    /** @type {(values: number[], show: (v: number) => string) => Option[]} */
    const withOff = (values, show) => [["", t("value-off")], ...list(values, show)];
    /** @param {number} v */
    const ranged = (v) => rangeText(v, unit);
    if (recorder) this.range.set(list(choices.range_v, ranged), recorder.range_v);
    else this.range.set(withNow(choices.range_v, set.range_v).map((v) => [v, ranged(v)]), set.range_v);
    // What is added brings this value of the file to the middle.
    this.zeroSays.textContent = zero ? t("set-zero_at", { v: recorder ? voltsText(zero) : valueText(-zero, unit) }) : "";
    attr(this.zeroClear, "hidden", !zero);
    this.invert.set(set.inverted);
    for (const [id, choice] of this.filters) {
      const now = set[`${id}_hz`];
      choice.set(withOff(now === null ? choices[`${id}_hz`] : [...choices[`${id}_hz`], now], hzText), now ?? "");
    }
    for (const [id, order] of this.orders) {
      order.set([1, 2].map((n) => /** @type {Option} */ ([n, t(`set-order-${n}`)])), set[`${id}_order`]);
      prop(order.select, "disabled", set[`${id}_hz`] === null);
    }
    this.integral.set(set.integral);
    this.scale.set(list(choices.scale, (v) => t("set-scale_by", { v })), set.scale);
    const amplifier = [recorder && ranged(recorder.range_v), set.inverted && t("set-line_inverted"), set.scale !== 1 && t("set-scale_by", { v: set.scale })].filter(Boolean).join(", ");
    const filters = Settings.filtersOf(set).join(", ") || t("value-off");
    if (!recorder) return void this.path.show({ amplifier: amplifier || t("shown-as_in_file"), filters, screen: [ranged(set.range_v), spanText(time.s)].join(", ") });
    this.average.set(withOff(recorder.choices.average_ms, msText), recorder.average_ms ?? "");
    this.input.set(recorder.choices.input.map((n) => /** @type {Option} */ ([n, t("set-input_n", { v: n })])), recorder.input);
    this.buffered.set(recorder.buffered);
    this.calibrator.set(recorder.calibrator);
    this.rate.set(list(recorder.choices.rate_hz, hzText), recorder.rate_hz);
    this.bits.set(list(recorder.choices.bits, (v) => t("unit-bits", { v })), recorder.bits);
    this.antiAlias.set(recorder.anti_alias);
    this.shown.set(recorder.shown);
    return void this.path.show({
      sensor: recorder.calibrator ? t("set-line_calibrator") : [t("set-input_n", { v: recorder.input }), !recorder.buffered && t("set-line_plain")].filter(Boolean).join(", "),
      amplifier, filters, converter: [hzText(recorder.rate_hz), t("unit-bits", { v: recorder.bits })].join(", "),
      screen: recorder.shown ? spanText(time.s) : t("set-line_hidden"),
    });
  }

  /**
   * The filters that are on, and the integral.
   * @param {Partial<RecorderSettings>} recorder
   */
  static filtersOf(recorder) {
    const filters = FILTERS.flatMap((id) => {
      const hz = recorder[`${id}_hz`];
      const order = id === "notch" ? null : recorder[`${id}_order`];
      return hz === null || hz === undefined ? [] : [t(`set-line_${id}`, { v: hzText(hz), order: order ? t(`set-order-${order}`) : "" })];
    });
    return recorder.integral ? [...filters, t("set-line_integral")] : filters;
  }

  /**
   * What is shown otherwise than it stands in an opened recording's file; empty where nothing is.
   * @param {DisplayView | null} display
   */
  static waysOf(display) {
    if (!display || display.as_in_file) return "";
    const { inverted, scale, zero_v: zero, unit } = display;
    return [inverted && t("set-line_inverted"), ...Settings.filtersOf(display), zero !== 0 && t("set-zero_at", { v: valueText(-zero, unit) }), scale !== 1 && t("set-line_scale", { v: scale })].filter(Boolean).join(", ");
  }

  /**
   * The settings in one pencilled line.
   * @param {{ recorder: Partial<RecorderSettings> & { unit?: string } | null, time_base: { s: number } }} view
   */
  static line({ recorder, time_base: time }) {
    if (!recorder) return spanText(time.s);
    const parts = [t("set-line", { time: spanText(time.s), range: rangeText(recorder.range_v ?? 0, recorder.unit) })];
    parts.push(...Settings.filtersOf(recorder));
    if (recorder.calibrator) parts.push(t("set-line_calibrator"));
    if (recorder.buffered === false) parts.push(t("set-line_plain"));
    if (recorder.inverted) parts.push(t("set-line_inverted"));
    if ((recorder.scale ?? 1) !== 1) parts.push(t("set-line_scale", { v: recorder.scale }));
    if (recorder.shown === false) parts.push(t("set-line_hidden"));
    return parts.join(" · ");
  }
}
