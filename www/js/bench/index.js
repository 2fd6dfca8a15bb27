// The bench section: the drawn table and the plain list side by side, and what the computer, the subject and the world say.

import { paneOf } from "../deeds.js";
import { flag, h, words } from "../dom.js";
import { coded, t } from "../text.js";
import { Hands } from "./drag.js";
import { PartsList } from "./list.js";
import { seen } from "./seen.js";
import { Table } from "./table.js";
import { Trials } from "./trials.js";

const TALL = matchMedia("(max-width: 640px)");
const WIDE = matchMedia("(min-width: 1000px)");
const SPEECH_MS = 7000;

export class BenchPane {
  constructor(root, session) {
    this.session = session;
    this.rests = new Map(); // where loose plugs were left lying; the eye's matter only
    const bench = session.view.bench;
    this.table = new Table(bench);
    const act = (action) => session.act(action);
    this.list = new PartsList(bench, act);
    this.trials = new Trials(act);
    this.hands = new Hands(this.table, { now: () => this.laid(session.view.bench), act, redraw: (ghost) => this.draw(ghost ?? session.view.bench), rests: this.rests });

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
      this.draw(session.view.bench);
    };
    TALL.addEventListener("change", this.turned);
    this.table.turn(TALL.matches);
    session.onView((view) => this.show(view));
    session.onRefusal((code, args, action) => this.refused(code, args, action));
    session.onDeed((action) => this.did(action));
  }

  /** The core's bench with loose plugs where the hand left them. */
  laid(bench) {
    if (this.rests.size === 0) return bench;
    return { ...bench, ends: bench.ends.map((end) => (end.socket || !this.rests.has(end.id) ? end : { ...end, x: this.rests.get(end.id)[0], y: this.rests.get(end.id)[1] })) };
  }

  draw(bench) {
    this.table.draw(this.laid(bench));
  }

  show(view) {
    const { bench, link } = view;
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
  }

  tell(text) {
    words(this.note, text);
  }

  /** Tells what can be seen at a place now, line by line. */
  lookAt(place) {
    this.note.replaceChildren(h("p", { class: "seen-at" }, t("seen-title", { place: t(`look-${place}`) })), h("ul", { class: "seen" }, seen(this.session.view, place).map((line) => h("li", {}, line))));
  }

  /** The subject's answer: as a note, and for a while beside the hand. */
  answer(code) {
    const text = coded("said", code);
    this.tell(text);
    this.table.speak(text);
    clearTimeout(this.speaking);
    this.speaking = setTimeout(() => this.table.speak(""), SPEECH_MS);
  }

  refused(code, args, action) {
    if (paneOf(action.do) !== "bench") return;
    this.tell(refusalText(code, args));
  }

  did(action) {
    if (paneOf(action.do) !== "bench") return;
    const { bench, link } = this.session.view;
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

  /** Shows a gesture once on the drawing, and tells it. */
  shake(el, kind, text) {
    el.classList.remove("is-shaken", "is-pushed");
    el.getBBox(); // lets the same gesture be seen again
    el.classList.add(kind);
    this.tell(text);
  }
}

const ASKING = new Set(["ask_still", "ask_quiet", "ask_finger"]);
const TOLD = new Set(["swap_lead", "rest_arm", "tell_instructor"]);

/** A refusal of the world as a sentence; ends and sockets are named. */
export function refusalText(code, args) {
  const named = { ...args };
  if (args.end) named.end = t(`end-${args.end}`);
  if (args.socket) named.socket = t(`socket-${args.socket}`);
  return coded("refusal", code, named);
}
