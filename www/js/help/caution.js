// The caution before the pad goes on, to be read and agreed to once an attempt: it counts in the rubric.

import { h, refill, say } from "../dom.js";
import { t } from "../text.js";
import { button } from "../widgets.js";

export class Caution {
  /** waits: how the bench is taken is chosen first. */
  constructor(root, session, { waits }) {
    Object.assign(this, { session, waits });
    this.el = h("p", { class: "agree" });
    root.append(this.el);
    session.onView(() => this.show());
    session.onDeed(() => this.show());
  }

  /** How the bench is taken is asked first, so the caution waits for the first action where there is something to choose. */
  show() {
    const { view, deeds } = this.session;
    const waits = this.waits && view.scenario?.worked && deeds === 0;
    this.el.hidden = waits || view.agreed;
    refill(this.el, [view.agreed], () => !view.agreed && [h("span", { class: "pencil" }, t("caution-before")), " ", button(t("caution-agree"), () => this.agree(), { kind: "btn-small" })]);
  }

  agree() {
    if (!this.session.act({ do: "agree" })) return;
    say(t("caution-agreed"));
    document.getElementById("main").focus({ preventScroll: true });
  }
}
