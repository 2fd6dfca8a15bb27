// @ts-check
// The two themes: which one is on, and the colours that the core needs for drawing.

import { h } from "./dom.js";
import { keep, recall } from "./device.js";
import { decimalSign } from "./text.js";

/** @type {Set<() => unknown>} */
const listeners = new Set();
/** @type {HTMLElement | null} */
let probe = null;

/** The theme on screen now: "paper" or "smoked". */
export function currentTheme() {
  const chosen = document.documentElement.dataset.theme;
  if (chosen) return chosen;
  return matchMedia("(prefers-color-scheme: light)").matches ? "paper" : "smoked";
}

/** Takes up the kept choice, and follows the system where none was made. */
export function startTheme() {
  const kept = recall("theme");
  if (kept === "paper" || kept === "smoked") document.documentElement.dataset.theme = kept;
  matchMedia("(prefers-color-scheme: light)").addEventListener("change", () => listeners.forEach((tell) => tell()));
  for (const when of ["beforeprint", "afterprint"]) addEventListener(when, () => listeners.forEach((tell) => tell()));
}

/** Turns to the other theme and keeps the choice. */
export function toggleTheme() {
  const next = currentTheme() === "paper" ? "smoked" : "paper";
  document.documentElement.dataset.theme = next;
  keep("theme", next);
  listeners.forEach((tell) => tell());
}

/**
 * Calls tell() when the theme on screen changes; offTheme ends that.
 * @param {() => unknown} tell
 */
export const onTheme = (tell) => listeners.add(tell);
/** @param {() => unknown} tell */
export const offTheme = (tell) => listeners.delete(tell);

/**
 * A custom property's colour as #rrggbb, resolved for the theme on screen.
 * @param {string} name
 */
function colour(name) {
  probe ??= document.body.appendChild(h("span", { class: "vh", "aria-hidden": "true" }));
  probe.style.setProperty("color", `var(${name})`);
  const parts = (getComputedStyle(probe).color.match(/[\d.]+/g) ?? []).slice(0, 3);
  return "#" + parts.map((part) => Math.round(Number(part)).toString(16).padStart(2, "0")).join("");
}

/** The strip's colours for the core. */
export function stripTheme() {
  return {
    ground: colour("--soot"), grid: colour("--soot-grid"), axis: colour("--soot-axis"), ink: colour("--trace"),
    decimal: decimalSign(), accent: colour("--amber"), faint: colour("--trace-faint"), font: "Georgia, 'Liberation Serif', serif",
  };
}
