// @ts-check
// The screens beside the bench; a bench that stands there waits meanwhile.

import { byId } from "../dom.js";
import { entitle, show, shows } from "../frame.js";
import { lab } from "../lab.js";
import { routeTo, watchRoute } from "../route.js";
import { allLoaded } from "../scenarios.js";
import { sectionOf, SIDES } from "../sides.js";
import { t } from "../text.js";
import { goHome } from "./home.js";
import { go } from "../navigation.js";
/** @import { Navigation } from '../navigation.js' */
/** @import { SideName } from '../types/page' */

/** @type {SideName | null} */
let open = null; // which stands in its section

/**
 * Opens one, or turns to a place in the one that is open.
 * @param {Navigation} navigation @param {SideName} side @param {string} turn
 */
export async function openSide(navigation, side, turn) {
  const there = lab();
  there?.wait();
  const { title, open: fill, turn: turnIn } = SIDES[side];
  const name = sectionOf(side);
  if (!(turnIn && open === side && shows(name))) {
    const section = byId(name);
    const filled = /** @type {HTMLElement} */ (section.cloneNode(false)); // two that are on their way do not write into one another
    const made = await navigation.wait(fill(filled, turn, { inLab: Boolean(there), goBack: leaveSide, allLoaded }), (late) => late?.end());
    section.replaceWith(filled);
    open = side;
    entitle(t(title));
    show(name, () => made?.end());
    filled.querySelector("h1")?.focus({ preventScroll: true });
    scrollTo({ top: 0 });
  }
  if (turnIn) await navigation.wait(turnIn(byId(name), turn));
}

/** Back to the bench as it was left, or to the scenarios. */
function leaveSide() {
  const there = lab();
  if (!there) return goHome().then(() => byId("main").focus());
  const { assigned, watched, scenario, seed } = there;
  return go((navigation) => {
    navigation.write(assigned ? `#a=${assigned.address}` : watched ? watchRoute(watched) : scenario ? routeTo(scenario, seed) : location.pathname);
    there.comeBack();
  });
}
