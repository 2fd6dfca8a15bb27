// @ts-check
// The course that was opened last in this tab, so that its parts know where they belong: while the page is there, and nowhere else.

/** @type {{ address: string, title: string, student: string, parts: string[] } | null} */
let last = null;

/**
 * From now on, the links of these parts belong to the course at this address; student: what was typed there.
 * @param {{ address: string, title: string, student: string, parts: string[] } | null} course
 */
export const rememberCourse = (course) => (last = course);

/**
 * The course that an assignment's link belongs to, or null.
 * @param {string} address
 */
export const courseOf = (address) => (last?.parts.includes(address) ? last : null);
