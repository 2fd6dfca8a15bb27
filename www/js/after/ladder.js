// @ts-check
// The hint ladder: look, locate, rule, worked step, answer. One button; the core says how far it goes today.

import { h, prop, refill, say, words } from "../dom.js";
import { has, num, t } from "../text.js";
import { button, relabel } from "../widgets.js";
import { faultWords } from "../faults/words.js";
/** @import { Session } from '../session.js' */
/** @import { TracePane } from '../trace/index.js' */
/** @import { TestDeed } from '../types/action' */
/** @import { Rung } from '../types/names' */
/** @import { FaultBook } from '../types/page' */
/** @import { Hint, View } from '../types/view' */

/** @type {Rung[]} */
const RUNGS = ["look", "locate", "rule", "worked", "answer"];

export class Ladder {
  /** @param {Session} session @param {TracePane} trace */
  constructor(session, trace) {
    this.session = session;
    this.trace = trace;
    /** @type {FaultBook | null} */
    this.names = null; // of the catalogue, once a hint names faults
    this.rungs = h("ol", { class: "rungs" });
    this.before = h("ol", { class: "hints-before" }); // the hints that were given before this one
    this.text = h("div", { class: "hint-text", role: "status" });
    this.more = button("", () => this.ask(), { pic: "hint" });
    this.none = h("p", { class: "quiet" });
    this.el = h("section", { class: "hints", "aria-label": t("hints-title") }, h("div", { class: "hints-bar" }, this.more, this.rungs), this.before, this.text, this.none);
  }

  async ask() {
    if (!this.session.act({ do: "hint" })) return;
    const { hint } = this.session.view;
    const place = hint?.locate;
    if (typeof place?.from_s === "number" && typeof place.to_s === "number") this.trace.bringToSight(place.from_s, place.to_s);
  }

  /** @param {View} view */
  show({ check, hint, hint_next: next, hints_taken: taken }) {
    this.el.hidden = !check || this.session.looksOnly || check.steps.length === 0 || (check.passed && taken.length === 0) || (next === undefined);
    if (!check || this.el.hidden) return;
    const at = hint ? RUNGS.indexOf(hint.rung) : -1;
    refill(this.rungs, [at, next], () => RUNGS.map((rung, i) => h("li", { class: `rung${i <= at ? " is-up" : ""}${i === at ? " is-here" : ""}`, "aria-current": i === at && "step" }, t(`hints-rung-${rung}`))));
    relabel(this.more, t(at < 0 ? "hints-first" : "hints-more"));
    prop(this.more, "disabled", next === null);
    words(this.none, next === null ? t(check.over || at === RUNGS.length - 1 ? "hints-end" : "hints-after_next") : "");
    this.none.hidden = next !== null;
    if (hint?.args?.list && !this.names) return this.bringNames();
    const before = hint ? taken.slice(0, -1) : taken;
    this.before.hidden = before.length === 0;
    if (before.some((one) => one.args?.list) && !this.names) return this.bringNames();
    refill(this.before, [before, Boolean(this.names)], () => before.map((one) => h("li", {}, h("span", { class: "hint-step" }, t(`debrief-step-${one.step}`)), " ", h("span", { class: "pencil" }, hintText(one, this.names)))));
    const changed = refill(this.text, [hint, Boolean(this.names)], () => hint && [h("p", { class: "hint-step" }, t(`debrief-step-${hint.step}`)), h("p", { class: "pencil" }, hintText(hint, this.names)), hint.locate?.action && h("p", { class: "do" }, t("hint-try", { what: deedName(hint.locate.action) }))]);
    if (changed && hint) say(this.text.textContent);
    return undefined;
  }

  /** An answer that names faults needs the catalogue's words. */
  bringNames() {
    faultWords().then((all) => {
      this.names = all;
      this.show(this.session.view);
    }, (error) => words(this.none, t("naming-failed", { told: error.message })));
  }
}

/**
 * A test by the name of its button or of what it is done to.
 * @param {TestDeed} action
 */
function deedName({ do: deed, ...args }) {
  if (deed === "look") return t("hint-look_at", { place: t(`look-${args.at}`) });
  if (deed === "wiggle") return t("list-wiggle", { end: t(`end-${args.end}`) });
  if (deed === "plug") return t("hint-other_socket", { end: t(`end-${args.end}`) });
  if (deed === "move") return t("hint-move", { part: t(args.part === "cable1" ? "end-sensor" : `part-${args.part}`) });
  if (deed === "switch") return t("hint-switch", { id: t(`switch-${args.id}`) });
  return t(has(`list-${deed}`) ? `list-${deed}` : `hint-do-${deed}`);
}

/**
 * The words of a hint: the instructor's; of its topic where it has some; else of the rung alone.
 * @param {Hint} hint @param {FaultBook | null} names
 */
export function hintText({ code, rung, args, step, words: own }, names) {
  if (own) return own;
  const shown = Object.fromEntries(Object.entries(args ?? {}).map(([name, value]) => [name, typeof value === "number" ? num(value, 2) : Array.isArray(value) ? value.map((id) => names?.of(String(id))?.name ?? id).join(", ") : value]));
  if (rung === "answer" && shown.list === "") return t("hint-nothing_wrong");
  const key = `hint-${code}.${rung}`;
  return has(key) ? t(key, shown) : t(`hint-any.${rung}`, { step: t(`debrief-step-${step}`), value: "", ...shown });
}
