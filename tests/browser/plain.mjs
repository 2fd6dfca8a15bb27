// What plain words are on this page, as far as a machine can tell: one word for each thing, short sentences, simple words.
// The lists are for `words.test.mjs`, which holds all texts of the page against them.

/**
 * Words that stand for something that has another word here. `use` says which one. A word that is allowed in some
 * places says which and why: `but` are keys or bundles that begin so.
 * @typedef {{ word: RegExp, use: string, but?: { keys: string[], why: string }[] }} Rule
 */

/** Letters of both languages: `\b` knows only those of English. */
const L = "A-Za-zÁÉÍÓÚÜÑáéíóúüñ";
/** The whole word or words of the pattern, whatever their case. @param {string} pattern */
const whole = (pattern) => new RegExp(`(?<![${L}])(?:${pattern})(?![${L}])`, "iu");

/** Where a scenario may name the table that it stands on. */
const TABLE = { keys: ["app-title", "bench-title", "pane-bench", "trail-lane-bench", "class-show_about", "word-bench", "scenario-"], why: "the table with the equipment, and the project's own name" };
const PAPER = { keys: ["assign-paper", "paper-title"], why: "sheets that are printed" };

/** @type {Record<"en" | "es", Rule[]>} */
export const RULES = {
  en: [
    { word: whole("pads?"), use: "sensor" },
    { word: whole("active face"), use: "sensing side" },
    { word: whole("(?<!can )(?<!could )leads?(?! to)"), use: "cable, power cord", but: [{ keys: ["teach-limits"], why: "a verb: actions lead to answers" }] },
    { word: whole("units?"), use: "recorder", but: [
      { keys: ["step-seconds_unit", "misreading-per_second", "misreading-milliseconds", "hint-seconds_unit", "explain-", "rubric-point-units"], why: "the unit of a number" }] },
    { word: whole("(?<!power )strips?"), use: "trace, power strip" },
    { word: whole("(?:the|a|this|that|each|every|first|last|open|new|no|of) take|(?:the|your|all|two|several|of) takes"), use: "recording" },
    { word: whole("fuzz|fuzzy|rope|grass|teeth"), use: "noise" },
    { word: whole("mains"), use: "power line" },
    { word: whole("stylus|drum|smoked|pen"), use: "trace" },
    { word: whole("papers?"), use: "screen, worksheet", but: [PAPER] },
    { word: whole("telephones?"), use: "phone" },
    { word: whole("earthed|earthing"), use: "grounded" },
    { word: whole("aerials?"), use: "antenna" },
    { word: whole("anew|afresh"), use: "again" },
    { word: whole("mend|mends|mended|put right|remed(?:y|ies)"), use: "fix" },
    { word: whole("nought"), use: "zero" },
    { word: whole("trials?|rehears(?:e|al|als)|tries|(?:a|the|one|first|last|next|more|each|this|another) try"), use: "attempt" },
    { word: whole("(?<!other )hand(?:s|ed)? in|hand over|turn(?:s|ed)? over"), use: "submit, inverted" },
    { word: whole("holds|held|on the edge|still open"), use: "correct, borderline, not done, keep, paused" },
    { word: whole("hold(?! the breath)"), use: "keep, Pause", but: [{ keys: ["error-gradebook_field"], why: "what fits into a column" }] },
    { word: whole("(?<!dicrotic )notch(?:es)?(?! filter)"), use: "dicrotic notch, notch filter" },
    { word: whole("(?<!second )bumps?"), use: "second bump" },
    { word: whole("(?<!counting )(?<!private )windows?"), use: "counting window, browser tab" },
    { word: whole("(?<!heart )(?<!sampling )(?<!breathing )rates?"), use: "heart rate, sampling rate", but: [{ keys: ["assign-own_about", "assign-wrong_formula"], why: "the name of a variable in a formula" }] },
    { word: whole("(?<!beat )intervals?"), use: "beat interval, A to B" },
    { word: whole("(?<!result )codes?"), use: "student ID, result code, safety rules" },
    { word: whole("(?<!desk )lamps?"), use: "indicator light, desk lamp" },
    { word: whole("burns?|glows?"), use: "is on" },
    { word: whole("(?:the|flat|whole) line(?! (?:before|of the worksheet))"), use: "trace", but: [{ keys: ["misreading-show_work"], why: "a line of the worksheet" }] },
    { word: whole("bench(?:es)?"), use: "scenario, equipment", but: [TABLE] },
    { word: whole("stretch(?:es)?|look-alikes?|whoever|forget|tabs?(?<!browser tabs?)"), use: "part, similar fault, who, delete, browser tab", but: [{ keys: ["class-divides_tab", "class-roster_paste", "error-gradebook_divides"], why: "the sign between two cells" }] },
    { word: whole("pulp"), use: "fingertip" },
  ],
  es: [],
};

/**
 * The terms of the field and of the page that a student has to know: each has its entry among the words of the lab, under
 * the first of them, and stands in the texts. The key is that of the entry.
 * @type {Record<string, { en: string, es: string }>}
 */
export const TERMS = {};

/** Bundles and keys that explain or report and give no instruction: longer sentences are allowed there. */
export const EXPLAINS = {
  bundles: { words: "definitions", teach: "a page for instructors" },
  keys: [
    { key: /^entry-.*\.model$/, why: "how the fault is simulated, for the curious" },
    { key: /^error-/, why: "what is wrong with a file, with places and numbers in it" },
  ],
};

/** At most so many words in a sentence of an instruction. Spanish says the same with about a fifth more words. */
export const LONGEST = { en: 20, es: 24 };
/** The highest grade of an instruction. */
export const GRADE = 6;

/**
 * Every way in which a message can be shown, with a number in each place. A message is a string, or a list of strings,
 * of places and of choices between forms, as the page gets it.
 * @param {any} message @returns {string[]}
 */
export function renderings(message) {
  if (typeof message === "string") return [message];
  return (message ?? []).reduce(
    (/** @type {string[]} */ all, /** @type {any} */ part) => {
      const ways = typeof part === "string" ? [part] : part.k ? Object.values(part.k).flatMap(renderings) : ["7"];
      return all.flatMap((before) => ways.map((/** @type {string} */ way) => before + way));
    },
    [""],
  );
}

/** The sentences of a text; a heading or a label is one as well. @param {string} text */
export const sentences = (text) => text.split(/(?<=[.!?…][”»")]?)\s+|\||\n/u).filter((part) => /\p{L}/u.test(part));

/** The words of a text; numbers count. @param {string} text */
export const wordsIn = (text) => text.match(/[\p{L}\p{N}]+(?:[.,’'-][\p{L}\p{N}]+)*/gu) ?? [];

/** How many syllables an English word has: its groups of vowels, less those that are not spoken. @param {string} word */
export function syllables(word) {
  const plain = word.toLowerCase().replace(/[^a-z]/g, "");
  if (plain.length <= 3) return 1;
  const spoken = plain
    .replace(/(?:[^laeiouy]es|[^td]ed|[^l]e)$/, (end) => end[0]) // the silent e of “notes”, “marked”, “pulse”
    .replace(/^y/, "");
  return Math.max(1, (spoken.match(/[aeiouy]+/g) ?? []).length);
}

/**
 * The grade of school in the United States in which a text is understood (Kincaid, Fishburne, Rogers and Chissom:
 * Derivation of new readability formulas for Navy enlisted personnel, Research Branch Report 8-75, 1975).
 * @param {string[]} parts sentences
 */
export function grade(parts) {
  const all = parts.flatMap(wordsIn);
  if (parts.length === 0 || all.length === 0) return 0;
  const spoken = all.reduce((sum, word) => sum + syllables(word), 0);
  return 0.39 * (all.length / parts.length) + 11.8 * (spoken / all.length) - 15.59;
}

/** Whether a text of this bundle and key tells its reader what to do. @param {string} bundle @param {string} key */
export const instructs = (bundle, key) => !(bundle in EXPLAINS.bundles) && !EXPLAINS.keys.some((one) => one.key.test(key));

/**
 * What is wrong with texts: a list of complaints.
 * @param {"en" | "es"} language
 * @param {{ bundle: string, key: string, text: string }[]} texts
 */
export function complaints(language, texts) {
  const found = [];
  for (const { bundle, key, text } of texts) {
    for (const { word, use, but } of RULES[language]) {
      if (but?.some(({ keys }) => keys.some((start) => key.startsWith(start)))) continue;
      const hit = word.exec(text);
      if (hit) found.push(`${language} ${key}: “${hit[0]}”, use: ${use} (${text})`);
    }
    if (!instructs(bundle, key)) continue;
    for (const sentence of sentences(text)) {
      const long = wordsIn(sentence).length;
      if (long > LONGEST[language]) found.push(`${language} ${key}: a sentence of ${long} words (${sentence})`);
    }
  }
  return found;
}
