// @ts-check
// The class at a glance: how many stand where, what to talk about, groups side by side, what changed. All counting is the core's.

import { attr, h, style } from "../dom.js";
import { listed, num, t } from "../text.js";
import { state } from "./state.js";
import { named, nameOf, NONE, OF } from "./words.js";
/** @import { FaultBook } from '../types/page' */
/** @import { ClassState, ClassTold, Often } from '../types/told' */

/** @type {ClassState[]} */
export const STATES = ["absent", "unusable", "wrong_bench", "tried", "ready", "waived"];
/** What is looked at besides states: who is not on the list. */
export const UNLISTED = "unlisted";
const MOST_CHANGES = 12, MOST_TALK = 6;

/** What students are talked to about, and by which they are found. */
export const ABOUT = /** @type {const} */ (["misreadings", "wrong", "trace", "faults"]);

/**
 * The words for something that stands in results, by its kind.
 * @param {string} about Such as `trace:hum`. @param {FaultBook} faults
 */
export function aboutWords(about, faults) {
  const cut = about.indexOf(":");
  const kind = about.slice(0, cut), id = about.slice(cut + 1);
  if (kind === "faults") return faults.of(id)?.name ?? id;
  return named(kind === "misreadings" ? "class-misreading" : kind === "wrong" ? "debrief-step" : "class-trace", id);
}

/**
 * The parts of a summary; filtered(): another state is looked at.
 * @param {ClassTold} told @param {FaultBook} faults @param {() => unknown} filtered @returns {Node[]}
 */
export function report(told, faults, filtered) {
  /** @param {string} one @param {string} figure @param {string} name @returns {HTMLElement} */
  const tileOf = (one, figure, name) => {
    const tile = h("button", { type: "button", class: `tile tile-${one}`, "aria-pressed": String(state.view.only === one), onclick: () => {
      state.view.only = state.view.only === one ? "" : one;
      for (const other of tiles.querySelectorAll("button")) attr(other, "aria-pressed", String(other === tile && state.view.only === one));
      filtered();
    } }, h("b", {}, figure), h("span", {}, name));
    return tile;
  };
  const beside = told.lines.length - told.counted;
  const tiles = h("div", { class: "tiles", role: "group", "aria-label": t("class-tiles") },
    STATES.filter((one) => told.states[one] > 0 || one !== "waived").map((one) => tileOf(one, t("class-of", { n: told.states[one], of: told.counted }), named("class-state", one))),
    beside > 0 && tileOf(UNLISTED, num(beside, 0), t("class-not_listed")));
  const of = h("p", { class: "quiet tiles-of" }, told.listed > 0 ? t("class-tiles_of", { n: told.counted }) : t("class-tiles_all", { n: told.counted }));
  const { minutes } = told;
  const notes = [
    told.not_compared > 0 && t("class-not_compared", { n: told.not_compared }),
    ...told.several.map(([name, n]) => t("class-several", { name, n })),
    told.again > 0 && t("class-again", { n: told.again }),
    told.turned > 0 && t("class-turned", { n: told.turned }),
  ].filter((note) => typeof note === "string");
  const parts = [
    h("p", { class: "only-printed" }, [listed([...new Set(state.course.setTold().map((one) => one.title))]), new Date().toLocaleDateString()].filter(Boolean).join(", ")),
    h("div", { class: "tiles-told" }, of, tiles), minutes && h("p", { class: "quiet class-time" }, t("class-minutes_of", { v: num(minutes[1], 0), low: num(minutes[0], 0), high: num(minutes[2], 0) }), told.checked > 0 && h("span", { class: "talk-about" }, " ", t("class-talk_about"))), notes.map((note) => h("p", { class: "quiet class-note" }, note)), changes(told),
    h("div", { class: "class-talk" },
      ABOUT.map((key) => talk(key, told, faults, filtered))),
    groups(told),
  ];
  return parts.flat().filter((part) => part instanceof Node);
}

/**
 * What came at first, and what was still there at last, the darker the more; a press shows whose results those are.
 * @param {(typeof ABOUT)[number]} key @param {ClassTold} told @param {FaultBook} faults @param {() => unknown} filtered
 */
function talk(key, told, faults, filtered) {
  /** @type {(Often & { of: number })[]} */
  const lines = key === "faults" ? told.faults.filter(({ met, left }) => met > 0 && left > 0).map(({ id, left, met }) => ({ id, first: left, last: left, of: met }))
    : told[key].slice(0, MOST_TALK).map((one) => ({ ...one, of: told.checked }));
  if (lines.length === 0 || lines[0].of === 0) return null;
  const figure = (/** @type {Often & { of: number }} */ one) => (key === "faults" ? t("class-of", { n: one.last, of: one.of }) : one.first === one.last ? t("class-both", { n: one.first }) : t("class-from_to", { first: one.first, last: one.last }));
  const id = `class-${key}-h`;
  return h("section", { class: `heat heat-${key}`, "aria-labelledby": id }, h("h2", { id }, t(`class-${key}`)), h("p", { class: "quiet" }, key === "faults" ? t("class-faults_about") : t("class-first_last", { of: told.checked })),
    h("ul", {}, lines.map((one) => row(`${key}:${one.id}`, aboutWords(`${key}:${one.id}`, faults), figure(one), Math.max(one.first, one.last) / one.of, filtered))));
}

/** @param {string} about @param {string} name @param {string} figure @param {number} share @param {() => unknown} filtered */
function row(about, name, figure, share, filtered) {
  const press = h("button", { type: "button", class: "heat-row", "aria-pressed": String(state.view.about === about), data: { about }, onclick: () => {
    state.view.about = state.view.about === about ? "" : about;
    filtered();
  } }, h("span", { class: "heat-name" }, name), h("span", { class: "heat-n" }, figure));
  style(press, "--heat", share.toFixed(3));
  return h("li", {}, press);
}

/** @param {ClassTold} told */
function groups(told) {
  if (told.groups.length < 2) return null;
  // A group of those who are not on the list can stand where nobody on it does.
  const stands = STATES.filter((_, k) => told.groups.some((one) => one.states[k] > 0));
  const head = ["group", "n", ...stands, "points", "misreading"];
  const title = (/** @type {string} */ key) => (STATES.some((one) => one === key) ? named("class-state", key) : t(`class-group_${key}`));
  return h("section", { class: "groups", "aria-labelledby": "groups-h" }, h("h2", { id: "groups-h" }, t("class-groups")), h("div", { class: "wide-table", role: "group", "aria-labelledby": "groups-h", tabindex: "0" }, h("table", {},
    h("thead", {}, h("tr", {}, head.map((key) => h("th", { scope: "col" }, title(key))))),
    h("tbody", {}, told.groups.map((one) => h("tr", {}, h("th", { scope: "row" }, one.group || t("class-group_none")), h("td", {}, num(one.n, 0)),
      stands.map((name) => h("td", {}, num(one.states[STATES.indexOf(name)], 0))),
      h("td", {}, one.points === null ? NONE : t("class-points_of", { n: num(one.points, 1), of: told.course ? OF * told.course.parts.length : OF })), h("td", {}, one.misreading ? named("class-misreading", one.misreading) : NONE)))))));
}

/** What is otherwise since it was graded by other criteria, saved, or looked at the last time. */
function changes(/** @type {ClassTold} */ told) {
  if (told.changes.length === 0) return null;
  const points = (/** @type {number | null} */ n) => (n === null ? NONE : num(n, 0));
  const place = new Map(told.lines.map((line, k) => [line.code, k]));
  return h("details", { class: "class-changes" }, h("summary", {}, t("class-changes", { n: told.changes.length })),
    h("ul", {}, told.changes.slice(0, MOST_CHANGES).map((one) => h("li", {}, t("class-change", {
      name: nameOf(told.lines[place.get(one.code) ?? 0], place.get(one.code) ?? 0), before: one.before ? named("class-state", one.before) : NONE, now: named("class-state", one.now), from: points(one.points[0]), to: points(one.points[1]),
    })))), told.changes.length > MOST_CHANGES && h("p", { class: "quiet" }, t("class-changes_more", { n: told.changes.length - MOST_CHANGES })));
}

