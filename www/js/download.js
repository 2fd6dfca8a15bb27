// @ts-check
// Files that go to the reader's own disk.

import { h } from "./dom.js";

/**
 * Hands a file to the browser. content: text or bytes.
 * @param {string} name @param {BlobPart} content @param {string} [type]
 */
export function download(name, content, type = "application/json") {
  const link = h("a", { href: URL.createObjectURL(new Blob([content], { type })), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000); // a busy device may begin to read it late
}
