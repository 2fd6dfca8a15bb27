// @ts-check
// What goes on paper: a page to hand out, a worksheet, a list for the station, and a key for whoever teaches.

import { h } from "../dom.js";
import { lineKey, taskLine } from "../sheet/task.js";
import { askedOf } from "../sheet/asked.js";
import { coded, has, num, t } from "../text.js";
import { grid } from "./grid.js";
/** @import { FaultBook, Kid } from '../types/page' */
/** @import { View } from '../types/view' */
/** @import { FaultSpec, OwnMisreading } from '../types/told' */

/**
 * What the sheets are made of: the bench as one student finds it, the link with its picture, the faults that were set, misreadings of the instructor's own.
 * @typedef {{ view: View, link: string, picture: Element | null, faults: FaultSpec[], own: OwnMisreading[], book: FaultBook }} Subject
 */

/** @param {string} kind @param {string} title @param {string | null} under @param {...Kid} kids */
const sheet = (kind, title, under, ...kids) => h("article", { class: `paper-sheet paper-${kind}`, data: { sheet: kind } },
  h("header", { class: "paper-head" }, h("h2", {}, title), under && h("p", {}, under)), kids,
  h("footer", { class: "paper-foot" }, h("p", {}, t("paper-foot"))));

/** @param {string} label */
const blankLine = (label) => h("p", { class: "paper-line" }, h("span", {}, label), h("i", {}));

/** @param {string} heading @param {...Kid} kids */
const part = (heading, ...kids) => h("section", {}, h("h3", {}, heading), kids);

/** @param {string[]} lines @param {string} [kind] */
const list = (lines, kind = "") => h("ul", { class: kind }, lines.map((line) => h("li", {}, line)));

/** To hand out: what it is, where it is, what is asked. @param {Subject} of */
export function handout({ view, link, picture }) {
  const { scenario, task } = view;
  if (!scenario) return null;
  const tries = scenario.assignment?.attempts;
  return sheet("handout", scenario.title, scenario.aim,
    h("div", { class: "paper-two" },
      h("div", {}, h("p", { class: "paper-brief" }, scenario.brief), taskLine(task, scenario.pass)),
      h("div", { class: "paper-link" }, picture, h("p", { class: "paper-address" }, link.length > 120 ? t("paper-scan") : link))),
    part(t("asked-title"), list(askedOf(task))),
    part(t("paper-points"), h("div", { class: "paper-points" }, view.asked.filter(({ points }) => points.length > 0).map(({ row, points }) => h("div", {}, h("h4", {}, t(`rubric-${row}`)), list(points.map((code) => coded("rubric-point", code))))))),
    part(t("paper-how"), h("ol", {}, [t("paper-how_open"), t("paper-how_code"), tries ? t("paper-how_tries", { n: num(tries) }) : null, t("paper-how_hand")].map((line) => line && h("li", {}, line)))),
    h("div", { class: "paper-lines" }, blankLine(t("paper-code")), blankLine(t("paper-due"))),
    h("p", { class: "paper-caution" }, t("caution-long")));
}

/**
 * The blanks as lines; where two windows are compared, those of each under a head of its own, as on the page.
 * @param {import('../types/names').Field[]} fields @param {(field: import('../types/names').Field) => HTMLElement} line
 */
function windowsOf(fields, line) {
  const first = fields.filter((field) => field.endsWith("_1"));
  if (first.length === 0) return h("div", { class: "paper-reading" }, fields.map(line));
  const second = fields.filter((field) => !field.endsWith("_1"));
  return h("div", { class: "paper-two-windows" }, [first, second].map((of, k) => h("div", { class: "paper-reading" }, h("h4", {}, t("sheet-window_n", { n: k + 1 })), of.map(line))));
}

/** To fill in by hand, at any bench. @param {Subject} of */
export function worksheet({ view }) {
  const { scenario, task } = view;
  /** @param {import('../types/names').Field} field */
  const line = (field) => {
    const key = lineKey(field, task.kind);
    return h("p", { class: "paper-line" }, h("span", {}, t(key)), h("i", {}), has(`${key}.after`) && h("span", {}, t(`${key}.after`)));
  };
  return sheet("worksheet", t("paper-worksheet"), scenario?.title ?? null,
    h("div", { class: "paper-lines" }, [t("paper-name"), t("paper-partner"), t("paper-date"), t("paper-station_no")].map(blankLine)),
    part(t("paper-settings"), h("div", { class: "paper-lines" }, [t("paper-range"), t("paper-base"), t("paper-rate"), t("paper-finger")].map(blankLine))),
    part(t("paper-strip"), grid(t("paper-grid"))),
    task.fields.length > 0 && part(t("paper-reading"), windowsOf(task.fields, line), h("p", { class: "paper-work" }, t("paper-work")), h("div", { class: "paper-ruled" }, [0, 1].map(() => h("i", {})))),
    part(t("paper-found"), h("table", { class: "paper-table" }, h("thead", {}, h("tr", {}, [t("paper-saw"), t("paper-did"), t("paper-then")].map((head) => h("th", { scope: "col" }, head)))), h("tbody", {}, [0, 1, 2].map(() => h("tr", {}, [0, 1, 2].map(() => h("td", {}))))))),
    h("div", { class: "paper-lines" }, blankLine(t("paper-seen_by"))));
}

/** To go through at each station on the day. @param {Subject} of */
export function station({ view }) {
  const power_line = view.scenario?.power_line;
  return sheet("station", t("paper-station"), power_line ? t("paper-power_line", { hz: num(power_line.hz), volts: num(power_line.volts) }) : null,
    h("div", { class: "paper-lines" }, [t("paper-station_no"), t("paper-by")].map(blankLine)),
    part(t("paper-before"), list([t("paper-before_cable"), t("paper-before_unit"), t("paper-before_seen"), t("paper-before_input"), t("paper-before_sensor"), t("paper-before_away"), t("paper-before_strip"), t("paper-before_set"), t("paper-before_try"), t("paper-before_spare")], "paper-ticks")),
    part(t("paper-pair"), list([t("paper-pair_ask"), t("paper-pair_finger"), t("paper-pair_loosen"), t("paper-pair_still"), t("paper-pair_uneven"), t("paper-pair_stop")], "paper-ticks")),
    part(t("paper-end"), list([t("paper-end_saved"), t("paper-end_clean"), t("paper-end_off"), t("paper-end_told")], "paper-ticks")),
    h("p", { class: "paper-caution" }, t("caution-short")));
}

/** How strong a fault is, where the scenario says so. @param {FaultSpec} fault */
const strength = ({ severity }) => (typeof severity === "number" ? t("paper-key_severity", { v: num(100 * severity, 0) }) : Array.isArray(severity) ? t("paper-key_severities", { low: num(100 * severity[0], 0), high: num(100 * severity[1], 0) }) : null);

/** For whoever teaches: what is wrong with this bench, how it shows, what tells it, what mends it. @param {Subject} of */
export function key({ view, faults, own, book }) {
  const words = faults.flatMap((fault) => {
    const one = book.of(fault.name);
    return one ? [{ fault, one }] : [];
  });
  const power_line = view.scenario?.power_line, window_s = view.scenario?.pass.window_s ?? 15;
  return sheet("key", t("paper-key"), [view.scenario?.title, power_line && t("paper-power_line", { hz: num(power_line.hz), volts: num(power_line.volts) })].filter(Boolean).join(" · "),
    h("p", {}, t("paper-key_about")),
    words.length === 0 ? h("p", {}, t("paper-key_none")) : words.map(({ fault, one }) => part(one.name, strength(fault) && h("p", {}, strength(fault)),
      h("dl", { class: "paper-fault" }, [[t("fault-cause"), one.cause], [t("fault-seen"), one.seen], [t("fault-test"), one.test], [t("fault-remedy"), one.remedy], [t("fault-alike"), one.confused_with.map((id) => book.of(id)?.name ?? id).join("; ")]].map(([head, text]) => text && h("div", {}, h("dt", {}, head), h("dd", {}, text)))))),
    own.length > 0 && part(t("paper-key_misreadings"), list(own.map((one) => t("paper-key_misreading", { field: t(`debrief-step-${one.field}`), formula: one.formula, words: one.words })))),
    part(t("paper-key_reading"), list([t("paper-key_own"), t("paper-key_edge", { s: num(window_s), v: num(60 / window_s, 1) }), t("paper-key_true")])));
}

export const SHEETS = { handout, worksheet, station, key };
