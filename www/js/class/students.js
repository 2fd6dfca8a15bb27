// @ts-check
// One line a student: searched, sorted, filtered; what was decided for them; a look at what they handed in.

import { attr, h, newId, prop } from "../dom.js";
import { num, t } from "../text.js";
import { button, Choice } from "../widgets.js";
import { decide } from "./care.js";
import { aboutWords, STATES, UNLISTED } from "./report.js";
import { state } from "./state.js";
import { groupName, named, nameOf, NONE, partOf, remarksOf, wrongOf } from "./words.js";
/** @import { FaultBook, Kid } from '../types/page' */
/** @import { ClassLine, ClassTold } from '../types/told' */

const COLUMNS = ["student", "ready", "score", "passed", "wrong", "minutes", "look"];

/** @typedef {{ line: ClassLine, k: number }} Placed */
/** @type {Record<string, (a: Placed, b: Placed) => number>} */
const SORTS = {
  state: (a, b) => STATES.indexOf(a.line.state) - STATES.indexOf(b.line.state) || a.k - b.k,
  name: (a, b) => nameOf(a.line, a.k).localeCompare(nameOf(b.line, b.k), undefined, { numeric: true }),
  points: (a, b) => (a.line.points ?? -1) - (b.line.points ?? -1) || a.k - b.k,
  group: (a, b) => a.line.group.localeCompare(b.line.group, undefined, { numeric: true }) || a.k - b.k,
  list: (a, b) => a.k - b.k,
};

/**
 * The lines that are looked for, in the order that is asked for: by who they are, and by what went wrong.
 * @param {ClassTold} told @param {FaultBook} faults @returns {Placed[]}
 */
export function shown(told, faults) {
  const { search, sort, group, only, about } = state.view;
  const wanted = search.trim().toLowerCase();
  const has = (/** @type {ClassLine} */ line) => [line.code, line.name, line.email, ...wrongOf(line, faults)].some((text) => text.toLowerCase().includes(wanted));
  // The tiles count those on the list, where there is one.
  const counted = (/** @type {ClassLine} */ line) => line.listed || told.listed === 0;
  const asked = (/** @type {ClassLine} */ line) => !only || (only === UNLISTED ? !counted(line) : counted(line) && line.state === only);
  return told.lines.map((line, k) => ({ line, k }))
    .filter(({ line }) => asked(line) && (!about || line.met.includes(about)) && (!group || line.group === group) && (!wanted || has(line)))
    .sort(SORTS[sort] ?? SORTS.state);
}

export class Students {
  /** @param {{ faults: FaultBook, look: (k: number) => unknown, altered: () => unknown }} ways */
  constructor(ways) {
    this.ways = ways;
    /** @type {ClassTold | null} */
    this.told = null;
    const id = newId("search");
    /** @type {HTMLInputElement} */
    const search = h("input", { id, class: "txt", type: "search", autocomplete: "off", oninput: () => this.look("search", search.value) });
    prop(search, "value", state.view.search);
    this.sort = new Choice(t("class-sort"), (key) => this.look("sort", key));
    this.sort.set(Object.keys(SORTS).map((key) => [key, t(`class-sort_${key}`)]), state.view.sort);
    this.group = new Choice(t("class-group"), (key) => this.look("group", key));
    this.count = h("p", { class: "quiet", role: "status" });
    this.about = button("", () => { state.view.about = ""; if (this.told) this.show(this.told); }, { kind: "btn-small" });
    this.body = h("tbody");
    this.el = h("section", { class: "students", "aria-labelledby": "students-h" }, h("h2", { id: "students-h" }, t("class-students")),
      h("div", { class: "row find-row" }, h("div", { class: "fld" }, h("label", { for: id }, t("class-search")), search), this.sort.el, this.group.el, this.about, this.count),
      h("table", {}, h("thead", {}, h("tr", {}, COLUMNS.map((key) => h("th", { scope: "col", class: `c-${key}` }, t(`class-col_${key}`))))), this.body));
  }

  /** @param {"search" | "sort" | "group"} what @param {string} value */
  look(what, value) {
    state.view[what] = value;
    if (this.told) this.show(this.told);
  }

  /** @param {ClassTold} told */
  show(told) {
    this.told = told;
    const groups = [...new Set(told.lines.map((line) => line.group).filter(Boolean))].sort();
    prop(this.group.el, "hidden", groups.length < 2);
    this.group.set([["", t("class-group_all")], ...groups.map((one) => /** @type {[string, string]} */ ([one, one]))], state.view.group);
    const { about } = state.view;
    prop(this.about, "hidden", !about);
    if (about) this.about.replaceChildren(t("class-about_all", { what: aboutWords(about, this.ways.faults) }));
    for (const press of document.querySelectorAll("#class [data-about]")) if (press instanceof HTMLElement) attr(press, "aria-pressed", String(press.dataset.about === about));
    const lines = shown(told, this.ways.faults);
    this.count.textContent = t("class-shown", { n: lines.length, of: told.lines.length });
    this.body.replaceChildren(...lines.map(({ line, k }) => this.row(line, k)));
  }

  /** @param {ClassLine} line @param {number} k */
  row(line, k) {
    const name = nameOf(line, k);
    const remarks = remarksOf(line, this.told);
    const { care } = line;
    const decided = [care.tries > 0 && t("class-care_tries_of", { n: care.tries }), care.until_s > 0 && t("class-care_until_of", { when: new Date(care.until_s * 1000).toLocaleString() }), care.note && t("class-care_noted")].filter((one) => typeof one === "string" && one);
    /** @param {string} key @param {...Kid} kids */
    const cell = (key, ...kids) => h("td", { class: `c-${key}${kids[0] === NONE ? " is-none" : ""}`, "data-label": t(`class-col_${key}`) }, kids);
    const wrong = wrongOf(line, this.ways.faults);
    /** @type {HTMLInputElement} */
    const tick = h("input", { type: "checkbox", "aria-label": t("class-tick", { name }), onchange: () => (tick.checked ? state.view.ticked.add(line.code) : state.view.ticked.delete(line.code)) });
    tick.checked = state.view.ticked.has(line.code);
    return h("tr", { class: line.state === "ready" || line.state === "waived" ? "is-ready" : "is-not", data: { code: state.view.names ? line.code : undefined, state: line.state } },
      h("th", { scope: "row", class: "c-student" }, h("label", { class: "ticked" }, tick, h("span", {}, name)), state.view.names && line.group && h("span", { class: "of-group" }, groupName(line.group)),
        remarks.length > 0 && h("span", { class: "remarks" }, remarks.join(" ")), decided.length > 0 && h("span", { class: "decided" }, decided.join(" "))),
      cell("ready", h("span", { class: "state" }, named("class-state", line.state)), line.parts.length > 0 && h("ol", { class: "line-parts" }, line.parts.map((part, k) => h("li", { data: { part: k + 1, state: part.state } }, partOf(part))))),
      cell("score", line.points === null ? NONE : line.parts.length > 0 ? t("class-of", { n: line.points, of: line.of }) : num(line.points, 0)),
      cell("passed", line.results.length === 0 ? NONE : t("class-of", { n: line.passes, of: line.parts.length || line.results.length })),
      cell("wrong", wrong.length > 0 ? wrong.join("; ") : NONE),
      cell("minutes", line.results.length === 0 ? NONE : num(line.minutes, 0)),
      h("td", { class: "c-look" }, line.results.map((r, i) => button(line.results.length > 1 ? t("class-look_n", { n: i + 1 }) : t("class-look"), () => this.ways.look(r), { kind: `btn-small${r === line.chosen && line.results.length > 1 ? " is-chosen" : ""}`, data: { look: r }, "aria-label": t("class-look_at", { name, n: i + 1 }) })),
        button(t("class-decide"), async () => { if (await decide(line, name)) this.ways.altered(); }, { kind: "btn-small btn-plain", "aria-label": t("class-decide_for", { name }) })));
  }
}
