// @ts-check
// Opening an assignment whose text is in the address: who the student is, which try it is, and the bench of that try.

import { Bench } from "../core.js";
import { show } from "../frame.js";
import { takeUpKept } from "../kept.js";
import { closeLab, stand } from "../lab.js";
import { go, goTo } from "../navigation.js";
import { bringTexts, t } from "../text.js";
import { Nowhere } from "./nowhere.js";
/** @import { Navigation } from '../navigation.js' */

/**
 * Opens it; whoever turns away from the question is taken to the first screen.
 * @param {Navigation} navigation @param {string} address
 */
export async function openAssigned(navigation, address) {
  const [{ readAssigned, whoAndWhich }] = await navigation.wait(Promise.all([import("../hand/begin.js"), bringTexts("hand")]));
  const task = await navigation.wait(readAssigned(address).catch((error) => {
    throw new Nowhere(t("hand-link_bad", { told: error.message }));
  }));
  closeLab();
  show("loading");
  const chosen = await navigation.wait(whoAndWhich(task));
  if (!chosen) return void goTo(location.pathname);
  const again = () => go((next) => {
    closeLab();
    return openAssigned(next, address);
  });
  if (chosen === "watch") {
    const watching = { address, student: "", tries: 0, closing: "", own: false };
    return void stand(Bench.worked(task.toml), { assigned: watching, watched: task.id, nowYou: again });
  }
  const { student, tries, seed } = chosen;
  const { bench, kept, told } = takeUpKept(task.id, seed);
  const assigned = { address, student, tries, closing: task.assignment?.closing ?? "", own: Boolean(task.assignment) };
  return void stand(bench ?? Bench.fresh(task.toml, seed), { scenario: task.id, seed, deeds: bench ? kept.deeds ?? 1 : 0, begun: kept?.begun, assigned, again, told });
}
