// @ts-check
// The first screen, or what stands in its place in a packed page.

import { byId } from "../dom.js";
import { calm, entitle, show } from "../frame.js";
import { closeLab } from "../lab.js";
import { go } from "../navigation.js";
import { packed } from "../packed.js";
import { routeTo } from "../route.js";
import { allLoaded } from "../scenarios.js";
import { showStart } from "../start.js";
import { openPacked } from "./packed.js";
import { chooseRecording } from "./recording.js";
import { openScenario } from "./scenario.js";
/** @import { Navigation } from '../navigation.js' */

/**
 * Opens it.
 * @param {Navigation} navigation
 */
export async function openHome(navigation) {
  if (packed) return openPacked(navigation);
  const scenarios = await navigation.wait(allLoaded()); // what is missing says so in its place
  closeLab();
  entitle("");
  showStart(byId("start"), scenarios, { openFile: chooseRecording, goOn });
  return show("start");
}

/**
 * Takes up a kept attempt: a place of its own in the browser's history, as if the reader had followed a link.
 * @param {string} id @param {string} seed
 */
function goOn(id, seed) {
  history.pushState(null, "", routeTo(id, seed));
  return go((navigation) => openScenario(navigation, id, seed, true));
}

/** Leaves whatever stands on the page for the first screen. */
export const goHome = () => go((navigation) => {
  navigation.write(location.pathname);
  calm("");
  return openHome(navigation);
});
