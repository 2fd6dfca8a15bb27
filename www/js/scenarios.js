// @ts-check
// The scenarios of this page: their index, their texts, and what each tells of itself.

import { brief, CoreError } from "./core.js";
import { bringTexts, has, languageNow, t } from "./text.js";
/** @import { ScenarioEntry } from './types/page' */
/** @import { Brief } from './types/view' */
/** @import { AskedExperiment } from './types/experiment' */

const FILES = "en"; // the language in which scenario files are written

/** Brings the scenarios' words in the page's language; files speak for themselves where there are none. */
export const scenarioWords = () => (languageNow() === FILES ? Promise.resolve() : bringTexts("scenarios"));

/**
 * What a scenario tells (a brief of the core), in the page's language where its words are there.
 * @param {Brief} told
 */
export function inWords(told) {
  const key = `scenario-${told.id}`;
  return has(`${key}.title`) ? { ...told, title: t(`${key}.title`), aim: t(`${key}.aim`), brief: t(`${key}.brief`) } : told;
}

/**
 * The same for an experiment: its question, reasons and conditions.
 * @param {string} id @param {AskedExperiment} told @returns {AskedExperiment}
 */
export function experimentInWords(id, told) {
  /** @param {string} part @param {string} own */
  const word = (part, own) => (has(`scenario-${id}.${part}`) ? t(`scenario-${id}.${part}`) : own);
  return {
    ...told, question: word("question", told.question), reasons: told.reasons.map((own, i) => word(`reason-${i + 1}`, own)),
    conditions: told.conditions.map((one) => ({ ...one, label: word(`label-${one.id}`, one.label) })),
  };
}

/** @type {ScenarioEntry[]} */
let all = [];

/** Loads the scenario index: a list of Entry. */
export async function loadScenarios() {
  /** @type {Listed[]} */
  const index = await (await get("scenarios/index.json")).json();
  all = index.map((entry) => new Entry(entry));
  return all;
}

/** The scenarios of the index, once it is there. */
export const allScenarios = () => all;
/** @param {string | null} id */
export const scenarioOf = (id) => all.find((one) => one.id === id);

/** The same, once the text of each is there or has failed to come. */
export async function allLoaded() {
  await Promise.allSettled(all.map((one) => one.load()));
  return all;
}

/** @typedef {{ id: string, level: number, file: string, title: string, aim: string, help: string, path?: boolean }} Listed */

/** One scenario of the index; after load() also its text `toml`. */
class Entry {
  /** @param {Listed} listed */
  constructor({ id, level, file, title, aim, help, path = true }) {
    this.id = id;
    this.level = level;
    this.file = file;
    this.title = title;
    this.aim = aim;
    this.help = help;
    this.path = path; // whether it is on a student's path
    /** @type {string | undefined} */
    this.toml = undefined;
    /** @type {Promise<string> | null} */
    this.loading = null;
  }
  /** Brings the text once, however often it is called; what failed is tried anew. */
  load() {
    const coming = this.loading ?? get(`scenarios/${this.file}`).then((answer) => answer.text()).then((text) => (this.toml = text)).catch((error) => {
      this.loading = null;
      throw error;
    });
    this.loading = coming;
    return coming;
  }
}

/** @param {string} path */
async function get(path) {
  const answer = await fetch(path);
  if (!answer.ok) throw new CoreError("not_found", { what: path });
  return answer;
}

/**
 * Reads a loaded scenario's brief once the core is there; throws what is wrong with it.
 * @param {ScenarioEntry} scenario @returns {Brief}
 */
export function briefOf(scenario) {
  if (scenario.toml === undefined) throw new CoreError("not_found", { what: `scenarios/${scenario.file}` });
  scenario.brief ??= inWords(brief(scenario.toml));
  return scenario.brief;
}

/**
 * What is wrong with a scenario, or null.
 * @param {ScenarioEntry} scenario
 */
export function problemOf(scenario) {
  try {
    briefOf(scenario);
    return null;
  } catch (error) {
    return /** @type {Error} */ (error);
  }
}
