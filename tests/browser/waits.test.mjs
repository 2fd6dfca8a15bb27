// Tests wait for facts that the page tells, not for time: no sleep comes back without the mark of one that is about a span of time itself.
import { test } from "node:test";
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { root } from "./lib.mjs";

const folder = path.join(root, "tests/browser");
/** Playwright's own wait, a bare timer (a socket's limit is none), node's sleeps. In brackets, so that this line is no find of its own. */
const SLEEP = /waitFor[T]imeout|(?<![.\w])(?:(?:globalThis|window)\.)?set(?:[T]imeout|[I]nterval)\(|timers[/]promises|Atomics[.]wait/;
/** The mark, with its reason, at the end of the line. */
const MARK = /\/\/ span: \S+ \S+ \S+/;
const found = (text) => text.split("\n").flatMap((line, k) => (SLEEP.test(line) && !MARK.test(line) ? [k + 1] : []));

test("what is looked for is found", () => {
  const [wait, timer] = ["waitFor", "set"].map((word) => `${word}Timeout`);
  const sleeps = [`await page.${wait}(300);`, `await new Promise((done) => ${timer}(done, 50));`, `window.${timer}(go, 9);`, `import { ${timer} } from "node:timers/${"promises"}";`];
  assert.deepEqual(found(sleeps.join("\n")), [1, 2, 3, 4]);
  assert.deepEqual(found(`await page.${wait}(300); // span: too little`), [1]);
  assert.deepEqual(found(`await page.${wait}(300); // span: a slow finger is what is tried\nsocket.${timer}(10_000, end);`), []);
});

test("no test sleeps without saying that the span itself is what it is about", () => {
  const files = readdirSync(folder).filter((name) => name.endsWith(".mjs"));
  assert.ok(files.length > 25, `${files}`);
  assert.deepEqual(files.flatMap((name) => found(readFileSync(path.join(folder, name), "utf8")).map((line) => `${name}:${line}`)), []);
});
