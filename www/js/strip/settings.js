// @ts-check
// The recorder's settings: paper (time base, range, zero, polarity), filters, and the converter.

import { attr, h, newId, prop } from "../dom.js";
import { explain, explainButton } from "../explain.js";
import { t } from "../text.js";
import { button, Choice, Stepper, Tick } from "../widgets.js";
import { hzText, msText, rangeText, spanText, voltsText } from "./units.js";
/** @import { Act } from '../types/action' */
/** @import { Kid } from '../types/page' */
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
    this.time = new Stepper(t("set-time_base"), t("set-time_less"), t("set-time_more"), (v) => act({ do: "time_base", s: Number(v) }));
    this.range = new Stepper(t("set-range"), t("set-range_less"), t("set-range_more"), (v) => act({ do: "range", v: Number(v) }));
    this.zero = button(t("set-zero"), () => act({ do: "zero" }));
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
    this.el = recorder
      ? h("div", { class: "settings" },
        this.group("set-paper", [h("div", { class: "pair" }, this.time.el, this.range.el), explain(h("div", { class: "row zero" }, this.zero, this.zeroClear, this.zeroSays), "explain-zero"), h("div", { class: "ticks" }, this.invert.el, this.shown.el)], "set-paper"),
        this.group("set-filters", [h("div", { class: "pair" }, this.orders.map(([, order], i) => [this.filters[i][1].el, order.el]), this.filters[2][1].el, this.average.el)], "set-filters"),
        this.group("set-converter", [h("div", { class: "pair" }, this.input.el, this.rate.el, this.bits.el, this.antiAlias.el, this.scale.el)], "set-converter"), explainButton())
      : h("div", { class: "settings" }, this.group("set-paper_only", [this.time.el], "set-paper"));
  }

  /** @param {string} key @param {Kid} kids @param {string} kind */
  group(key, kids, kind) {
    const id = newId("set");
    return h("div", { class: `set ${kind}`, role: "group", "aria-labelledby": id }, h("h3", { id }, t(key)), kids);
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
  }

  /**
   * The settings in one pencilled line.
   * @param {{ recorder: Partial<RecorderSettings> | null, time_base: { s: number } }} view
   */
  static line({ recorder, time_base: time }) {
    if (!recorder) return spanText(time.s);
    const parts = [t("set-line", { time: spanText(time.s), range: rangeText(recorder.range_v ?? 0) })];
    for (const id of FILTERS) {
      const hz = recorder[`${id}_hz`];
      const order = id === "notch" ? null : recorder[`${id}_order`];
      if (hz !== null && hz !== undefined) parts.push(t(`set-line_${id}`, { v: hzText(hz), order: order ? t(`set-order-${order}`) : "" }));
    }
    if (recorder.inverted) parts.push(t("set-line_inverted"));
    if (recorder.scale !== 1) parts.push(t("set-line_scale", { v: recorder.scale }));
    if (!recorder.shown) parts.push(t("set-line_hidden"));
    return parts.join(" · ");
  }
}
