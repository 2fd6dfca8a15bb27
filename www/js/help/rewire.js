// @ts-check
// Another attempt at a scenario that begins with nothing connected: who has wired it once and come to a result need not do so by hand again.

import { h } from "../dom.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
/** @import { Session } from '../session.js' */
/** @import { Action } from '../types/action' */
/** @import { BenchView, View } from '../types/view' */

/**
 * The deeds that connect a bench as it stands; none where it was never looked at, or where faults are to be found, because a plug that
 * is put in anew may be the remedy.
 * @param {View} view @returns {Action[]}
 */
export function wiringOf({ bench, check, scenario }) {
  if (!bench || !check || scenario?.name_faults) return [];
  return [
    ...bench.ends.flatMap(({ id, socket }) => (socket ? [/** @type {Action} */ ({ do: "plug", end: id, socket })] : [])),
    ...Object.entries(bench.switches).map(([id, on]) => /** @type {Action} */ ({ do: "switch", id, on })),
  ];
}

/**
 * Those of the deeds that change something.
 * @param {Action[]} deeds @param {BenchView} bench
 */
const needed = (deeds, bench) => deeds.filter((one) => (one.do === "plug" ? bench.ends.find(({ id }) => id === one.end)?.socket !== one.socket : one.do === "switch" && bench.switches[one.id] !== one.on));

export class Rewire {
  /** @param {HTMLElement} root @param {Session} session @param {Action[]} deeds as it was wired before */
  constructor(root, session, deeds) {
    this.session = session;
    // Where most is connected already there is nothing to spare the hand.
    this.deeds = session.view.bench?.ends.every(({ socket }) => socket === null) ? deeds : [];
    this.el = h("p", { class: "rewire" }, button(t("rewire"), () => this.wire(), { kind: "btn-small" }));
    root.append(this.el);
    session.onView(() => this.show());
  }

  /** It is there until everything is connected, by it or by hand. */
  show() {
    const { bench, check } = this.session.view;
    this.el.hidden = Boolean(check) || !bench || needed(this.deeds, bench).length === 0;
  }

  /** Each is a deed of the attempt like one of the hand. */
  wire() {
    const { bench } = this.session.view;
    if (bench) for (const one of needed(this.deeds, bench)) this.session.act(one);
  }
}
