// @ts-check
// Links that carry a whole scenario: its text, deflated, in the fragment, which no browser sends to a server.

import { minimised } from "../core.js";

const MOST_BYTES = 64 * 1024; // what the core reads; a link that swells beyond it is none of ours

/** @param {BlobPart} bytes @param {CompressionStream | DecompressionStream} stream @param {number} most */
async function through(bytes, stream, most) {
  /** @type {Uint8Array<ArrayBuffer>[]} */
  const parts = [];
  let length = 0;
  for (const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader(); ;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      await reader.cancel().catch(() => {});
      throw new RangeError(`more than ${most} bytes`);
    }
    parts.push(value);
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

/**
 * A scenario's text as the part of a link after "#a=".
 * @param {string} toml
 */
export const packText = (toml) => packed(minimised(toml));

/**
 * Any text as the part of a link after its mark.
 * @param {string} text
 */
export async function packed(text) {
  const bytes = await through(new TextEncoder().encode(text), new CompressionStream("deflate-raw"), Infinity);
  let letters = "";
  for (const byte of bytes) letters += String.fromCharCode(byte);
  return btoa(letters).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
}

/**
 * The text that a link carries; throws when it is damaged. most: bytes that it may swell to.
 * @param {string} packed @param {number} [most]
 */
export async function unpackText(packed, most = MOST_BYTES) {
  const bytes = Uint8Array.from(atob(packed.replace(/-/g, "+").replace(/_/g, "/")), (c) => c.charCodeAt(0));
  return new TextDecoder("utf-8", { fatal: true }).decode(await through(bytes, new DecompressionStream("deflate-raw"), most));
}

/**
 * What a link of a course may swell to: twenty parts and what is said of them.
 */
export const MOST_COURSE_BYTES = 21 * MOST_BYTES;

/** Where this page is. */
export const pageAddress = () => location.origin + location.pathname;

/**
 * The whole link of a composed scenario, for the page at an address.
 * @param {string} toml @param {string} [at]
 */
export const linkOf = async (toml, at = pageAddress()) => `${at}#a=${await packText(toml)}`;
