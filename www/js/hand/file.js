// @ts-check
// Files that come from the reader's own disk, and texts that go to the clipboard.

import { h } from "../dom.js";

/**
 * Copies a text; false where the device does not let a page copy: then it is selected in `el` to be copied by hand.
 * @param {string} text @param {Element} el
 */
export async function copy(text, el) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    if (el instanceof HTMLTextAreaElement) el.select();
    else getSelection()?.selectAllChildren(el);
    return false;
  }
}

/**
 * Words as part of a file's name: small letters, digits and hyphens.
 * @param {string} text @param {number} [most]
 */
export const plainName = (text, most = 40) => text.normalize("NFKD").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, most);

/**
 * Lets the user choose files; calls take(files).
 * @param {string} accept @param {(files: File[]) => unknown} take @param {boolean} [multiple]
 */
export function chooseFiles(accept, take, multiple = false) {
  const input = h("input", { type: "file", accept, multiple });
  input.addEventListener("change", () => take([...(input.files ?? [])]));
  input.click();
}
