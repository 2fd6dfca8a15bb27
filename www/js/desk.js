// What few visits need, in a core of its own that has this beside all the rest: opening and writing files, composing and handing
// out, grading a class. Whoever imports this file waits until that core is there.

import init, { Book, composeScenario, fairness, Lab, qrSvg, Regrade, scenarioJson } from "../wasm/dicrotic_desk.js";
import { Bench, guarded } from "./core.js";

await init();

/** A recording from its files, [[name, bytes]…], with what they do not tell: rate in Hz, name of a channel. */
export const opened = (named, { rate, channel } = {}) => new Bench(guarded(() => Lab.fromFiles(named.map(([name]) => name), named.map(([, bytes]) => bytes), rate, channel)));
/** A take as a file's bytes: "edf", or "wfdb" (an archive). */
export const takeFile = (bench, take, format, name) => bench.lent(Lab, (lab) => lab.exportTake(take, format, name));
/** What the strip shows of a take, as SVG. */
export const stripSvg = (bench, title) => bench.lent(Lab, (lab) => lab.stripSvg(title));

/** A scenario file as a value, for editing; and back, as the text of a file. */
export const scenarioValue = (toml) => JSON.parse(guarded(() => scenarioJson(toml)));
export const composed = (scenario) => guarded(() => composeScenario(JSON.stringify(scenario)));
/** How many of so many right students each way of grading fails: {students, without, own_window, exact_count, record_mean, tolerances}. */
export const fairnessOf = (toml, first, students, window = 0) => JSON.parse(guarded(() => fairness(toml, first, students, window)));
/** A link as the text of an SVG picture, or undefined when it is too long for one. */
export const pictureOf = (link) => qrSvg(link);
/** What a class handed in, graded: add(file, replayed), summary(need), csv(). */
export class ClassBook {
  #book = new Book();
  add(file, replayed) {
    guarded(() => replayed.writeInto(this.#book, file));
  }
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

/** Something handed in, replayed piece by piece: the text of a result file, or a code with the scenarios it may belong to. */
export class Replayed {
  #regrade;
  constructor(text, scenarios = {}) {
    this.#regrade = guarded(() => new Regrade(text, JSON.stringify(scenarios)));
  }
  /** Goes on for some samples; true when all is done. */
  step(samples) {
    return guarded(() => this.#regrade.step(samples));
  }
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
