// @ts-check
// The bench as a package for a course site, put together here from the page's own files: the core says what is in it, the browser's
// own deflate packs it. Nothing is sent anywhere.

import { packageOf } from "../desk.js";
import { h, prop, say, words } from "../dom.js";
import { download } from "../download.js";
import { plainName } from "../hand/file.js";
import { t } from "../text.js";
import { button, Choice } from "../widgets.js";

const STANDARDS = ["scorm12", "scorm2004", "cmi5"];
const AT_ONCE = 6; // files on their way

/** @param {string} name */
async function bring(name) {
  const answer = await fetch(name);
  if (!answer.ok) throw new Error(t("error-not_found", { what: name }));
  return answer;
}

/** All of the page's files, a few at a time. */
async function pageFiles() {
  /** @type {string[]} */
  const names = await (await bring("files.json")).json();
  /** @type {[string, Uint8Array][]} */
  const files = [];
  const next = async () => {
    for (let name = names.pop(); name !== undefined; name = names.pop()) files.push([name, new Uint8Array(await (await bring(name)).arrayBuffer())]);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, next));
  return files;
}

/** @param {Uint8Array} bytes */
const deflated = async (bytes) => new Uint8Array(await new Response(new Blob([/** @type {BlobPart} */ (bytes)]).stream().pipeThrough(new CompressionStream("deflate-raw"))).arrayBuffer());

/**
 * The package as the bytes of a .zip.
 * @param {string} toml @param {string} standard
 */
export async function packageBytes(toml, standard) {
  const made = packageOf(await pageFiles(), toml, standard);
  try {
    for (const name of made.names()) made.pack(name, await deflated(made.file(name) ?? new Uint8Array()));
    const bytes = made.archive();
    if (!bytes) throw new Error(t("assign-pack_large"));
    return bytes;
  } finally {
    made.free();
  }
}

/**
 * The part of the screen for it, and can(): whether there is a bench to pack. current(): it as it stands, or null while it cannot be used.
 * @param {() => { toml: string, id: string } | null} current
 */
export function packagePart(current) {
  let standard = STANDARDS[0], usable = true, working = false;
  const which = new Choice(t("assign-pack_standard"), (value) => (standard = value));
  which.set(STANDARDS.map((one) => [one, t(`assign-pack_${one}`)]), standard);
  const said = h("span", { class: "quiet", role: "status" });
  /** @param {string} text */
  const tell = (text) => {
    words(said, text);
    say(text);
  };
  const make = button(t("assign-pack_save"), async () => {
    const bench = current();
    if (!bench) return;
    working = true;
    prop(make, "disabled", true);
    tell(t("assign-pack_working"));
    try {
      const bytes = await packageBytes(bench.toml, standard);
      download(`${plainName(bench.id) || "bench"}-${standard}.zip`, /** @type {BlobPart} */ (bytes), "application/zip");
      tell(t("assign-pack_done"));
    } catch (error) {
      tell(error instanceof Error ? error.message : String(error));
    } finally {
      working = false;
      prop(make, "disabled", !usable);
    }
  }, { pic: "save" });
  const el = h("section", { class: "out", "aria-labelledby": "pack-h" }, h("h2", { id: "pack-h" }, t("assign-pack")), h("p", { class: "quiet" }, t("assign-pack_about")), h("div", { class: "row" }, which.el, make, said));
  /** @param {boolean} yes */
  const can = (yes) => {
    usable = yes;
    prop(make, "disabled", !usable || working);
  };
  return { el, can };
}
