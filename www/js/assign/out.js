// @ts-check
// Passing the bench on: a link with everything in it, its picture, the file.

import { h, prop, say, words } from "../dom.js";
import { download } from "../download.js";
import { copy } from "../hand/file.js";
import { linkOf } from "../hand/link.js";
import { num, t } from "../text.js";
import { button } from "../widgets.js";
import { AddressField, linkPicture } from "./address.js";
/** @import { ScenarioValue } from '../types/told' */

export class Out {
  /**
   * settle(): takes in what was typed a moment ago; a promise of the link that holds it.
   * @param {{ saveFile: () => unknown, settle: () => Promise<void> | undefined }} ways
   */
  constructor({ saveFile, settle }) {
    this.settle = settle;
    this.count = 0; // of the texts shown: a link that comes late gives way
    this.name = "";
    /** @type {{ toml: string, scenario: ScenarioValue } | null} */
    this.shown = null;
    /** @type {string | undefined} */
    this.svg = undefined;
    this.at = new AddressField(() => this.again());
    this.address = h("output", { class: "address", tabindex: "0", role: "group", "aria-label": t("assign-link") });
    this.length = h("p", { class: "quiet" });
    this.paper = h("a", { class: "btn btn-plain", href: "#paper" }, t("assign-paper"));
    this.said = h("span", { class: "quiet", role: "status" });
    this.picture = h("div", { class: "qr" });
    this.open = h("a", { class: "btn btn-plain" }, t("assign-as_student"));
    this.savePicture = button(t("assign-qr_save"), () => this.svg && download(`${this.name}-qr.svg`, this.svg, "image/svg+xml"), { pic: "save" });
    this.el = h("section", { class: "out", "aria-labelledby": "out-h" }, h("h2", { id: "out-h" }, t("assign-out")), h("p", { class: "quiet" }, t("assign-out_about")),
      this.at.el,
      h("div", { class: "out-two" }, h("div", {}, this.address, this.length, h("div", { class: "row" }, button(t("assign-copy"), () => this.copy(), { kind: "btn-strong" }), this.open, button(t("assign-save"), saveFile, { pic: "save" }), this.paper, this.said)),
        h("div", { class: "qr-row" }, this.picture, this.savePicture)));
    this.el.addEventListener("focusin", settle);
  }

  /**
   * Shows the link of a scenario's text; none while it cannot be used.
   * @param {string | null} toml @param {ScenarioValue} [scenario]
   */
  async show(toml, scenario) {
    const mine = (this.count += 1);
    for (const one of this.el.querySelectorAll("button")) prop(one, "disabled", !toml);
    this.shown = toml && scenario ? { toml, scenario } : null;
    if (!toml || !scenario) {
      words(this.address, ""); // an older link is not what stands in the form
      words(this.length, "");
      this.open.removeAttribute("href");
      this.picture.replaceChildren();
      prop(this.savePicture, "hidden", true);
      return;
    }
    const link = await linkOf(toml, this.at.look());
    if (mine !== this.count) return;
    this.name = scenario.id ?? "";
    words(this.address, link);
    words(this.length, t("assign-length", { n: num(link.length) }));
    this.open.href = link.slice(link.indexOf("#"));
    const picture = linkPicture(link);
    this.svg = picture?.text;
    prop(this.savePicture, "hidden", !picture);
    this.picture.replaceChildren(picture?.el ?? h("p", { class: "quiet" }, t("assign-qr_long")));
  }

  /** Where the page is for students; empty where that is no address. */
  get base() {
    return this.at.address ?? "";
  }

  /** With another address of the page. */
  again() {
    if (this.shown) this.show(this.shown.toml, this.shown.scenario);
  }

  async copy() {
    await this.settle();
    words(this.said, (await copy(this.address.textContent ?? "", this.address)) ? t("hand-copied") : t("hand-by_hand"));
    say(this.said.textContent ?? "");
  }
}
