// The one door for words: t(key, args) looks a message up in texts/<language>.json and fills its {places}.
// A message may have forms "key.one" / "key.other"; args.n picks the form by the language's own plural rules.

let messages = {};
let plural = new Intl.PluralRules("en");
let language = "en";

/** Loads the messages of a language; call once before the first t(). */
export async function loadTexts(lang = "en") {
  const answer = await fetch(`texts/${lang}.json`);
  if (!answer.ok) throw new Error(`texts/${lang}.json: ${answer.status}`);
  messages = await answer.json();
  language = lang;
  plural = new Intl.PluralRules(lang);
}

/** Is there a message of this key (in any form)? */
export const has = (key) => key in messages || `${key}.other` in messages;

/** The message of a key, with its {places} filled. An unknown key shows itself, so that a gap is seen. */
export function t(key, args = {}) {
  let text = messages[key];
  if (text === undefined && typeof args.n === "number") {
    text = messages[`${key}.${plural.select(args.n)}`] ?? messages[`${key}.other`];
  }
  if (text === undefined) return key;
  return text.replace(/\{(\w+)\}/g, (whole, name) => (name in args ? show(args[name]) : whole));
}

/** A coded answer of the core, {code, args}, as a sentence; numbers are rounded for reading. */
export function coded(prefix, code, args = {}) {
  const key = `${prefix}.${code}`;
  return has(key) ? t(key, args) : t(`${prefix}.unknown`, { code });
}

/** How long ago a time (ms since 1970) was, in words. */
export function agoText(at) {
  const minutes = Math.max(0, Math.round((Date.now() - at) / 60000));
  if (minutes < 1) return t("resume.now");
  if (minutes < 90) return t("resume.minutes", { n: minutes });
  return minutes < 2880 ? t("resume.hours", { n: Math.round(minutes / 60) }) : t("resume.days", { n: Math.round(minutes / 1440) });
}

function show(value) {
  return typeof value === "number" ? num(value) : String(value);
}

/** A number for reading: at most `digits` decimals, in the page's language. */
export function num(value, digits = 2) {
  return new Intl.NumberFormat(language, { maximumFractionDigits: digits }).format(value);
}

/** Several words as one list, as the page's language joins them. */
export const listed = (parts) => new Intl.ListFormat(language, { type: "conjunction" }).format(parts);

/** The language of the loaded messages. */
export const languageNow = () => language;

/** A number with exactly `digits` decimals. */
export function fixed(value, digits) {
  return new Intl.NumberFormat(language, { minimumFractionDigits: digits, maximumFractionDigits: digits }).format(value);
}

/** Fills every data-t and data-t-label of a part of the document. */
export function fillTexts(root) {
  for (const el of root.querySelectorAll("[data-t]")) el.textContent = t(el.dataset.t);
  for (const el of root.querySelectorAll("[data-t-label]")) el.setAttribute("aria-label", t(el.dataset.tLabel));
}
