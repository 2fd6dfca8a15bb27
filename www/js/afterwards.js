// @ts-check
// What belongs to a checked attempt: the debrief's further parts beside it, and what is kept of it on this device.

import { noteEvidence } from "./evidence.js";
import { t } from "./text.js";
/** @import { Session } from './session.js' */
/** @import { Debrief } from './sheet/debrief.js' */
/** @import { TracePane } from './trace/index.js' */

const KEEPS = new Set(["check", "reveal", "hint"]);

/**
 * session.debriefed is a promise of those parts. keeps: whether the attempt is the student's own; calm(text) and report(error) tell what went wrong.
 * @param {Session} session @param {{ trace: TracePane, debrief: Debrief }} parts
 * @param {{ keeps: boolean, calm: (text: string) => void, report: (error: unknown) => void }} ways
 */
export function afterwards(session, { trace, debrief }, { keeps, calm, report }) {
  /** @type {Promise<unknown> | null} */
  let brought = null;
  const toReport = keeps ? () => import("./notebook/pages.js").then(({ idOf }) => (location.hash = `#report=${encodeURIComponent(idOf(session))}`), report) : null;
  session.onView(({ check }) => {
    if (!check || brought) return;
    session.debriefed = brought = import("./after/index.js").then(({ showAfter }) => (session.ended ? undefined : showAfter(session, trace, debrief, toReport))).catch((error) => {
      brought = null;
      if (!session.ended) report(error);
    });
  });
  if (!keeps) return;
  // Taken up after a check, where no page of it is kept, as in a course site: the report has something to show.
  if (session.view.check) import("./notebook/pages.js").then(({ idOf, readPage }) => !session.ended && !readPage(idOf(session)) && keepTrial(session, true)).catch(report);
  session.onDeed((action) => {
    if (!KEEPS.has(action.do)) return;
    const kept = session.scenario ? noteEvidence(session.bench.evidence()) : true;
    keepTrial(session, kept).then((all) => !all && calm(t("notebook-full")), report);
  });
}

/**
 * Keeps the trial in the notebook; true when all was kept.
 * @param {Session} session @param {boolean} kept
 */
async function keepTrial(session, kept) {
  const [{ pageOf }, { keepPage }] = await Promise.all([import("./notebook/entry.js"), import("./notebook/pages.js")]);
  return keepPage(pageOf(session, Date.now())) && kept;
}
