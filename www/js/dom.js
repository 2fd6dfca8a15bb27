// @ts-check
// The one writer of the document: makers of elements, and setters that skip what is already so.

/** @import { Attributes, Kid } from './types/page' */

const SVG = "http://www.w3.org/2000/svg";

/**
 * What there is of the kids, as append() takes it.
 * @param {readonly Kid[]} kids
 */
const there = (kids) => /** @type {(Node | string)[]} */ (/** @type {unknown[]} */ (kids).flat(9).filter((kid) => kid !== null && kid !== undefined && kid !== false));

/** @template {Element} E @param {E} el @param {Attributes<E> | null | undefined} attrs @param {readonly Kid[]} kids */
function build(el, attrs, kids) {
  for (const [name, value] of Object.entries(attrs ?? {})) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith("on")) el.addEventListener(name.slice(2), /** @type {EventListener} */ (value));
    else if (name === "data") Object.assign(/** @type {HTMLElement | SVGElement} */ (/** @type {unknown} */ (el)).dataset, value);
    else el.setAttribute(name, value === true ? "" : String(value));
  }
  el.append(...there(kids));
  return el;
}

/**
 * An HTML element with attributes, "on…" listeners and children.
 * @template {keyof HTMLElementTagNameMap} T @param {T} tag @param {Attributes<HTMLElementTagNameMap[T]> | null} [attrs]
 * @param {...Kid} kids
 */
export const h = (tag, attrs, ...kids) => build(document.createElement(tag), attrs, kids);

/**
 * An SVG element.
 * @template {keyof SVGElementTagNameMap} T @param {T} tag @param {Attributes<SVGElementTagNameMap[T]> | null} [attrs]
 * @param {...Kid} kids
 */
export const s = (tag, attrs, ...kids) => build(document.createElementNS(SVG, tag), attrs, kids);

/**
 * Sets an attribute (null removes it) unless it has that value already.
 * @param {Element} el @param {string} name @param {unknown} value
 */
export function attr(el, name, value) {
  if (value === null || value === undefined || value === false) {
    if (el.hasAttribute(name)) el.removeAttribute(name);
    return;
  }
  const text = value === true ? "" : String(value);
  if (el.getAttribute(name) !== text) el.setAttribute(name, text);
}

/**
 * Sets the text of an element unless it reads so already.
 * @param {Element} el @param {string} text
 */
export function words(el, text) {
  if (el.textContent !== text) el.textContent = text;
}

/**
 * Sets a property (value, checked, hidden, disabled, …) unless it has that value already.
 * @template {Element} E @template {keyof E} K @param {E} el @param {K} name @param {E[K]} value
 */
export function prop(el, name, value) {
  if (el[name] !== value) el[name] = value;
}

/**
 * Sets one CSS property through the object model, which a strict style policy allows.
 * @param {HTMLElement | SVGElement} el @param {string} name @param {string} value
 */
export function style(el, name, value) {
  if (el.style.getPropertyValue(name) !== value) el.style.setProperty(name, value);
}

/**
 * Adds or removes a class.
 * @param {Element} el @param {string} name @param {unknown} on
 */
export const flag = (el, name, on) => el.classList.toggle(name, Boolean(on));

/** @type {WeakMap<Element, string>} */
const filled = new WeakMap();

/**
 * Replaces the children of an element only when `key` differs from the last call's.
 * @param {Element} el @param {unknown} key @param {() => Kid} makeKids
 */
export function refill(el, key, makeKids) {
  const mark = JSON.stringify(key);
  if (filled.get(el) === mark) return false;
  filled.set(el, mark);
  el.replaceChildren(...there([makeKids()]).filter(Boolean));
  return true;
}

/**
 * Lets the next refill of an element fill it, whatever its key.
 * @param {Element} el
 */
export const refillAnew = (el) => filled.delete(el);

/**
 * An element of index.html.
 * @param {string} id
 */
export const byId = (id) => /** @type {HTMLElement} */ (document.getElementById(id));

/** The page's one dialog, for questions. */
export const dialog = () => /** @type {HTMLDialogElement} */ (byId("ask"));

/** @type {{ el: HTMLElement | null, timer: number }} */
const spoken = { el: null, timer: 0 };

/**
 * Says something to a screen reader, politely; the same words twice are said twice.
 * @param {string} text
 */
export function say(text) {
  const el = (spoken.el ??= byId("say"));
  el.textContent = "";
  clearTimeout(spoken.timer);
  spoken.timer = setTimeout(() => (el.textContent = text), 60);
}

let serial = 0;
/**
 * A fresh id, to tie labels and descriptions to their fields.
 * @param {string} stem
 */
export const newId = (stem) => `${stem}-${++serial}`;
