// @ts-check
// The two themes: which one is on, and the colours that the core needs for drawing.

import { h, prop, words } from "./dom.js";
import { keep, recall } from "./device.js";
import { icon } from "./icons.js";
import { decimalSign, t } from "./text.js";
import { choiceOf } from "./widgets.js";

/** @type {Set<() => unknown>} */
const listeners = new Set();
/** @type {HTMLElement | null} */
let probe = null;

/** @typedef {"light" | "dark"} Theme */

export const THEMES = /** @type {const} */ (["light", "dark"]);
/**
 * What earlier versions kept for a choice.
 * @type {Record<string, Theme>}
 */
const KEPT_BEFORE = { paper: "light", smoked: "dark" };

/** The theme on screen now. @returns {Theme} */
export function currentTheme() {
  const chosen = document.documentElement.dataset.theme;
  if (chosen === "light" || chosen === "dark") return chosen;
  return matchMedia("(prefers-color-scheme: light)").matches ? "light" : "dark";
}

/** Takes up the kept choice, and follows the system where none was made. */
export function startTheme() {
  const kept = recall("theme");
  const chosen = THEMES.find((one) => one === kept) ?? (typeof kept === "string" && Object.hasOwn(KEPT_BEFORE, kept) ? KEPT_BEFORE[kept] : undefined);
  if (chosen) document.documentElement.dataset.theme = chosen;
  matchMedia("(prefers-color-scheme: light)").addEventListener("change", () => listeners.forEach((tell) => tell()));
  for (const when of ["beforeprint", "afterprint"]) addEventListener(when, () => listeners.forEach((tell) => tell()));
}

/**
 * Turns to a theme and keeps the choice.
 * @param {Theme} theme
 */
function chooseTheme(theme) {
  document.documentElement.dataset.theme = theme;
  keep("theme", theme);
  listeners.forEach((tell) => tell());
}

/** A choice of the theme, by name, with what is on beside it. */
export function themeChoice() {
  const sign = h("span", {}), name = h("span", { class: "word" });
  /** @type {HTMLSelectElement} */
  const select = h("select", { id: "theme-choice", "aria-label": t("tools-theme"), title: t("tools-theme"), onchange: () => chooseTheme(select.value === "light" ? "light" : "dark") },
    THEMES.map((theme) => h("option", { value: theme }, t(`theme-${theme}`))));
  const tell = () => {
    const theme = currentTheme();
    prop(select, "value", theme);
    sign.replaceChildren(icon(theme));
    words(name, t(`theme-${theme}`));
  };
  onTheme(tell);
  tell();
  return choiceOf(select, sign, name);
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

/** The trace's colours for the core. */
export function stripTheme() {
  return {
    ground: colour("--screen"), grid: colour("--screen-grid"), axis: colour("--screen-axis"), ink: colour("--trace"),
    decimal: decimalSign(), accent: colour("--amber"), faint: colour("--trace-faint"), font: "Georgia, 'Liberation Serif', serif",
  };
}
