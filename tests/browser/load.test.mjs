// How the page loads: everything is asked for at once, once, and a part that is missing is told.
import { test } from "node:test";
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import assert from "node:assert/strict";
import { root, withPage } from "./lib.mjs";

const html = readFileSync(path.join(root, "www/index.html"), "utf8");
const preloaded = [...html.matchAll(/<link rel="modulepreload" href="([^"]+)">/g)].map((found) => found[1]).sort();
const modules = readdirSync(path.join(root, "www/js"), { recursive: true, withFileTypes: true })
  .filter((entry) => entry.name.endsWith(".js"))
  .map((entry) => path.relative(path.join(root, "www"), path.join(entry.parentPath ?? entry.path, entry.name)))
  .filter((name) => !/^js\/(hand|assign|class|course)\//.test(name)); // brought when they are opened

test("index.html lists every module, so that none waits for another", () => {
  assert.deepEqual(preloaded, [...modules, "wasm/dicrotic.js"].sort());
});

test("each file is fetched once, and no script is fetched that index.html does not list", async () => {
  await withPage({}, async ({ page, url }) => {
    const asked = [];
    page.on("request", (request) => asked.push(request.url().replace(url, "").replace(/#.*/, "")));
    await page.goto(`${url}#s=hum-on-the-strip&seed=1`);
    await page.waitForFunction(() => document.documentElement.dataset.ready === "1");
    assert.deepEqual(asked.filter((one, i) => asked.indexOf(one) !== i), [], "fetched twice");
    assert.deepEqual(asked.filter((one) => one.endsWith(".js")).sort(), preloaded);
    assert.deepEqual(asked.filter((one) => one.endsWith(".toml")).length, 1, "scenarios that nobody opened");
  });
});

test("a missing scenario file is named, and an unknown scenario leads to the list", async () => {
  await withPage({ expected: [/: .*hum-on-the-strip\.toml/, /Failed to load resource/] }, async ({ page, url }) => {
    await page.route("**/02-hum-on-the-strip.toml", (route) => route.fulfill({ status: 404, body: "gone" }));
    await page.goto(`${url}#s=hum-on-the-strip&seed=1`);
    await page.locator("#calm").filter({ hasText: "scenarios/02-hum-on-the-strip.toml" }).waitFor();
    await page.goto(`${url}?more#s=nowhere`);
    await page.locator("#calm").filter({ hasText: "There is no scenario called “nowhere” here" }).waitFor();
    assert.ok(await page.locator(".card a").count() > 1, "no list of scenarios");
    assert.match(await page.locator(".card-bad").innerText(), /hum-on-the-strip\.toml/);
  });
});
