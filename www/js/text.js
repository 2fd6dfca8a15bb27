// The one door for words: t(key, args). The words are written in Fluent (texts/<language>/*.ftl); the build turns them into
// texts/<language>.json, where a message is a string or an array of strings and places:
// {v: name} a variable, {s: name, k: {form: message}, d: form} a choice by a variable, {m: key} another message.

const messages = new Map();
let plural = new Intl.PluralRules("en");
let language = "en";
let loading = null;
const brought = new Map();

/** Loads the messages of the page's language, once, however often it is called; await it before the first t(). */
export function loadTexts(lang) {
  if (!loading) {
    language = lang;
    plural = new Intl.PluralRules(lang);
    loading = bring(`texts/${lang}.json`);
  }
  return loading;
}

/** Brings the words of a screen that not every visit opens; rejects when they cannot be had, and a later call tries anew. */
export function bringTexts(name) {
  if (!brought.has(name)) brought.set(name, bring(`texts/${language}.${name}.json`).catch((error) => {
    brought.delete(name);
    throw error;
  }));
  return brought.get(name);
}

async function bring(path) {
  const answer = await fetch(path);
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  for (const [key, message] of Object.entries(await answer.json())) messages.set(key, message);
}

/** Is there a message of this key? */
export const has = (key) => messages.has(key);

/** The message of a key ("strip-live", or "step-trace_hum.see" for an attribute), its places filled. An unknown key shows itself, so that a gap is seen. */
export const t = (key, args = {}) => (messages.has(key) ? filled(messages.get(key), args) : key);

function filled(message, args) {
  if (typeof message === "string") return message;
  return message.map((part) => (typeof part === "string" ? part : place(part, args))).join("");
}

function place({ v, m, s, k, d }, args) {
  if (m) return t(m, args);
  if (v) return v in args ? show(args[v]) : `{${v}}`;
  const value = args[s];
  const exact = Object.hasOwn(k, String(value)) ? String(value) : null;
  const form = exact ?? (typeof value === "number" ? plural.select(value) : d);
  return filled(k[form] ?? k[d], args);
}

/** A coded answer of the core, {code, args}, as a sentence; numbers are rounded for reading. */
export function coded(prefix, code, args = {}) {
  const key = `${prefix}-${code}`;
  return has(key) ? t(key, args) : t(`${prefix}-unknown`, { code });
}

/** How long ago a time (ms since 1970) was, in words. */
export function agoText(at) {
  const minutes = Math.max(0, Math.round((Date.now() - at) / 60000));
  if (minutes < 1) return t("resume-now");
  if (minutes < 90) return t("resume-minutes", { n: minutes });
  return minutes < 2880 ? t("resume-hours", { n: Math.round(minutes / 60) }) : t("resume-days", { n: Math.round(minutes / 1440) });
}

function show(value) {
  return typeof value === "number" ? num(value) : String(value);
}

/** Numbers are written with a minus, not with the hyphen that keyboards have. */
const written = (value, form) => new Intl.NumberFormat(language, form).format(value).replace("-", "−");

/** A number for reading: at most `digits` decimals, in the page's language. */
export function num(value, digits = 2) {
  return written(value, { maximumFractionDigits: digits });
}

/** Several words as one list, as the page's language joins them. */
export const listed = (parts) => new Intl.ListFormat(language, { type: "conjunction" }).format(parts);

/** What stands between whole and decimals in the page's language. */
export const decimalSign = () => new Intl.NumberFormat(language).formatToParts(1.5).find((part) => part.type === "decimal").value;

/** The language of the loaded messages. */
export const languageNow = () => language;

/** A number with exactly `digits` decimals. */
export function fixed(value, digits) {
  return written(value, { minimumFractionDigits: digits, maximumFractionDigits: digits });
}

/** Fills every data-t and data-t-label of a part of the document. */
export function fillTexts(root) {
  for (const el of root.querySelectorAll("[data-t]")) el.textContent = t(el.dataset.t);
  for (const el of root.querySelectorAll("[data-t-label]")) el.setAttribute("aria-label", t(el.dataset.tLabel));
}

/** All keys of messages (not of their attributes) that begin with a stem, in no particular order. */
export const keysOf = (stem) => [...new Set([...messages.keys()].filter((key) => key.startsWith(stem)).map((key) => key.split(".")[0]))];
