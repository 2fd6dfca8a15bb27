// The one writer of the document: makers of elements, and setters that skip what is already so.

const SVG = "http://www.w3.org/2000/svg";

function build(el, attrs, kids) {
  for (const [name, value] of Object.entries(attrs ?? {})) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith("on")) el.addEventListener(name.slice(2), value);
    else if (name === "data") Object.assign(el.dataset, value);
    else el.setAttribute(name, value === true ? "" : value);
  }
  el.append(...kids.flat(9).filter((kid) => kid !== null && kid !== undefined && kid !== false));
  return el;
}

/** An HTML element with attributes, "on…" listeners and children. */
export const h = (tag, attrs, ...kids) => build(document.createElement(tag), attrs, kids);

/** An SVG element. */
export const s = (tag, attrs, ...kids) => build(document.createElementNS(SVG, tag), attrs, kids);

/** Sets an attribute (null removes it) unless it has that value already. */
export function attr(el, name, value) {
  if (value === null || value === undefined || value === false) {
    if (el.hasAttribute(name)) el.removeAttribute(name);
    return;
  }
  const text = value === true ? "" : String(value);
  if (el.getAttribute(name) !== text) el.setAttribute(name, text);
}

/** Sets the text of an element unless it reads so already. */
export function words(el, text) {
  if (el.textContent !== text) el.textContent = text;
}

/** Sets a property (value, checked, hidden, disabled, …) unless it has that value already. */
export function prop(el, name, value) {
  if (el[name] !== value) el[name] = value;
}

/** Sets one CSS property through the object model, which a strict style policy allows. */
export function style(el, name, value) {
  if (el.style.getPropertyValue(name) !== value) el.style.setProperty(name, value);
}

/** Adds or removes a class. */
export const flag = (el, name, on) => el.classList.toggle(name, Boolean(on));

/** Replaces the children of an element only when `key` differs from the last call's. */
export function refill(el, key, makeKids) {
  const mark = JSON.stringify(key);
  if (el.refillKey === mark) return false;
  el.refillKey = mark;
  el.replaceChildren(...[makeKids()].flat(9).filter(Boolean));
  return true;
}

const spoken = { el: null, timer: 0 };

/** Says something to a screen reader, politely; the same words twice are said twice. */
export function say(text) {
  spoken.el ??= document.getElementById("say");
  spoken.el.textContent = "";
  clearTimeout(spoken.timer);
  spoken.timer = setTimeout(() => (spoken.el.textContent = text), 60);
}

let serial = 0;
/** A fresh id, to tie labels and descriptions to their fields. */
export const newId = (stem) => `${stem}-${++serial}`;
