// @ts-check
// Opening a course whose text is in the address: its list of parts, each an assignment of its own.

import { byId } from "../dom.js";
import { calm, entitle, show } from "../frame.js";
import { closeLab } from "../lab.js";
import { bringTexts, t } from "../text.js";
import { Nowhere } from "./nowhere.js";
/** @import { Navigation } from '../navigation.js' */

/** @param {Navigation} navigation @param {string} address */
export async function openCourse(navigation, address) {
  closeLab();
  calm("");
  show("loading");
  const [{ readCourse, CourseList }] = await navigation.wait(Promise.all([import("../hand/courselist.js"), bringTexts("hand")]));
  const course = await navigation.wait(readCourse(address).catch((error) => {
    throw new Nowhere(t("hand-link_bad", { told: error.message }));
  }));
  const section = byId("parts");
  const root = /** @type {HTMLElement} */ (section.cloneNode(false));
  const list = new CourseList(root, course, address);
  section.replaceWith(root);
  entitle(course.title);
  show("parts", () => list.end());
  root.querySelector("h1")?.focus({ preventScroll: true });
}
