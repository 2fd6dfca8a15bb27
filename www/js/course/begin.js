// @ts-check
// Begins a session with the site around this page, by the standard that it was packed for.

import { t } from "../text.js";
import { Cmi5 } from "./cmi5.js";
import { LaunchError } from "./launch.js";
import { Lms } from "./lms.js";
/** @import { Site } from './index.js' */

/** @type {Record<string, () => string>} why a visit cannot begin */
const TROUBLES = {
  broken: () => t("course-launch_broken"), over: () => t("course-launch_over"), refused: () => t("course-launch_refused"),
  unreachable: () => t("course-launch_unreachable"), used: () => t("course-launch_used"),
};

/** @type {Promise<Site | string | null> | null} */
let beginning = null;

/** @param {string} standard @returns {Promise<Site | string | null>} */
async function begin(standard) {
  if (standard !== "cmi5") return Lms.begin(standard);
  try {
    return await Cmi5.begin();
  } catch (error) {
    if (error instanceof LaunchError) return TROUBLES[error.message]();
    throw error;
  }
}

/**
 * The session, which begins once; null where there is no site, or the words for what is in the way.
 * @param {string} standard
 */
export const beginSession = (standard) => (beginning ??= begin(standard));
