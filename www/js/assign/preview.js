// @ts-check
// How the bench looks to one student: the table, and its trace running. Nothing here can be touched.

import { tablePicture } from "../bench/picture.js";
import { Bench, CoreError } from "../core.js";
import { h, words } from "../dom.js";
import { Loop } from "../loop.js";
import { newSeed } from "../route.js";
import { t } from "../text.js";
import { button, relabel } from "../widgets.js";
import { MiniTrace } from "./minitrace.js";

export class Preview {
  constructor() {
    this.seed = newSeed();
    this.toml = "";
    /** @type {Bench | null} */
    this.bench = null;
    /** @type {MiniTrace | null} */
    this.trace = null;
    this.table = h("div", { class: "preview-table" });
    this.place = h("div", { class: "preview-strip" });
    this.told = h("p", { class: "quiet" });
    this.stop = button(t("assign-stand_still"), () => this.hold());
    this.el = h("section", { class: "preview", "aria-labelledby": "preview-h" },
      h("div", { class: "strip-head-2" }, h("h2", { id: "preview-h" }, t("assign-preview")), button(t("assign-another"), () => this.another(), { pic: "again" }), this.stop),
      this.table, this.place, this.told);
    this.loop = new Loop((dt) => this.frame(dt));
    this.loop.running = !matchMedia("(prefers-reduced-motion: reduce)").matches;
    this.label();
    this.loop.start();
  }

  label() {
    relabel(this.stop, t(this.loop.running ? "assign-stand_still" : "assign-run_on"));
  }

  hold() {
    this.loop.running = !this.loop.running;
    this.label();
  }

  another() {
    this.seed = newSeed();
    if (this.toml) this.show(this.toml, true);
  }

  /**
   * Shows a scenario's bench; the same text again changes nothing.
   * @param {string} toml @param {boolean} [anew]
   */
  show(toml, anew = false) {
    if (toml === this.toml && !anew) return;
    this.toml = toml;
    this.free();
    let bench;
    try {
      bench = this.bench = Bench.fresh(toml, this.seed);
    } catch (error) {
      if (!(error instanceof CoreError)) throw error;
      words(this.told, error.message);
      return;
    }
    const view = bench.view();
    const picture = tablePicture(view);
    if (!picture) return;
    this.table.replaceChildren(picture);
    this.trace = new MiniTrace(bench);
    this.place.replaceChildren(this.trace.el);
    for (let k = 0; k < 24; k += 1) bench.advance(0.25); // so that there is something on the trace at once
    words(this.told, t(view.link.seen ? "assign-seen" : "assign-unseen", { v: this.seed }));
  }

  /** @param {number} dt */
  frame(dt) {
    if (!this.bench) return;
    if (dt > 0) this.bench.advance(dt);
    this.trace?.draw();
  }

  free() {
    this.trace?.end();
    this.bench?.free();
    this.bench = this.trace = null;
  }

  end() {
    this.loop.stop();
    this.free();
  }
}
