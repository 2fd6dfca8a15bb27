// Plain words: all texts that the page shows and the prose of the scenarios, in both languages, against the lists of
// `plain.mjs`. A list is only as good as what it finds, so each rule is tried on a bad line first.
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { before, describe, test } from "node:test";
import { root, startServer } from "./lib.mjs";
import { EXPLAINS, GRADE, LONGEST, RULES, TERMS, complaints, grade, instructs, renderings, sentences, syllables, wordsIn } from "./plain.mjs";

const LANGUAGES = /** @type {("en" | "es")[]} */ (["en", "es"]);
/** What the text of a message may be no shorter than to have a grade of its own: the formula is for passages. */
const PASSAGE = 30;

/** @type {Record<string, { bundle: string, key: string, text: string }[]>} */
const texts = {};
const scenarios = readdirSync(path.join(root, "scenarios")).filter((name) => name.endsWith(".toml"));

/** The prose of a scenario file. @param {string} name */
function prose(name) {
  const toml = readFileSync(path.join(root, "scenarios", name), "utf8");
  const [, id] = /** @type {RegExpExecArray} */ (/^id = "([\w-]+)"$/m.exec(toml));
  const parts = {
    title: /^title = "(.+)"$/m.exec(toml)?.[1],
    aim: /^aim = "(.+)"$/m.exec(toml)?.[1],
    brief: /^brief = """\n([^]+?)"""$/m.exec(toml)?.[1].replaceAll("\\\n", "").trim(),
  };
  return Object.entries(parts).map(([part, text]) => {
    assert.ok(text, `${name} has no ${part} that can be read here`);
    return { bundle: "scenarios", key: `scenario-${id}.${part}`, text };
  });
}

/** The messages as the page gets them: the first ones, and those of each bundle that is brought later. */
before(async () => {
  const server = await startServer();
  try {
    for (const language of LANGUAGES) {
      const later = readdirSync(path.join(root, "www/texts", language, "later")).map((name) => path.basename(name, ".ftl"));
      assert.ok(later.length > 15, `${later}`);
      texts[language] = [];
      for (const bundle of ["", ...later]) {
        const answer = await fetch(`${server.url}texts/${language}${bundle && `.${bundle}`}.json`);
        assert.equal(answer.status, 200, answer.url);
        for (const [key, message] of Object.entries(await answer.json())) {
          for (const text of renderings(message)) texts[language].push({ bundle, key, text });
        }
      }
    }
  } finally {
    await server.stop();
  }
  texts.en.push(...scenarios.flatMap(prose));
});

const unique = (/** @type {string[]} */ list) => [...new Set(list)];

describe("plain words", () => {
  test("all texts are looked at", () => {
    for (const language of LANGUAGES) {
      assert.ok(new Set(texts[language].map((one) => one.key)).size > 1500, `${language}: ${texts[language].length}`);
      assert.equal(texts[language].filter((one) => /^scenario-.*\.brief$/.test(one.key)).length, scenarios.length, language);
    }
  });

  for (const language of LANGUAGES) {
    test(`${language}: one word for each thing, and no sentence too long`, () => {
      const found = unique(complaints(language, texts[language]));
      assert.equal(found.length, 0, found.join("\n"));
    });

    test(`${language}: every term has its entry among the words of the lab, and every entry is of a term that is used`, () => {
      const all = texts[language];
      const entries = new Map(all.filter((one) => one.bundle === "words" && /^word-\w+$/.test(one.key)).map((one) => [one.key.slice(5), one.text.toLowerCase()]));
      const elsewhere = all.filter((one) => one.bundle !== "words").map((one) => one.text.toLowerCase()).join("\n");
      assert.deepEqual([...entries.keys()].sort(), Object.keys(TERMS).sort());
      assert.deepEqual(Object.values(TERMS).map((term) => term[language]).filter((term) => !elsewhere.includes(term)), []);
      const told = new Map(all.filter((one) => one.bundle === "words").map((one) => [one.key, one.text.toLowerCase()]));
      // The entry is found under the word itself, or says which shorter one is used.
      const hidden = Object.entries(TERMS).filter(([key, term]) => !`${entries.get(key)} ${told.get(`word-${key}.is`)}`.includes(term[language]));
      assert.deepEqual(hidden, []);
    });

    test(`${language}: what an exception allows is there`, () => {
      const dead = RULES[language].flatMap(({ word, but }) => (but ?? []).flatMap(({ keys }) =>
        keys.filter((start) => !texts[language].some((one) => one.key.startsWith(start))).map((start) => `${word}: ${start}`)));
      assert.deepEqual(dead, []);
    });
  }

  test(`instructions are of grade ${GRADE} or less: each bundle, and each text that is a passage`, () => {
    /** @type {Map<string, string[]>} */
    const bundles = new Map();
    const hard = [];
    let passages = 0;
    for (const { bundle, key, text } of texts.en.filter((one) => instructs(one.bundle, one.key))) {
      const whole = sentences(text).filter((sentence) => /[.!?][”")]*$/.test(sentence)); // no labels
      bundles.set(bundle, [...(bundles.get(bundle) ?? []), ...whole]);
      if (whole.flatMap(wordsIn).length < PASSAGE) continue;
      passages += 1;
      if (grade(whole) > GRADE) hard.push(`${key}: ${grade(whole).toFixed(1)} (${text})`);
    }
    for (const [bundle, whole] of bundles) if (grade(whole) > GRADE) hard.push(`all of ${bundle || "the first texts"}: ${grade(whole).toFixed(1)}`);
    assert.ok(passages > 60 && bundles.size > 14, `${passages} in ${bundles.size}`);
    assert.deepEqual(unique(hard), []);
  });
});

describe("the lists find what they are for", () => {
  /** A bad line for each rule, in the order of the rules. */
  const BAD = {
    en: ["Tap the pad.", "active face to skin", "Take another lead.", "Look for the unit.", "Look at the strip.", "Open the take.", "The fuzz is gone.", "Pull the mains plug.", "the stylus stops",
      "The paper runs.", "Move the telephone.", "the earthed case", "It is an aerial.", "Record anew.", "Mend both.", "Is it one or nought?", "Your last trial.", "Hand in the file.",
      "Your reading holds.", "Press Hold.", "Turn the notch on.", "the small bump", "Set the window.", "Compare your rate.", "Read the interval.", "Type your code.", "Look at the lamp.", "It burns.",
      "The line is flat.", "Take this bench.", "a clean stretch", "the pulp of the finger", "Read the debrief.", "It was set for a class."],
    es: ["Busca la unidad.", "Mira la tira.", "Abre el registro.", "una almohadilla", "Nombra la avería.", "en este ordenador", "Ya está a punto.", "cable de alimentación", "la cara activa", "sin pelusa",
      "El papel corre.", "Es un ensayo.", "Pon una ventana.", "la incisura vuelve", "el filtro de red", "Escribe tu código.", "Apaga la lámpara.", "Compara tu frecuencia.", "Lee el intervalo.",
      "Se sostuvo una vez.", "el primer paso abierto", "La línea está limpia.", "Toma otra mesa.", "un tramo limpio", "Registra de nuevo.", "el remedio", "con un nudillo", "una lectura errónea", "según su gravedad", "Lee el balance.", "Abre el sitio del curso."],
  };

  for (const language of LANGUAGES) {
    test(`${language}: each forbidden word in a bad line of its own`, () => {
      assert.equal(BAD[language].length, RULES[language].length);
      BAD[language].forEach((text, i) => {
        const { word, use } = RULES[language][i];
        const found = complaints(language, [{ bundle: "", key: "planted", text }]);
        assert.ok(word.test(text) && found.some((one) => one.includes(`use: ${use} (`)), `${word} does not find “${text}”`);
      });
    });

    test(`${language}: a long sentence is found in an instruction, and left alone in a definition`, () => {
      const text = `${Array(LONGEST[language] + 1).fill("uno").join(" ")}.`;
      const place = (/** @type {string} */ bundle, /** @type {string} */ key) => complaints(language, [{ bundle, key, text }]).length;
      assert.equal(place("", "planted"), 1);
      assert.equal(place("words", "word-planted.is"), 0);
      assert.equal(complaints(language, [{ bundle: "", key: "planted", text: text.replace("uno ", "") }]).length, 0);
    });
  }

  test("an allowed place is only where the list says so", () => {
    const at = (/** @type {string} */ key) => complaints("en", [{ bundle: "", key, text: "Which unit is it?" }]).length;
    assert.equal(at("hint-seconds_unit.look"), 0);
    assert.equal(at("hint-seconds.look"), 1);
    assert.ok(LANGUAGES.flatMap((language) => RULES[language]).flatMap((rule) => rule.but ?? []).every(({ keys, why }) => keys.length > 0 && why.length > 5));
    assert.ok(Object.values(EXPLAINS.bundles).concat(EXPLAINS.keys.map(({ why }) => why)).every((why) => why.length > 5));
  });

  test("words that only look like a forbidden one pass", () => {
    for (const text of ["Plug the power strip in.", "the dicrotic notch", "Turn the notch filter off.", "one counting window", "the sampling rate", "Put the other hand in the lap.", "two beat intervals", "your result code", "Take 5 to 10 s.", "the desk lamp", "hold the breath", "Leading", "opportunity"]) {
      assert.deepEqual(complaints("en", [{ bundle: "", key: "planted", text }]), []);
    }
    for (const text of ["la ventana de conteo", "la lámpara de mesa", "el registrador", "la frecuencia de muestreo", "el código de resultado"]) {
      assert.deepEqual(complaints("es", [{ bundle: "", key: "planted", text }]), []);
    }
  });

  test("the measure of a text: sentences, words, syllables, grade", () => {
    assert.deepEqual(sentences("Tap the sensor. Is there a spike? At 0.5 s there is one."), ["Tap the sensor.", "Is there a spike?", "At 0.5 s there is one."]);
    assert.deepEqual(wordsIn("T = 2.5 s, don’t round."), ["T", "2.5", "s", "don’t", "round"]);
    for (const [word, n] of /** @type {[string, number][]} */ ([["cable", 2], ["pulse", 1], ["marked", 1], ["wanted", 2], ["computer", 3], ["recording", 3], ["beats", 1], ["interval", 3], ["notes", 1], ["noise", 1], ["the", 1], ["yellow", 2]])) {
      assert.equal(syllables(word), n, word);
    }
    // 10 words, 1 sentence, 10 syllables: .39 × 10 + 11.8 × 1 − 15.59.
    assert.ok(Math.abs(grade(["Put one mark on each beat and count the marks."]) - 0.11) < 1e-9);
    assert.ok(grade(["Notwithstanding considerable instrumentation difficulties, practitioners conscientiously interpret irregularities."]) > 20);
  });

  test("each way in which a message can be shown is read", () => {
    assert.deepEqual(renderings(["Saved, with ", { k: { one: "one row", other: [{ v: "n" }, " rows"] } }, "."]), ["Saved, with one row.", "Saved, with 7 rows."]);
  });
});
