// @ts-check
// Whether this page was packed for one assignment, and how: written by `dicrotic pack` into the page's head.

const mark = /** @type {HTMLMetaElement | null} */ (document.querySelector('meta[name="dicrotic-pack"]'));

/** null, or {standard: "scorm12" | "scorm2004" | "cmi5" | "alone", id: the scenario}. */
export const packed = mark && { standard: mark.content, id: mark.dataset.scenario };
