// @ts-check
// What few visits need, in a core of its own that has this beside all the rest: opening and writing files, composing and handing
// out, grading a class. Whoever imports this file waits until that core is there.

import init, { Book, composeScenario, fairness, hashedWord, Lab, Package, qrSvg, Regrade, scenarioJson, SetList } from "../wasm/dicrotic_desk.js";
import { Bench, guarded } from "./core.js";
/** @import { ClassSummary, Fairness, ScenarioValue } from './types/told' */

await init();

/**
 * A recording from its files, [[name, bytes]…], with what they do not tell: rate in Hz, name of a channel.
 * @param {[string, Uint8Array][]} named @param {{ rate?: number, channel?: string }} [more]
 */
export const opened = (named, { rate, channel } = {}) => new Bench(guarded(() => Lab.fromFiles(named.map(([name]) => name), named.map(([, bytes]) => bytes), rate, channel)));
/**
 * A take as a file's bytes: "edf", or "wfdb" (an archive).
 * @param {Bench} bench @param {number} take @param {string} format @param {string} name
 */
export const takeFile = (bench, take, format, name) => bench.lent(Lab, (lab) => lab.exportTake(take, format, name));
/**
 * What the strip shows of a take, as SVG.
 * @param {Bench} bench @param {string} title
 */
export const stripSvg = (bench, title) => bench.lent(Lab, (lab) => lab.stripSvg(title));

/**
 * A scenario file as a value, for editing; and back, as the text of a file.
 * @param {string} toml @returns {ScenarioValue}
 */
export const scenarioValue = (toml) => JSON.parse(guarded(() => scenarioJson(toml)));
/** @param {ScenarioValue} scenario */
export const composed = (scenario) => guarded(() => composeScenario(JSON.stringify(scenario)));
/**
 * How many of so many right students each way of grading fails: {students, without, own_window, exact_count, record_mean, tolerances}.
 * @param {string} toml @param {number} first @param {number} students @param {number} [window] @returns {Fairness}
 */
export const fairnessOf = (toml, first, students, window = 0) => JSON.parse(guarded(() => fairness(toml, first, students, window)));
/**
 * A link as the text of an SVG picture, or undefined when it is too long for one.
 * @param {string} link
 */
export const pictureOf = (link) => qrSvg(link);
/**
 * The instructor's word as it travels.
 * @param {string} key @param {string} word
 */
export const wordHash = (key, word) => hashedWord(key, word);
/**
 * An assignment and the page's files, [[name, bytes]…], as the files of a package for a course site ("scorm12", "scorm2004").
 * @param {[string, Uint8Array][]} named @param {string} toml @param {string} standard
 */
export const packageOf = (named, toml, standard) => guarded(() => new Package(named.map(([name]) => name), named.map(([, bytes]) => bytes), toml, standard));
/** What was set, to compare results with. */
export class WhatWasSet {
  #list = new SetList();
  /**
   * Takes one more scenario as set; from: where its text came from.
   * @param {string} from @param {string} toml
   */
  add(from, toml) {
    guarded(() => this.#list.add(from, toml));
  }
  /** @template R @param {(list: SetList) => R} use */
  lent(use) {
    return use(this.#list);
  }
}
/** What a class handed in, graded: add(file, replayed), summary(need), csv(). */
export class ClassBook {
  #book = new Book();
  /** @param {string} file @param {Replayed} replayed */
  add(file, replayed) {
    guarded(() => replayed.writeInto(this.#book, file));
  }
  /** @param {{ benches: number, rubric: boolean }} need @returns {ClassSummary} */
  summary({ benches, rubric }) {
    return JSON.parse(guarded(() => this.#book.summary(benches, rubric)));
  }
  csv() {
    return guarded(() => this.#book.csv());
  }
  free() {
    this.#book.free();
  }
}

/** Something handed in, replayed piece by piece and compared with what was set: the text of a result file, or a code with the
 * scenarios it may belong to. */
export class Replayed {
  #regrade;
  /** @param {string} text @param {WhatWasSet} set @param {Record<string, string>} [scenarios] */
  constructor(text, set, scenarios = {}) {
    this.#regrade = guarded(() => set.lent((list) => new Regrade(text, JSON.stringify(scenarios), list)));
  }
  /**
   * Goes on for some samples; true when all is done.
   * @param {number} samples
   */
  step(samples) {
    return guarded(() => this.#regrade.step(samples));
  }
  /** @param {Book} book @param {string} file */
  writeInto(book, file) {
    book.add(file, this.#regrade);
  }
  get scenario() {
    return this.#regrade.scenario();
  }
  /** The attempt as a bench; this is used up. */
  intoBench() {
    return new Bench(guarded(() => this.#regrade.intoLab()));
  }
  free() {
    this.#regrade.free();
  }
}
