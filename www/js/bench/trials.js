// Everything that can be asked and tried at the bench: each is a test that a person would make at the table.

import { h, newId } from "../dom.js";
import { t } from "../text.js";
import { button, Segments, Tick } from "../widgets.js";
import { SPOTS } from "./seen.js";

const OTHER_HAND = ["lap", "laptop", "case"];

export class Trials {
  constructor(act) {
    const does = (key, action) => button(t(`list-${key}`), () => act(action ?? { do: key }));
    this.shade = new Tick(t("list-shade"), (on) => act({ do: "shade", on }));
    this.other = new Segments(t("other-title"), (on) => act({ do: "other_hand", on }));
    const otherHint = h("p", { class: "quiet", id: newId("other") }, t("other-hint"));
    this.other.el.setAttribute("aria-describedby", otherHint.id);
    const heading = newId("trials");
    this.el = h("div", { class: "trials list-try", role: "group", "aria-labelledby": heading },
      h("h3", { id: heading, class: "trials-h" }, t("list-try")),
      set("try-look", h("div", { class: "row" }, SPOTS.map((at) => button(t(`look-${at}`), () => act({ do: "look", at }))))),
      set("try-touch", h("div", { class: "row" }, does("tap_pad"), does("press_finger"), does("rescan"))),
      set("try-ask", h("div", { class: "row" }, does("ask_still"), does("ask_quiet"), does("ask_finger"))),
      h("div", { class: "trial" }, this.shade.el),
      set("try-other", this.other.el, otherHint),
      set("try-help", h("div", { class: "row" }, does("warm_hand", { do: "manoeuvre", what: "warm_hand" }), does("swap_lead"), does("rest_arm"), does("tell_instructor"))));
  }

  show({ strap }) {
    this.shade.set(strap.shaded);
    this.other.set(OTHER_HAND.map((id) => [id, t(`other-${id}`)]), strap.other_hand);
  }
}

function set(key, ...kids) {
  const id = newId("try");
  return h("div", { class: "trial", role: "group", "aria-labelledby": id }, h("p", { class: "trial-h pencil", id }, t(key)), kids);
}
