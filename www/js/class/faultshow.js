// @ts-check
// Showing a fault to a room: one strip over the whole screen, large letters, the cure beside it at a key, and a freeze. Two benches
// of one seed run side by side, one with the fault and one without, so that nothing but the fault differs.

import { MiniStrip } from "../assign/ministrip.js";
import { Bench } from "../core.js";
import { composed } from "../desk.js";
import { attr, h, prop, words } from "../dom.js";
import { Loop } from "../loop.js";
import { newSeed } from "../route.js";
import { num, t } from "../text.js";
import { button, Choice, relabel } from "../widgets.js";
/** @import { FaultBook } from '../types/page' */
/** @import { FaultSpec } from '../types/told' */

/** @param {FaultSpec | null} fault */
const BENCH = (fault) => ({
  id: "shown", level: 1, title: "shown", aim: "shown", brief: "shown", subject: { restlessness: 0.2, pulse_mv: 40, premature_per_min: 0, rest_rate_bpm: 68 },
  recorder: { range_v: 0.05 }, fault: fault ? [fault] : [],
});
const ZOOM = 1.9; // letters and lines that are read from the last row
const BASES_S = [10, 1];
const BEFORE_S = 12; // what the strip holds at once

export class ShowFault {
  /** @param {FaultBook} faults */
  constructor(faults) {
    this.faults = faults;
    /** @type {Bench[]} */
    this.benches = [];
    /** @type {MiniStrip[]} */
    this.strips = [];
    this.cured = this.near = false;
    /** @type {HTMLDialogElement | null} */
    this.dialog = null;
    this.loop = new Loop((dt) => {
      for (const bench of this.benches) if (dt > 0) bench.advance(dt);
      this.strips[this.cured ? 1 : 0].draw();
    });
    this.title = h("h2", { class: "show-title" });
    this.state = h("p", { class: "show-state", role: "status" });
    this.cure = button("", () => this.turn(), { kind: "btn-strong" });
    this.freeze = button("", () => this.hold());
    this.closer = button(t("class-show_closer"), () => this.look());
    this.fault = new Choice(t("class-show_fault"), () => this.label());
    this.fault.select.replaceChildren(...faults.impressions.map(({ name, faults: all }) => h("optgroup", { label: name }, all.map((one) => h("option", { value: one.id }, one.name)))));
    this.fault.select.value = "charger_near";
    this.severity = h("input", { type: "range", min: "0", max: "1", step: "0.05", value: "0.7", "aria-label": t("class-show_severity"), oninput: () => this.label() });
    this.shown = h("span", { class: "quiet" });
    this.el = h("section", { class: "show-fault", "aria-labelledby": "show-h" }, h("h2", { id: "show-h" }, t("class-show")), h("p", { class: "quiet" }, t("class-show_about")),
      h("div", { class: "show-row" }, this.fault.el, h("div", { class: "fld" }, h("span", { class: "lbl" }, t("class-show_severity")), this.severity, this.shown), button(t("class-show_go"), () => this.open(), { kind: "btn-strong", pic: "live" })));
    this.label();
  }

  label() {
    words(this.shown, t("assign-percent", { v: num(Number(this.severity.value) * 100, 0) }));
  }

  open() {
    const name = this.fault.select.value;
    const seed = newSeed();
    const spec = { name, severity: Number(this.severity.value) };
    this.benches = [spec, null].map((fault) => Bench.fresh(composed(BENCH(fault)), seed));
    for (const bench of this.benches) for (let s = 0; s < BEFORE_S; s += 0.25) bench.advance(0.25);
    this.strips = this.benches.map((bench) => new MiniStrip(bench, innerWidth > 700 ? ZOOM : 1));
    this.cured = this.near = false;
    this.loop.running = true;
    this.loop.last = null;
    this.title.hidden = true;
    words(this.title, this.faults.of(name)?.name ?? name);
    attr(this.closer, "aria-pressed", "false");
    const name2 = button(t("class-show_name"), () => { this.title.hidden = !this.title.hidden; attr(name2, "aria-pressed", String(!this.title.hidden)); }, { "aria-pressed": "false" });
    /** @type {HTMLDialogElement} */
    const dialog = h("dialog", { class: "projector", "aria-label": t("class-show"), onclose: () => this.end(), onkeydown: (event) => this.key(event) },
      h("div", { class: "show-head" }, this.state, this.title),
      h("div", { class: "show-strips" }, this.strips.map((strip) => strip.el)),
      h("div", { class: "row show-foot" }, this.cure, this.freeze, this.closer, name2, button(t("class-show_close"), () => dialog.close(), { kind: "btn-plain" })));
    this.dialog = dialog;
    document.body.append(dialog);
    this.label2();
    dialog.showModal();
    dialog.requestFullscreen?.().catch(() => {}); // where the browser does not allow it the whole window is enough
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) this.hold();
    this.loop.start();
  }

  /** @param {KeyboardEvent} event */
  key(event) {
    if (/** @type {Element} */ (event.target).closest("button") && (event.key === "Enter" || event.key === " ")) return;
    /** @type {Record<string, () => void>} */
    const deeds = { c: () => this.turn(), f: () => this.hold(), n: () => this.look() };
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
    this.strips.forEach((strip, k) => prop(strip.el, "hidden", (k === 1) !== this.cured));
    words(this.state, t(this.cured ? "class-show_cured" : "class-show_faulty"));
    relabel(this.cure, t(this.cured ? "class-show_uncure" : "class-show_cure"));
    relabel(this.freeze, t(this.loop.running ? "class-show_freeze" : "class-show_go_on"));
  }

  end() {
    if (!this.dialog) return;
    this.loop.stop();
    if (document.fullscreenElement) document.exitFullscreen().catch(() => {});
    for (const strip of this.strips) strip.end();
    for (const bench of this.benches) bench.free();
    this.dialog.remove();
    this.dialog = null;
  }
}
