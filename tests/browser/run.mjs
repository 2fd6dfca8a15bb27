// Runs every *.test.mjs beside this file, or those named on the command line, against one server and in one browser.
// Exits with 1 if one fails or if none ran.
import { readdirSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { run } from "node:test";
import { spec } from "node:test/reporters";
import { launchForAll, startServer } from "./lib.mjs";

const here = path.dirname(fileURLToPath(import.meta.url));
// The longest come first, so that no processor is left with one of them at the end.
const LONG = ["screens", "language", "faults", "hand", "rehearsal", "nothing_lost", "pack", "kinds", "page"];
// A film is played to the camera in real time: pictures that a busy machine drops are beats that nobody can read.
const ALONE = ["own_camera"];
const alone = (file) => ALONE.includes(path.basename(file, ".test.mjs"));
const rank = (file) => (LONG.indexOf(path.basename(file, ".test.mjs")) + 1 || LONG.length + 1);
const asked = process.argv.slice(2).map((name) => path.resolve(name));
const files = (asked.length > 0 ? asked : readdirSync(here).filter((name) => name.endsWith(".test.mjs")).map((name) => path.join(here, name)))
  .sort((a, b) => rank(a) - rank(b) || a.localeCompare(b));

const server = await startServer({ own: true });
const browser = await launchForAll();
let passed = 0;
let failed = 0;
const failures = [];
const whole = new Map(); // ms of a file's tests; those of one describe that run side by side count once
const single = [];
function note({ name, details, file, nesting }) {
  const short = path.basename(file ?? "", ".test.mjs");
  if (nesting === 0) whole.set(short, (whole.get(short) ?? 0) + details.duration_ms);
  if (details.type !== "suite") single.push([details.duration_ms, short, name]);
}
try {
  process.env.DICROTIC_URL = server.url;
  process.env.DICROTIC_BROWSER = browser.wsEndpoint();
  const concurrency = Number(process.env.DICROTIC_FILES ?? Math.min(2, os.availableParallelism()));
  for (const [some, abreast] of [[files.filter((file) => !alone(file)), concurrency], [files.filter(alone), 1]]) {
    if (some.length === 0) continue;
    const tests = run({ files: some, concurrency: abreast, timeout: 1_800_000 });
    tests.on("test:pass", (one) => {
      note(one);
      if (one.skip !== undefined || one.todo !== undefined) return;
      if (one.details.type !== "suite") passed += 1;
    });
    tests.on("test:fail", (one) => {
      note(one);
      failed += 1;
      if (one.details.type !== "suite") failures.push(`${path.basename(one.file ?? "")}: ${one.name}`);
    });
    const report = tests.compose(spec);
    for await (const text of report) process.stdout.write(text);
  }
} finally {
  await browser.close();
  await server.stop();
}
const seconds = (ms) => `${(ms / 1000).toFixed(1).padStart(6)} s`;
const longest = (list) => list.sort(([a], [b]) => b - a);
console.log("files, longest first:");
for (const [ms, name] of longest([...whole].map(([name, ms]) => [ms, name]))) console.log(`${seconds(ms)}  ${name}`);
console.log("tests, the longest:");
for (const [ms, file, name] of longest(single).slice(0, 12)) console.log(`${seconds(ms)}  ${file}: ${name}`);
// At the very end, where the last lines of a long log are all that is read.
for (const failure of failures) console.log(`failed: ${failure}`);
console.log(`browser: ${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
