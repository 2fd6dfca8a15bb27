// How a bench can be taken: watched first, half done, or alone. Proposed before the first action; the student chooses.

import { pastEvidence } from "../evidence.js";
import { skillMap } from "../core.js";
import { attr, h, refill } from "../dom.js";
import { t } from "../text.js";
import { button } from "../widgets.js";

const MODES = ["shown", "half", "alone"];

/** What is proposed: what the skill map says; where a scenario is meant to be done alone, help only after failures. */
export function proposed({ help, worked }) {
  if (!worked) return "alone";
  const past = pastEvidence();
  const mode = skillMap(past, Date.now()).help;
  return help === "alone" && past.length === 0 ? "alone" : mode;
}

export class Offer {
  /** watch(): plays the worked example; chosen(mode): the attempt has begun so. */
  constructor(root, session, { watch, chosen }) {
    Object.assign(this, { root, session, watch, chosen });
    const { scenario } = session.view;
    this.worked = Boolean(scenario?.worked);
    this.mode = this.worked && session.deeds === 0 ? proposed(scenario) : null;
    root.refillKey = null;
    session.onView(() => this.show());
    session.onDeed(() => this.show());
  }

  show() {
    const { deeds, view } = this.session;
    const asking = this.worked && deeds === 0 && !view.check;
    const begun = !asking && this.began && !view.check;
    this.root.hidden = !asking && !begun;
    attr(this.root, "role", begun ? "status" : null);
    refill(this.root, [asking, this.began], () => (asking ? this.question() : begun ? [h("p", { class: "pencil" }, t(`offer-now-${this.began}`))] : []));
  }

  question() {
    const id = "offer-h";
    attr(this.root, "aria-labelledby", id);
    const way = (mode) => h("li", { class: mode === this.mode ? "is-proposed" : "" },
      button(t(`offer-${mode}`), () => this.choose(mode), { kind: mode === this.mode ? "btn-strong" : "" }));
    return [h("h2", { id, class: "offer-h" }, t("offer-title")), h("ul", { class: "offer-ways" }, MODES.map(way)), h("p", { class: "pencil offer-why" }, t(`offer-why-${this.mode}`))];
  }

  choose(mode) {
    return mode === "shown" ? this.watch() : this.begin(mode);
  }

  /** Begins the attempt so. */
  begin(mode) {
    this.began = mode;
    if (this.session.act({ do: "help", mode })) this.chosen(mode);
    else this.began = null;
    return this.show();
  }
}
