// @ts-check
// One's own pulse: by touch, by a silent count, by the camera. Nothing of it is stored or sent; what was measured stands in a list
// until the page is left, and opens as a recording like any other.

import { h, prop } from "../dom.js";
import { bringTexts, t } from "../text.js";
import { button, Segments } from "../widgets.js";
import { Attempts } from "./attempts.js";
import { CameraWay } from "./camera.js";
import { CountWay } from "./count.js";
import { TouchWay } from "./touch.js";
/** @import { Ways } from '../types/page' */

/** @typedef {"touch" | "count" | "camera"} Way */

/** @type {Way} */
let chosen = "touch"; // the way that was taken last

/**
 * Fills the section; end(): it is left.
 * @param {HTMLElement} root @param {Ways} ways
 */
export async function showOwn(root, { goBack, inLab }) {
  const core = import("../desk.js"); // on its way while one reads
  core.catch(() => {}); // told by whoever waits for it
  await bringTexts("own");
  return new OwnScreen(root, core, button(t(inLab ? "side-back" : "side-back_start"), goBack));
}

class OwnScreen {
  /** @param {HTMLElement} root @param {Promise<typeof import('../desk.js')>} core @param {HTMLElement} back */
  constructor(root, core, back) {
    const attempts = new Attempts(core);
    /** @param {import('./attempts.js').Measured} one */
    const measured = (one) => attempts.add(one);
    this.ways = { touch: new TouchWay(core, measured), count: new CountWay(core, measured), camera: new CameraWay(core, measured) };
    this.segs = new Segments(t("own-ways"), (key) => this.turn(/** @type {Way} */ (key)));
    root.replaceChildren(
      h("div", { class: "side-lead" }, h("h1", { id: "own-h", tabindex: "-1" }, t("own-title")), h("p", { class: "lede" }, t("own-lede")), h("p", { class: "own-care" }, t("own-care")), h("div", { class: "row" }, back)),
      h("div", { class: "own-chosen" }, this.segs.el),
      ...Object.values(this.ways).map(({ el }) => el), attempts.el);
    this.turn(chosen);
  }

  /** @param {Way} way */
  turn(way) {
    if (way !== chosen) this.ways[chosen].leave();
    chosen = way;
    this.segs.set(/** @type {const} */ (["touch", "count", "camera"]).map((one) => /** @type {const} */ ([one, t(`own-way_${one}`)])), way);
    for (const [one, { el }] of Object.entries(this.ways)) prop(el, "hidden", one !== way);
  }

  end() {
    for (const way of Object.values(this.ways)) way.end();
  }
}
