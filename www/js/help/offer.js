// @ts-check
// How a bench can be taken: watched first, half done, or alone. Proposed before the first action; the student chooses.

import { pastEvidence } from "../evidence.js";
import { skillMap } from "../core.js";
import { attr, h, refill, refillAnew } from "../dom.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
/** @import { Session } from '../session.js' */
/** @import { Aid } from '../types/names' */
/** @import { Brief } from '../types/view' */

/** @type {Aid[]} */
const MODES = ["shown", "half", "alone"];

/**
 * What is proposed: what the skill map says; where a scenario is meant to be done alone, help only after failures.
 * @param {Pick<Brief, "help" | "worked">} brief @param {boolean} [met] Whether this scenario was done before. @returns {Aid}
 */
export function proposed({ help, worked }, met = false) {
  if (!worked || met) return "alone";
  const past = pastEvidence();
  const mode = skillMap(past, Date.now()).help;
  return help === "alone" && past.length === 0 ? "alone" : mode;
}

export class Offer {
  /**
   * watch(): plays the worked example; chosen(mode): the attempt has begun so.
   * @param {HTMLElement} root @param {Session} session @param {{ watch: () => unknown, chosen: (mode: Aid) => unknown }} ways
   */
  constructor(root, session, { watch, chosen }) {
    this.root = root;
    this.session = session;
    this.watch = watch;
    this.chosen = chosen;
    const { scenario } = session.view;
    this.worked = Boolean(scenario?.worked);
    this.met = pastEvidence().some((one) => one.scenario === session.scenario); // whoever has done it once knows the ways
    this.mode = scenario?.worked && session.deeds === 0 ? proposed(scenario, this.met) : null;
    refillAnew(root);
    session.onView(() => this.show());
    session.onDeed(() => this.show());
  }

  /** Is it still to be chosen? */
  get asks() {
    return this.worked && this.session.deeds === 0 && !this.session.view.check;
  }

  show() {
    this.root.hidden = !this.asks;
    refill(this.root, this.asks, () => (this.asks ? this.question() : []));
  }

  question() {
    const id = "offer-h";
    attr(this.root, "aria-labelledby", id);
    /** @param {Aid} mode */
    const way = (mode) => h("li", { class: mode === this.mode ? "is-proposed" : "" },
      button(t(`offer-${mode}`), () => this.choose(mode), { kind: mode === this.mode ? "btn-strong" : "" }));
    return [h("h2", { id, class: "offer-h" }, t("offer-title")), h("ul", { class: "offer-ways" }, MODES.map(way)), h("p", { class: "pencil offer-why" }, t(`offer-why-${this.mode}`))];
  }

  /** @param {Aid} mode */
  choose(mode) {
    return mode === "shown" ? this.watch() : this.begin(mode);
  }

  /**
   * Begins the attempt so.
   * @param {Aid} mode
   */
  begin(mode) {
    if (this.session.act({ do: "help", mode })) this.chosen(mode);
    this.show();
  }
}
