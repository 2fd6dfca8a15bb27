// @ts-check
// Showing a fault to a room: the bench and its trace over the whole screen, large letters, the cure at a key, and a freeze. Two
// benches of one seed run side by side, one with the fault and one without, so that nothing but the fault differs. The faults that
// it is confused with follow it, each with the same heart.

import { MiniTrace } from "../assign/minitrace.js";
import { REGIONS } from "../assign/regions.js";
import { tablePicture } from "../bench/picture.js";
import { Bench } from "../core.js";
import { attr, h, prop, words } from "../dom.js";
import { shownBench } from "../faults/shown.js";
import { Loop } from "../loop.js";
import { newSeed } from "../route.js";
import { num, t } from "../text.js";
import { button, Choice, relabel } from "../widgets.js";
/** @import { FaultBook } from '../types/page' */

const ZOOM = 1.9; // letters and lines that are read from the last row
const BASES_S = [10, 1];
const BEFORE_S = 12; // what the trace holds at once

export class ShowFault {
  /** @param {FaultBook} faults */
  constructor(faults) {
    this.faults = faults;
    /** @type {Bench[]} */
    this.benches = [];
    /** @type {MiniTrace[]} */
    this.traces = [];
    /** @type {string[]} */
    this.list = []; // what is shown in turn
    this.at = 0;
    this.seed = "";
    this.cured = this.near = false;
    /** @type {HTMLDialogElement | null} */
    this.dialog = null;
    this.loop = new Loop((dt) => {
      for (const bench of this.benches) if (dt > 0) bench.advance(dt);
      this.traces[this.cured ? 1 : 0]?.draw();
    });
    this.title = h("h2", { class: "show-title" });
    this.state = h("p", { class: "show-state", role: "status" });
    this.cure = button("", () => this.turn(), { kind: "btn-strong" });
    this.freeze = button("", () => this.hold());
    this.closer = button(t("class-show_closer"), () => this.look());
    this.namer = button(t("class-show_name"), () => this.name());
    this.before = button(t("class-show_before"), () => this.step(-1));
    this.after = button(t("class-show_after"), () => this.step(1));
    this.place = h("p", { class: "show-place quiet" });
    this.card = h("a", { class: "btn", onclick: () => this.dialog?.close() }, t("class-show_card"));
    this.stage = h("div", { class: "show-stage" });
    this.region = new Choice(t("assign-region"), () => {});
    this.region.set(REGIONS.map(([hz, volts]) => /** @type {[string, string]} */ ([`${hz}/${volts}`, t("assign-region_of", { hz, volts })])), REGIONS[0].join("/"));
    this.fault = new Choice(t("class-show_fault"), () => this.label());
    this.fault.select.replaceChildren(...faults.impressions.map(({ name, faults: all }) => h("optgroup", { label: name }, all.map((one) => h("option", { value: one.id }, one.name)))));
    this.fault.select.value = "charger_near";
    this.severity = h("input", { type: "range", min: "0", max: "1", step: "0.05", value: "0.7", "aria-label": t("class-show_severity"), oninput: () => this.label() });
    this.shown = h("span", { class: "quiet" });
    this.el = h("section", { class: "show-fault", "aria-labelledby": "show-h" }, h("h2", { id: "show-h" }, t("class-show")), h("p", { class: "quiet" }, t("class-show_about")),
      h("div", { class: "show-row" }, this.fault.el, h("div", { class: "fld" }, h("span", { class: "lbl" }, t("class-show_severity")), this.severity, this.shown), this.region.el, button(t("class-show_go"), () => this.open(), { kind: "btn-strong", pic: "live" })));
    this.label();
  }

  label() {
    words(this.shown, t("assign-percent", { v: num(Number(this.severity.value) * 100, 0) }));
  }

  open() {
    const name = this.fault.select.value;
    this.list = [name, ...(this.faults.of(name)?.confused_with ?? [])];
    this.at = 0;
    this.seed = newSeed();
    this.loop.running = true;
    this.loop.last = null;
    /** @type {HTMLDialogElement} */
    const dialog = h("dialog", { class: "projector", "aria-label": t("class-show"), onclose: () => this.end(), onkeydown: (event) => this.key(event) },
      h("div", { class: "show-head" }, this.state, this.title, this.place, button(t("class-show_close"), () => dialog.close())),
      this.stage,
      h("div", { class: "row show-foot" }, this.cure, this.freeze, this.closer, this.namer, this.before, this.after, this.card));
    this.dialog = dialog;
    this.setUp();
    document.body.append(dialog);
    dialog.showModal();
    dialog.requestFullscreen?.().catch(() => {}); // where the browser does not allow it the whole window is enough
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) this.hold();
    this.loop.start();
  }

  /** Puts the fault whose turn it is on the stage, and the same bench without it. */
  setUp() {
    this.clear();
    const name = this.list[this.at];
    const spec = { name, severity: Number(this.severity.value) };
    const region = this.region.select.value.split("/").map(Number);
    const sensor = this.faults.of(name)?.sensor;
    this.benches = [spec, null].map((fault) => Bench.fresh(shownBench(fault, sensor, region), this.seed));
    for (const bench of this.benches) for (let s = 0; s < BEFORE_S; s += 0.25) bench.advance(0.25);
    this.traces = this.benches.map((bench) => new MiniTrace(bench, innerWidth > 700 ? ZOOM : 1));
    this.cured = this.near = false;
    this.title.hidden = true;
    words(this.title, this.faults.of(name)?.name ?? name);
    attr(this.card, "href", `#faults=${name}`);
    attr(this.namer, "aria-pressed", "false");
    attr(this.closer, "aria-pressed", "false");
    const set = this.benches[0].view().scenario?.power_line;
    const power_line = t("class-show_power_line", { hz: set?.hz ?? region[0], volts: set?.volts ?? region[1] });
    words(this.place, this.list.length > 1 ? `${t("class-show_place", { n: this.at + 1, of: this.list.length })} · ${power_line}` : power_line);
    for (const one of [this.before, this.after]) prop(one, "hidden", this.list.length < 2);
    prop(this.before, "disabled", this.at === 0);
    prop(this.after, "disabled", this.at === this.list.length - 1);
    this.stage.replaceChildren(...this.benches.map((bench, k) => h("div", { class: "show-side" }, h("div", { class: "show-table", "aria-hidden": "true" }, tablePicture(bench.view())), h("div", { class: "show-strip" }, this.traces[k].el))));
    this.label2();
  }

  /** Another fault of those that look alike. @param {number} by */
  step(by) {
    const at = this.at + by;
    if (at < 0 || at >= this.list.length) return;
    this.at = at;
    this.setUp();
  }

  name() {
    this.title.hidden = !this.title.hidden;
    attr(this.namer, "aria-pressed", String(!this.title.hidden));
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    if (/** @type {Element} */ (event.target).closest("button") && (event.key === "Enter" || event.key === " ")) return;
    /** @type {Record<string, () => void>} */
    const deeds = { c: () => this.turn(), p: () => this.hold(), n: () => this.look(), w: () => this.name(), arrowleft: () => this.step(-1), arrowright: () => this.step(1) };
    const deed = deeds[event.key.toLowerCase()];
    if (deed && !event.ctrlKey && !event.metaKey && !event.altKey) deed();
  }

  turn() {
    this.cured = !this.cured;
    this.label2();
  }

  /** A second over the whole screen, or ten. */
  look() {
    this.near = !this.near;
    for (const bench of this.benches) bench.act({ do: "time_base", s: BASES_S[this.near ? 1 : 0] });
    attr(this.closer, "aria-pressed", String(this.near));
  }

  hold() {
    this.loop.running = !this.loop.running;
    this.label2();
  }

  label2() {
    [...this.stage.children].forEach((side, k) => prop(/** @type {HTMLElement} */ (side), "hidden", (k === 1) !== this.cured));
    words(this.state, t(this.cured ? "class-show_cured" : "class-show_faulty"));
    relabel(this.cure, t(this.cured ? "class-show_uncure" : "class-show_cure"));
    relabel(this.freeze, t(this.loop.running ? "class-show_freeze" : "class-show_go_on"));
  }

  end() {
    if (!this.dialog) return;
    this.loop.stop();
    if (document.fullscreenElement) document.exitFullscreen().catch(() => {});
    this.clear();
    this.dialog.remove();
    this.dialog = null;
  }

  /** Ends what stands on the stage. */
  clear() {
    for (const trace of this.traces) trace.end();
    for (const bench of this.benches) bench.free();
    this.benches = [];
    this.traces = [];
    this.stage.replaceChildren();
  }
}
