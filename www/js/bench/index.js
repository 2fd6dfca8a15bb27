// @ts-check
// The bench: the drawn table with the card of what was touched, the plain list of its parts, and what the computer, the subject and
// the world say.

import { paneOf } from "../deeds.js";
import { flag, h, words } from "../dom.js";
import { coded, t } from "../text.js";
import { Segments } from "../widgets.js";
import { Card } from "./card.js";
import { Hands } from "./drag.js";
import { PartsList } from "./list.js";
import { seen } from "./seen.js";
import { Table } from "./table.js";
/** @import { Session } from '../session.js' */
/** @import { Thing } from './card.js' */
/** @import { DrawnBench } from './table.js' */
/** @import { Action } from '../types/action' */
/** @import { Args, End, LookAt, Point } from '../types/names' */
/** @import { BenchView, View } from '../types/view' */

const SPEECH_MS = 7000;
const CLOSE_UPS = /** @type {const} */ (["whole", "recorder", "finger"]);

/**
 * What a step's sentence speaks of, as it is named on the drawing (see names.js).
 * @type {Record<string, string>}
 */
const NAMED = {
  power_recorder_end: "power", power_outlet_end: "power_strip", power_recorder_switch: "recorder", power_no_light: "power_strip", power_data_recorder: "data", power_data_computer: "data",
  power_sensor_cable: "sensor", power_not_seen: "computer", sensor_on: "sensor", sensor_loose: "sensor", sensor_tight: "sensor", sensor_place: "sensor", sensor_side: "sensor",
};

export class BenchPane {
  /**
   * Where the drawing stands, the list of parts, and what the bench says to either.
   * @param {{ root: HTMLElement, list: HTMLElement, says: HTMLElement }} places @param {Session} session
   */
  constructor({ root, list, says }, session) {
    this.session = session;
    /** @type {Map<End, Point>} */
    this.rests = new Map(); // where loose plugs were left lying; the eye's matter only
    const now = () => benchOf(session.view);
    const bench = now();
    this.table = new Table(bench);
    if (session.view.scenario) this.table.region(session.view.scenario.power_line.volts);
    /** @param {Action} action */
    const act = (action) => session.act(action);
    this.list = new PartsList(bench, act);
    /** @type {(typeof CLOSE_UPS)[number]} */
    this.closeUp = "whole";
    this.near = new Segments(t("bench-close_up"), (key) => this.look(/** @type {(typeof CLOSE_UPS)[number]} */ (key)));
    this.link = h("p", { class: "link" });
    this.note = h("div", { class: "bench-note pencil", role: "status" });
    this.stage = h("div", { class: "bench-stage" }, this.table.svg);
    this.card = new Card(this.stage, act);
    this.hands = new Hands(this.table, { now: () => this.laid(now()), act, redraw: (ghost) => this.draw(ghost ?? now()), rests: this.rests, touched: (thing, box) => this.touched(thing, box) });
    root.replaceChildren(h("h2", { id: "bench-h", class: "vh" }, t("bench-title")), this.stage);
    says.replaceChildren(h("div", { class: "bench-told", tabindex: "0", role: "group", "aria-label": t("says-title") }, this.note, h("p", { class: "quiet hint" }, t("bench-hint"))), h("div", { class: "bench-foot" }, this.link, this.near.el));
    list.replaceChildren(h("h2", { id: "list-h", class: "vh" }, t("list-title")), this.list.el);
    this.look("whole");
    // Names are put where their letters have room, which is known only of what is seen.
    this.shown = () => this.draw(now());
    document.addEventListener("view-shown", this.shown);
    session.onView((view) => this.show(view));
    session.onRefusal((code, args, action) => this.refused(code, args, action));
    session.onDeed((action) => this.did(action));
  }

  /** @param {(typeof CLOSE_UPS)[number]} what */
  look(what) {
    this.closeUp = what;
    this.near.set(CLOSE_UPS.map((key) => /** @type {[string, string]} */ ([key, t(`bench-close_up-${key}`)])), what);
    const bench = benchOf(this.session.view);
    const recorder = bench.parts.find((part) => part.id === "recorder");
    this.table.look(what === "finger" ? [bench.hand.finger_x, bench.hand.finger_y] : what === "recorder" && recorder ? [recorder.x, recorder.y] : null);
    this.card.close();
    this.draw(bench); // names that are seen only from near find their place now
  }

  /** Names on the drawing what the next step speaks of, where other names have no room. @param {string | null} next */
  pointOut(next) {
    this.table.pointOut(next ? NAMED[next] ?? null : null);
    this.draw(benchOf(this.session.view));
  }

  /** @param {Thing | null} thing @param {DOMRect} box */
  touched(thing, box) {
    if (thing) this.card.open(thing, box, benchOf(this.session.view));
    else this.card.close();
  }

  /**
   * The core's bench with loose plugs where the hand left them.
   * @param {DrawnBench} bench @returns {DrawnBench}
   */
  laid(bench) {
    if (this.rests.size === 0) return bench;
    return { ...bench, ends: bench.ends.map((end) => {
      const rest = end.socket ? undefined : this.rests.get(end.id);
      return rest ? { ...end, x: rest[0], y: rest[1] } : end;
    }) };
  }

  /** @param {DrawnBench} bench */
  draw(bench) {
    this.table.draw(this.laid(bench));
  }

  /** @param {View} view */
  show(view) {
    const bench = benchOf(view), { link } = view;
    for (const end of bench.ends) if (end.socket) this.rests.delete(end.id);
    if (!this.hands.held) this.draw(bench);
    this.list.show(bench);
    this.card.show(bench);
    words(this.link, link.seen ? t("bench-link_seen") : t("bench-link_none"));
    flag(this.link, "is-seen", link.seen);
    flag(this.table.svg, "is-seen", link.seen);
  }

  end() {
    this.card.end();
    document.removeEventListener("view-shown", this.shown);
    clearTimeout(this.speaking);
  }

  /** @param {string} text */
  tell(text) {
    words(this.note, text);
    this.card.tell(this.note);
  }

  /**
   * Tells what can be seen at a place now, line by line.
   * @param {LookAt} place
   */
  lookAt(place) {
    this.note.replaceChildren(h("p", { class: "seen-at" }, t("seen-title", { place: t(`look-${place}`) })), h("ul", { class: "seen" }, seen(benchOf(this.session.view), place).map((line) => h("li", {}, line))));
    this.card.tell(this.note);
  }

  /**
   * The subject's answer: as a note, and for a while beside the hand.
   * @param {string} code
   */
  answer(code) {
    const text = coded("said", code);
    this.tell(text);
    this.table.speak(text);
    clearTimeout(this.speaking);
    this.speaking = setTimeout(() => this.table.speak(""), SPEECH_MS);
  }

  /** @param {string} code @param {Args} args @param {Action} action */
  refused(code, args, action) {
    if (paneOf(action.do) !== "bench") return;
    this.tell(refusalText(code, args));
  }

  /** @param {Action} action */
  did(action) {
    if (paneOf(action.do) !== "bench") return;
    const bench = benchOf(this.session.view), { link } = this.session.view;
    this.tell("");
    this.table.speak("");
    if (action.do === "tap_sensor") this.shake(this.table.hand.strapped, "is-shaken", t("bench-tapped"));
    if (action.do === "wiggle") this.shake(this.table.plugs.get(action.end), "is-shaken", t("bench-wiggled"));
    if (action.do === "press_finger") this.shake(this.table.hand.strapped, "is-pushed", t("bench-pressed"));
    if (ASKING.has(action.do) && bench.said) this.answer(bench.said);
    if (action.do === "look") this.lookAt(action.at);
    if (action.do === "manoeuvre") this.tell(t(action.what === "warm_hand" ? "bench-warm_hand" : "ask-done"));
    if (action.do === "let_pass") this.tell(t("wait-done", { n: action.s / 60 }));
    if (action.do === "rescan") this.tell(t(link.seen ? "bench-rescan_seen" : "bench-rescan_none"));
    if (action.do === "other_hand") this.tell(t(`bench-other-${action.on}`));
    if (TOLD.has(action.do)) this.tell(t(`bench-${action.do}`));
  }

  /**
   * Shows a gesture once on the drawing, and tells it.
   * @param {SVGGraphicsElement | undefined} el @param {string} kind @param {string} text
   */
  shake(el, kind, text) {
    if (!el) return;
    el.classList.remove("is-shaken", "is-pushed");
    el.getBBox(); // lets the same gesture be seen again
    el.classList.add(kind);
    this.tell(text);
  }
}
/**
 * A pane like this stands only where the view has a bench.
 * @param {View} view
 */
const benchOf = (view) => /** @type {BenchView} */ (view.bench);

/** @type {Set<Action["do"]>} */
const ASKING = new Set(["ask_still", "ask_quiet", "ask_finger"]);
/** @type {Set<Action["do"]>} */
const TOLD = new Set(["swap_cable", "rest_arm", "tell_instructor", "push_up_sleeve", "dry_plug", "wipe_sensor", "close_programs"]);

/**
 * A refusal of the world as a sentence; ends and sockets are named.
 * @param {string} code @param {Args} args
 */
export function refusalText(code, args) {
  const named = { ...args };
  if (args.end) named.end = t(`end-${args.end}`);
  if (args.socket) named.socket = t(`socket-${args.socket}`);
  return coded("refusal", code, named);
}
