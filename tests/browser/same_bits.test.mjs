// The same scenario and seed give the same samples, to the last bit, in the native program, in this JavaScript engine
// and in the browser's: an attempt that is replayed elsewhere is the attempt that the student saw. Compared is what the
// recorder gives: of every scenario's bench as a student meets it, with its faults and after what happened before; in
// every scripted attempt; of a bench with each fault of the catalogue, mild and at its worst.
import { test, before, after } from "node:test";
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import { host, root, startServer, withPage } from "./lib.mjs";

const folder = path.join(root, "scenarios");
const files = readdirSync(folder).filter((name) => name.endsWith(".toml")).sort().map((name) => path.join(folder, name));
const text = (file) => readFileSync(file, "utf8");
const level = (file) => Number(text(file).match(/^level\s*=\s*(\d+)/m)?.[1]);
const hardest = [...files].sort((a, b) => level(b) - level(a))[0];
const faultBench = text(path.join(root, "tests/faults/bench.toml"));
const FAULT_SAMPLES = 20_000;

let server, core;

before(async () => {
  server = await startServer();
  const [glue, bytes] = await Promise.all(["wasm/dicrotic.js", "wasm/dicrotic_bg.wasm"].map(async (name) => {
    const response = await fetch(new URL(name, server.url));
    assert.equal(response.status, 200, name);
    return Buffer.from(await response.arrayBuffer());
  }));
  core = await import(`data:text/javascript;base64,${glue.toString("base64")}`);
  core.initSync({ module: bytes });
});

after(() => server?.stop());

// A line for each file.
async function native(of, ...more) {
  const { stdout } = await promisify(execFile)(host, ["fingerprint", ...of, ...more], { maxBuffer: 1 << 26 });
  const lines = stdout.trimEnd().split("\n");
  assert.equal(lines.length, of.length);
  return lines;
}

// Each of `calls` is the name of a function of the core and what it is given; hashes in the same order.
const inEngine = (calls) => calls.map(([name, ...given]) => core[name](...given));

const inBrowser = (calls) => withPage({}, async ({ page, url }) => {
  await page.goto(url);
  return page.evaluate(async (all) => {
    const loaded = await import("/wasm/dicrotic.js");
    await loaded.default();
    return all.map(([name, ...given]) => loaded[name](...given));
  }, calls);
});

// The native program, which was started before, runs meanwhile.
async function agree(whats, started, calls) {
  const [engine, browser] = [inEngine(calls), await inBrowser(calls)];
  const expected = await started;
  assert.ok(whats.length > 0 && expected.length === whats.length, `${expected.length} hashes of ${whats.length}`);
  for (const [i, what] of whats.entries()) {
    assert.match(expected[i], /^[0-9a-f]{64}$/, what);
    assert.equal(engine[i], expected[i], `engine: ${what}`);
    assert.equal(browser[i], expected[i], `browser: ${what}`);
  }
  return expected;
}

test("native, engine and browser agree on every sample of every bench that a student meets", async () => {
  assert.ok(files.length > 0, "no scenario to compare");
  // A minute of every scenario; a quarter of an hour and more of the one with the most faults.
  const [minute, long, seed] = [60_000, 1_000_000, "18446744073709551615"];
  const started = Promise.all([
    native(files, "--seed", "1", "--samples", String(minute)),
    native([hardest], "--seed", seed, "--samples", String(long)),
  ]).then((both) => both.flat());
  const hashes = await agree([...files, `${hardest}, long`], started, [
    ...files.map((file) => ["fingerprint", text(file), "1", minute]),
    ["fingerprint", text(hardest), seed, long],
  ]);
  // An open input knows no heart: two benches of which only that is wrong, on one power line, hum alike. What pools draw may be such.
  const fixed = hashes.filter((_, k) => k >= files.length || !text(files[k]).includes("\n[pool]"));
  assert.ok(fixed.length > 50 && new Set(fixed).size >= fixed.length - 1, "scenarios give the same samples");
});

test("native, engine and browser agree on every sample of every scripted attempt", async () => {
  const started = native(files, "--attempts").then((lines) => lines.flatMap((line) => line.split(" ")));
  const each = files.flatMap((file) => {
    const attempts = text(file).match(/^\[\[attempt\]\]/gm) ?? [];
    return attempts.map((_, k) => /** @type {[string, number]} */ ([file, k]));
  });
  await agree(each.map(([file, k]) => `${file}, attempt ${k + 1}`), started,
    each.map(([file, k]) => ["fingerprintOfAttempt", text(file), k]));
});

test("native, engine and browser agree on every fault at work, mild and at its worst", async () => {
  const faults = JSON.parse(core.faultCatalogue());
  assert.ok(faults.length >= 40, `${faults.length} faults`);
  const cases = faults.flatMap(({ id, severity }) => severity.map((much) => (
    { what: `${id}, severity ${much}`, toml: `${faultBench}\n[[fault]]\nname = "${id}"\nseverity = ${much}\n` })));
  const place = mkdtempSync(path.join(tmpdir(), "dicrotic-faults-"));
  try {
    const written = cases.map(({ toml }, k) => {
      const file = path.join(place, `${k}.toml`);
      writeFileSync(file, toml);
      return file;
    });
    await agree(cases.map(({ what }) => what), native(written, "--seed", "3", "--samples", String(FAULT_SAMPLES)),
      cases.map(({ toml }) => ["fingerprint", toml, "3", FAULT_SAMPLES]));
  } finally {
    rmSync(place, { recursive: true });
  }
});

test("another seed and another length give another fingerprint", async () => {
  const of = (seed, samples) => native([hardest], "--seed", seed, "--samples", samples);
  const prints = (await Promise.all([of("1", "2000"), of("2", "2000"), of("1", "2001")])).flat();
  assert.equal(new Set(prints).size, 3, prints.join(" "));
});
