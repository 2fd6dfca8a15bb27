// @ts-check
// The recorder's settings: those of the axes (range, zero, time base), and the rest along the signal's path.

import { attr, h, prop } from "../dom.js";
import { explain } from "../explain.js";
import { t } from "../text.js";
import { button, Choice, Stepper, Tick } from "../widgets.js";
import { Path } from "./path.js";
import { hzText, msText, rangeText, spanText, voltsText } from "./units.js";
/** @import { Act } from '../types/action' */
/** @import { RecorderSettings, RecorderView, View } from '../types/view' */
/** @import { Option } from '../widgets.js' */

/** @param {number[]} values */
const ascending = (values) => [...new Set(values)].sort((a, b) => a - b);

const PASSES = /** @type {const} */ (["high_pass", "low_pass"]);
const FILTERS = /** @type {const} */ ([...PASSES, "notch"]);

export class Settings {
  /** @param {Act} act @param {{ recorder: boolean }} which */
  constructor(act, { recorder }) {
    /** @type {RecorderView | null} */
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
    this.input = new Choice(t("set-input"), (v) => act({ do: "input", n: Number(v) }));
    this.rate = new Choice(t("set-rate"), (v) => act({ do: "rate", hz: Number(v) }));
    this.bits = new Choice(t("set-bits"), (v) => act({ do: "bits", n: Number(v) }));
    this.antiAlias = new Tick(t("set-anti_alias"), (on) => act({ do: "anti_alias", on }));
    this.shown = new Tick(t("set-shown"), (on) => act({ do: "shown", on }));
    this.scale = new Choice(t("set-scale"), (by) => act({ do: "scale", by: Number(by) }));
    for (const [widget, key] of /** @type {[{ el: HTMLElement }, string][]} */ ([[this.time, "time_base"], [this.range, "range"], [this.invert, "invert"], [this.shown, "shown"], ...this.filters.map(([id, choice]) => [choice, id]), ...this.orders.map(([, choice]) => [choice, "order"]),
      [this.average, "average"], [this.input, "input"], [this.rate, "rate"], [this.bits, "bits"], [this.antiAlias, "anti_alias"], [this.scale, "scale"]])) explain(widget.el, `explain-${key}`);
    // Range and zero stand at the value axis, the time base at the time axis; the rest along the way of the signal.
    this.range.el.classList.add("range-at");
    this.time.el.classList.add("time-at");
    this.values = h("div", { class: "axis-values" }, recorder && [this.range.el, explain(h("div", { class: "zero" }, this.zero, this.zeroClear, this.zeroSays), "explain-zero")]);
    this.path = recorder ? new Path([
      ["sensor", [this.input.el]], ["amplifier", [this.invert.el, this.scale.el]],
      ["filters", [...this.orders.map(([, order], i) => h("div", { class: "pair" }, this.filters[i][1].el, order.el)), h("div", { class: "pair" }, this.filters[2][1].el, this.average.el)]],
      ["converter", [this.rate.el, this.bits.el, this.antiAlias.el]], ["screen", [this.shown.el]],
    ]) : null;
  }

  /** @param {Pick<View, "recorder" | "time_base">} view */
  show({ recorder, time_base: time }) {
    /** @type {(values: number[], show: (v: number) => string) => Option[]} */
    const list = (values, show) => ascending(values).map((v) => [v, show(v)]);
    this.time.set(list(time.choices.includes(time.s) ? time.choices : [...time.choices, time.s], spanText), time.s); // a zoomed take has a span of its own
    if (!recorder) return; // an opened recording has no recorder to set
    this.now = recorder;
    const { choices, zero_v: zero } = recorder;
    /** @type {(values: number[], show: (v: number) => string) => Option[]} */
    const withOff = (values, show) => [["", t("value-off")], ...list(values, show)];
    this.range.set(list(choices.range_v, rangeText), recorder.range_v);
    this.zeroSays.textContent = zero ? t("set-zero_at", { v: voltsText(zero) }) : "";
    attr(this.zeroClear, "hidden", !zero);
    this.invert.set(recorder.inverted);
    for (const [id, choice] of this.filters) {
      const now = recorder[`${id}_hz`];
      choice.set(withOff(now === null ? choices[`${id}_hz`] : [...choices[`${id}_hz`], now], hzText), now ?? "");
    }
    for (const [id, order] of this.orders) {
      order.set([1, 2].map((n) => /** @type {Option} */ ([n, t(`set-order-${n}`)])), recorder[`${id}_order`]);
      prop(order.select, "disabled", recorder[`${id}_hz`] === null);
    }
    this.average.set(withOff(choices.average_ms, msText), recorder.average_ms ?? "");
    this.input.set(choices.input.map((n) => /** @type {Option} */ ([n, t("set-input_n", { v: n })])), recorder.input);
    this.rate.set(list(choices.rate_hz, hzText), recorder.rate_hz);
    this.bits.set(list(choices.bits, (v) => t("unit-bits", { v })), recorder.bits);
    this.antiAlias.set(recorder.anti_alias);
    this.shown.set(recorder.shown);
    this.scale.set(list(choices.scale, (v) => t("set-scale_by", { v })), recorder.scale);
    this.path?.show({
      sensor: t("set-input_n", { v: recorder.input }), amplifier: [rangeText(recorder.range_v), recorder.inverted && t("set-line_inverted"), recorder.scale !== 1 && t("set-scale_by", { v: recorder.scale })].filter(Boolean).join(", "),
      filters: Settings.filtersOf(recorder).join(", ") || t("value-off"), converter: [hzText(recorder.rate_hz), t("unit-bits", { v: recorder.bits })].join(", "),
      screen: recorder.shown ? spanText(time.s) : t("set-line_hidden"),
    });
  }

  /**
   * The filters that are on.
   * @param {Partial<RecorderSettings>} recorder
   */
  static filtersOf(recorder) {
    return FILTERS.flatMap((id) => {
      const hz = recorder[`${id}_hz`];
      const order = id === "notch" ? null : recorder[`${id}_order`];
      return hz === null || hz === undefined ? [] : [t(`set-line_${id}`, { v: hzText(hz), order: order ? t(`set-order-${order}`) : "" })];
    });
  }

  /**
   * The settings in one pencilled line.
   * @param {{ recorder: Partial<RecorderSettings> | null, time_base: { s: number } }} view
   */
  static line({ recorder, time_base: time }) {
    if (!recorder) return spanText(time.s);
    const parts = [t("set-line", { time: spanText(time.s), range: rangeText(recorder.range_v ?? 0) })];
    parts.push(...Settings.filtersOf(recorder));
    if (recorder.inverted) parts.push(t("set-line_inverted"));
    if (recorder.scale !== 1) parts.push(t("set-line_scale", { v: recorder.scale }));
    if (!recorder.shown) parts.push(t("set-line_hidden"));
    return parts.join(" · ");
  }
}
