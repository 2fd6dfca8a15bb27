// @ts-check
// What few visits need, in a core of its own that has this beside all the rest: opening and writing files, composing and handing
// out, grading a class, one's own pulse. Whoever imports this file waits until that core is there.

import init, { AnswerKey, channelGlances, compareRates, composeScenario, contradictions, Course as Inner, courseFile, courseHanded, fairness, FingertipCamera, hashedWord, isCourse, Lab, Package, QuestionBank, qrSvg, Regrade, resultsIn, scenarioJson, SetList, Taps, taskKinds } from "../wasm/dicrotic_desk.js";
import { Bench, digestOf, guarded } from "./core.js";
/** @import { Args } from './types/names' */
/** @import { Care, ClassItem, ClassTerms, ClassTold, Fairness, Glance, GradebookOrder, PulsePart, PulseState, PulseWhole, RatesCompared, ScenarioValue, SetBench, SilentCount, Source, TapSum } from './types/told' */

await init();

/**
 * A recording from its files, [[name, bytes]…], with what they do not tell: rate in Hz, name of a channel.
 * @param {[string, Uint8Array][]} named @param {{ rate?: number, channel?: string }} [more]
 */
export const opened = (named, { rate, channel } = {}) => new Bench(guarded(() => Lab.fromFiles(named.map(([name]) => name), named.map(([, bytes]) => bytes), rate, channel)));
/**
 * A recording as a file's bytes: "edf", or "wfdb" (an archive).
 * @param {Bench} bench @param {number} recording @param {string} format @param {string} name
 */
export const recordingFile = (bench, recording, format, name) => bench.lent(Lab, (lab) => lab.exportRecording(recording, format, name));
/**
 * What the trace shows of a recording, as SVG. caption: stands in the drawing, or "".
 * @param {Bench} bench @param {string} title @param {string} caption
 */
export const traceSvg = (bench, title, caption) => bench.lent(Lab, (lab) => lab.traceSvg(title, caption));
/**
 * Five seconds of each channel of a recording's files, of the first ones where there are many.
 * @param {[string, Uint8Array][]} named @param {number} [rate] @returns {Glance[]}
 */
export const glances = (named, rate) => JSON.parse(guarded(() => channelGlances(named.map(([name]) => name), named.map(([, bytes]) => bytes), rate)));

/**
 * A scenario file as a value, for editing; and back, as the text of a file.
 * @param {string} toml @returns {ScenarioValue}
 */
export const scenarioValue = (toml) => JSON.parse(guarded(() => scenarioJson(toml)));
/** @param {ScenarioValue} scenario */
export const composed = (scenario) => guarded(() => composeScenario(JSON.stringify(scenario)));
/**
 * Whether a text is that of a course and not of a scenario.
 * @param {string} text
 */
export const isCourseText = (text) => isCourse(text);
/**
 * A course, as a file or as JSON: as it goes to students in a link, and as the text of a file.
 * @param {string} text
 */
export function courseOut(text) {
  const handed = guarded(() => courseHanded(text));
  return { handed, file: guarded(() => courseFile(handed)) }; // no word of the instructor's leaves in plain letters
}
/**
 * What is in a course's result: the id that it tells, and the results, each as the text of a result file; null where it is none such.
 * @param {string} text @returns {{ course: string, results: string[] } | null}
 */
export const partResults = (text) => JSON.parse(guarded(() => resultsIn(text)) ?? "null");
/**
 * Where brief, task, criteria and faults of a scenario contradict each other.
 * @param {string} toml @returns {{ code: string, args: Args }[]}
 */
export const contradictionsOf = (toml) => JSON.parse(guarded(() => contradictions(toml)));

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

/** Most questions that a question bank has. */
export const mostQuestions = () => QuestionBank.most();
/** The names of all kinds of question, as an instructor chooses from them. @returns {string[]} */
export const kindsOfTask = () => JSON.parse(taskKinds());
/**
 * The instructor's word as it travels.
 * @param {string} key @param {string} word
 */
export const wordHash = (key, word) => hashedWord(key, word);
/**
 * An assignment and the page's files, [[name, bytes]…], as the files of a package for a course site ("scorm12", "scorm2004", "cmi5").
 * @param {[string, Uint8Array][]} named @param {string} toml @param {string} standard
 */
export const packageOf = (named, toml, standard) => guarded(() => new Package(named.map(([name]) => name), named.map(([, bytes]) => bytes), toml, standard));
/**
 * The first line of an answer key; throws where the word does not open it.
 * @param {string} toml @param {string} word
 */
export function keyHead(toml, word) {
  guarded(() => new AnswerKey(toml, word)).free();
  return AnswerKey.head();
}
/** A class: its list, what came in, what was decided, what was set. What goes in and out of it is told in types/told.d.ts. */
export class Course {
  #course;
  /** @param {Inner} [course] */
  constructor(course = new Inner()) {
    this.#course = course;
  }
  /**
   * A class out of a file.
   * @param {string} text
   */
  static open(text) {
    return new Course(guarded(() => Inner.open(text)));
  }
  /** What waits to be graded; told once. @returns {Source[]} */
  waiting() {
    return JSON.parse(this.#course.waiting());
  }
  save() {
    return guarded(() => this.#course.save());
  }
  /**
   * Takes a scenario as set; all that came in waits to be graded by it.
   * @param {string} from @param {string} toml
   */
  give(from, toml) {
    guarded(() => this.#course.give(from, toml));
  }
  /**
   * Benches set already that have the name of a scenario, or of a part of a course, and are others: their marks.
   * @param {string} toml @returns {string[]}
   */
  rivals(toml) {
    return JSON.parse(guarded(() => this.#course.rivals(toml)));
  }
  /**
   * Sets a bench no longer; all that came in waits to be graded without it.
   * @param {string} bench
   */
  takeBack(bench) {
    this.#course.takeBack(bench);
  }
  /** What was set, each with what tells it from another. @returns {SetBench[]} */
  setTold() {
    return JSON.parse(this.#course.setTold());
  }
  /** What was set: [from, text] each. @returns {[string, string][]} */
  given() {
    return JSON.parse(this.#course.given());
  }
  /** @param {Source} source @param {string} graded */
  take(source, graded) {
    guarded(() => this.#course.take(JSON.stringify(source), graded));
  }
  /** @param {Source} source @param {string} code @param {Args} args */
  refuse(source, code, args) {
    guarded(() => this.#course.refuse(JSON.stringify(source), code, JSON.stringify(args)));
  }
  /** @param {number} k @returns {Source | null} */
  source(k) {
    return JSON.parse(this.#course.source(k) ?? "null");
  }
  /**
   * Takes a list of students: how many, and the lines left out, or what is wrong with the whole of it.
   * @param {string} text @returns {{ taken: number, wrong: { code: string, args: Args }[] }}
   */
  roster(text) {
    return JSON.parse(this.#course.roster(text));
  }
  forgetRoster() {
    this.#course.forgetRoster();
  }
  /** @param {ClassTerms} [terms] @returns {ClassTerms} */
  terms(terms) {
    return JSON.parse(this.#course.terms(terms ? JSON.stringify(terms) : ""));
  }
  /** @param {string} code @param {Care} care */
  care(code, care) {
    this.#course.care(code, JSON.stringify(care));
  }
  settle() {
    this.#course.settle();
  }
  /** @returns {ClassItem[]} */
  items() {
    return JSON.parse(guarded(() => this.#course.items()));
  }
  /** @returns {ClassTold} */
  told() {
    return JSON.parse(guarded(() => this.#course.told()));
  }
  csv() {
    return guarded(() => this.#course.csv());
  }
  /** @param {string[]} codes @param {string[]} feedback @param {GradebookOrder} order */
  gradebook(codes, feedback, order) {
    return guarded(() => this.#course.gradebook(JSON.stringify(codes), JSON.stringify(feedback), JSON.stringify(order)));
  }
  /** Everybody who can be named: the list, or else who handed in; each as JSON. @returns {string[]} */
  everybody() {
    return JSON.parse(this.#course.everybody()).map((/** @type {unknown} */ one) => JSON.stringify(one));
  }
  free() {
    this.#course.free();
  }
}

/**
 * Something handed in, done again, as a bench to be looked at.
 * @param {Source} source
 */
export function attemptOf({ text, code, scenario }) {
  const regrade = guarded(() => new Regrade(text || code || "", JSON.stringify(scenario ? { [digestOf(scenario).slice(0, 16)]: scenario } : {}), new SetList()));
  return guarded(() => {
    while (!regrade.step(1e9));
    return new Bench(regrade.intoLab());
  });
}

// one's own pulse

/** The mean colors of a fingertip's pictures in, a pulse out. Times in s from the first picture. */
export class Fingertip {
  #camera = new FingertipCamera();
  /** @param {number} at_s @param {number} red @param {number} green @param {number} blue */
  push(at_s, red, green, blue) {
    this.#camera.push(at_s, red, green, blue);
  }
  /** What the last ten seconds say. @returns {PulseState} */
  state() {
    return this.#camera.state();
  }
  /** Samples a second of the trace. */
  get rate() {
    return this.#camera.rate_hz();
  }
  /** The pulse of the last seconds, about -1 to 1. @param {number} seconds */
  trace(seconds) {
    return this.#camera.trace(seconds);
  }
  /** Parts of a length, one after the other, each with its heart rate or why it has none. @param {number} seconds @returns {PulsePart[]} */
  windows(seconds) {
    return this.#camera.windows(seconds);
  }
  /** One heart rate for all of it, or why there is none. @returns {PulseWhole} */
  whole() {
    return this.#camera.whole();
  }
  /** The pulse as a table of text that opens as a recording. */
  recording() {
    return this.#camera.recording();
  }
  /** The colors as a table of text. */
  csv() {
    return this.#camera.csv();
  }
  free() {
    this.#camera.free();
  }
}

/** Taps in time with a pulse that is felt; times in s. */
export class TapRhythm {
  #taps = new Taps();
  /** @param {number} at_s */
  tap(at_s) {
    this.#taps.tap(at_s);
  }
  /** What all taps come to. @returns {TapSum} */
  sum() {
    return this.#taps.sum(-Infinity, Infinity);
  }
  /** The taps as a table of text that opens as a recording; undefined for fewer than two. */
  recording() {
    return this.#taps.recording();
  }
  free() {
    this.#taps.free();
  }
}

/**
 * What a silent count of n beats comes to; null where there was no time.
 * @param {number} n @param {number} seconds @returns {SilentCount | null}
 */
export function silentCount(n, seconds) {
  const taps = new Taps();
  try {
    return taps.count(n, seconds);
  } finally {
    taps.free();
  }
}

/**
 * Two heart rates, each with how far it may be off.
 * @param {number} one @param {number} oneOff @param {number} other @param {number} otherOff @returns {RatesCompared}
 */
export const compared = (one, oneOff, other, otherOff) => compareRates(one, oneOff, other, otherOff);
