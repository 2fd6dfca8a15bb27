// @ts-check
// The conditions with the way to start each, and the table that fills from A and B.

import { askWhether } from "../ask.js";
import { download } from "../download.js";
import { h, newId, prop, refill, say, words } from "../dom.js";
import { icon } from "../icons.js";
import { fixed, t } from "../text.js";
import { button, Choice } from "../widgets.js";
import { csvOf } from "./csv.js";
import { curveText, meanTexts } from "./means.js";
import { Plot } from "./plot.js";
import { readingText } from "./numbers.js";
/** @import { Session } from '../session.js' */
/** @import { AskedExperiment, Condition, Contrast, Experiment, ExperimentRow } from '../types/experiment' */

const HOUR_S = 3600;
const TICK_MS = 500;

/** What the button of a condition begins. @param {Condition} condition */
function beginText({ begins, label }) {
  const what = begins?.do === "manoeuvre" ? begins.what : null;
  return what && typeof what === "object" && "exercise" in what ? t("experiment-begin_exercise", { s: what.exercise.seconds, condition: label }) : t("experiment-begin", { condition: label });
}

export class Table {
  /** @param {Session} session @param {AskedExperiment} asked @param {string} name of the file */
  constructor(session, asked, name) {
    this.session = session;
    this.asked = asked;
    this.condition = asked.conditions[0].id;
    const headId = newId("table");
    const counts = asked.measures.includes("rate");
    this.had = session.view.experiment?.rows.length ?? 0;
    this.now = h("p", { class: "experiment-now", hidden: true });
    const clock = setInterval(() => (session.ended ? clearInterval(clock) : this.tick()), TICK_MS);
    this.conditions = h("ol", { class: "experiment-conditions", "aria-label": t("experiment-conditions") });
    this.choice = new Choice(t("experiment-condition"), (id) => {
      this.condition = id;
    });
    this.add = button(t("experiment-add"), () => session.act({ do: "add_row", condition: this.condition }), { kind: "btn-strong" });
    this.csv = button(t("experiment-csv"), () => session.view.experiment && download(`${name}.csv`, csvOf(session.view.experiment), "text/csv"), { kind: "btn-plain" });
    this.none = h("p", { class: "pencil" }, t("experiment-empty"));
    this.body = h("tbody");
    /** @type {("rate" | "amplitude" | "swing")[]} */
    this.measures = asked.measures;
    /** @param {string} col */
    const th = (col) => h("th", { scope: "col" }, t(`experiment-col-${col}`));
    this.table = h("div", { class: "experiment-scroll", tabindex: "0", role: "region", "aria-label": t("experiment-rows") },
      h("table", {}, h("thead", {}, h("tr", {}, th("n"), h("th", { scope: "col" }, t("experiment-condition")), ["since", "count", "seconds", ...this.measures, "note"].map(th), h("td", {}))), this.body));
    this.plots = asked.measures.map((measure) => new Plot(session, asked, measure, name));
    this.means = h("div", { class: "experiment-means" });
    this.adding = h("div", { class: "row experiment-add" }, this.choice.el, this.add);
    this.el = h("section", { "aria-labelledby": headId }, h("h3", { id: headId }, t("experiment-table")), h("p", { class: "quiet" }, t(counts ? "experiment-table_about" : "experiment-table_no_count")),
      this.conditions, this.now, this.adding, this.none, this.table, h("div", { class: "row" }, this.csv), this.plots.map((plot) => plot.el), this.means);
  }

  /** Which condition runs, and how long it has. */
  tick() {
    const { now, closed } = this.session.view.experiment ?? {};
    const condition = this.asked.conditions.find(({ id }) => id === now?.condition);
    this.now.hidden = Boolean(closed) || !condition;
    if (!condition || !now) return;
    const since = now.from_s === null ? null : Math.floor(this.session.bench.clock - now.from_s);
    const { label, from_s: from, to_s: to } = condition;
    words(this.now, since === null ? t("experiment-now", { condition: label })
      : since < 0 ? t("experiment-now_before", { condition: label, s: -since })
        : [t("experiment-now_since", { condition: label, s: since }), since < from && t("experiment-now_wait", { s: from - since }), since > to && t("experiment-now_over")].filter(Boolean).join(" "));
  }

  /** @param {Experiment} experiment */
  show(experiment) {
    const { rows, closed, off, contrasts, fit } = experiment;
    this.choice.set(this.asked.conditions.map(({ id, label }) => /** @type {const} */ ([id, label])), this.condition);
    this.adding.hidden = closed;
    this.none.hidden = rows.length > 0;
    this.table.hidden = rows.length === 0;
    prop(this.csv, "disabled", rows.length === 0);
    const have = this.asked.conditions.map(({ id }) => rows.filter((row) => row.condition === id).length);
    refill(this.conditions, [have, closed], () => this.asked.conditions.map((one, i) => this.conditionLine(one, have[i], closed)));
    const focused = document.activeElement, held = this.body.contains(focused) ? focused?.getAttribute("data-at") : null;
    // A note is in its field already: the rows stay, so that a press on what is beside it is not lost.
    refill(this.body, [rows.map((row) => ({ ...row, note: "" })), closed, off], () => rows.map((row, i) => this.line(row, i, closed, off.includes(i))));
    this.body.querySelectorAll("input").forEach((input, i) => input === focused || (input.value = rows[i].note));
    if (rows.length > this.had) this.table.scrollIntoView({ block: "nearest" });
    this.had = rows.length;
    this.tick();
    if (held) /** @type {HTMLElement | null} */ (this.body.querySelector(`[data-at="${held}"]`) ?? this.add)?.focus();
    for (const plot of this.plots) plot.show(experiment);
    refill(this.means, [contrasts, fit], () => this.meansOf(contrasts, experiment));
  }

  /** @param {Condition} condition @param {number} have @param {boolean} closed */
  conditionLine(condition, have, closed) {
    const { begins, at_start: atStart, from_s: from, to_s: to, label } = condition;
    const when = begins && t("experiment-when", { from, to: to >= HOUR_S ? 0 : to });
    return h("li", {}, h("div", {}, h("b", {}, label), h("span", { class: "quiet" }, [atStart && t("experiment-when_now"), when].filter(Boolean).join(" ")),
      h("span", { class: "pencil" }, this.asked.recovery && !atStart || have > this.asked.repeats ? t("experiment-have_any", { n: have }) : t("experiment-have", { n: have, of: this.asked.repeats })),
      begins && !closed && button(beginText(condition), () => this.session.act(begins) && say(t("experiment-begun", { condition: label })))));
  }

  /** @param {ExperimentRow} row @param {number} i @param {boolean} closed @param {boolean} off */
  line(row, i, closed, off) {
    const label = t("experiment-note", { n: i + 1 }), remove = t("experiment-remove", { n: i + 1 });
    /** @type {HTMLInputElement} */
    const note = h("input", { class: "txt", value: row.note, maxlength: "160", "aria-label": label, autocomplete: "off", data: { at: `note${i}` }, onchange: () => this.session.act({ do: "row_note", row: i, text: note.value }) });
    const named = this.asked.conditions.find(({ id }) => id === row.condition)?.label ?? row.label;
    return h("tr", {}, h("td", {}, String(i + 1)), h("th", { scope: "row" }, named, off && h("span", { class: "problem" }, ` (${t("experiment-off")})`)),
      h("td", {}, row.since_s === null ? "–" : fixed(row.since_s, 0)), h("td", {}, row.count === null ? "–" : String(row.count)), h("td", {}, fixed(row.seconds, 2)),
      this.measures.map((measure) => h("td", {}, readingText(row[measure]))), h("td", {}, note),
      h("td", {}, !closed && h("button", { type: "button", class: "btn btn-round btn-plain", "aria-label": remove, title: remove, data: { at: `row${i}` }, onclick: () => this.remove(i) }, icon("cross"))));
  }

  /** Takes a row out, if that is meant. @param {number} row */
  async remove(row) {
    if (await askWhether("remove_row")) this.session.act({ do: "remove_row", row });
  }

  /** @param {Contrast[]} contrasts @param {Experiment} experiment */
  meansOf(contrasts, experiment) {
    const lines = meanTexts(this.asked, { contrasts }).map((text) => h("p", {}, text));
    return [lines.length > 0 && h("h4", {}, t("experiment-means")), lines, lines.length > 0 && h("p", { class: "quiet" }, t("experiment-about_u")), this.asked.recovery && experiment.rows.length > 0 && h("p", {}, curveText(experiment))];
  }
}
