// @ts-check
// The form: a scenario as an instructor thinks of it. It holds a scenario value of the core and changes parts of it; what it does
// not show stays as it was.

import { attr, h, newId, prop, refill, style, words } from "../dom.js";
import { kindsOfTask } from "../desk.js";
import { plainName } from "../hand/file.js";
import { icon } from "../icons.js";
import { REGIONS } from "./regions.js";
import { num, t } from "../text.js";
import { button, Choice, opensByArrow, Tick } from "../widgets.js";
import { Own } from "./own.js";
/** @import { FaultBook, Kid, ScenarioEntry } from '../types/page' */
/** @import { FaultSpec, ScenarioValue } from '../types/told' */
/** @import { Option } from '../widgets.js' */

const MOST_FAULTS = 4; // what the core takes
const HASHED = "sha256:"; // what stands before a word's hash in a bench that was handed out

/** @param {ScenarioValue} value @param {string} path */
const get = (value, path) => path.split(".").reduce((/** @type {any} */ at, key) => at?.[key], value);
/** @param {ScenarioValue} value @param {string} path @param {unknown} to */
function set(value, path, to) {
  const keys = path.split("."), last = keys.pop() ?? "";
  /** @type {any} */
  let at = value;
  for (const key of keys) at = at[key] ??= {};
  at[last] = to;
}

/** @type {(value: string, label: string) => [string, string]} */
const pair = (value, label) => [value, label];

export class Form {
  /** @param {{ scenarios: ScenarioEntry[], faults: FaultBook, changed: () => unknown, pickBase: (id: string) => unknown }} ways */
  constructor({ scenarios, faults, changed, pickBase }) {
    this.faults = faults;
    this.changed = changed;
    const tasks = kindsOfTask();
    /** @type {ScenarioValue} */
    this.scenario = {};
    /** @type {(() => unknown)[]} */
    this.fields = []; // how each shows its value
    /** @type {Map<string, string>} */
    this.wrong = new Map(); // fields that hold what cannot be, with the words for it
    this.base = new Choice(t("assign-base"), pickBase);
    this.base.set([["", t("assign-blank")], ...scenarios.flatMap((one) => (one.brief ? [/** @type {Option} */ ([one.id, one.brief.title])] : []))], "");
    this.faultList = h("ol", { class: "assign-faults" });
    this.addFault = new Choice(t("assign-add_fault"), (id) => id && this.add(id));
    opensByArrow(this.addFault.select); // a choice acts at once: a step by arrow would add what one only passes
    this.fillFaults();
    this.drawTick = new Tick(t("assign-pool"), (on) => this.draw(on));
    this.nothingTick = new Tick(t("assign-pool_nothing"), (on) => this.put("pool.with_nothing", on));
    this.own = new Own(changed);
    this.fields.push(() => this.own.show(this.scenario));
    /** @param {string} key @param {...Kid} kids */
    const part = (key, ...kids) => h("fieldset", { class: "part" }, h("legend", {}, t(`assign-part_${key}`)), kids);
    this.el = h("div", { class: "assign-form" },
      part("what", this.base.el, this.text("title_is", "title", 80), this.area("aim", "aim", 2), this.area("brief", "brief", 4), this.choice("task", "task.kind", tasks.map((kind) => pair(kind, t(`assign-task_${kind}`))), tasks[0])),
      part("faults", h("p", { class: "quiet" }, t("assign-faults_about")), this.drawTick.el, this.faultList, this.addFault.el, this.nothingTick.el, this.tick("name_faults", "name_faults")),
      part("subject", h("div", { class: "pair" }, this.number("age", "subject.age_years", 6, 90), this.number("pulse", "subject.rest_rate_bpm", 30, 150), this.number("temperature", "subject.finger_temp_c", 10, 38), this.number("premature", "subject.premature_per_min", 0, 20)),
        h("p", { class: "quiet" }, t("assign-drawn")), this.slider("restless", "subject.restlessness", 0, 3, 0.1, 1)),
      part("help", h("div", { class: "pair" }, this.choice("region", null, REGIONS.map(([hz, volts]) => pair(`${hz}/${volts}`, t("assign-region_of", { hz, volts })))), this.choice("help", "help", ["guided", "alone"].map((key) => pair(key, t(`start-help-${key}`))), "guided"))),
      part("pass", h("div", { class: "pair" }, this.number("window", "pass.window_s", 5, 120), this.number("record", "pass.record_s", 5, 600)),
        this.slider("edge", "pass.edge_s", 0, 0.15, 0.01, 0.06, (v) => t("unit-ms", { v: num(v * 1000, 0) })),
        this.slider("hum", "pass.hum_ratio", 0.02, 1, 0.02, 0.1, (v) => t("assign-percent", { v: num(v * 100, 0) })),
        h("div", { class: "pair" }, this.slider("low", "pass.fill_min", 0.05, 0.6, 0.05, 0.3, (v) => t("assign-percent", { v: num(v * 100, 0) })), this.slider("high", "pass.fill_max", 0.6, 1, 0.05, 0.8, (v) => t("assign-percent", { v: num(v * 100, 0) })))),
      part("own", this.own.el),
      part("class", h("div", { class: "pair" }, this.number("attempts", "assignment.attempts", 1, 99), this.choice("seeds", "assignment.seeds", ["each", "same"].map((key) => pair(key, t(`assign-seeds_${key}`))))), this.text("key", "assignment.key", 60), h("p", { class: "quiet" }, t("assign-key_about")),
        this.word(), h("p", { class: "quiet" }, t("assign-word_about")),
        this.area("opening", "assignment.opening", 2), this.area("closing", "assignment.closing", 2)));
  }

  /**
   * A field: its label, its control, how it shows a value and reads one.
   * @param {string} key @param {HTMLElement} control @param {() => unknown} show @param {Kid} [extra]
   */
  field(key, control, show, extra = null) {
    const id = newId("assign");
    control.id = id;
    this.fields.push(show);
    return h("div", { class: "fld" }, h("label", { for: id }, t(`assign-${key}`)), control, extra);
  }

  /** @param {string} path @param {unknown} value */
  put(path, value) {
    set(this.scenario, path, value);
    this.changed();
  }

  /** @param {string} key @param {string} path @param {number} most */
  text(key, path, most) {
    const input = h("input", { class: "txt", maxlength: most, autocomplete: "off", data: { field: path }, oninput: () => {
      if (path === "title") this.scenario.id = plainName(input.value, 50) || "our-own-bench";
      this.put(path, input.value);
    } });
    return this.field(key, input, () => prop(input, "value", get(this.scenario, path) ?? ""));
  }

  /** The instructor's word. Of a bench that was handed out only its hash is there: it stays until a new word is typed. */
  word() {
    let hash = "";
    /** @type {HTMLInputElement} */
    const input = h("input", { class: "txt", maxlength: 60, autocomplete: "off", data: { field: "assignment.password" }, oninput: () => this.put("assignment.password", input.value || hash) });
    return this.field("word", input, () => {
      const word = get(this.scenario, "assignment.password") ?? "";
      hash = word.startsWith(HASHED) ? word : "";
      prop(input, "value", hash ? "" : word);
      attr(input, "placeholder", hash ? t("assign-word_kept") : null);
    });
  }

  /** @param {string} key @param {string} path @param {number} rows */
  area(key, path, rows) {
    /** @type {HTMLTextAreaElement} */
    const input = h("textarea", { class: "txt", rows, data: { field: path }, oninput: () => this.put(path, input.value) });
    return this.field(key, input, () => prop(input, "value", (get(this.scenario, path) ?? "").trim()));
  }

  /** @param {string} key @param {string} path @param {number} min @param {number} max */
  number(key, path, min, max) {
    /** @type {HTMLInputElement} */
    const input = h("input", { class: "txt", inputmode: "decimal", autocomplete: "off", data: { field: path }, placeholder: path.startsWith("pass") ? null : t("assign-free"), oninput: () => {
      const text = input.value.trim().replace(",", ".");
      const value = Number(text);
      const wrong = text !== "" && !(value >= min && value <= max);
      attr(input, "aria-invalid", wrong ? "true" : null);
      words(problem, wrong ? t("assign-between", { min, max }) : "");
      if (!wrong) {
        this.wrong.delete(path);
        return this.put(path, text === "" ? (path.startsWith("pass") ? 15 : null) : value);
      }
      // What stands in the box is what is passed on, or nothing is.
      this.wrong.set(path, t("assign-wrong", { field: t(`assign-${key}`), found: text.slice(0, 40), min, max }));
      return this.changed();
    } });
    const problem = h("span", { class: "problem", role: "status" });
    return this.field(key, input, () => { prop(input, "value", String(get(this.scenario, path) ?? (path.startsWith("pass") ? 15 : ""))); attr(input, "aria-invalid", null); words(problem, ""); this.wrong.delete(path); }, problem);
  }

  /**
   * @param {string} key @param {string} path @param {number} min @param {number} max @param {number} step
   * @param {number} usual @param {(v: number) => string} [unit]
   */
  slider(key, path, min, max, step, usual, unit = (v) => num(v)) {
    const shown = h("output", { class: "slide-value" });
    const tell = () => words(shown, unit(Number(input.value)));
    const input = h("input", { type: "range", min, max, step, oninput: () => { tell(); this.put(path, Number(input.value)); } });
    const el = this.field(key, input, () => { prop(input, "value", String(get(this.scenario, path) ?? usual)); tell(); }, shown);
    el.classList.add("slide");
    return el;
  }

  /** @param {string} key @param {string | null} path @param {[string, string][]} options @param {string} [usual] */
  choice(key, path, options, usual = options[0][0]) {
    /** @type {HTMLSelectElement} */
    const select = h("select", { onchange: () => {
      if (path === "task.kind") this.ask(select.value);
      if (path) return this.put(path, select.value);
      const [hz, volts] = select.value.split("/").map(Number);
      return this.put("power_line", { hz, volts });
    } });
    return this.field(key, select, () => {
      /** @type {string} */
      const now = path ? (get(this.scenario, path) ?? usual) : `${this.scenario.power_line?.hz ?? 50}/${this.scenario.power_line?.volts ?? 230}`;
      const all = options.some(([value]) => value === now) ? options : [...options, pair(now, now.replace("/", " Hz, ") + (path ? "" : " V"))];
      refill(select, all, () => all.map(([value, label]) => h("option", { value }, label)));
      prop(select, "value", now);
    });
  }

  /** @param {string} key @param {string} path */
  tick(key, path) {
    const tick = new Tick(t(`assign-${key}`), (on) => this.put(path, on));
    this.fields.push(() => tick.set(get(this.scenario, path)));
    return tick.el;
  }

  /**
   * Another kind of question: what the old one laid down does not belong to it, and naming needs names.
   * @param {string} kind
   */
  ask(kind) {
    this.scenario.task = { kind };
    if (kind === "name_fault" && !this.scenario.name_faults) {
      this.scenario.name_faults = true;
      this.showAll();
    }
  }

  // faults

  fillFaults() {
    this.addFault.select.replaceChildren(h("option", { value: "" }, t("assign-choose_fault")), ...this.faults.impressions.map(({ name, faults }) => h("optgroup", { label: name }, faults.map((fault) => h("option", { value: fault.id }, fault.name)))));
  }

  /** The faults of the bench, or those that are drawn from: their strength is the catalogue's then. @returns {FaultSpec[]} */
  listed() {
    return this.scenario.pool ? (this.scenario.pool.faults ?? []).map((name) => ({ name, severity: null })) : (this.scenario.fault ?? []);
  }

  /** @param {FaultSpec[]} list */
  relist(list) {
    if (this.scenario.pool) this.scenario.pool.faults = list.map(({ name }) => name);
    else this.scenario.fault = list;
  }

  /** Whether each student draws one of the faults, or all are there. @param {boolean} on */
  draw(on) {
    const list = this.listed();
    if (on) {
      this.scenario.pool = { faults: [], with_nothing: true };
      this.scenario.fault = [];
      this.scenario.name_faults = true;
      this.relist(list);
    } else {
      delete this.scenario.pool;
      this.relist(list.slice(0, MOST_FAULTS));
    }
    this.showAll();
    this.changed();
  }

  /** @param {string} id */
  add(id) {
    this.addFault.select.value = "";
    const list = this.listed();
    if ((!this.scenario.pool && list.length >= MOST_FAULTS) || list.some((one) => one.name === id)) return;
    this.relist([...list, { name: id, severity: null }]);
    this.scenario.name_faults ||= true;
    this.showAll();
    this.changed();
    this.faultList.lastElementChild?.querySelector("input")?.focus();
  }

  /** @param {number} k */
  take(k) {
    const left = this.listed().filter((_, i) => i !== k);
    this.relist(left);
    if (left.length === 0) this.scenario.name_faults = false;
    this.showAll();
    this.changed();
    this.addFault.select.focus();
  }

  /** @param {FaultSpec} spec @param {number} k */
  faultRow(spec, k) {
    const fault = this.faults.of(spec.name);
    const name = fault?.name ?? spec.name;
    const [low, high] = Array.isArray(spec.severity) ? spec.severity : spec.severity === null || spec.severity === undefined ? fault?.severity ?? [0, 1] : [spec.severity, spec.severity];
    const fixed = fault && fault.severity[0] === fault.severity[1]; // nothing about it can be more or less
    const shown = h("span", { class: "quiet", role: "status" });
    /** @param {string} key @param {number} value */
    const slide = (key, value) => h("input", { type: "range", min: "0", max: "1", step: "0.05", "aria-label": t(`assign-${key}`, { fault: name }), value: String(value) });
    const mild = slide("mildest", low), worst = slide("worst", high);
    const tell = () => words(shown, mild.value === worst.value ? t("assign-severity_one", { v: num(Number(mild.value) * 100, 0) }) : t("assign-severity_two", { low: num(Number(mild.value) * 100, 0), high: num(Number(worst.value) * 100, 0) }));
    /** @param {HTMLInputElement} moved */
    const put = (moved) => () => {
      if (Number(mild.value) > Number(worst.value)) (moved === mild ? worst : mild).value = moved.value;
      const [a, b] = [Number(mild.value), Number(worst.value)];
      spec.severity = a === b ? a : [a, b];
      tell();
      this.changed();
    };
    mild.addEventListener("input", put(mild));
    worst.addEventListener("input", put(worst));
    tell();
    return h("li", { class: "fault-row" }, h("div", { class: "fault-row-head" }, h("b", {}, name),
      h("button", { type: "button", class: "btn btn-round btn-plain", "aria-label": t("assign-take_fault", { fault: name }), onclick: () => this.take(k) }, icon("cross"))),
      h("p", { class: "pencil" }, fault?.seen ?? ""), !fixed && !this.scenario.pool && [h("div", { class: "fault-slides" }, mild, worst), shown]);
  }

  // the whole

  /** @param {ScenarioValue} scenario */
  show(scenario) {
    this.scenario = structuredClone(scenario);
    this.showAll();
  }

  showAll() {
    for (const show of this.fields) show();
    const faults = this.listed(), pool = this.scenario.pool;
    this.drawTick.set(Boolean(pool));
    this.nothingTick.set(pool?.with_nothing ?? true);
    prop(this.nothingTick.el, "hidden", !pool);
    this.faultList.replaceChildren(...faults.map((one, k) => this.faultRow(one, k)));
    prop(this.addFault.select, "disabled", !pool && faults.length >= MOST_FAULTS);
    style(this.faultList, "display", faults.length ? "" : "none");
  }

  /** What is wrong with a field, in words; empty when nothing is. */
  problem() {
    return [...this.wrong.values()][0] ?? "";
  }

  /** The scenario as it stands; a try at nothing is refused by the core. */
  value() {
    const scenario = structuredClone(this.scenario);
    delete scenario.attempt;
    return scenario;
  }
}
