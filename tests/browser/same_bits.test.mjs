// The same scenario and seed give the same samples, to the last bit, in the native program, in this JavaScript engine
// and in the browser's: an attempt that is replayed elsewhere is the attempt that the student saw.
import { test } from "node:test";
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { promisify } from "node:util";
import { host, root, startServer, withPage } from "./lib.mjs";

const folder = path.join(root, "scenarios");
const files = readdirSync(folder).filter((name) => name.endsWith(".toml")).sort();
const levels = new Map(files.map((name) => {
  const level = readFileSync(path.join(folder, name), "utf8").match(/^level\s*=\s*(\d+)/m);
  return [name, Number(level?.[1])];
}));
const hardest = [...files].sort((a, b) => levels.get(b) - levels.get(a))[0];

// A minute of every scenario; a quarter of an hour and more of the one with the most faults.
const cases = [
  ...files.map((file) => ({ file, seed: "1", samples: 60_000 })),
  { file: hardest, seed: "18446744073709551615", samples: 1_000_000 },
];

async function native({ file, seed, samples }) {
  const { stdout } = await promisify(execFile)(host, [
    "fingerprint", path.join(folder, file), "--seed", seed, "--samples", String(samples),
  ]);
  return stdout.trim();
}

test("native, engine and browser agree on every sample", async () => {
  assert.ok(files.length > 0, "no scenario to compare");
  const inputs = cases.map((one) => ({ ...one, toml: readFileSync(path.join(folder, one.file), "utf8") }));

  const server = await startServer();
  const inEngine = [];
  try {
    const [glue, bytes] = await Promise.all(["wasm/dicrotic.js", "wasm/dicrotic_bg.wasm"].map(async (name) => {
      const response = await fetch(new URL(name, server.url));
      assert.equal(response.status, 200, name);
      return Buffer.from(await response.arrayBuffer());
    }));
    const core = await import(`data:text/javascript;base64,${glue.toString("base64")}`);
    core.initSync({ module: bytes });
    for (const { toml, seed, samples } of inputs) inEngine.push(core.fingerprint(toml, seed, samples));
  } finally {
    await server.stop();
  }

  const inBrowser = await withPage({}, async ({ page, url }) => {
    await page.goto(url);
    return page.evaluate(async (all) => {
      const core = await import("/wasm/dicrotic.js");
      await core.default();
      return all.map(({ toml, seed, samples }) => core.fingerprint(toml, seed, samples));
    }, inputs);
  });

  for (const [i, one] of cases.entries()) {
    const what = `${one.file}, seed ${one.seed}, ${one.samples} samples`;
    const expected = await native(one);
    assert.match(expected, /^[0-9a-f]{16,64}$/, what);
    assert.equal(inEngine[i], expected, `engine: ${what}`);
    assert.equal(inBrowser[i], expected, `browser: ${what}`);
  }
});

test("another seed and another length give another fingerprint", async () => {
  const one = { file: hardest, seed: "1", samples: 2_000 };
  const prints = await Promise.all([one, { ...one, seed: "2" }, { ...one, samples: 2_001 }].map(native));
  assert.equal(new Set(prints).size, 3, prints.join(" "));
});
