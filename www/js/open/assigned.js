// @ts-check
// Opening an assignment whose text is in the address: who the student is, which try it is, and the bench of that try.

import { Bench } from "../core.js";
import { show } from "../frame.js";
import { takeUpKept } from "../kept.js";
import { closeLab, stand } from "../lab.js";
import { go, goTo } from "../navigation.js";
import { askRoom } from "../room.js";
import { attemptKey } from "../store.js";
import { bringTexts, t } from "../text.js";
import { Nowhere } from "./nowhere.js";
/** @import { Navigation } from '../navigation.js' */

/**
 * Opens it; whoever turns away from the question is taken to the first screen. before: the ID of a student who goes on from one try
 * to the next.
 * @param {Navigation} navigation @param {string} address @param {string} [before]
 */
export async function openAssigned(navigation, address, before = "") {
  const [{ readAssigned, typedBefore, whoAndWhich }] = await navigation.wait(Promise.all([import("../hand/begin.js"), bringTexts("hand")]));
  const task = await navigation.wait(readAssigned(address).catch((error) => {
    throw new Nowhere(t("hand-link_bad", { told: error.message }));
  }));
  closeLab();
  show("loading");
  const chosen = await navigation.wait(whoAndWhich(task, before || typedBefore(address)));
  if (!chosen) return void goTo(location.pathname);
  /** @param {string} [same] */
  const again = (same) => go((next) => {
    closeLab();
    return openAssigned(next, address, same);
  });
  if (chosen === "watch") {
    const watching = { address, student: "", tries: 0, closing: "", own: false };
    return void stand(Bench.worked(task.toml), { assigned: watching, watched: task.id, nowYou: () => again() });
  }
  const { student, tries, seed } = chosen;
  const { bench, kept, told } = takeUpKept(task.id, seed);
  if (!bench) await navigation.wait(askRoom(attemptKey(task.id, seed)));
  // Asked before the first deed of a test; whoever goes on with one was asked then.
  const study = task.assignment?.study;
  const consent = study && !bench ? await navigation.wait(import("../hand/consent.js").then((asking) => asking.askConsent(study))) : null;
  const assigned = { address, student, tries, closing: task.assignment?.closing ?? "", own: Boolean(task.assignment) };
  const lab = stand(bench ?? Bench.fresh(task.toml, seed), { scenario: task.id, seed, deeds: bench ? kept.deeds ?? 1 : 0, begun: kept?.begun, assigned, again: () => again(student), told });
  if (consent !== null) lab.session.act({ do: "consent", given: consent });
}
