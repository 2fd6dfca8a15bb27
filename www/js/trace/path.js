// @ts-check
// The way of the signal from the sensor to the screen, as a line of stages that tell how they are set; a stage that is pressed opens
// its settings under the line.

import { attr, h, newId, words } from "../dom.js";
import { explainButton } from "../explain.js";
import { t } from "../text.js";
/** @import { Kid } from '../types/page' */

export class Path {
  /** @param {[string, Kid[]][]} stages */
  constructor(stages) {
    /** @type {Map<string, { button: HTMLElement, says: HTMLElement, panel: HTMLElement }>} */
    this.stages = new Map(stages.map(([name, kids]) => {
      const id = newId("stage");
      const says = h("span", { class: "stage-says" });
      const button = h("button", { type: "button", class: "stage", "aria-expanded": "false", "aria-controls": id, data: { stage: name }, onclick: () => this.turn(name) }, h("span", { class: "stage-name" }, t(`path-${name}`)), " ", says);
      const panel = h("div", { class: `stage-panel stage-${name}`, id, role: "group", "aria-label": t(`path-${name}`), hidden: true, onkeydown: (event) => event.key === "Escape" && this.close(name) }, kids, explainButton());
      return [name, { button, says, panel }];
    }));
    const all = [...this.stages.values()];
    this.el = h("div", { class: "path" }, h("h3", { class: "vh" }, t("path-title")),
      h("ol", { class: "path-line" }, all.map(({ button }) => h("li", {}, button))), all.map(({ panel }) => panel));
    /** @type {string | null} */
    this.open = null;
    /** @param {PointerEvent} event */
    this.outside = (event) => {
      if (this.open && event.target instanceof Node && !this.el.contains(event.target)) this.turn(this.open);
    };
    addEventListener("pointerdown", this.outside);
  }

  /** Opens a stage, or closes it; one is open at a time. @param {string} name */
  turn(name) {
    this.open = this.open === name ? null : name;
    for (const [one, { button, panel }] of this.stages) {
      panel.hidden = one !== this.open;
      attr(button, "aria-expanded", String(one === this.open));
    }
  }

  /** @param {string} name */
  close(name) {
    if (this.open === name) this.turn(name);
    this.stages.get(name)?.button.focus();
  }

  /** What each stage says of itself. @param {Record<string, string>} told */
  show(told) {
    for (const [name, { says }] of this.stages) words(says, told[name] ?? "");
  }

  end() {
    removeEventListener("pointerdown", this.outside);
  }
}
