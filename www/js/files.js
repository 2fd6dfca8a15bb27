// @ts-check
// Opening recordings from files: chosen or dropped, one file or the several of a record; what they do not tell is asked.

import { asked, askRate } from "./ask.js";
import { CoreError } from "./core.js";
import { attr, dialog as question, h, s } from "./dom.js";
import { bringTexts, t } from "./text.js";
import { button, Choice } from "./widgets.js";
/** @import { Bench } from './core.js' */
/** @import { Navigation } from './navigation.js' */
/** @import { Glance } from './types/told' */

const ENDINGS = ".csv,.txt,.edf,.hea,.dat,.atr,.zip,text/csv,text/plain";
const MOST_BYTES = 400e6; // more than a browser's tab should be asked to hold
const RATES_HZ = { low: 10, high: 10000 }; // what the core takes

/**
 * Lets the student choose files; calls open(files) with what was chosen.
 * @param {(files: File[]) => unknown} open
 */
export function chooseFiles(open) {
  const input = h("input", { type: "file", accept: ENDINGS, multiple: true });
  input.addEventListener("change", () => input.files && input.files.length > 0 && open([...input.files]));
  input.click();
}

/**
 * Takes files that are dropped anywhere on the page.
 * @param {(files: File[]) => unknown} open
 */
export function takeDrops(open) {
  /** @param {DragEvent} event */
  const carries = (event) => event.dataTransfer?.types.includes("Files");
  /** @param {boolean} on */
  const hover = (on) => document.body.toggleAttribute("data-drop", on);
  addEventListener("dragover", (event) => {
    if (!carries(event)) return;
    event.preventDefault();
    hover(true);
  });
  addEventListener("dragleave", (event) => event.relatedTarget === null && hover(false));
  addEventListener("drop", (event) => {
    if (!carries(event)) return;
    event.preventDefault();
    hover(false);
    const files = [...(event.dataTransfer?.files ?? [])];
    if (files.length > 0) open(files);
  });
}

/**
 * Reads the files of one recording, as long as the navigation stands; null when the student gives up over a question. Throws a
 * CoreError in words.
 * @param {File[]} files @param {Navigation} navigation @returns {Promise<Bench | null>}
 */
export async function readRecording(files, navigation) {
  const [{ glances, opened }] = await navigation.wait(Promise.all([import("./desk.js"), bringTexts("files")]));
  const bytes = files.reduce((sum, file) => sum + file.size, 0);
  if (bytes > MOST_BYTES) throw new CoreError("file_big", { file: files[0].name, mb: Math.round(bytes / 1e6), most: MOST_BYTES / 1e6 });
  const named = await navigation.wait(Promise.all(files.map(async (file) => /** @type {[string, Uint8Array]} */ ([file.name, new Uint8Array(await file.arrayBuffer())]))));
  /** @type {number | undefined} */
  let rate;
  let bench;
  try {
    bench = opened(named);
  } catch (error) {
    if (!(error instanceof CoreError) || error.code !== "csv_rate_missing") throw error;
    const told = await navigation.wait(askRate(String(error.args.file), RATES_HZ));
    if (told === null) return null;
    rate = told;
    bench = opened(named, { rate });
  }
  if (bench.channels.length < 2) return bench;
  const proposed = bench.channel;
  const channel = await navigation.wait(askChannel(files[0].name, bench.channels, proposed, () => glances(named, rate))).catch((left) => {
    bench.free();
    throw left;
  });
  if (channel === proposed) return bench;
  bench.free();
  return channel === null ? null : opened(named, { rate, channel });
}

/**
 * Asks which channel of a file is the pulse; null when the student gives up.
 * @param {string} file @param {string[]} channels @param {string} proposed The one that is the pulse by its name, else the first.
 * @param {() => Glance[]} look Five seconds of each, which takes a moment.
 */
async function askChannel(file, channels, proposed, look) {
  const dialog = question();
  /** @type {string | null} */
  let found = null;
  const which = new Choice(t("channel-label"), (name) => mark(name));
  which.set([...new Set(channels)].map((name) => /** @type {[string, string]} */ ([name, name])), proposed);
  const pictures = h("div", { class: "glances", role: "group", "aria-label": t("channel-pictures"), hidden: true });
  /** @param {string} name */
  const mark = (name) => [...pictures.children].forEach((one) => attr(one, "aria-pressed", String(one.getAttribute("data-channel") === name)));
  const show = () => {
    const found = look().filter(({ outline }) => outline.length > 0);
    pictures.replaceChildren(...found.map((one) => glanceButton(one, () => {
      which.select.value = one.channel;
      mark(one.channel);
    })));
    pictures.hidden = found.length === 0;
    mark(which.select.value);
  };
  // The question stands first; without pictures it can be answered as well.
  setTimeout(() => {
    try {
      if (dialog.open) show();
    } catch (error) {
      if (!(error instanceof CoreError)) throw error;
    }
  });
  /** @param {Event} event */
  const take = (event) => {
    event.preventDefault();
    found = which.select.value;
    dialog.close();
  };
  dialog.replaceChildren(h("form", { method: "dialog", onsubmit: take },
    h("h2", { id: "ask-h" }, t("channel-title")), h("p", {}, t("channel-text", { file, n: channels.length })), pictures, which.el,
    h("div", { class: "row" }, h("button", { type: "submit", class: "btn btn-strong" }, t("rate-yes")), button(t("rate-no"), () => dialog.close()))));
  await asked(dialog);
  return found;
}

const WIDE = 120, HIGH = 36;

/**
 * A channel as a button: its name, its unit, and five seconds of it.
 * @param {Glance} glance @param {() => unknown} pick
 */
function glanceButton({ channel, unit, outline }, pick) {
  const columns = outline.length / 2;
  const line = Array.from({ length: columns }, (_, k) => {
    const x = (((k + 0.5) / columns) * WIDE).toFixed(1);
    return [outline[2 * k], outline[2 * k + 1]].map((v) => `${x} ${(2 + (1 - v) * (HIGH - 4)).toFixed(1)}`).join("L");
  }).join("L");
  const name = !unit || /[([]/.test(channel) ? channel : t("channel-unit", { channel, unit });
  return h("button", { type: "button", class: "glance", "aria-pressed": "false", data: { channel }, onclick: pick },
    h("span", { class: "glance-name" }, name), s("svg", { viewBox: `0 0 ${WIDE} ${HIGH}`, preserveAspectRatio: "none", "aria-hidden": "true" }, s("path", { d: `M${line}` })));
}
