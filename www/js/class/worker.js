// @ts-check
// Off the main thread: replays what was handed in, one thing after another, and tells what came of each; or what students meet, for the
// answer key.

import init, { AnswerKey, Regrade, scenarioDigest, SetList } from "../../wasm/dicrotic_desk.js";
/** @import { Source } from '../types/told' */

const ready = init();
const SLICE_SAMPLES = 1 << 20;
/** @type {SetList | null} */
let set = null; // made once the core is there
/** @type {AnswerKey | null} */
let key = null;
/** @type {Record<string, string>} */
let known = {};
let knownText = "{}";

/**
 * Does one thing: what was set anew, scenarios that codes may belong to, or something handed in.
 * @param {{ set?: [string, string][], known?: Record<string, string>, job?: number, source?: Source, joined?: string, key?: { toml: string, word: string }, part?: { from: number, students: string[] } }} asked
 */
async function work(asked) {
  await ready;
  if (asked.key) key = new AnswerKey(asked.key.toml, asked.key.word);
  if (asked.part) return answer(asked.part);
  set ??= new SetList();
  if (asked.set) {
    set.free();
    set = new SetList();
    for (const [from, text] of asked.set) set.put(from, text);
  }
  if (asked.known) {
    known = { ...known, ...asked.known };
    knownText = JSON.stringify(known);
  }
  if (asked.job === undefined || !asked.source) return;
  postMessage({ job: asked.job, ...graded(asked.source, asked.joined ?? "", set) });
}

/**
 * The lines of some students.
 * @param {{ from: number, students: string[] }} part
 */
function answer({ from, students }) {
  try {
    postMessage({ from, rows: students.map((one) => key?.rows(one) ?? "").join("") });
  } catch (thrown) {
    postMessage({ from, error: String(thrown) });
  }
}

/**
 * What came of one thing. A code that is damaged as it stands may be whole across the line ends that a mail program put in.
 * @param {Source} source @param {string} joined @param {SetList} set
 */
function graded(source, joined, set) {
  const own = source.scenario ? JSON.stringify({ ...known, ...named(source.scenario) }) : knownText;
  /** @param {string} text @returns {{ graded?: string, scenario?: string, used?: string, error?: string }} */
  const tried = (text) => {
    try {
      const regrade = new Regrade(text, own, set);
      while (!regrade.step(SLICE_SAMPLES));
      const told = { graded: regrade.graded(), scenario: regrade.scenario(), used: text };
      regrade.free();
      return told;
    } catch (thrown) {
      return { used: text, error: typeof thrown === "string" ? thrown : JSON.stringify({ code: "core_stopped", args: { told: String(thrown) } }) };
    }
  };
  if (source.text) return tried(source.text);
  const first = tried(source.code ?? "");
  if (!first.error || !joined || joined === source.code) return first;
  const second = tried(joined);
  // Whole when joined, and yet of no use: that says more.
  return second.error && JSON.parse(second.error).code === "code" ? first : second;
}

/**
 * A scenario by the beginning of its digest, as the core asks for it.
 * @param {string} toml
 */
function named(toml) {
  return { [scenarioDigest(toml).slice(0, 16)]: toml };
}

addEventListener("message", ({ data }) => work(data));
