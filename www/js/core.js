// @ts-check
// The only file, beside desk.js, that touches the wasm module: loading it, and turning its strings into values and its errors into codes.

import init, { deedTable as tableOfDeeds, faultCatalogue, Lab, learnerState as stateOf, nextBench as chooseBench, scenarioBrief, scenarioDigest, scenarioMinimised, seedFor, skillMap as mapSkills } from "../wasm/dicrotic.js";
import { coded } from "./text.js";
/** @import { Action, Answer } from './types/action' */
/** @import { Args } from './types/names' */
/** @import { About, CatalogueFault, DeedRow, Evidence, Geometry, KeptEvidence, NextBench, OfferedBench, SkillMap, Steps, Summary, WorkedStep } from './types/told' */
/** @import { Brief, View } from './types/view' */

/** An error of the core, as a code with arguments; message is the page's sentence for it. */
export class CoreError extends Error {
  /** @param {string} code @param {Args} args */
  constructor(code, args) {
    super(coded("error", code, args));
    this.code = code;
    this.args = args;
  }
}

/**
 * Runs a call into the core and turns what it throws into a CoreError.
 * @template R @param {() => R} call
 */
export function guarded(call) {
  try {
    return call();
  } catch (thrown) {
    // The core throws a text, {code, args} as JSON; whatever else comes is the engine's, and no word of it decides anything.
    if (typeof thrown !== "string") throw new CoreError("core_stopped", { told: thrown instanceof Error ? thrown.message : String(thrown) });
    const told = JSON.parse(thrown);
    const inner = told.args?.code ? told.args : told; // a recording's error comes wrapped: csv_invalid around csv_cell, …
    throw new CoreError(inner.code ?? "core_stopped", inner.args ?? {});
  }
}

/** Loads the wasm module (streamed). */
export const loadCore = () => init();

/**
 * What a scenario file says about itself.
 * @param {string} toml @returns {Brief}
 */
export const brief = (toml) => JSON.parse(guarded(() => scenarioBrief(toml)));

/**
 * The catalogue of faults: [{id, impression, confused_with, tests}].
 * @returns {CatalogueFault[]}
 */
export const catalogue = () => JSON.parse(faultCatalogue());

/**
 * The table of actions.
 * @returns {DeedRow[]}
 */
export const deedTable = () => JSON.parse(tableOfDeeds());

/**
 * The skill map of a history of attempts (records of Bench.evidence, each with at_ms), as it stands at a time in ms.
 * @param {KeptEvidence[]} history @param {number} now @returns {SkillMap}
 */
export const skillMap = (history, now) => JSON.parse(guarded(() => mapSkills(JSON.stringify(history), now)));

/**
 * What such a history comes to, as it stands in the notebook's file; the history says it again.
 * @param {KeptEvidence[]} history @returns {Record<string, unknown>}
 */
export const learnerState = (history) => JSON.parse(guarded(() => stateOf(JSON.stringify(history))));

/**
 * The bench that tells and teaches most after such a history, or null where nothing is wanting.
 * @param {KeptEvidence[]} history @param {OfferedBench[]} benches @param {number} now @returns {NextBench | null}
 */
export const nextBench = (history, benches, now) => JSON.parse(guarded(() => chooseBench(JSON.stringify(history), JSON.stringify(benches), now)));

// handing out, handing in

/**
 * Which bench a scenario's text is: hexadecimal digits that words and what must be reached do not change.
 * @param {string} toml
 */
export const digestOf = (toml) => scenarioDigest(toml);
/**
 * A scenario file without its comments.
 * @param {string} toml
 */
export const minimised = (toml) => scenarioMinimised(toml);
/**
 * The seed of a student's try at an assignment.
 * @param {string} key @param {string} student @param {number} tries
 */
export const seedOf = (key, student, tries) => seedFor(key, student, tries);
/** A lab of the core behind plain values. */
export class Bench {
  #lab;
  /** @type {string | undefined} */
  #theme;
  /** @type {[number, number, number] | undefined} */
  #size;
  /** @type {Float64Array | undefined} */
  #plot;
  /** @type {Geometry} */
  #geometry = { left: 0, top: 0, width: 0, height: 0, t0: 0, t1: 0, v0: 0, v1: 0 };
  /** @param {Lab} lab */
  constructor(lab) {
    this.#lab = lab;
  }
  /** @param {string} toml @param {string} seed */
  static fresh(toml, seed) {
    return new Bench(guarded(() => new Lab(toml, seed)));
  }
  /** @param {string} code @param {string} toml */
  static fromCode(code, toml) {
    return new Bench(guarded(() => Lab.fromCode(code, toml)));
  }
  /** When an attempt taken up from a code began, ms since 1970; undefined where that is not known. */
  get begun() {
    return this.#lab.begunSeconds() * 1000 || undefined;
  }
  /**
   * The attempt as one line of text, and as a result file. about: {student, try, begun_s, ended_s}.
   * @param {About} about
   */
  code(about) {
    return guarded(() => this.#lab.code(JSON.stringify(about)));
  }
  /** @param {About} about */
  result(about) {
    return guarded(() => this.#lab.result(JSON.stringify(about)));
  }
  /** @param {string} saved */
  static restored(saved) {
    return new Bench(guarded(() => Lab.restore(saved)));
  }
  /**
   * The worked example of a scenario; throws no_worked_example.
   * @param {string} toml
   */
  static worked(toml) {
    return new Bench(guarded(() => Lab.worked(toml)));
  }
  /**
   * Does the next step of a worked example and tells it: {action, wait_s, remaining, code, args}; null at the end.
   * @returns {WorkedStep | null}
   */
  workedNext() {
    return JSON.parse(guarded(() => this.#lab.workedNext()));
  }
  get isWorked() {
    return this.#lab.isWorked();
  }
  /**
   * The nearest peak that the detector finds in the shown recording, s, or undefined.
   * @param {number} time
   */
  snap(time) {
    return this.#lab.snap(time);
  }
  /**
   * What this attempt shows of each skill, or null before the first check.
   * @returns {Evidence | null}
   */
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
  /** @param {number} dt */
  advance(dt) {
    this.#lab.advance(dt);
  }
  /** @param {Action} action @returns {Answer} */
  act(action) {
    return JSON.parse(guarded(() => this.#lab.act(JSON.stringify(action))));
  }
  /**
   * The view; the two handles of the sensor's cable are told among the parts, since they are moved like parts.
   * @returns {View}
   */
  view() {
    /** @type {View} */
    const view = JSON.parse(guarded(() => this.#lab.view()));
    const { bench } = view;
    bench?.cable.handles.forEach(([x, y], i) => bench.parts.push({ id: i === 0 ? "cable1" : "cable2", x, y, w: 0, d: 0, movable: true }));
    return view;
  }
  /** Length of the recording that is being made, s. */
  get recordedSeconds() {
    return this.#lab.recordedSeconds();
  }
  /** @param {object} theme */
  setTheme(theme) {
    this.#theme = JSON.stringify(theme);
    this.#lab.setTheme(this.#theme);
  }
  /** @param {number} width @param {number} height @param {number} dpr */
  setSize(width, height, dpr) {
    this.#size = [width, height, dpr];
    this.#lab.setSize(width, height, dpr);
  }
  /** @param {HTMLCanvasElement} canvas */
  drawBase(canvas) {
    guarded(() => this.#lab.drawBase(canvas));
  }
  /**
   * Draws the chart of an experiment's table; false where there is nothing to draw yet.
   * @param {HTMLCanvasElement} canvas @param {string} measure @param {{ unit: string, conditions: string[] }} words @param {number} dpr
   */
  drawTable(canvas, measure, words, dpr) {
    return guarded(() => this.#lab.drawTable(canvas, measure, JSON.stringify(words), dpr));
  }
  /** @param {CanvasRenderingContext2D} context */
  drawTrace(context) {
    return guarded(() => this.#lab.drawTrace(context));
  }
  /**
   * The plot's place in the canvas, CSS px, and the times (s) and values (V) that it shows; the same object until one changes.
   * @returns {Geometry}
   */
  geometry() {
    const now = this.#lab.geometry();
    const before = this.#plot;
    if (!before || now.some((value, k) => value !== before[k])) {
      this.#plot = now;
      const [left, top, width, height, t0, t1, v0, v1] = now;
      this.#geometry = { left, top, width, height, t0, t1, v0, v1 };
    }
    return this.#geometry;
  }
  /** Where the stylus stands on the trace, [x, y] in CSS px, or undefined when nothing is being drawn. */
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
  /** Looks where the work stands; how often that has changed. */
  get stepsSeen() {
    return this.#lab.stepsSeen();
  }
  /** Where it stood when it was last looked at. @returns {Steps} */
  steps() {
    return JSON.parse(guarded(() => this.#lab.steps()));
  }
  /** @returns {Summary} */
  summary() {
    return JSON.parse(guarded(() => this.#lab.summary()));
  }
  save() {
    return guarded(() => this.#lab.save());
  }
  /** Name of the channel that an opened recording was read from. */
  get channel() {
    return this.#lab.channel();
  }
  /** Names of the channels of an opened recording. */
  get channels() {
    return this.#lab.channels();
  }
  /**
   * A recording as a table of text.
   * @param {number} recording
   */
  recordingCsv(recording) {
    return guarded(() => this.#lab.recordingCsv(recording));
  }
  /** What use() makes of this attempt in another module of the core: there it is done again, which gives the same samples, and
   * drawn as here. An attempt that is of that module already is used itself. */
  /**
   * @template {{ free(): void, setTheme(theme: string): void, setSize(width: number, height: number, dpr: number): void }} L
   * @template R @param {{ new (...given: any[]): L, restore(saved: string): L }} Other @param {(lab: L) => R} use
   * @returns {R}
   */
  lent(Other, use) {
    const lab = this.#lab;
    if (lab instanceof Other) return guarded(() => use(lab));
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
    this.#lab.free();
  }
}
