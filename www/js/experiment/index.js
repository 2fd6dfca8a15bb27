// @ts-check
// The experiment beside the bench: what one expects, the table of counting windows, what it shows, and what is said of it.

import { refusalText } from "../bench/index.js";
import { h, say, words } from "../dom.js";
import { experimentInWords } from "../scenarios.js";
import { t } from "../text.js";
import { Conclusion } from "./conclusion.js";
import { Expectation } from "./expectation.js";
import { Result } from "./result.js";
import { Table } from "./table.js";
/** @import { Session } from '../session.js' */
/** @import { Action } from '../types/action' */

/** @type {Set<Action["do"]>} */
const OWN = new Set(["predict", "conclude", "add_row", "row_note", "remove_row"]);

export class ExperimentPane {
  /** @param {HTMLElement} root @param {Session} session */
  constructor(root, session) {
    const { experiment, scenario } = session.view;
    if (!experiment || !scenario) return;
    const asked = experimentInWords(scenario.id, experiment.asked);
    const note = h("p", { class: "pencil sheet-note", role: "status" });
    const table = new Table(session, asked, scenario.id);
    const parts = [new Expectation(session, asked), table, new Conclusion(session, asked), new Result(asked)];
    table.adding.after(note); // beside what is refused
    root.replaceChildren(h("h2", { id: "experiment-h" }, t("experiment-title")), h("p", { class: "aim" }, asked.question), ...parts.map((part) => part.el));
    session.onRefusal((code, args, action) => {
      if (!OWN.has(action.do)) return;
      // The core names a condition by the file's word.
      const known = experiment.asked.conditions.findIndex((one) => one.label === args.condition);
      words(note, refusalText(code, known < 0 ? args : { ...args, condition: asked.conditions[known].label }));
      note.scrollIntoView({ block: "nearest" });
    });
    session.onDeed((action) => {
      if (!OWN.has(action.do)) return;
      words(note, "");
      const rows = session.view.experiment?.rows.length ?? 0;
      if (action.do === "add_row") say(t("experiment-added", { n: rows }));
      if (action.do === "remove_row") say(t("experiment-removed", { n: action.row + 1 }));
    });
    session.onView((view) => {
      if (view.experiment) for (const part of parts) part.show(view.experiment);
    });
  }
}
