// @ts-check
// From the address to what stands on the page.

import { calm } from "./frame.js";
import { lab } from "./lab.js";
import { openAssigned } from "./open/assigned.js";
import { openCourse } from "./open/course.js";
import { openHome } from "./open/home.js";
import { Nowhere } from "./open/nowhere.js";
import { openScenario, openWatched } from "./open/scenario.js";
import { openScreen } from "./open/screen.js";
import { openSide } from "./open/side.js";
import { newSeed, readRoute } from "./route.js";
/** @import { Navigation } from './navigation.js' */
/** @import { Route } from './types/page' */

/**
 * Opens what the address asks for; a lab that stands there already stays as it is.
 * @param {Navigation} navigation
 */
export async function openAddress(navigation) {
  calm("");
  const route = readRoute();
  try {
    await openRoute(navigation, route);
  } catch (error) {
    if (!(error instanceof Nowhere) || navigation.over) throw error;
    await openHome(navigation);
    calm(error.message);
  }
}

/** @param {Navigation} navigation @param {Route} route */
function openRoute(navigation, route) {
  const { scenario, seed, watch, assigned, course, screen, look, side, turn } = route;
  if (side !== null) return openSide(navigation, side, turn ?? "");
  if (screen) return openScreen(navigation, screen, look);
  if (course !== null) return openCourse(navigation, course);
  const there = lab();
  if (there?.isAt(route)) {
    if (there.waits) return there.comeBack();
    if (assigned !== null || watch || (scenario && seed)) return undefined; // without a seed, another bench is asked for
  }
  if (assigned !== null) return openAssigned(navigation, assigned);
  if (watch) return openWatched(navigation, watch);
  if (scenario) return openScenario(navigation, scenario, seed ?? newSeed());
  return openHome(navigation);
}
