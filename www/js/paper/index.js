// @ts-check
// On paper: the bench that is being set, as sheets to hand out, to fill in, to go through and to teach from.

import { AddressField, linkPicture } from "../assign/address.js";
import { blank, sealed } from "../assign/draft.js";
import { Bench, CoreError } from "../core.js";
import { composed } from "../desk.js";
import { recall } from "../device.js";
import { h, words } from "../dom.js";
import { faultWords } from "../faults/words.js";
import { linkOf } from "../hand/link.js";
import { newSeed } from "../route.js";
import { scenarioWords } from "../scenarios.js";
import { bringTexts, t } from "../text.js";
import { button, Tick } from "../widgets.js";
import { BankPart } from "./bank.js";
import { SHEETS } from "./sheets.js";
/** @import { FaultBook, Screen } from '../types/page' */
/** @import { ScenarioValue } from '../types/told' */

/** @typedef {keyof typeof SHEETS} SheetName */

/**
 * Fills the section; returns what is to be ended when it is left.
 * @param {HTMLElement} root @returns {Promise<Screen>}
 */
export async function showScreen(root) {
  const [book] = await Promise.all([faultWords(), bringTexts("paper"), bringTexts("points"), bringTexts("bank"), scenarioWords()]);
  const paper = new Paper(root, book);
  return {
    end: () => {
      paper.bank.stop();
      root.replaceChildren();
    },
  };
}

class Paper {
  /** @param {HTMLElement} root @param {FaultBook} book */
  constructor(root, book) {
    this.book = book;
    this.count = 0; // of the times that sheets were made: those that come late give way
    this.scenario = draft();
    /** @type {Set<SheetName>} */
    this.chosen = new Set(["handout", "worksheet", "station"]);
    this.problem = h("p", { class: "calm", role: "alert", hidden: true });
    this.sheets = h("div", { class: "paper-sheets" });
    this.at = new AddressField(() => this.make());
    /** @param {SheetName} name @param {string} label */
    const tick = (name, label) => {
      const made = new Tick(label, (on) => {
        if (on) this.chosen.add(name);
        else this.chosen.delete(name);
        this.make();
      });
      made.set(this.chosen.has(name));
      return made.el;
    };
    this.bank = new BankPart({ toml: composed(sealed(this.scenario)), title: this.scenario.title ?? "", id: this.scenario.id ?? "" });
    root.replaceChildren(
      h("div", { class: "wide-lead paper-tools" }, h("h1", { id: "paper-h", tabindex: "-1" }, t("paper-title")), h("p", { class: "lede" }, t("paper-lede", { title: this.scenario.title ?? "" })),
        h("div", { class: "row" }, tick("handout", t("paper-handout")), tick("worksheet", t("paper-worksheet")), tick("station", t("paper-station")), tick("key", t("paper-key"))),
        this.at.el,
        h("div", { class: "row" }, button(t("paper-print"), () => print(), { kind: "btn-strong", pic: "print" }), h("a", { class: "btn btn-plain", href: "#assign" }, t("paper-change")), h("a", { class: "btn btn-plain", href: "#class" }, t("way-assign_class"))),
        this.bank.el),
      this.problem, this.sheets);
    this.make();
  }

  /** Makes the sheets that are chosen, of the bench as it is handed out. */
  async make() {
    const mine = (this.count += 1);
    const address = this.at.look();
    let bench;
    try {
      const toml = composed(sealed(this.scenario));
      bench = Bench.fresh(toml, newSeed());
      bench.act({ do: "help", mode: "alone" });
      const view = bench.view();
      const link = await linkOf(toml, address);
      if (mine !== this.count) return;
      const picture = linkPicture(link)?.el ?? null;
      this.sheets.replaceChildren(...[...this.chosen].sort(byOrder).flatMap((name) => SHEETS[name]({ view, link, picture, faults: this.scenario.fault ?? [], own: this.scenario.misreading ?? [], book: this.book }) ?? []));
      this.complain("");
    } catch (error) {
      if (!(error instanceof CoreError)) throw error;
      this.sheets.replaceChildren();
      this.complain(t("assign-problem", { told: error.message }));
    } finally {
      bench?.free();
    }
  }

  /** @param {string} text */
  complain(text) {
    this.problem.hidden = !text;
    words(this.problem, text);
  }
}

const ORDER = /** @type {SheetName[]} */ (Object.keys(SHEETS));
/** @param {SheetName} one @param {SheetName} other */
const byOrder = (one, other) => ORDER.indexOf(one) - ORDER.indexOf(other);

/** The bench that was set last on this device; a plain one where there is none that can be read. @returns {ScenarioValue} */
function draft() {
  const kept = recall("assign");
  try {
    composed(kept);
    return kept;
  } catch {
    return blank();
  }
}
