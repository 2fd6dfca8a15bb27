// @ts-check
// The one door for words: t(key, args). The words are written in Fluent (texts/<language>/*.ftl); the build turns them into
// texts/<language>.json, where a message is a string or an array of strings and places:
// {v: name} a variable, {s: name, k: {form: message}, d: form} a choice by a variable, {m: key} another message.

/** @import { Args } from './types/names' */

/**
 * @typedef {string | (string | Place)[]} Message
 * @typedef {{ v?: string, m?: string, s?: string, k?: Record<string, Message>, d?: string }} Place
 */

/** @type {Map<string, Message>} */
const messages = new Map();
let plural = new Intl.PluralRules("en");
let language = "en";
/** @type {Promise<void> | null} */
let loading = null;
/** @type {Map<string, Promise<void>>} */
const brought = new Map();

/**
 * Loads the messages of the page's language, once, however often it is called; await it before the first t().
 * @param {string} lang
 */
export function loadTexts(lang) {
  if (!loading) {
    language = lang;
    plural = new Intl.PluralRules(lang);
    loading = bring(`texts/${lang}.json`);
  }
  return loading;
}

/**
 * Brings the words of a screen that not every visit opens; rejects when they cannot be had, and a later call tries anew.
 * @param {string} name
 */
export function bringTexts(name) {
  const coming = brought.get(name) ?? bring(`texts/${language}.${name}.json`).catch((error) => {
    brought.delete(name);
    throw error;
  });
  brought.set(name, coming);
  return coming;
}

/** @param {string} path */
async function bring(path) {
  const answer = await fetch(path);
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  for (const [key, message] of Object.entries(/** @type {Record<string, Message>} */ (await answer.json()))) messages.set(key, message);
}

/**
 * Is there a message of this key?
 * @param {string} key
 */
export const has = (key) => messages.has(key);

/**
 * The message of a key ("strip-live", or "step-trace_hum.see" for an attribute), its places filled. An unknown key shows itself, so that a gap is seen.
 * @param {string} key @param {Args} [args]
 */
export function t(key, args = {}) {
  const message = messages.get(key);
  return message === undefined ? key : filled(message, args);
}

/** @param {Message} message @param {Args} args @returns {string} */
function filled(message, args) {
  if (typeof message === "string") return message;
  return message.map((part) => (typeof part === "string" ? part : place(part, args))).join("");
}

/** @param {Place} part @param {Args} args @returns {string} */
function place({ v, m, s = "", k = {}, d = "" }, args) {
  if (m) return t(m, args);
  if (v) return v in args ? show(args[v]) : `{${v}}`;
  const value = args[s];
  const exact = Object.hasOwn(k, String(value)) ? String(value) : null;
  const form = exact ?? (typeof value === "number" ? plural.select(value) : d);
  return filled(k[form] ?? k[d], args);
}

/**
 * A coded answer of the core, {code, args}, as a sentence; numbers are rounded for reading.
 * @param {string} prefix @param {string} code @param {Args} [args]
 */
export function coded(prefix, code, args = {}) {
  const key = `${prefix}-${code}`;
  return has(key) ? t(key, args) : t(`${prefix}-unknown`, { code });
}

/**
 * How long ago a time (ms since 1970) was, in words.
 * @param {number} at
 */
export function agoText(at) {
  const minutes = Math.max(0, Math.round((Date.now() - at) / 60000));
  if (minutes < 1) return t("resume-now");
  if (minutes < 90) return t("resume-minutes", { n: minutes });
  return minutes < 2880 ? t("resume-hours", { n: Math.round(minutes / 60) }) : t("resume-days", { n: Math.round(minutes / 1440) });
}

/** @param {unknown} value */
function show(value) {
  return typeof value === "number" ? num(value) : String(value);
}

/**
 * Numbers are written with a minus, not with the hyphen that keyboards have.
 * @param {number} value @param {Intl.NumberFormatOptions} form
 */
const written = (value, form) => new Intl.NumberFormat(language, form).format(value).replace("-", "−");

/**
 * A number for reading: at most `digits` decimals, in the page's language.
 * @param {number} value @param {number} [digits]
 */
export function num(value, digits = 2) {
  return written(value, { maximumFractionDigits: digits });
}

/**
 * Several words as one list, as the page's language joins them.
 * @param {string[]} parts
 */
export const listed = (parts) => new Intl.ListFormat(language, { type: "conjunction" }).format(parts);

/** What stands between whole and decimals in the page's language. */
export const decimalSign = () => new Intl.NumberFormat(language).formatToParts(1.5).find((part) => part.type === "decimal")?.value ?? ".";

/** The language of the loaded messages. */
export const languageNow = () => language;

/**
 * A number with exactly `digits` decimals.
 * @param {number} value @param {number} digits
 */
export function fixed(value, digits) {
  return written(value, { minimumFractionDigits: digits, maximumFractionDigits: digits });
}

/**
 * Fills every data-t and data-t-label of a part of the document.
 * @param {ParentNode} root
 */
export function fillTexts(root) {
  for (const el of root.querySelectorAll("[data-t]")) el.textContent = t(el.getAttribute("data-t") ?? "");
  for (const el of root.querySelectorAll("[data-t-label]")) el.setAttribute("aria-label", t(el.getAttribute("data-t-label") ?? ""));
}

/**
 * All keys of messages (not of their attributes) that begin with a stem, in no particular order.
 * @param {string} stem
 */
export const keysOf = (stem) => [...new Set([...messages.keys()].filter((key) => key.startsWith(stem)).map((key) => key.split(".")[0]))];
