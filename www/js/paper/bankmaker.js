// @ts-check
// A question bank made by a worker, so that the page stays alive: one question after another, each with the page's words.

import { guarded } from "../core.js";
import { decimalSign, has, languageNow, t } from "../text.js";
/** @import { BankTold, BankWords } from '../types/told' */

/** What is thrown by a bank that is stopped. */
export class Stopped extends Error {}

/** What is asked after a misreading; a printed trace has no beat marks, so where the page speaks of them the bank has words of its own. @param {string} id */
const askOf = (id) => (has(`bank-ask-${id}`) ? t(`bank-ask-${id}`) : t(`misreading-${id}.ask`));

/**
 * The words of a question, from its facts; title: what its trace is called.
 * @param {BankTold} told @param {string} title @returns {BankWords}
 */
export function questionWords({ number, seen, right, answers }, title) {
  return {
    title: t("bank-item", { title, n: number }),
    question: t("bank-question"),
    alt: t("bank-alt", seen),
    answers: answers.map(({ rate }) => t("bank-answer", { rate })),
    feedback: answers.map(({ misreading }) => (misreading ? t("bank-wrong", { see: t(`misreading-${misreading}.see`), ask: askOf(misreading) }) : t("bank-right", right))),
  };
}

export class BankMaker {
  constructor() {
    this.calls = 0;
    /** @type {Map<number, { resolve: (value: any) => void, reject: (why: unknown) => void }>} */
    this.waiting = new Map();
    this.worker = new Worker(new URL("./bankworker.js", import.meta.url), { type: "module" });
    this.worker.addEventListener("message", ({ data: { id, value, error } }) => {
      const one = this.waiting.get(id);
      this.waiting.delete(id);
      if (error === undefined) return one?.resolve(value);
      try {
        guarded(() => {
          throw error;
        });
      } catch (why) {
        one?.reject(why);
      }
    });
    this.worker.addEventListener("error", (event) => this.stop(new Error(event.message)));
  }

  /** @param {string} name @param {...unknown} args @returns {Promise<any>} */
  call(name, ...args) {
    const id = (this.calls += 1);
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve, reject });
      this.worker.postMessage({ id, name, args });
    });
  }

  /** Ends it; what waits is told. @param {Error} [why] */
  stop(why = new Stopped()) {
    this.worker.terminate();
    for (const { reject } of this.waiting.values()) reject(why);
    this.waiting.clear();
  }

  /** @param {string} form */
  begin(form) {
    return this.call("begin", form, languageNow(), decimalSign());
  }

  /**
   * Makes one question; its facts and its words. title: what its trace is called, where that is not the scenario's own.
   * @param {{ toml: string, title?: string }} of @param {string} seed @param {number} number @returns {Promise<{ told: BankTold, words: BankWords }>}
   */
  async question({ toml, title }, seed, number) {
    /** @type {BankTold} */
    const told = JSON.parse(await this.call("ask", toml, seed, number));
    return { told, words: questionWords(told, title ?? told.title) };
  }

  /**
   * The picture of the question made last, as the text of an SVG document.
   * @param {string} title @returns {Promise<string>}
   */
  picture(title) {
    return this.call("picture", title);
  }

  /**
   * Makes a whole bank: the bytes of its archive. moved(done): so many questions are there.
   * @param {{ toml: string, title?: string }} of @param {{ form: string, seed: string, count: number }} order @param {(done: number) => void} moved @returns {Promise<Uint8Array>}
   */
  async bank(of, { form, seed, count }, moved) {
    await this.begin(form);
    for (let number = 1; number <= count; number += 1) {
      const { words } = await this.question(of, seed, number);
      await this.call("add", JSON.stringify(words));
      moved(number);
    }
    const bytes = await this.call("finish");
    if (!bytes) throw new Error(t("error-bank_large"));
    return bytes;
  }
}
