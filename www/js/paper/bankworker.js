// @ts-check
// Off the main thread: makes a question bank, question by question, and packs it. Each call is answered under its number.

import init, { QuestionBank } from "../../wasm/dicrotic_desk.js";

const ready = init();
/** @type {QuestionBank | null} */
let bank = null;

/** @param {Uint8Array} bytes */
const deflated = async (bytes) => new Uint8Array(await new Response(new Blob([/** @type {BlobPart} */ (bytes)]).stream().pipeThrough(new CompressionStream("deflate-raw"))).arrayBuffer());

const calls = {
  /** @param {string} form @param {string} language @param {string} decimal */
  begin(form, language, decimal) {
    bank?.free();
    bank = new QuestionBank(form, language, decimal);
  },
  /** @param {string} toml @param {string} seed @param {number} number */
  ask: (toml, seed, number) => bank?.ask(toml, seed, number),
  /** @param {string} title */
  picture: (title) => bank?.picture(title),
  /** @param {string} words */
  add: (words) => bank?.add(words),
  /** The archive's bytes; nothing if it is too large for the format. */
  async finish() {
    const files = bank?.finish();
    bank = null;
    if (!files) return undefined;
    try {
      for (const name of files.names()) files.pack(name, await deflated(files.file(name) ?? new Uint8Array()));
      return files.archive();
    } finally {
      files.free();
    }
  },
};

addEventListener("message", async ({ data: { id, name, args } }) => {
  try {
    await ready;
    postMessage({ id, value: await /** @type {Record<string, (...args: unknown[]) => unknown>} */ (calls)[name](...args) });
  } catch (thrown) {
    postMessage({ id, error: typeof thrown === "string" ? thrown : JSON.stringify({ code: "core_stopped", args: { told: String(thrown) } }) });
  }
});
