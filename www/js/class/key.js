// @ts-check
// The answer key of a class, made off the main thread: workers take a few students at a time; the lines are put together in the order of
// the list, whoever was faster.

import { WORKERS } from "./grader.js";

const AT_ONCE = 4; // students

/**
 * Makes the lines of students. moved(done): so many are there. Rejects with what a worker could not do, and with the signal's reason.
 * @param {string} toml @param {string} word @param {string[]} students @param {{ moved: (done: number) => void, signal: AbortSignal }} ways @returns {Promise<string>}
 */
export async function keyRows(toml, word, students, { moved, signal }) {
  /** @type {Worker[]} */
  const workers = [];
  /** @type {Map<number, string>} */
  const rows = new Map();
  let next = 0, done = 0;
  try {
    await new Promise((resolve, reject) => {
      signal.throwIfAborted();
      signal.addEventListener("abort", () => reject(signal.reason));
      /** @param {Worker} worker */
      const give = (worker) => {
        if (next >= students.length) return;
        worker.postMessage({ part: { from: next, students: students.slice(next, next + AT_ONCE) } });
        next += AT_ONCE;
      };
      if (students.length === 0) resolve(null);
      while (workers.length < WORKERS && workers.length * AT_ONCE < students.length) {
        const worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module" });
        workers.push(worker);
        worker.addEventListener("error", (event) => reject(new Error(event.message)));
        worker.addEventListener("message", ({ data: { from, rows: told, error } }) => {
          if (error !== undefined) return reject(new Error(error));
          rows.set(from, told);
          done = Math.min(students.length, done + Math.min(AT_ONCE, students.length - from));
          moved(done);
          if (done === students.length) resolve(null);
          else give(worker);
        });
        worker.postMessage({ key: { toml, word } });
        give(worker);
      }
    });
  } finally {
    for (const worker of workers) worker.terminate();
  }
  return [...rows].sort(([a], [b]) => a - b).map(([, text]) => text).join("");
}
