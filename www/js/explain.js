// @ts-check
// One line for each control: what it does, in which unit. Always there for whoever asks a screen reader or rests the pointer
// on it; written under each control where the reader has asked for that.

import { attr, h, newId } from "./dom.js";
import { keep, recall } from "./device.js";
import { t } from "./text.js";

const shown = () => document.body.dataset.explain === "on";

/**
 * Gives the control in `el` (a widget's element) the line of a key, under it; returns el.
 * @template {HTMLElement} E @param {E} el @param {string} key
 */
export function explain(el, key) {
  const line = t(key);
  const id = newId("explain");
  const control = el.matches("button, input, select") ? el : (el.querySelector("select, input, button") ?? el);
  attr(control, "aria-describedby", [control.getAttribute("aria-describedby"), id].filter(Boolean).join(" "));
  el.title = line;
  if (el.matches("label")) {
    // The line is no part of the switch's name.
    const name = el.querySelector("span");
    if (name) attr(control, "aria-labelledby", (name.id ||= newId("name")));
  }
  const small = h("small", { class: "explain", id }, line);
  if (el === control) el.after(small);
  else el.append(small);
  return el;
}

/**
 * Gives all choices in `el`, which do the same each for its own thing, one line together; returns el.
 * @template {HTMLElement} E @param {E} el @param {string} key
 */
export function explainAll(el, key) {
  const id = newId("explain");
  for (const control of el.querySelectorAll("select")) attr(control, "aria-describedby", id);
  el.append(h("small", { class: "explain", id }, t(key)));
  return el;
}

/** A button that writes the lines under the controls, everywhere on the page, or takes them away. */
export function explainButton() {
  const el = h("button", { type: "button", class: "btn btn-plain explain-all", onclick: () => {
    document.body.dataset.explain = shown() ? "off" : "on";
    keep("explain", shown());
    for (const one of document.querySelectorAll(".explain-all")) attr(one, "aria-pressed", String(shown()));
  } }, t("explain-all"));
  document.body.dataset.explain ??= recall("explain") ? "on" : "off";
  attr(el, "aria-pressed", String(shown()));
  return el;
}
