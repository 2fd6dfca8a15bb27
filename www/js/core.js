// The only file, beside desk.js, that touches the wasm module: loading it, and turning its strings into values and its errors into codes.

import init, { deedTable as tableOfDeeds, faultCatalogue, Lab, scenarioBrief, scenarioDigest, scenarioMinimised, seedFor, skillMap as mapSkills } from "../wasm/dicrotic.js";
import { coded } from "./text.js";

/** An error of the core, as a code with arguments; message is the page's sentence for it. */
export class CoreError extends Error {
  constructor(code, args) {
    super(coded("error", code, args));
    this.code = code;
    this.args = args;
  }
}

/** Runs a call into the core and turns what it throws into a CoreError. */
export function guarded(call) {
  try {
    return call();
  } catch (thrown) {
    // The core throws a text, {code, args} as JSON; whatever else comes is the engine's, and no word of it decides anything.
    if (typeof thrown !== "string") throw new CoreError("core_stopped", { told: String(thrown?.message ?? thrown) });
    const told = JSON.parse(thrown);
    const inner = told.args?.code ? told.args : told; // a recording's error comes wrapped: csv_invalid around csv_cell, …
    throw new CoreError(inner.code ?? "core_stopped", inner.args ?? {});
  }
}

/** Loads the wasm module (streamed). */
export const loadCore = () => init();

/** What a scenario file says about itself. */
export const brief = (toml) => JSON.parse(guarded(() => scenarioBrief(toml)));

/** The catalogue of faults: [{id, impression, confused_with, tests}]. */
export const catalogue = () => JSON.parse(faultCatalogue());

/** The table of actions: [{do, nature, lane, pane, looks}]. */
export const deedTable = () => JSON.parse(tableOfDeeds());

/** The skill map of a history of attempts (records of Bench.evidence, each with at_ms), as it stands at a time in ms. */
export const skillMap = (history, now) => JSON.parse(guarded(() => mapSkills(JSON.stringify(history), now)));

// handing out, handing in

/** Which scenario a text is: hexadecimal digits that comments do not change. */
export const digestOf = (toml) => scenarioDigest(toml);
/** A scenario file without its comments. */
export const minimised = (toml) => scenarioMinimised(toml);
/** The seed of a student's try at an assignment. */
export const seedOf = (key, student, tries) => seedFor(key, student, tries);
/** A lab of the core behind plain values. */
export class Bench {
  #lab;
  #theme;
  #size;
  #plot;
  #geometry;
  constructor(lab) {
    this.#lab = lab;
  }
  static fresh(toml, seed) {
    return new Bench(guarded(() => new Lab(toml, seed)));
  }
  static fromCode(code, toml) {
    return new Bench(guarded(() => Lab.fromCode(code, toml)));
  }
  /** The attempt as one line of text, and as a result file. about: {student, try, begun_s, ended_s}. */
  code(about) {
    return guarded(() => this.#lab.code(JSON.stringify(about)));
  }
  result(about) {
    return guarded(() => this.#lab.result(JSON.stringify(about)));
  }
  static restored(saved) {
    return new Bench(guarded(() => Lab.restore(saved)));
  }
  /** The worked example of a scenario; throws no_worked_example. */
  static worked(toml) {
    return new Bench(guarded(() => Lab.worked(toml)));
  }
  /** Does the next step of a worked example and tells it: {action, wait_s, remaining, code, args}; null at the end. */
  workedNext() {
    return JSON.parse(guarded(() => this.#lab.workedNext()));
  }
  get isWorked() {
    return this.#lab.isWorked();
  }
  /** The nearest peak that the detector finds in the shown take, s, or undefined. */
  snap(time) {
    return this.#lab.snap(time);
  }
  /** What this attempt shows of each skill, or null before the first check. */
  evidence() {
    return JSON.parse(guarded(() => this.#lab.evidence()));
  }
  /** The debrief's fingerprint: the same wherever the saved attempt is replayed. */
  debriefHash() {
    return this.#lab.debriefHash();
  }
  get kind() {
    return this.#lab.kind();
  }
  get revision() {
    return this.#lab.revision();
  }
  get clock() {
    return this.#lab.clock();
  }
  advance(dt) {
    this.#lab.advance(dt);
  }
  act(action) {
    return JSON.parse(guarded(() => this.#lab.act(JSON.stringify(action))));
  }
  /** The view; the two handles of the pad's lead are told among the parts, since they are moved like parts. */
  view() {
    const view = JSON.parse(guarded(() => this.#lab.view()));
    if (view.bench) view.bench.lead.handles.forEach(([x, y], i) => view.bench.parts.push({ id: `lead${i + 1}`, x, y, w: 0, d: 0, movable: true }));
    return view;
  }
  /** Length of the recording that is being made, s. */
  get recordedSeconds() {
    return this.#lab.recordedSeconds();
  }
  setTheme(theme) {
    this.#theme = JSON.stringify(theme);
    this.#lab.setTheme(this.#theme);
  }
  setSize(width, height, dpr) {
    this.#size = [width, height, dpr];
    this.#lab.setSize(width, height, dpr);
  }
  drawBase(canvas) {
    guarded(() => this.#lab.drawBase(canvas));
  }
  drawTrace(context) {
    return guarded(() => this.#lab.drawTrace(context));
  }
  /** The plot's place in the canvas, CSS px, and the times (s) and values (V) that it shows; the same object until one changes. */
  geometry() {
    const now = this.#lab.geometry();
    if (!this.#plot || now.some((value, k) => value !== this.#plot[k])) {
      this.#plot = now;
      const [left, top, width, height, t0, t1, v0, v1] = now;
      this.#geometry = { left, top, width, height, t0, t1, v0, v1 };
    }
    return this.#geometry;
  }
  /** Where the stylus stands on the strip, [x, y] in CSS px, or undefined when nothing is being drawn. */
  stylus() {
    return this.#lab.stylus();
  }
  /** What came since the last call for the ear: {hum, clicks: [how long ago in s, height 0..1, …], rate in Hz}. */
  hear() {
    const hum = this.#lab.hear();
    return { hum, clicks: this.#lab.clicks(), rate: this.#lab.soundRate() };
  }
  deafen() {
    this.#lab.deafen();
  }
  summary() {
    return JSON.parse(guarded(() => this.#lab.summary()));
  }
  save() {
    return guarded(() => this.#lab.save());
  }
  /** Names of the channels of an opened recording. */
  get channels() {
    return this.#lab.channels();
  }
  /** A take as a table of text. */
  takeCsv(take) {
    return guarded(() => this.#lab.takeCsv(take));
  }
  /** What use() makes of this attempt in another module of the core: there it is done again, which gives the same samples, and
   * drawn as here. An attempt that is of that module already is used itself. */
  lent(Other, use) {
    if (this.#lab instanceof Other) return guarded(() => use(this.#lab));
    const twin = guarded(() => Other.restore(this.#lab.save()));
    try {
      if (this.#theme) twin.setTheme(this.#theme);
      if (this.#size) twin.setSize(...this.#size);
      return guarded(() => use(twin));
    } finally {
      twin.free();
    }
  }
  free() {
    this.#lab.free?.();
  }
}
