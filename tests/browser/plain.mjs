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
const TABLE = { keys: ["app-title", "bench-title", "view-bench", "trail-lane-bench", "class-show_about", "word-bench", "scenario-"], why: "the table with the equipment, and the project's own name" };
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
    { word: whole("debriefs?"), use: "result" },
    { word: whole("(?:was|were) set(?! up)"), use: "assigned" },
  ],
  es: [
    { word: whole("unidad(?:es)?"), use: "registrador", but: [
      { keys: ["step-seconds_unit", "misreading-per_second", "misreading-milliseconds", "hint-seconds_unit", "explain-", "rubric-point-units"], why: "la unidad de un número" }] },
    { word: whole("tiras?"), use: "trazo, pantalla", but: [{ keys: ["entry-cable_taut.cause"], why: "un verbo: tira de él" }] },
    { word: whole("registr(?:o|os|a|as|ar|aste|ado|ada|aba|aras|ando|e|en)"), use: "grabación, grabar" },
    { word: whole("almohadillas?"), use: "sensor" },
    { word: whole("averías?"), use: "fallo" },
    { word: whole("ordenador(?:es)?|este equipo"), use: "computadora" },
    { word: whole("a punto"), use: "listo" },
    { word: whole("alimentación"), use: "cable de corriente" },
    { word: whole("caras? (?:activa|sensible)s?"), use: "lado sensible" },
    { word: whole("pelusa|rizados?|rizos|dientes?|césped|soga|vaiv[eé]n(?:es)?"), use: "ruido, onda, oscilación" },
    { word: whole("estilete|tambor|papel(?:es)?"), use: "trazo, pantalla, hoja de trabajo", but: [PAPER] },
    { word: whole("ensay(?:o|os|a|ar)"), use: "intento, practicar" },
    { word: whole("ventanas?(?! de conteo)(?! privada)"), use: "ventana de conteo, pestaña" },
    { word: whole("muescas?|incisuras?(?! dícrota)|ondas? dícrotas?"), use: "incisura dícrota, segunda onda" },
    { word: whole("filtros? (?:de red|notch)|filtros? paso (?:alto|bajo)|(?<!de )paso (?:alto|bajo)"), use: "filtro de banda estrecha, filtro de paso alto", but: [{ keys: ["set-"], why: "rótulos cortos bajo «Filtros»" }] },
    { word: whole("(?<!regla )códigos?(?! de resultado)"), use: "ID de estudiante, código de resultado" },
    { word: whole("lámparas?(?! de mesa)"), use: "luz indicadora, lámpara de mesa" },
    { word: whole("frecuencias?(?! cardíacas?)(?! de muestreo)(?! de la red)"), use: "frecuencia cardíaca, frecuencia de muestreo", but: [
      { keys: ["word-", "explain-order"], why: "la frecuencia de cualquier onda" }] },
    { word: whole("intervalos?(?! entre latidos)"), use: "intervalo entre latidos, de A a B" },
    { word: whole("(?:en el|al) borde de lo correcto|en el límite|(?:se )?(?:sostien|sostuv)\\p{L}*"), use: "correcto, al límite" },
    { word: whole("abiertas? pasos?|paso abierto|pregunta abierta"), use: "sin hacer" },
    { word: whole("la línea(?! \\{| de órdenes| de la hoja| siguiente)|línea plana"), use: "trazo", but: [{ keys: ["class-roster", "error-csv"], why: "la línea de un archivo" }] },
    { word: whole("mesas?(?<!lámparas? de mesa)"), use: "escenario, equipo", but: [TABLE, { keys: [
      "step-trace_hum", "entry-power_cord_out.cause", "entry-sensor_out.cause", "entry-phone_near.remedy", "refusal-no_strap", "seen-plug_out", "socket-none", "worked-table", "explain-move", "list-title", "paper-before_strip", "paper-pair_still"], why: "la mesa misma" }] },
    { word: whole("tramos?|olvid(?:ar|a|ado|ada|arlo|arme|arla|arlas)"), use: "parte, borrar" },
    { word: whole("de nuevo"), use: "otra vez" },
    { word: whole("remedios?|encargos?"), use: "arreglo, tarea" },
    { word: whole("nudillo|amoratad[oa]"), use: "golpe, oscuro" },
    { word: whole("lecturas? erróneas?|indicaci(?:ón|ones) propi[oa]s?"), use: "error de lectura, pista" },
    { word: whole("gravedad(?:es)?"), use: "intensidad" },
    { word: whole("balances?|encargad[oa]s?"), use: "resultado, asignación" },
    { word: whole("sitios? del? curso"), use: "aula virtual" },
  ],
};

/**
 * The terms of the field and of the page that a student has to know, as the texts use them. The key is that of the entry
 * among the words of the lab, `word-KEY`: each term has one, and each entry is of a term that is used.
 * @type {Record<string, { en: string, es: string }>}
 */
export const TERMS = {
  alias: { en: "alias", es: "alias" },
  amplitude: { en: "height", es: "altura" },
  anti_alias: { en: "anti-alias filter", es: "filtro antialias" },
  attempt: { en: "attempt", es: "intento" },
  average: { en: "averaging", es: "promediado" },
  beat_interval: { en: "beat interval", es: "intervalo entre latidos" },
  beat_mark: { en: "beat mark", es: "marca de latido" },
  bench: { en: "bench", es: "mesa" },
  borderline: { en: "borderline", es: "al límite" },
  buffer: { en: "input buffer", es: "búfer de la entrada" },
  calibrator: { en: "calibrator", es: "calibrador" },
  clipping: { en: "cut flat", es: "recortad" },
  converter: { en: "converter", es: "conversor" },
  count: { en: "count", es: "recuento" },
  cursor: { en: "cursor", es: "cursor" },
  debrief: { en: "result", es: "resultado" },
  drift: { en: "drift", es: "deriva" },
  fault: { en: "fault", es: "fallo" },
  filter: { en: "filter", es: "filtro" },
  foot: { en: "foot", es: "pie" },
  full_scale: { en: "full-scale range", es: "rango a fondo de escala" },
  ground: { en: "ground", es: "tierra" },
  high_pass: { en: "high-pass filter", es: "filtro de paso alto" },
  hum: { en: "hum", es: "zumbido" },
  impedance: { en: "impedance", es: "impedancia" },
  indicator: { en: "indicator light", es: "luz indicadora" },
  input: { en: "input", es: "entrada" },
  integral: { en: "integral", es: "integral" },
  interval: { en: "a to b", es: "de a a b" },
  cable: { en: "sensor cable", es: "cable del sensor" },
  low_pass: { en: "low-pass filter", es: "filtro de paso bajo" },
  misreading: { en: "misreading", es: "error de lectura" },
  motion: { en: "motion", es: "movimiento" },
  multiplier: { en: "multiplier", es: "multiplicador" },
  noise: { en: "noise", es: "ruido" },
  notch: { en: "dicrotic notch", es: "incisura dícrota" },
  notch_filter: { en: "notch filter", es: "filtro de banda estrecha" },
  sensor: { en: "sensor", es: "sensor" },
  peak: { en: "peak", es: "pico" },
  polarity: { en: "invert", es: "invertir" },
  power_cord: { en: "power cord", es: "cable de corriente" },
  power_strip: { en: "power strip", es: "regleta" },
  pulse_wave: { en: "wave", es: "onda" },
  rate: { en: "heart rate", es: "frecuencia cardíaca" },
  readiness: { en: "ready", es: "listo" },
  recorder: { en: "recorder", es: "registrador" },
  resolution: { en: "resolution", es: "resolución" },
  respiratory: { en: "respiratory sinus arrhythmia", es: "arritmia sinusal respiratoria" },
  result_code: { en: "result code", es: "código de resultado" },
  rubric: { en: "rubric", es: "rúbrica" },
  safety: { en: "safety rules", es: "normas de seguridad" },
  sample: { en: "sample", es: "muestra" },
  sampling: { en: "sampling rate", es: "frecuencia de muestreo" },
  scale: { en: "value scale", es: "escala de valores" },
  scenario: { en: "scenario", es: "escenario" },
  second_bump: { en: "second bump", es: "segunda onda" },
  seed: { en: "seed", es: "semilla" },
  sensing_side: { en: "sensing side", es: "lado sensible" },
  slope_pulse: { en: "slope pulse", es: "pulso de pendiente" },
  socket: { en: "socket", es: "conector" },
  spike: { en: "spike", es: "espiga" },
  strap: { en: "strap", es: "correa" },
  student_id: { en: "student id", es: "id de estudiante" },
  submit: { en: "submit", es: "entregar" },
  take: { en: "recording", es: "grabación" },
  test: { en: "test", es: "prueba" },
  time_base: { en: "time base", es: "base de tiempo" },
  trace: { en: "trace", es: "trazo" },
  uncertainty: { en: "uncertainty", es: "incertidumbre" },
  volume_pulse: { en: "volume pulse", es: "pulso de volumen" },
  window: { en: "counting window", es: "ventana de conteo" },
  zero: { en: "zero", es: "cero" },
};

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
