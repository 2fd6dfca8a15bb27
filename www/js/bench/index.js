// @ts-check
// The bench section: the drawn table and the plain list side by side, and what the computer, the subject and the world say.

import { paneOf } from "../deeds.js";
import { flag, h, words } from "../dom.js";
import { coded, t } from "../text.js";
import { Hands } from "./drag.js";
import { PartsList } from "./list.js";
import { seen } from "./seen.js";
import { Table } from "./table.js";
import { Trials } from "./trials.js";
/** @import { Session } from '../session.js' */
/** @import { DrawnBench } from './table.js' */
/** @import { Action } from '../types/action' */
/** @import { Args, End, LookAt, Point } from '../types/names' */
/** @import { BenchView, View } from '../types/view' */

const TALL = matchMedia("(max-width: 640px)");
const WIDE = matchMedia("(min-width: 1000px)");
const SPEECH_MS = 7000, FRESH_MS = 9000;

export class BenchPane {
  /** @param {HTMLElement} root @param {Session} session */
  constructor(root, session) {
    this.session = session;
    /** @type {Map<End, Point>} */
    this.rests = new Map(); // where loose plugs were left lying; the eye's matter only
    const now = () => benchOf(session.view);
    const bench = now();
    this.table = new Table(bench);
    /** @param {Action} action */
    const act = (action) => session.act(action);
    this.list = new PartsList(bench, act);
    this.trials = new Trials(act);
    this.hands = new Hands(this.table, { now: () => this.laid(now()), act, redraw: (ghost) => this.draw(ghost ?? now()), rests: this.rests });

    this.link = h("p", { class: "link" });
    this.note = h("div", { class: "bench-note pencil", role: "status" });
    const table = h("div", { class: "bench-table" },
      h("div", { class: "bench-head" }, h("h2", { id: "bench-h" }, t("bench-title")), this.link), this.table.svg);
    const foot = h("div", { class: "bench-foot" }, this.note, h("p", { class: "quiet hint" }, t("bench-hint")));
    const list = h("div", { class: "bench-list", role: "region", "aria-label": t("list-title") }, this.list.el);

    // the order of reading and of the Tab key is the order on the screen: on a narrow one what is tried comes under the table
    this.laidOut = () => root.replaceChildren(...(WIDE.matches ? [table, list, foot, this.trials.el] : [table, foot, this.trials.el, list]));
    WIDE.addEventListener("change", this.laidOut);
    this.laidOut();

    this.turned = () => {
      this.table.turn(TALL.matches);
      this.draw(now());
    };
    TALL.addEventListener("change", this.turned);
    this.table.turn(TALL.matches);
    session.onView((view) => this.show(view));
    session.onRefusal((code, args, action) => this.refused(code, args, action));
    session.onDeed((action) => this.did(action));
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
    this.trials.show(bench);
    words(this.link, link.seen ? t("bench-link_seen") : t("bench-link_none"));
    flag(this.link, "is-seen", link.seen);
    flag(this.table.svg, "is-seen", link.seen);
  }

  end() {
    TALL.removeEventListener("change", this.turned);
    WIDE.removeEventListener("change", this.laidOut);
    clearTimeout(this.speaking);
    clearTimeout(this.freshUntil);
  }

  /** @param {string} text */
  tell(text) {
    words(this.note, text);
    this.fresh(text !== "");
  }

  /** An answer stands for a while where it is seen, also where its place lies under the docked strip. @param {boolean} on */
  fresh(on) {
    clearTimeout(this.freshUntil);
    flag(this.note, "is-fresh", on);
    if (on) this.freshUntil = setTimeout(() => flag(this.note, "is-fresh", false), FRESH_MS);
  }

  /**
   * Tells what can be seen at a place now, line by line.
   * @param {LookAt} place
   */
  lookAt(place) {
    this.note.replaceChildren(h("p", { class: "seen-at" }, t("seen-title", { place: t(`look-${place}`) })), h("ul", { class: "seen" }, seen(benchOf(this.session.view), place).map((line) => h("li", {}, line))));
    this.fresh(true);
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
    if (action.do === "tap_pad") this.shake(this.table.hand.strapped, "is-shaken", t("bench-tapped"));
    if (action.do === "wiggle") this.shake(this.table.plugs.get(action.end), "is-shaken", t("bench-wiggled"));
    if (action.do === "press_finger") this.shake(this.table.hand.strapped, "is-pushed", t("bench-pressed"));
    if (ASKING.has(action.do) && bench.said) this.answer(bench.said);
    if (action.do === "look") this.lookAt(action.at);
    if (action.do === "manoeuvre") this.tell(t(action.what === "warm_hand" ? "bench-warm_hand" : "ask-done"));
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
const TOLD = new Set(["swap_lead", "rest_arm", "tell_instructor"]);

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
