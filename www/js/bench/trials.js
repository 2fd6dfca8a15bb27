// @ts-check
// Everything that can be asked and tried at the bench: each is a test that a person would make at the table.

import { h, newId } from "../dom.js";
import { t } from "../text.js";
import { button, Segments, Tick } from "../widgets.js";
import { SPOTS } from "./seen.js";
/** @import { Act, Action } from '../types/action' */
/** @import { OtherHand } from '../types/names' */
/** @import { Kid } from '../types/page' */
/** @import { BenchView } from '../types/view' */

const OTHER_HAND = /** @type {const} */ (["lap", "laptop", "case"]);

/** @typedef {import('../types/names').OtherHand} OtherHandPlace */

export class Trials {
  /** @param {Act} act */
  constructor(act) {
    /** @param {string} key @param {Action} action */
    const does = (key, action) => button(t(`list-${key}`), () => act(action));
    this.shade = new Tick(t("list-shade"), (on) => act({ do: "shade", on }));
    this.other = new Segments(t("other-title"), (on) => act({ do: "other_hand", on: /** @type {OtherHandPlace} */ (on) }));
    const otherHint = h("p", { class: "quiet", id: newId("other") }, t("other-hint"));
    this.other.el.setAttribute("aria-describedby", otherHint.id);
    const heading = newId("trials");
    this.el = h("div", { class: "trials list-try", role: "group", "aria-labelledby": heading },
      h("h3", { id: heading, class: "trials-h" }, t("list-try")),
      set("try-look", h("div", { class: "row" }, SPOTS.map((at) => button(t(`look-${at}`), () => act({ do: "look", at }))))),
      set("try-touch", h("div", { class: "row" }, does("tap_pad", { do: "tap_pad" }), does("press_finger", { do: "press_finger" }), does("rescan", { do: "rescan" }))),
      set("try-ask", h("div", { class: "row" }, does("ask_still", { do: "ask_still" }), does("ask_quiet", { do: "ask_quiet" }), does("ask_finger", { do: "ask_finger" }))),
      h("div", { class: "trial" }, this.shade.el),
      set("try-other", this.other.el, otherHint),
      set("try-help", h("div", { class: "row" }, does("warm_hand", { do: "manoeuvre", what: "warm_hand" }), does("swap_lead", { do: "swap_lead" }), does("rest_arm", { do: "rest_arm" }), does("tell_instructor", { do: "tell_instructor" }))));
  }

  /** @param {BenchView} bench */
  show({ strap }) {
    this.shade.set(strap.shaded);
    this.other.set(OTHER_HAND.map((id) => /** @type {[string, string]} */ ([id, t(`other-${id}`)])), strap.other_hand);
  }
}

/** @param {string} key @param {...Kid} kids */
function set(key, ...kids) {
  const id = newId("try");
  return h("div", { class: "trial", role: "group", "aria-labelledby": id }, h("p", { class: "trial-h pencil", id }, t(key)), kids);
}
