// How the page loads: everything is asked for at once, once, and a part that is missing is told.
import { test } from "node:test";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import assert from "node:assert/strict";
import { root, withPage } from "./lib.mjs";

const html = readFileSync(path.join(root, "www/index.html"), "utf8");
const preloaded = [...html.matchAll(/<link rel="modulepreload" href="([^"]+)">/g)].map((found) => found[1]).sort();
const www = path.join(root, "www");
const modules = readdirSync(path.join(www, "js"), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.name.endsWith(".js"))
  .map((entry) => path.relative(www, path.join(entry.parentPath ?? entry.path, entry.name)));
const sourceOf = (file) => readFileSync(path.join(www, file), "utf8");
const from = (file, name) => path.normalize(path.join(path.dirname(file), name));
const asked = (file, how) => [...sourceOf(file).matchAll(how)].map((found) => from(file, found[1]));
/** What a module needs before it runs, and what it brings when a screen is opened. */
const needs = (file) => asked(file, /^import\s[^;]*?from "([^"]+)";/gm);
const brings = (file) => asked(file, /\b(?:import\(|new Worker\(new URL\()"([^"]+)"/g);

/** All modules that are there once `first` has run: itself and whatever it needs. */
function closure(first, found = new Set()) {
  if (found.has(first)) return found;
  found.add(first);
  if (first.startsWith("js/")) for (const next of needs(first)) closure(next, found);
  return found;
}

test("index.html lists every module that the page starts with, so that none waits for another, and no other", () => {
  assert.deepEqual(preloaded, [...new Set(["js/main.js", "js/first.js"].flatMap((one) => [...closure(one)]))].sort());
});

test("every module is there from the start or brought with a screen", () => {
  const later = modules.flatMap(brings);
  assert.ok(later.length >= 6, `${later}`);
  const reached = new Set(["js/main.js", "js/first.js", ...later].flatMap((one) => [...closure(one)]));
  assert.deepEqual(modules.filter((one) => !reached.has(one)), []);
});

test("each file is fetched once, and no script is fetched that index.html does not list", async () => {
  await withPage({}, async ({ page, url }) => {
    const asked = [];
    page.on("request", (request) => asked.push(request.url().replace(url, "").replace(/#.*/, "")));
    await page.goto(`${url}#s=hum-on-the-trace&seed=1`);
    await page.waitForFunction(() => document.documentElement.dataset.ready === "1");
    assert.deepEqual(asked.filter((one, i) => asked.indexOf(one) !== i), [], "fetched twice");
    assert.deepEqual(asked.filter((one) => one.endsWith(".js")).sort(), preloaded);
    assert.deepEqual(asked.filter((one) => one.endsWith(".toml")).length, 1, "scenarios that nobody opened");
  });
});

test("a missing scenario file is named, and an unknown scenario leads to the list", async () => {
  await withPage({ expected: [/: .*hum-on-the-trace\.toml/, /Failed to load resource/] }, async ({ page, url }) => {
    await page.route("**/02-hum-on-the-trace.toml", (route) => route.fulfill({ status: 404, body: "gone" }));
    await page.goto(`${url}#s=hum-on-the-trace&seed=1`);
    await page.locator("#calm").filter({ hasText: "scenarios/02-hum-on-the-trace.toml" }).waitFor();
    await page.goto(`${url}?more#s=nowhere`);
    await page.locator("#calm").filter({ hasText: "There is no scenario with the name “nowhere” here" }).waitFor();
    assert.ok(await page.locator(".card a").count() > 1, "no list of scenarios");
    assert.match(await page.locator(".card-bad").innerText(), /hum-on-the-trace\.toml/);
  });
});
