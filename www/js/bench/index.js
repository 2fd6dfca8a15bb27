// The bench section: the drawn table and the plain list side by side, and what the computer, the subject and the world say.

import { flag, h, say, words } from "../dom.js";
import { coded, t } from "../text.js";
import { Hands } from "./drag.js";
import { PartsList } from "./list.js";
import { Table } from "./table.js";

const TALL = matchMedia("(max-width: 640px)");

export class BenchPane {
  constructor(root, session) {
    this.session = session;
    this.rests = new Map(); // where loose plugs were left lying; the eye's matter only
    const bench = session.view.bench;
    this.table = new Table(bench);
    const act = (action) => session.act(action);
    this.list = new PartsList(bench, act);
    this.hands = new Hands(this.table, { now: () => this.laid(session.view.bench), act, redraw: (ghost) => this.draw(ghost ?? session.view.bench), rests: this.rests });

    this.link = h("p", { class: "link" });
    this.note = h("p", { class: "bench-note pencil", role: "status" });
    root.replaceChildren(
      h("div", { class: "bench-table" },
        h("div", { class: "bench-head" }, h("h2", { id: "bench-h" }, t("bench.title")), this.link),
        this.table.svg, h("div", { class: "bench-foot" }, this.note, h("p", { class: "quiet hint" }, t("bench.hint")))),
      h("div", { class: "bench-list", role: "region", "aria-label": t("list.title") }, this.list.el));

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
    words(this.link, link.seen ? t("bench.link_seen") : t("bench.link_none"));
    flag(this.link, "is-seen", link.seen);
    flag(this.table.svg, "is-seen", link.seen);
    if (bench.said !== this.saidBefore) {
      this.saidBefore = bench.said;
      if (bench.said) this.tell(coded("said", bench.said));
    }
  }

  end() {
    TALL.removeEventListener("change", this.turned);
  }

  tell(text) {
    words(this.note, text);
  }

  refused(code, args, action) {
    if (!BENCH_DEEDS.has(action.do)) return;
    this.tell(refusalText(code, args));
  }

  did(action) {
    if (!BENCH_DEEDS.has(action.do)) return;
    if (action.do !== "ask_still") this.tell("");
    const shake = action.do === "tap_pad" ? this.table.hand.strapped : action.do === "wiggle" ? this.table.plugs.get(action.end) : null;
    if (shake) {
      shake.classList.remove("is-shaken");
      shake.getBBox(); // lets the same gesture be seen again
      shake.classList.add("is-shaken");
      say(t(action.do === "tap_pad" ? "bench.tapped" : "bench.wiggled"));
    }
    if (action.do === "manoeuvre") this.tell(t("ask.done"));
    if (action.do === "rescan") this.tell(t(this.session.view.link.seen ? "bench.rescan_seen" : "bench.rescan_none"));
  }
}

const BENCH_DEEDS = new Set(["plug", "unplug", "switch", "move", "charger", "strap_on", "strap_off", "strap", "pad_place", "pad_face", "hand_height", "rescan", "tap_pad", "ask_still", "wiggle", "manoeuvre"]);

/** A refusal of the world as a sentence; ends and sockets are named. */
export function refusalText(code, args) {
  const named = { ...args };
  if (args.end) named.end = t(`end.${args.end}`);
  if (args.socket) named.socket = t(`socket.${args.socket}`);
  return coded("refusal", code, named);
}
