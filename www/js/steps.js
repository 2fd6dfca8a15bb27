// @ts-check
// Where one stands in the work: six steps, done or not as the core tells them, and one sentence of what is next. A tick says that the bench is
// so; what a student has written or named gets a dot when it is there, and a tick once the check finds it right. On a first visit what
// the sentence speaks of is ringed on the page, until it is done.

import { flag, h, refill, words } from "./dom.js";
import { keep, recall } from "./device.js";
import { icon } from "./icons.js";
import { coded, t } from "./text.js";
/** @import { Session } from './session.js' */
/** @import { StepName, Steps as Told } from './types/told' */

const EVERY_MS = 600;

/**
 * What is ringed for a sentence, as selectors.
 * @type {Record<string, string>}
 */
const AT = {
  power_recorder_end: '.plug[data-end="power_recorder"], .socket[data-socket="recorder_inlet"]', power_outlet_end: '.plug[data-end="power_wall"], .part-power_strip',
  power_recorder_switch: '[data-press="switch:recorder"]', power_no_light: '[data-press="switch:power_strip"]', power_data_recorder: '.plug[data-end="data_recorder"], .socket[data-socket="recorder_data"]',
  power_data_computer: '.plug[data-end="data_computer"], .socket[data-socket="port1"]', power_sensor_cable: '.plug[data-end="sensor"], .socket[data-socket="in1"]',
  power_not_seen: ".part-computer", sensor_caution: ".agree-open", sensor_on: ".table .sensor", sensor_loose: ".part-hand", sensor_tight: ".part-hand", sensor_place: ".part-hand", sensor_side: ".part-hand",
  adjust_small: ".range-at", adjust_tall: ".range-at", adjust_clipped: ".range-at", adjust_zero: ".range-at", record: ".btn-record-for", measure_cursors: ".cursor-flag", measure_blanks: ".blanks .blank", check: ".page .btn-strong",
};

/** What is the student's own word, right only when a check says so. @type {Set<StepName>} */
const OWN = new Set(["measure", "name", "check"]);

export class Steps {
  /**
   * title: of what is worked on; go(step): brings one where a step is done; tells(next): hears what is next, by its code; leads: whether that
   * is ringed, on a first visit; watched: an example plays, and whoever watches has nothing to do.
   * @param {HTMLElement} root @param {Session} session
   * @param {{ title: string, go: (step: StepName) => unknown, tells: (next: string | null) => unknown, leads: boolean, watched: boolean }} ways
   */
  constructor(root, session, { title, go, tells, leads, watched }) {
    this.watched = watched;
    this.session = session;
    this.go = go;
    this.tells = tells;
    this.leads = leads && !recall("led");
    this.due = 0;
    this.seen = -1;
    /** @type {Told | null} */
    this.told = null;
    /** @type {Element[]} */
    this.ringed = [];
    this.line = h("ol", { class: "steps-line" });
    this.next = h("p", { class: "steps-next", role: "status" });
    this.more = h("div", { class: "steps-more" });
    root.replaceChildren(h("h1", { class: "vh" }, title), h("h2", { id: "steps-h", class: "vh" }, t("steps-title")), this.line, h("div", { class: "steps-now" }, this.next, this.more));
    this.answered = "";
    session.onView(({ check }) => {
      const answered = check ? `${check.try} ${check.passed} ${check.over}` : "";
      if (answered !== this.answered) [this.answered, this.seen] = [answered, -1]; // the line speaks of the check, though the bench is as it was
      this.due = Math.min(this.due, performance.now() + 120);
    });
    this.show();
  }

  /** One frame of the page: what the core tells is asked for now and then, because the trace changes without a deed. */
  frame() {
    if (performance.now() < this.due) return;
    this.show();
  }

  show() {
    this.due = performance.now() + EVERY_MS;
    const seen = this.session.bench.stepsSeen;
    if (seen !== this.seen) this.told = this.session.bench.steps();
    if (this.leads && this.told) this.ring(this.told);
    if (seen === this.seen || !this.told) return;
    this.seen = seen;
    const { told } = this;
    const { check } = this.session.view;
    const passed = Boolean(check?.passed), at = check ? "check" : told.at;
    refill(this.line, [told.steps, at, passed], () => told.steps.map((one) => this.step(one, at, passed)));
    // After a check the result says what to do, and the line must not send anybody elsewhere.
    if (this.watched) words(this.next, check ? "" : t("next-watched"));
    else if (check && !passed) words(this.next, t(check.over ? "next-closed" : "next-check_again"));
    else words(this.next, told.next && !passed ? coded("next", told.next) : t("next-nothing"));
    this.tells(check || this.watched ? null : told.next);
  }

  /** @param {Told["steps"][number]} step @param {StepName | null} at @param {boolean} passed */
  step({ step, done }, at, passed) {
    const state = done ? "done" : step === at ? "now" : "open";
    return h("li", { class: `steps-one is-${state}` }, h("button", { type: "button", "aria-current": step === at ? "step" : null, onclick: () => this.go(step) },
      h("span", { class: "steps-sign", "aria-hidden": "true" }, done && icon(passed || !OWN.has(step) ? "tick" : "dot")), h("span", { class: "steps-name" }, t(`steps-${step}`)), h("span", { class: "vh" }, t(done ? "steps-done" : "steps-open"))));
  }

  /** @param {Told} told */
  ring({ next }) {
    const selector = next && this.session.deeds > 0 ? AT[next] : undefined;
    const found = selector ? [...document.querySelectorAll(selector)] : [];
    for (const el of this.ringed) if (!found.includes(el)) flag(el, "is-next", false);
    for (const el of found) flag(el, "is-next", true);
    this.ringed = found;
    if (this.session.view.check) this.endLead();
  }

  /** Whoever has come to a check once needs no leading any more. */
  endLead() {
    this.leads = false;
    keep("led", true);
    for (const el of this.ringed) flag(el, "is-next", false);
  }
}
