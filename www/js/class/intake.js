// Taking in result files and codes: each is replayed by the core in slices, so that the page goes on living.

import { CoreError, digestOf } from "../core.js";
import { Replayed } from "../desk.js";
import { h, newId, prop, style, words } from "../dom.js";
import { chooseFiles } from "../hand/file.js";
import { unpackText } from "../hand/link.js";
import { t } from "../text.js";
import { button } from "../widgets.js";

const SLICE_SAMPLES = 65536; // some ten milliseconds
const SLICE_MS = 24; // how long the page may stand still
const MOST_FILE = 4 << 20;
const CODE = /D1\.[\w-]+/g;

export class Intake {
  /** state: what is filled: {book, results: [{file, again(): a bench}]}; took(): something came in. */
  constructor({ scenarios, state, took }) {
    Object.assign(this, { scenarios, state, took, queue: [], done: 0, known: {}, wrong: [] });
    const id = newId("codes");
    this.codes = h("textarea", { id, class: "txt code", rows: "3", spellcheck: "false", autocomplete: "off" });
    this.bar = h("span", { class: "fair-bar" });
    this.progress = h("div", { class: "fair-track intake-bar", hidden: true, "aria-hidden": "true" }, this.bar);
    this.status = h("p", { class: "quiet", role: "status" });
    this.list = h("ul", { class: "intake-wrong" });
    this.drop = h("div", { class: "drop", ondragover: (event) => { event.preventDefault(); this.drop.classList.add("is-over"); }, ondragleave: () => this.drop.classList.remove("is-over"), ondrop: (event) => this.dropped(event) },
      h("p", { class: "pencil" }, t("class-drop")), h("div", { class: "row" },
        button(t("class-choose"), () => chooseFiles(".json,.txt,.toml", (files) => this.files(files), true), { kind: "btn-strong", pic: "open" })));
    this.el = h("section", { class: "intake", "aria-label": t("class-intake") }, this.drop,
      h("div", { class: "fld" }, h("label", { for: id }, t("class-codes")), this.codes, h("div", { class: "row" }, button(t("class-take_codes"), () => this.paste()))),
      this.progress, this.status, this.list);
  }

  reset() {
    Object.assign(this, { queue: [], done: 0, wrong: [] });
    this.list.replaceChildren();
    words(this.status, "");
  }

  end() {
    this.ended = true;
  }

  dropped(event) {
    event.preventDefault();
    this.drop.classList.remove("is-over");
    this.files([...event.dataTransfer.files]);
  }

  /** Result files, lists of codes, and scenario files that codes may belong to. */
  async files(files) {
    const later = [];
    for (const file of files) {
      if (file.size > MOST_FILE) this.complain(file.name, t("class-too_large"));
      else if (file.name.endsWith(".toml")) this.know(await file.text());
      else if (file.name.endsWith(".txt")) later.push(file);
      else this.queue.push({ file: file.name, text: () => file.text() });
    }
    for (const file of later) this.takeCodes(await file.text(), file.name);
    this.work();
  }

  async paste() {
    const text = this.codes.value;
    for (const [, packed] of text.matchAll(/#a=([\w-]+)/g)) await unpackText(packed).then((toml) => this.know(toml)).catch(() => this.complain(t("class-a_link"), t("hand-link_damaged")));
    if (this.takeCodes(text, t("class-pasted")) > 0 || /#a=/.test(text)) this.codes.value = "";
    else this.complain(t("class-pasted"), t("class-no_code"));
    this.work();
  }

  /** Codes in a text, one a line or wrapped by a mail program; how many. */
  takeCodes(text, from) {
    const starts = [...text.matchAll(CODE)];
    starts.forEach((found, k) => {
      const whole = text.slice(found.index, starts[k + 1]?.index).replace(/\s+/g, "");
      this.queue.push({ file: t("class-code_of", { from, n: k + 1 }), code: found[0], wrapped: whole });
    });
    if (starts.length === 0 && from !== t("class-pasted")) this.complain(from, t("class-no_code"));
    return starts.length;
  }

  know(toml) {
    this.known[digestOf(toml).slice(0, 16)] = toml;
  }

  /** The scenarios of this page, once they are needed. */
  knowOwn() {
    if (this.knewOwn) return;
    this.knewOwn = true;
    for (const { toml } of this.scenarios) if (toml) this.know(toml);
  }

  complain(file, told) {
    this.list.append(h("li", {}, h("b", {}, file), " ", told));
    this.wrong.push(file);
  }

  async work() {
    if (this.working) return;
    this.working = true;
    this.total = this.done + this.queue.length;
    let breath = performance.now();
    let unseen = 0;
    while (this.queue.length > 0 && !this.ended) {
      const one = this.queue.shift();
      try {
        const text = one.text ? await one.text() : null;
        if (one.code) this.knowOwn();
        const replayed = this.begin(one, text);
        while (!replayed.step(SLICE_SAMPLES)) {
          if (performance.now() - breath > SLICE_MS) {
            await new Promise((next) => setTimeout(next));
            breath = performance.now();
          }
        }
        this.state.book.add(one.file, replayed);
        const toml = replayed.scenario;
        this.know(toml);
        replayed.free();
        const source = text ?? one.used;
        this.state.results.push({ file: one.file, again: () => {
          const again = new Replayed(source, { [digestOf(toml).slice(0, 16)]: toml });
          while (!again.step(1e9));
          return again.intoBench();
        } });
      } catch (error) {
        if (!(error instanceof CoreError)) throw error;
        this.complain(one.file, error.message);
      }
      this.done += 1;
      unseen += 1;
      if (performance.now() - breath > SLICE_MS) {
        this.tell();
        await new Promise((next) => setTimeout(next));
        breath = performance.now();
      }
      if (unseen >= 200) { this.took(); unseen = 0; }
    }
    this.working = false;
    this.tell();
    if (!this.ended) this.took();
  }

  /** Begins a replay; a code that is damaged as it stands may be whole across the line ends that a mail program put in. */
  begin(one, text) {
    if (text !== null) return new Replayed(text);
    one.used = one.code;
    try {
      return new Replayed(one.code, this.known);
    } catch (error) {
      if (one.wrapped === one.code) throw error;
      try {
        const replayed = new Replayed(one.wrapped, this.known);
        one.used = one.wrapped;
        return replayed;
      } catch (second) {
        throw second.code === "code" ? error : second; // whole when joined, and yet of no use: that says more
      }
    }
  }

  tell() {
    const total = this.done + this.queue.length;
    const busy = this.queue.length > 0;
    prop(this.progress, "hidden", !busy);
    style(this.bar, "width", `${((100 * this.done) / Math.max(1, total)).toFixed(1)}%`);
    words(this.status, busy ? t("class-busy", { n: this.done, of: total }) : t("class-came", { n: this.state.results.length, wrong: this.wrong.length }));
    this.el.dataset.busy = busy ? "1" : "";
  }
}
