// The declared types against what the core really tells: every field of a type is there, and no field is there that the type leaves out.
// Real attempts, done by the core itself; no browser is needed.
import { before, test } from "node:test";
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import assert from "node:assert/strict";
import ts from "typescript";
import { root } from "./lib.mjs";

const built = path.resolve(root, process.env.CARGO_TARGET_DIR ?? "target", "page");
const tomlOf = (file) => readFileSync(path.join(root, "scenarios", file), "utf8");
const files = readdirSync(path.join(root, "scenarios")).filter((name) => name.endsWith(".toml")).sort();

/** What the core told, by the name of the type that it is declared as. */
const told = { View: [], Action: [], Answer: [], WorkedStep: [], Summary: [], Evidence: [], SkillMap: [], NextBench: [], CatalogueFault: [], Fairness: [], ClassTold: [], Glance: [] };
let core;

/** An attempt that is watched: everything that it tells is kept. */
function watched(lab) {
  const see = (name, json) => told[name].push(JSON.parse(json));
  const look = () => see("View", lab.view());
  look();
  const act = (action, refused = false) => {
    told.Action.push(action);
    const answer = JSON.parse(lab.act(JSON.stringify(action)));
    told.Answer.push(answer);
    assert.equal(answer.ok, !refused, `${JSON.stringify(action)}: ${JSON.stringify(answer)}`);
    look();
  };
  const wait = (seconds) => {
    for (let s = 0; s < seconds; s += 0.25) lab.advance(0.25);
    look();
  };
  return { lab, look, act, wait, see };
}

/** A check of a recording in which little is right, with every hint that it gives, and then the truth. */
function wrongly({ lab, act, wait, see }, answers) {
  act({ do: "agree" });
  act({ do: "record" });
  wait(24);
  act({ do: "stop" });
  act({ do: "label", recording: 0, text: "first" });
  act({ do: "cursor", which: "a", t: 1 });
  act({ do: "cursor", which: "b", t: 17 });
  act({ do: "mark", t: 2 });
  see("Summary", lab.summary());
  for (const [field, text] of Object.entries(answers)) act({ do: "answer", field, text });
  act({ do: "check" });
  hints({ lab, act });
  for (const [field] of Object.entries(answers)) act({ do: "answer", field, text: "7" });
  act({ do: "check" });
  hints({ lab, act });
  see("Evidence", lab.evidence());
}

function hints({ lab, act }) {
  while (JSON.parse(lab.view()).hint_next !== null) act({ do: "hint" });
}

before(async () => {
  core = await import(path.join(built, "dicrotic_desk.js"));
  core.initSync({ module: readFileSync(path.join(built, "dicrotic_desk_bg.wasm")) });

  // Every scenario's worked example, to its right check and the truth.
  for (const file of files) {
    const example = watched(core.Lab.worked(tomlOf(file)));
    for (let step = JSON.parse(example.lab.workedNext()); step; step = JSON.parse(example.lab.workedNext())) {
      told.WorkedStep.push(step);
      if (step.action) told.Action.push(step.action);
      example.look();
    }
    assert.equal(told.View.at(-1).check?.passed, true, file);
    example.see("Summary", example.lab.summary());
  }

  // Benches of one's own, gone about wrongly; one of them assigned to a class.
  const assigned = `${tomlOf("02-hum-on-the-trace.toml")}\n[assignment]\nkey = "k"\nseeds = "each"\nattempts = 2\nopening = "o"\nclosing = "c"\n`;
  const bench = watched(new core.Lab(assigned, "7"));
  bench.see("Summary", bench.lab.summary());
  for (const action of [
    { do: "help", mode: "alone" }, { do: "notch", hz: 50 }, { do: "average", ms: 10 }, { do: "low_pass", hz: 30, order: 1 }, { do: "high_pass", hz: 0.5 }, { do: "zero" }, { do: "zero_clear" }, { do: "let_pass", s: 60 }, ...["push_up_sleeve", "dry_plug", "wipe_sensor", "close_programs"].map((name) => ({ do: name })), { do: "buffered", on: false }, { do: "calibrator", on: true }, { do: "calibrator", on: false }, { do: "integral", on: true },
    { do: "ask_finger" }, { do: "ask_still" }, { do: "ask_quiet" }, ...["recorder", "computer", "power_strip", "cable", "sensor", "subject", "around"].map((at) => ({ do: "look", at })), { do: "shade", on: true }, { do: "other_hand", on: "case" }, { do: "hand_height", cm: 20 }, { do: "manoeuvre", what: "talk" },
    { do: "sensor_place", place: "joint" }, { do: "sensor_place", place: "pulp" }, { do: "snap", on: true }, { do: "show", mode: "paused" }, { do: "show", mode: "live" }, { do: "manoeuvre", what: "rest" },
  ]) bench.act(action);
  bench.act({ do: "plug", end: "sensor", socket: "outlet1" }, true);
  wrongly(bench, { count: "3", seconds: "2", multiplier: "x", rate: "1,000.5" });
  bench.act({ do: "reveal" }, true); // over: two checks are all
  for (const file of ["54-given-window.toml", "60-two-windows.toml", "56-read-the-range.toml", "57-between-the-same-features.toml"]) {
    const attempt = watched(new core.Lab(tomlOf(file), "11"));
    attempt.act({ do: "help", mode: "half" });
    const { task } = told.View.at(-1);
    for (const field of task.fields) attempt.act({ do: "answer", field, text: "9" });
    attempt.act({ do: "check" });
    hints(attempt);
    attempt.act({ do: "check" });
    hints(attempt);
  }
  const named = ["20-thick-trace-a.toml", "58-what-is-it.toml"].map((file) => {
    const attempt = watched(new core.Lab(tomlOf(file), "11"));
    attempt.act({ do: "name", fault: "strap_loose" });
    wrongly(attempt, {});
    return attempt;
  });

  // Hints at a test of each kind: a look at a place, a plug, a part, and the lamp's switch once the shade has told nothing.
  for (const [file, done] of [["18-small-pulse-c.toml"], ["30-spikes-and-gaps-a.toml"], ["31-spikes-and-gaps-b.toml"], ["24-thick-trace-e.toml", { do: "shade", on: true }]]) {
    const attempt = watched(new core.Lab(tomlOf(file), "11"));
    if (done) attempt.act(done);
    attempt.act({ do: "name", fault: "strap_loose" });
    wrongly(attempt, {});
  }

  // A reading in which only the multiplier is wrong: the worked example's own steps, with another answer.
  // Once more where the instructor has words for it.
  const words = '\n[[misreading]]\nname = "half_minute"\nfield = "multiplier"\nformula = "2"\ntolerance = 0.01\nwords = "w"\n\n[[hint]]\nabout = "multiplier"\nrung = "look"\nwords = "w"\n';
  for (const own of ["", words]) {
    const toml = tomlOf("04-rest-pulse.toml") + own;
    const example = core.Lab.worked(toml);
    const attempt = watched(new core.Lab(toml, example.seed()));
    for (let step = JSON.parse(example.workedNext()); step; step = JSON.parse(example.workedNext())) {
      if (step.action) attempt.act(step.action.field === "multiplier" ? { ...step.action, text: "2" } : step.action);
      else attempt.wait(step.wait_s);
    }
    hints(attempt);
  }

  // A recording from a file, with a note in it.
  const lines = Array.from({ length: 3000 }, (_, k) => `${k / 100},${Math.max(0, Math.sin(k / 13)) ** 3 + Math.sin(k / 50) / 10}`);
  const csv = ["t_s,value", ...lines, "# note,1.5,,the subject coughed", "# note,3,2,talking"].join("\n");
  const recording = watched(core.Lab.fromFiles(["a.csv"], [new TextEncoder().encode(csv)], undefined, undefined));
  for (const action of [{ do: "cursor", which: "a", t: 1 }, { do: "cursor", which: "b", t: 17 }, { do: "zoom", from_s: 1, to_s: 4 }, { do: "zoom_out" }, { do: "mark", t: 2 }, { do: "check" }, { do: "reveal" }, { do: "another_window" }, { do: "invert", on: true }, { do: "high_pass", hz: 0.5 }, { do: "low_pass", hz: 10 }]) recording.act(action);
  recording.act({ do: "notch", hz: 50 }, true); // half of 100 Hz
  const faster = ["t_s,value", ...lines.map((line, k) => `${k / 200},${line.split(",")[1]}`)].join("\n");
  const notched = watched(core.Lab.fromFiles(["b.csv"], [new TextEncoder().encode(faster)], undefined, undefined));
  notched.act({ do: "notch", hz: 50 });
  told.Glance.push(...JSON.parse(core.channelGlances(["a.csv"], [new TextEncoder().encode("t_s,a (mV),b\n0,1,2\n0.01,2,3\n0.02,3,1")], undefined)));
  recording.see("Summary", recording.lab.summary());

  told.CatalogueFault.push(...JSON.parse(core.faultCatalogue()));
  told.Fairness.push(JSON.parse(core.fairness(tomlOf(files[0]), 1, 2, 0)));
  const history = told.Evidence.map((one, k) => ({ ...one, at_ms: 1e12 + k * 864e5 }));
  // Somebody who does well, on other benches and over days: what is wanting is then a later day, and what is mastered fades.
  const well = (times) => Array.from({ length: times }, (_, k) => ({ ...told.Evidence[0], scenario: `well-${k % 3}`, seed: String(k), mode: "alone", passed: true, revealed: false, over: true, misreading: null, no_credit: null, hints: 0,
    at_ms: 1e12 + k * 864e5, skills: { hum: { got: "pass", code: "mended" } }, judged: [0, 1].map(() => ({ skill: "hum", code: "mended", right: true, told: false, misread: false })),
    faults: [{ id: ["charger_near", "cable_on_power_strip", "hand_on_laptop"][k % 3], set: "fuzzy", of: 9, skill: "hum", named: true, gone: true, tested: true }] }));
  for (const past of [[], history, [...history, ...history], well(1), well(6)]) {
    told.SkillMap.push(JSON.parse(core.skillMap(JSON.stringify(past), 1e12 + past.length * 864e5)));
    const offered = [{ id: "a", level: 1, skills: ["hum", "motion"], worked: true }];
    told.NextBench.push(JSON.parse(core.nextBench(JSON.stringify(past), JSON.stringify(offered), 1.001e12)));
  }
  const course = new core.Course();
  const set = new core.SetList();
  const other = watched(new core.Lab(`time_base_s = 5.0\n${tomlOf("20-thick-trace-a.toml")}`, "11")); // another bench of one name
  const handedIn = [bench, ...named, other].map((attempt, k) => [`${k}.json`, attempt.lab.result(JSON.stringify({ student: `s${k}`, try: 1, begun_s: 1, ended_s: 600 }))]);
  // One copies, one changes a file; a third is damaged, and it says whose it is.
  handedIn.push(["copy.json", handedIn[0][1].replace('"s0"', '"s99"')]);
  for (const [file, text] of handedIn) {
    const replayed = new core.Regrade(text, "{}", set);
    while (!replayed.step(1e9));
    course.take(JSON.stringify({ file, text }), replayed.graded());
  }
  course.refuse(JSON.stringify({ file: "half.json", text: '{"about": {"student": "s1"' }), "no_result", '{"found": "half"}');
  assert.equal(course.roster("code,name,email,group\ns0,Ada,a@example.org,A\nnobody,Bo,b@example.org,\n"), '{"taken":2,"wrong":[]}');
  course.settle();
  course.care("s0", JSON.stringify({ waived: true, tries: 1, until_s: 1, note: "ill" }));
  told.ClassTold.push(JSON.parse(course.told()));
  // The same where the bench was set as a part of a course.
  course.give("course", JSON.stringify({ course: { id: "c", title: "C" }, part: [{ opens: "2026-09-01", due: "2026-09-08", scenario: assigned }] }));
  const theirs = watched(new core.Lab(assigned, core.seedFor("k", "s9", 1)));
  wrongly(theirs, { count: "3", seconds: "2" });
  const text = theirs.lab.result(JSON.stringify({ student: "s9", try: 1, begun_s: 1, ended_s: 600 }));
  const replayed = new core.Regrade(text, "{}", set);
  while (!replayed.step(1e9));
  course.take(JSON.stringify({ file: "s9.json", text }), replayed.graded());
  told.ClassTold.push(JSON.parse(course.told()));
});

/** The declared types, by name, as the TypeScript compiler reads them. */
class Declared {
  constructor() {
    const config = ts.getParsedCommandLineOfConfigFile(path.join(root, "tests/browser/tsconfig.json"), {}, { ...ts.sys, onUnRecoverableConfigFileDiagnostic: assert.fail });
    const files = ["view", "action", "told"].map((name) => path.join(root, `www/js/types/${name}.d.ts`));
    const program = ts.createProgram(files, config.options);
    this.checker = program.getTypeChecker();
    this.types = new Map(files.flatMap((file) => this.checker.getExportsOfModule(this.checker.getSymbolAtLocation(program.getSourceFile(file)))).map((symbol) => [symbol.name, this.checker.getDeclaredTypeOfSymbol(symbol)]));
  }
}

const declared = new Declared();

/** Holds values against a declared type; the differences, as sentences. */
class Comparison {
  constructor() {
    this.checker = declared.checker;
    this.wrong = new Set();
  }

  of(name, values) {
    assert.ok(values.length > 0, `nothing was told of ${name}`);
    this.compare(declared.types.get(name), values, name);
    return [...this.wrong].sort();
  }

  compare(type, values, at) {
    if (type.flags & ts.TypeFlags.Unknown) return;
    const members = type.isUnion() ? type.types : [type];
    const objects = new Map(members.filter((one) => one.flags & (ts.TypeFlags.Object | ts.TypeFlags.Intersection)).map((one) => [one, []]));
    for (const value of values) {
      if (value !== null && typeof value === "object") {
        const [fitting] = [...objects.keys()].filter((one) => objects.size === 1 || this.mayBe(one, value));
        if (fitting) objects.get(fitting).push(value);
        else this.wrong.add(`${at}: ${JSON.stringify(value).slice(0, 80)} is of no declared form`);
      } else if (!members.some((one) => this.isPlain(one, value))) this.wrong.add(`${at}: ${JSON.stringify(value)} is not declared`);
    }
    for (const [form, found] of objects) this.compareObjects(form, found, at, objects.size > 1);
  }

  isPlain({ flags, value: literal, intrinsicName }, value) {
    if (value === null) return Boolean(flags & ts.TypeFlags.Null);
    if (flags & ts.TypeFlags.StringLiteral || flags & ts.TypeFlags.NumberLiteral) return literal === value;
    if (flags & ts.TypeFlags.BooleanLiteral) return intrinsicName === String(value);
    return Boolean(flags & { string: ts.TypeFlags.String, number: ts.TypeFlags.Number, boolean: ts.TypeFlags.Boolean }[typeof value]);
  }

  /** Of several forms, the one whose literal fields a value has; never one of whose required fields it has none. */
  mayBe(type, value) {
    if (Array.isArray(value)) return this.checker.isArrayLikeType(type);
    if (this.checker.isArrayLikeType(type)) return false;
    const required = this.checker.getPropertiesOfType(type).filter((one) => !(one.flags & ts.SymbolFlags.Optional));
    if (required.length > 0 && !required.some((one) => one.name in value)) return false;
    return this.checker.getPropertiesOfType(type).every((property) => {
      const field = this.checker.getTypeOfSymbol(property);
      const literal = (one) => Boolean(one.flags & (ts.TypeFlags.StringLiteral | ts.TypeFlags.BooleanLiteral));
      const alternatives = field.isUnion() ? field.types : [field];
      if (property.flags & ts.SymbolFlags.Optional || !alternatives.every(literal) || alternatives.length > 12) return true;
      return alternatives.some((one) => this.isPlain(one, value[property.name]));
    });
  }

  /** several: whether the form is one of several, of which not each must be met with all its fields. */
  compareObjects(type, values, at, several) {
    if (values.length === 0) {
      if (!several) this.wrong.add(`${at}: never met`);
      return;
    }
    if (this.checker.isArrayLikeType(type)) {
      const items = this.checker.isTupleType(type) ? null : this.checker.getIndexTypeOfType(type, ts.IndexKind.Number);
      if (items) this.compare(items, values.flat(1), `${at}[]`);
      else this.checker.getTypeArguments(type).forEach((item, k) => this.compare(item, values.map((value) => value[k]), `${at}[${k}]`));
      return;
    }
    const index = this.checker.getIndexInfosOfType(type).find(({ keyType }) => keyType.flags & ts.TypeFlags.String);
    const properties = new Map(this.checker.getPropertiesOfType(type).map((property) => [property.name, property]));
    for (const name of new Set(values.flatMap((value) => Object.keys(value)))) if (!properties.has(name) && !index) this.wrong.add(`${at}.${name}: told, and not declared`);
    if (index && properties.size === 0) this.compare(index.type, values.flatMap((value) => Object.values(value)), `${at}.*`);
    for (const [name, property] of properties) {
      const having = values.filter((value) => Object.hasOwn(value, name)).map((value) => value[name]);
      const optional = Boolean(property.flags & ts.SymbolFlags.Optional);
      if (!optional && having.length < values.length) this.wrong.add(`${at}.${name}: declared, and not always told`);
      if (!several && !having.some((value) => value !== null)) this.wrong.add(`${at}.${name}: declared, and never told with a value`);
      const field = this.checker.getTypeOfSymbol(property);
      this.compare(optional ? this.checker.getNonNullableType(field) : field, optional ? having.filter((value) => value !== null) : having, `${at}.${name}`);
    }
  }
}

for (const name of Object.keys(told)) {
  test(`${name}: what is declared is told, and what is told is declared`, () => {
    assert.deepEqual(new Comparison().of(name, told[name]), []);
  });
}

test("a field too many, one too few, and a word that is not declared are found", () => {
  const [first] = told.View;
  const whole = new Set(new Comparison().of("View", [first])); // of one view: much of it is null
  const differences = (change) => {
    const view = structuredClone(first);
    change(view);
    return new Comparison().of("View", [first, view]).filter((one) => !whole.has(one));
  };
  assert.deepEqual(differences((view) => (view.trace.news = 1)), ["View.trace.news: told, and not declared"]);
  assert.deepEqual(differences((view) => delete view.bench.strap.feel), ["View.bench.strap.feel: declared, and not always told"]);
  assert.deepEqual(differences((view) => (view.trace.mode = "sideways")), ['View.trace.mode: "sideways" is not declared']);
  assert.deepEqual(differences((view) => (view.marks = null)), ["View.marks: null is not declared"]);
});
