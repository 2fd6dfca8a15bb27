// Runs every *.test.mjs beside this file, or those named on the command line, against one server.
// Exits with 1 if one fails or if none ran.
import { readdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { run } from "node:test";
import { spec } from "node:test/reporters";
import { startServer } from "./lib.mjs";

const here = path.dirname(fileURLToPath(import.meta.url));
const asked = process.argv.slice(2).map((name) => path.resolve(name));
const files = asked.length > 0 ? asked : readdirSync(here)
  .filter((name) => name.endsWith(".test.mjs"))
  .sort()
  .map((name) => path.join(here, name));

const server = await startServer({ own: true });
let passed = 0;
let failed = 0;
const failures = [];
try {
  process.env.DICROTIC_URL = server.url;
  // One file at a time: two browsers on two cores make each other's frames late.
  const tests = run({ files, concurrency: 1, timeout: 1_800_000 });
  tests.on("test:pass", ({ details, skip, todo }) => {
    if (skip !== undefined || todo !== undefined) return;
    if (details.type !== "suite") passed += 1;
  });
  tests.on("test:fail", ({ name, details, file }) => {
    failed += 1;
    if (details.type !== "suite") failures.push(`${path.basename(file ?? "")}: ${name}`);
  });
  const report = tests.compose(spec);
  for await (const text of report) process.stdout.write(text);
} finally {
  await server.stop();
}
// At the very end, where the last lines of a long log are all that is read.
for (const failure of failures) console.log(`failed: ${failure}`);
console.log(`browser: ${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
