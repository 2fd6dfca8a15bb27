// @ts-check
// The skill map: the twelve skills, each as a short trace, with how sure it is, what it rests on, what is wanting, and what to do next.

import { skillMap } from "../core.js";
import { asideNote } from "../device/aside.js";
import { aside } from "../device.js";
import { h, s, words } from "../dom.js";
import { pastEvidence, setEvidence } from "../evidence.js";
import { dayText, whenText } from "../notebook/words.js";
import { download } from "../download.js";
import { newSeed, routeTo } from "../route.js";
import { problemOf } from "../scenarios.js";
import { agoText, bringTexts, t } from "../text.js";
import { button } from "../widgets.js";
import { proposed, SKILLS } from "./propose.js";
/** @import { KnownScenario, ScenarioEntry, Ways } from '../types/page' */
/** @import { KeptEvidence, SkillMap, Standing } from '../types/told' */

/**
 * Fills the section. goBack(): returns to what was there before; inLab: whether that is a bench.
 * @param {HTMLElement} root @param {Ways & { scenarios: ScenarioEntry[] }} ways
 */
export async function showSkills(root, { scenarios, goBack, inLab }) {
  await Promise.all([bringTexts("skills"), bringTexts("notebook"), bringTexts("faults")]);
  const before = aside().length;
  new SkillsScreen(root, /** @type {KnownScenario[]} */ (scenarios.filter((one) => !problemOf(one))), goBack, inLab).show();
  const note = await asideNote(before);
  if (note) root.querySelector(".side-lead")?.after(note);
}

class SkillsScreen {
  /** @param {HTMLElement} root @param {KnownScenario[]} scenarios @param {() => unknown} goBack @param {boolean} inLab */
  constructor(root, scenarios, goBack, inLab) {
    this.scenarios = scenarios;
    /** @type {KeptEvidence[]} */
    this.past = [];
    this.lead = h("div", { class: "side-lead" }, h("h1", { id: "skills-h", tabindex: "-1" }, t("skills-title")), h("p", { class: "lede" }, t("skills-lede")),
      h("div", { class: "row" }, button(t(inLab ? "side-back" : "side-back_start"), goBack), h("a", { class: "btn btn-plain", href: "#notebook" }, t("side-notebook"))));
    this.next = h("section", { class: "skills-next", "aria-labelledby": "skills-next-h" });
    this.list = h("ul", { class: "skills-list" });
    this.alike = h("section", { class: "skills-alike", "aria-labelledby": "skills-alike-h" });
    this.without = h("div", { class: "quiet skills-without" });
    this.problem = h("p", { class: "problem", role: "alert" });
    this.undo = h("p", { class: "undo", role: "status" });
    this.keys = h("div", { class: "row" }, button(t("skills-json"), () => download("dicrotic-skills.json", JSON.stringify({ format: "dicrotic-skills", version: 1, attempts: this.past }, null, 1)), { pic: "save" }),
      button(t("skills-drop"), () => this.drop(), { kind: "btn-plain", pic: "bin" }));
    root.replaceChildren(this.lead, this.next, this.list, this.alike, h("div", { class: "skills-keys" }, this.without, h("p", { class: "quiet" }, t("skills-kept")), this.keys, this.problem, this.undo));
  }

  show() {
    this.past = pastEvidence();
    const now = Date.now();
    const map = skillMap(this.past, now);
    this.keys.hidden = this.past.length === 0;
    this.next.replaceChildren(...this.proposal(map, now));
    this.list.replaceChildren(...SKILLS.map((skill) => h("li", {}, this.skill(skill, map.skills[skill]))));
    this.sets(map);
    this.without.replaceChildren(...Object.entries(map.without).map(([why, n]) => h("p", {}, t(`skills-without-${why}`, { n }))));
  }

  /** @param {SkillMap} map @param {number} now */
  proposal({ readiness }, now) {
    const next = proposed(this.past, this.scenarios, now);
    return [
      h("div", { class: "skills-go" }, h("h2", { id: "skills-next-h" }, t(next ? "skills-next" : "skills-all_ready")),
        h("p", {}, next ? [t(`skills-why-${next.why}`, { skill: t(`skill-${next.skill}`) }), " ", t(`skills-aid-${next.aid}`)] : t("skills-nothing")),
        next && h("a", { class: "btn btn-strong", href: routeTo(next.id, newSeed()) }, t("skills-go", { title: next.scenario.brief.title }))),
      h("div", { class: "skills-ready" }, h("h2", {}, t("skills-ready_title")), h("p", { class: "readiness" }, Array.from({ length: readiness.need }, (_, i) => s("svg", { class: `ready-pulse${i < readiness.times ? " is-on" : ""}`, viewBox: "0 0 64 30", width: 64, height: 30, "aria-hidden": "true" }, s("path", { d: i < readiness.times ? PULSE : "M2 25H62" }))),
        h("span", {}, t(readiness.ready ? "skills-ready_yes" : "skills-ready_no", { n: readiness.times, need: readiness.need })))),
    ];
  }

  /** @param {string} skill @param {Standing} standing */
  skill(skill, standing) {
    const { state } = standing;
    const rows = this.past.filter((one) => ["pass", "fail"].includes(one.skills?.[skill]?.got)).sort((a, b) => b.at_ms - a.at_ms);
    /** @param {string} id */
    const title = (id) => this.scenarios.find((one) => one.brief.id === id)?.brief.title ?? id;
    return h("article", { class: `skill skill-${state}`, data: { skill } },
      line(state),
      h("div", { class: "skill-head" }, h("h3", {}, t(`skill-${skill}`)), h("p", { class: "skill-state" }, t(`skills-state-${state}`))),
      h("p", { class: "quiet" }, t(`skill-${skill}.about`)),
      ...estimate(standing),
      rows.length > 0 && h("details", { class: "skill-past" }, h("summary", {}, t("skills-evidence", { n: rows.length })),
        h("ul", {}, rows.map((one) => h("li", {}, h("span", { class: "glyph", "aria-hidden": "true" }, one.skills[skill].got === "pass" ? "✓" : "○"), h("span", {}, h("b", {}, t(`skills-got-${one.skills[skill].got}`)), " ", h("a", { href: routeTo(one.scenario, one.seed) }, title(one.scenario)), h("span", { class: "quiet" }, ` ${whenText(one.at_ms)} · ${t("where-seed", { v: one.seed })}`)))))));
  }

  /** The faults that look alike, as far as they were met. @param {SkillMap} map */
  sets({ sets }) {
    const met = Object.entries(sets);
    this.alike.hidden = met.length === 0;
    this.alike.replaceChildren(h("h2", { id: "skills-alike-h" }, t("skills-alike")), h("p", { class: "quiet" }, t("skills-alike_about")),
      h("ul", { class: "skills-list" }, met.map(([set, standing]) => h("li", {}, h("article", { class: `skill skill-${standing.state}`, data: { set } },
        h("div", { class: "skill-head" }, h("h3", {}, t(`impression-${set}`)), h("p", { class: "skill-state" }, t(`skills-state-${standing.state}`))), ...estimate(standing))))));
  }

  drop() {
    const taken = this.past;
    if (!setEvidence([])) return words(this.problem, t("notebook-not_kept"));
    this.show();
    const back = button(t("notebook-put_back"), () => {
      words(this.problem, setEvidence(taken) ? "" : t("notebook-not_kept"));
      this.undo.replaceChildren(t("notebook-is_back"));
      this.show();
    }, { kind: "btn-strong" });
    this.undo.replaceChildren(h("span", {}, t("skills-dropped", { n: taken.length })), " ", back);
    back.focus();
    return undefined;
  }
}

const TEN = 10;

/**
 * How far it is in plain words: what went well of late, how sure that is, what is wanting, when to come back.
 * @param {Standing} standing
 */
function estimate({ state, share, low, high, right, of, last_ms: last, needs, later_ms: later, retest_ms: retest }) {
  if (of === 0 || last === null) return [];
  /** @param {number} one */
  const ten = (one) => Math.round(TEN * one);
  const wanting = state === "due" ? [t("skills-retest_due")] : needs.map((need) => (need === "later" && later !== null && later > Date.now() ? t("skills-need-later", { from: whenText(later) }) : t(`skills-need-${need === "later" ? "day" : need}`)));
  if (state === "ready" && retest !== null) wanting.push(t("skills-retest", { from: dayText(retest) }));
  return [
    h("p", { class: "skill-recent" }, t("skills-recent", { right, of, when: agoText(last) })),
    h("p", { class: "quiet skill-sure" }, t("skills-sure", { p: ten(share), low: ten(low), high: ten(high) })),
    wanting.length > 0 && h("p", { class: "pencil skill-retest" }, wanting.join(" ")),
  ];
}

const PULSE = "M2 25h8c3 0 4-20 7-20s4 13 8 13.500 3-4 6-4 5 10.500 12 10.500h19";
/** @type {Record<string, string>} */
const LINES = {
  new: "M2 25H206",
  practising: "M2 24l6 1 4-4 5 6 6-14 6 15 5-5 6 4c4 0 5-16 8-13s3 8 7 6 4 3 7 4l6-6 5 7 6-12 6 13 7-5 6 3c4 0 5-18 8-14s3 9 7 7 4 4 9 4l6-4 7 5 6-9 6 8 8-4 7 4h12",
  once: "M2 25h66c3 0 4-20 7-20s4 13 8 13.500 3-4 6-4 5 10.500 12 10.500h105",
  ready: "M2 25h8c3 0 4-20 7-20s4 13 8 13.500 3-4 6-4 5 10.500 12 10.500h29c3 0 4-20 7-20s4 13 8 13.500 3-4 6-4 5 10.500 12 10.500h29c3 0 4-20 7-20s4 13 8 13.500 3-4 6-4 5 10.500 12 10.500h28",
};

/**
 * A skill's state as a line: bare, ragged, one pulse, three pulses, three that fade.
 * @param {string} state
 */
const line = (state) => h("div", { class: "skill-strip", "aria-hidden": "true" }, s("svg", { viewBox: "0 0 208 30", preserveAspectRatio: "none" }, s("path", { d: LINES[state === "due" ? "ready" : state] ?? LINES.new })));
