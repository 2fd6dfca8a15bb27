// @ts-check
// A question bank, on the screen of what goes on paper: which traces, how many questions, in which form; the first of them as it will
// be, and the file.

import { mostQuestions } from "../desk.js";
import { attr, h, newId, prop, say, words } from "../dom.js";
import { download } from "../download.js";
import { plainName } from "../hand/file.js";
import { newSeed } from "../route.js";
import { allScenarios } from "../scenarios.js";
import { has, num, t } from "../text.js";
import { button, Choice } from "../widgets.js";
import { BankMaker, Stopped } from "./bankmaker.js";
/** @import { BankTold, BankWords } from '../types/told' */

const DRAFT = ""; // of the choice of traces: the bench that was set last
const FIRST_COUNT = 20;
const LARGEST_SEED = 2n ** 64n - 1n;

/** A field with a line for what is amiss with what stands there. */
class Asked {
  /** @param {string} label @param {string} value @param {() => unknown} changed @param {{ inputmode?: string, about?: string }} [more] */
  constructor(label, value, changed, { inputmode = "numeric", about } = {}) {
    const id = newId("bank"), told = newId("bank");
    /** @type {HTMLInputElement} */
    this.input = h("input", { id, class: "txt", type: "text", inputmode, autocomplete: "off", value, oninput: changed, "aria-describedby": told });
    this.about = about ?? "";
    this.told = h("p", { id: told, class: "problem", role: "status" });
    this.hint = h("p", { class: "quiet" }, this.about);
    this.el = h("div", { class: "fld" }, h("label", { for: id }, label), this.input, about && this.hint, this.told);
  }

  /** What stands there as a whole number; null, with the reason beside it, where it is none from least to most. @param {bigint} least @param {bigint} most @param {string} why */
  whole(least, most, why) {
    const text = this.input.value.trim();
    const value = /^\d{1,20}$/.test(text) ? BigInt(text) : null;
    const good = value !== null && value >= least && value <= most;
    words(this.told, good ? "" : why);
    attr(this.input, "aria-invalid", good ? null : "true");
    return good ? value : null;
  }
}

export class BankPart {
  /** @param {{ toml: string, title: string, id: string }} draft the bench that was set last */
  constructor(draft) {
    this.draft = draft;
    this.from = DRAFT;
    this.form = "qti";
    this.tries = 0; // of the previews: one that comes late gives way
    /** @type {BankMaker | null} */
    this.viewer = null; // makes the first question
    /** @type {BankMaker | null} */
    this.maker = null; // makes the bank
    this.most = mostQuestions();

    this.source = new Choice(t("bank-from"), (value) => {
      this.from = value;
      this.preview();
    });
    this.source.set([[DRAFT, draft.title], ...allScenarios().map(({ id, title }) => /** @type {[string, string]} */ ([id, titleOf(id) ?? title]))], DRAFT);
    this.count = new Asked(t("bank-count"), String(FIRST_COUNT), () => this.look());
    this.seed = new Asked(t("bank-seed"), newSeed(), () => this.preview(), { about: t("bank-seed_about") });
    this.kind = new Choice(t("bank-form"), (value) => (this.form = value));
    this.kind.set([["qti", t("bank-form_qti")], ["csv", t("bank-form_csv")]], this.form);
    this.save = button(t("bank-save"), () => this.make(), { kind: "btn-strong", pic: "save" });
    this.end = button(t("bank-stop"), () => this.maker?.stop(), { hidden: true });
    this.bar = h("progress", { hidden: true, "aria-label": t("bank-title") });
    this.said = h("span", { class: "quiet", role: "status" });
    this.shown = h("div", { class: "bank-first", "aria-live": "off" });
    /** @type {HTMLDetailsElement} */
    this.el = h("details", { class: "bank", ontoggle: () => void (this.viewer ?? this.preview()) }, h("summary", {}, h("h2", {}, t("bank-title"))),
      h("div", { class: "bank-body" }, h("p", { class: "quiet" }, t("bank-about")),
        h("div", { class: "bank-fields" }, this.source.el, this.count.el, this.seed.el, this.kind.el),
        h("div", { class: "row" }, this.save, this.end, this.bar, this.said),
        h("section", { class: "bank-preview", "aria-label": t("bank-preview") }, h("h3", {}, t("bank-preview")), this.shown)));
  }

  /** What stands in the fields; null where one of them cannot be used. @returns {{ count: number, seed: string } | null} */
  look() {
    const count = this.count.whole(1n, BigInt(this.most), t("bank-count_bad", { most: this.most }));
    const seed = this.seed.whole(0n, LARGEST_SEED, t("bank-seed_bad"));
    return count === null || seed === null ? null : { count: Number(count), seed: String(seed) };
  }

  /** The scenario whose traces are asked for. */
  async bench() {
    const { from, draft } = this;
    const entry = allScenarios().find(({ id }) => id === from);
    return entry ? { toml: await entry.load(), title: titleOf(entry.id), id: entry.id } : draft;
  }

  /** Shows the first question of the bank as it is asked for now. */
  async preview() {
    if (!this.el.open) return;
    const mine = (this.tries += 1);
    this.look();
    const seed = this.seed.whole(0n, LARGEST_SEED, t("bank-seed_bad"));
    if (seed === null) return this.shown.replaceChildren();
    if (!this.shown.firstChild) this.shown.replaceChildren(h("p", { class: "quiet" }, t("bank-preview_making")));
    const viewer = (this.viewer ??= new BankMaker());
    try {
      const of = await this.bench();
      await viewer.begin("csv");
      if (mine !== this.tries) return;
      const { told, words: said } = await viewer.question(of, String(seed), 1);
      const drawn = await viewer.picture(said.title);
      if (mine !== this.tries) return;
      this.shown.replaceChildren(...questionShown(told, said, drawn));
      this.shown.dataset.of = `${told.scenario} ${seed}`;
    } catch (error) {
      if (error instanceof Stopped || mine !== this.tries) return;
      this.shown.replaceChildren(h("p", { class: "problem" }, messageOf(error)));
    }
  }

  /** Makes the bank and hands it to the browser. */
  async make() {
    const asked = this.look();
    if (!asked || this.maker) return;
    const { count, seed } = asked, { form } = this;
    const maker = (this.maker = new BankMaker());
    this.busy(true, count);
    try {
      const of = await this.bench();
      const bytes = await maker.bank(of, { form, seed, count }, (done) => {
        prop(this.bar, "value", done);
        words(this.said, done < count ? t("bank-working", { done: num(done), all: num(count) }) : t("bank-packing"));
      });
      download(`${plainName(of.id) || "bench"}-questions-${form}.zip`, /** @type {BlobPart} */ (bytes), "application/zip");
      this.tell(t("bank-done", { all: count }));
    } catch (error) {
      this.tell(error instanceof Stopped ? t("bank-stopped") : messageOf(error));
    } finally {
      maker.stop();
      this.maker = null;
      this.busy(false, count);
    }
  }

  /** @param {boolean} on @param {number} count */
  busy(on, count) {
    prop(this.save, "disabled", on);
    prop(this.end, "hidden", !on);
    prop(this.bar, "hidden", !on);
    prop(this.bar, "max", count);
    prop(this.bar, "value", 0);
  }

  /** @param {string} text */
  tell(text) {
    words(this.said, text);
    say(text);
  }

  /** Lets go of what works off the main thread. */
  stop() {
    this.tries += 1;
    this.viewer?.stop();
    this.maker?.stop();
    this.viewer = null;
  }
}

/** A scenario's title in the page's language, where its words are there. @param {string} id */
const titleOf = (id) => (has(`scenario-${id}.title`) ? t(`scenario-${id}.title`) : undefined);

/** @param {unknown} error */
const messageOf = (error) => (error instanceof Error ? error.message : String(error));

/**
 * A question as a student will meet it, with what is said to each answer.
 * @param {BankTold} told @param {BankWords} said @param {string} drawn
 */
function questionShown(told, said, drawn) {
  const picture = document.importNode(new DOMParser().parseFromString(drawn, "image/svg+xml").documentElement, true);
  attr(picture, "aria-label", said.alt);
  return [
    h("p", { class: "bank-item" }, said.title),
    h("div", { class: "bank-picture", tabindex: "0", role: "group", "aria-label": said.title }, picture),
    h("p", {}, said.question),
    h("ol", {}, told.answers.map(({ misreading }, k) => h("li", { class: misreading ? "" : "bank-right" }, h("span", { class: "bank-answer" }, said.answers[k]), !misreading && h("strong", {}, t("bank-preview_right")), h("span", { class: "quiet" }, t("bank-preview_feedback", { told: said.feedback[k] }))))),
  ];
}
