// @ts-check
// The caution before the sensor goes on, to be read and agreed to once an attempt: it counts in the rubric.

import { byId, dialog as question, h, say } from "../dom.js";
import { t } from "../text.js";
import { button } from "../widgets.js";
/** @import { Session } from '../session.js' */

export class Caution {
  /**
   * waits: how the bench is taken is chosen first.
   * @param {HTMLElement} root @param {Session} session @param {{ waits: boolean }} ways
   */
  constructor(root, session, { waits }) {
    this.session = session;
    this.waits = waits;
    this.el = h("p", { class: "agree" }, h("button", { type: "button", class: "agree-open", onclick: () => this.read() }, t("caution-read")));
    root.append(this.el);
    session.onView(() => this.show());
    session.onDeed(() => this.show());
  }

  /** How the bench is taken is asked first, so the caution waits for the first action where there is something to choose. */
  show() {
    const { view, deeds } = this.session;
    const waits = this.waits && Boolean(view.scenario?.worked) && deeds === 0;
    this.el.hidden = waits || view.agreed || Boolean(view.check?.over);
  }

  /** Shows it; agreeing is an action of the attempt, closing it is none. */
  read() {
    const dialog = question();
    dialog.replaceChildren(h("h2", { id: "ask-h" }, t("caution-title")), ...["before", "power", "body"].map((part) => h("p", {}, t(`caution-${part}`))), h("p", { class: "quiet" }, t("caution-when")),
      h("div", { class: "row" }, button(t("caution-agree"), () => this.agree(dialog), { kind: "btn-strong", autofocus: true }), button(t("caution-later"), () => dialog.close())));
    dialog.showModal();
  }

  /** @param {HTMLDialogElement} dialog */
  agree(dialog) {
    dialog.close();
    if (!this.session.act({ do: "agree" })) return;
    say(t("caution-agreed"));
    byId("main").focus({ preventScroll: true });
  }
}
