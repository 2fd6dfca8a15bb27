// @ts-check
// Comparing two windows: putting the first aside, so that the cursors are free for the second.

import { h, prop, say, words } from "../dom.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
import { timeText, windowText } from "../trace/units.js";
/** @import { Session } from '../session.js' */
/** @import { View } from '../types/view' */

export class FirstWindow {
  /**
   * keep(): puts the present cursors and their blanks aside as window 1.
   * @param {Session} session @param {() => unknown} keep
   */
  constructor(session, keep) {
    this.session = session;
    this.told = h("p", { class: "pencil kept-window" });
    this.keep = button(t("sheet-keep"), keep, { pic: "keep" });
    this.forget = button(t("sheet-keep_clear"), () => session.act({ do: "keep_clear" }), { kind: "btn-plain" });
    this.el = h("div", { class: "first-window" }, this.told, h("div", { class: "row" }, this.keep, this.forget));
    session.onDeed((action) => {
      if (action.do === "keep_window") say(t("sheet-kept_now"));
    });
  }

  /** @param {View} view */
  show({ cursors: { kept }, check }) {
    words(this.told, kept ? t("sheet-kept", { from: timeText(Math.min(kept.a, kept.b)), to: timeText(Math.max(kept.a, kept.b)), s: windowText(Math.abs(kept.interval_s)), take: kept.recording + 1 }) : t("sheet-kept_none"));
    this.forget.hidden = !kept;
    for (const one of [this.keep, this.forget]) prop(one, "disabled", Boolean(check?.over));
  }
}
