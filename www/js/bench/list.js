// @ts-check
// The same bench as a plain list: every plug, switch, part and deed, for the keyboard, a screen reader, or whoever prefers it.

import { h, newId, prop } from "../dom.js";
import { explain, explainAll, explainButton } from "../explain.js";
import { icon } from "../icons.js";
import { t } from "../text.js";
import { button, Choice } from "../widgets.js";
import { controlsOf } from "./controls.js";
import { SPOTS } from "./seen.js";
/** @import { Act } from '../types/action' */
/** @import { Kid } from '../types/page' */
/** @import { BenchView } from '../types/view' */
/** @import { Option } from '../widgets.js' */
/** @import { Control } from './controls.js' */

const NUDGE_CM = 2;

export class PartsList {
  /** @param {BenchView} bench @param {Act} act */
  constructor(bench, act) {
    this.act = act;
    this.bench = bench;
    const make = controlsOf(act);
    /** @type {Control[]} */
    this.controls = [];
    /** @template {Control} C @param {C} control */
    const put = (control) => {
      this.controls.push(control);
      return control.el;
    };
    this.part = new Choice(t("list-part"), () => this.showPart());
    this.x = this.coordinate("x", bench.table.w);
    this.y = this.coordinate("y", bench.table.d);
    const row = (/** @type {Kid[]} */ ...kids) => h("div", { class: "row" }, kids);
    this.el = h("div", { class: "list" },
      explainAll(group("list-cables", bench.ends.map((end) => put(make.plug(end.id))), "list-cables"), "explain-end"),
      group("list-power", [put(make.power("power_strip")), put(make.power("recorder")), put(make.charger()), put(make.power("lamp"))], "list-power"),
      group("list-finger", [put(make.strapOn()), put(make.tightness()), h("div", { class: "pair" }, put(make.place()), put(make.face())), put(make.height()), put(make.asking()), put(make.waiting())], "list-finger"),
      group("list-try", [
        set("try-look", row(SPOTS.map((at) => button(t(`look-${at}`), () => act({ do: "look", at }))))),
        set("try-touch", row(put(make.does("tap_sensor", { do: "tap_sensor" })), put(make.does("press_finger", { do: "press_finger" })))),
        set("look-computer", row(put(make.does("rescan", { do: "rescan" })), put(make.does("close_programs", { do: "close_programs" })))),
        set("try-ask", row(put(make.does("ask_still", { do: "ask_still" })), put(make.does("ask_quiet", { do: "ask_quiet" })), put(make.does("ask_finger", { do: "ask_finger" })))),
        set("try-other", put(make.other())),
        set("try-help", row(put(make.does("warm_hand", { do: "manoeuvre", what: "warm_hand" })), put(make.does("swap_cable", { do: "swap_cable" })), put(make.does("rest_arm", { do: "rest_arm" })), put(make.does("push_up_sleeve", { do: "push_up_sleeve" })), put(make.does("dry_plug", { do: "dry_plug" })), put(make.does("wipe_sensor", { do: "wipe_sensor" })), put(make.does("tell_instructor", { do: "tell_instructor" }))), put(make.shade())),
      ], "list-try"),
      this.mover(bench), explainButton());
  }

  /** @param {string} axis @param {number} most */
  coordinate(axis, most) {
    const id = newId(axis);
    const input = h("input", { id, class: "txt", type: "number", step: 1, min: 0, max: most, onchange: () => this.moveTo() });
    return { input, el: h("div", { class: "fld" }, h("label", { for: id }, t(`list-${axis}`)), input) };
  }

  /** @param {BenchView} bench */
  mover(bench) {
    this.part.set(bench.parts.filter((part) => part.movable).map((part) => /** @type {Option} */ ([part.id, t(`part-${part.id}`)])), bench.parts.find((part) => part.movable)?.id);
    explain(this.part.el, "explain-move");
    /** @param {number} dx @param {number} dy @param {string} name */
    const nudge = (dx, dy, name) => h("button", { type: "button", class: `btn btn-round nudge-${name}`, "aria-label": t(`list-nudge_${name}`), onclick: () => this.nudge(dx, dy) }, icon(name));
    return group("list-move", h("div", { class: "mover" }, this.part.el, this.x.el, this.y.el, h("div", { class: "row nudges" }, nudge(-NUDGE_CM, 0, "left"), nudge(NUDGE_CM, 0, "right"), nudge(0, -NUDGE_CM, "up"), nudge(0, NUDGE_CM, "down"))), "list-move");
  }

  chosen() {
    return this.bench.parts.find((part) => part.id === this.part.select.value);
  }
  /** @param {number} dx @param {number} dy */
  nudge(dx, dy) {
    const part = this.chosen();
    if (part) this.act({ do: "move", part: part.id, x: part.x + dx, y: part.y + dy });
  }
  moveTo() {
    const part = this.chosen();
    if (part) this.act({ do: "move", part: part.id, x: Number(this.x.input.value), y: Number(this.y.input.value) });
  }
  showPart() {
    const part = this.chosen();
    if (!part) return;
    prop(this.x.input, "value", String(Math.round(part.x * 10) / 10));
    prop(this.y.input, "value", String(Math.round(part.y * 10) / 10));
  }

  /** @param {BenchView} bench */
  show(bench) {
    this.bench = bench;
    for (const control of this.controls) control.show?.(bench);
    this.showPart();
  }
}

/** @param {string} key @param {Kid} kids @param {string} kind */
function group(key, kids, kind) {
  const id = newId("group");
  return h("div", { class: `group ${kind}`, role: "group", "aria-labelledby": id }, h("h3", { id }, t(key)), kids);
}

/** @param {string} key @param {...Kid} kids */
function set(key, ...kids) {
  const id = newId("try");
  return h("div", { class: "trial", role: "group", "aria-labelledby": id }, h("p", { class: "trial-h pencil", id }, t(key)), kids);
}
