// The page on the device: without a network after one visit, and a new version that costs nobody an attempt.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import os from "node:os";
import path from "node:path";
import { test } from "node:test";
import { host, root, withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const TYPES = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".json": "application/json", ".wasm": "application/wasm", ".svg": "image/svg+xml", ".png": "image/png", ".toml": "application/toml", ".webmanifest": "application/manifest+json" };
const kept = (page) => page.locator("#kept").filter({ hasText: "also opens without a network" });

/** The built page on a plain static server, which can be edited and stopped. */
async function withStatic(body) {
  const folder = mkdtempSync(path.join(os.tmpdir(), "dicrotic-static-"));
  execFileSync(host, ["build", "--out", folder], { cwd: root, stdio: "ignore" });
  const server = createServer((request, response) => {
    const name = decodeURIComponent(new URL(request.url, "http://x/").pathname).slice(1) || "index.html";
    try {
      const bytes = readFileSync(path.join(folder, name));
      response.writeHead(200, { "content-type": TYPES[path.extname(name)] ?? "application/octet-stream", "cache-control": "no-cache" });
      response.end(bytes);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  try {
    return await body({ url: `http://127.0.0.1:${server.address().port}/`, edit: (name, change) => writeFileSync(path.join(folder, name), change(existsSync(path.join(folder, name)) ? readFileSync(path.join(folder, name), "utf8") : "")) });
  } finally {
    server.closeAllConnections();
    server.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Gives a file of the page new words, and the worker the version that goes with them. */
function newVersion(edit) {
  edit("texts/en.json", (text) => text.replace('"Practice the finger pulse"', '"Practice the finger pulse again"'));
  edit("sw.js", (text) => text.replace(/("texts\/en\.json":")\w/, "$1x"));
}

test("after one visit the page opens with the network cut, and an attempt goes on to its end", async () => {
  await withPage({ viewport: { width: 1280, height: 900 }, serviceWorkers: "allow", own: true }, async ({ page, context, server, url }) => {
    await student.openScenario(page, url, "hum-on-the-trace", "7");
    await kept(page).waitFor();
    await student.choose(page, "Full-scale range", "±50 mV");
    await server.stop(); // nothing answers any more, whatever the browser believes of its network
    await context.setOffline(true);
    await page.reload();
    await student.pressButton(page, "Continue it");
    await page.locator(".plug").first().waitFor({ state: "attached" });
    assert.match(await page.getByLabel("Full-scale range", { exact: true }).locator("option:checked").innerText(), /50 mV/);
    await student.record(page, 3);
    await student.fillSheet(page, { count: 5, seconds: 3, multiplier: 20, rate: 100 });
    const debrief = await student.check(page);
    assert.ok(debrief.steps.length > 3, `${debrief.steps.length} steps`);
    // A screen that was never opened before is there too.
    await student.pressButton(page, "Faults and tests");
    await page.locator(".fault-card").first().waitFor();
    assert.ok((await page.locator(".fault-card").count()) > 50);
    await page.goto(url);
    await page.locator(".ways").waitFor();
  });
});

test("a new version comes by itself where nothing is under way, and waits for a word where an attempt is", async () => {
  await withStatic(async ({ url, edit }) => {
    await withPage({ viewport: { width: 1280, height: 900 }, serviceWorkers: "allow" }, async ({ page }) => {
      await page.goto(url);
      await kept(page).waitFor();
      newVersion(edit);
      await page.reload();
      await page.getByRole("heading", { name: "Practice the finger pulse again" }).waitFor();
    });
    edit("texts/en.json", (text) => text.replace("pulse anew", "pulse"));
    await withPage({ viewport: { width: 1280, height: 900 }, serviceWorkers: "allow" }, async ({ page }) => {
      await page.goto(url);
      await kept(page).waitFor();
      newVersion(edit);
      edit("sw.js", (text) => text.replace(/("texts\/en\.json":")\w/, "$1y"));
      await student.openScenario(page, url, "first-wiring", "7");
      await page.reload();
      await page.locator("#lab").waitFor();
      await student.choose(page, "Full-scale range", "±50 mV");
      await student.pressButton(page, "Use the new version");
      await student.pressButton(page, "Continue it");
      await page.locator(".plug").first().waitFor({ state: "attached" });
      assert.match(await page.getByLabel("Full-scale range", { exact: true }).locator("option:checked").innerText(), /50 mV/);
      await page.goto(url);
      await page.getByRole("heading", { name: "Practice the finger pulse again" }).waitFor();
    });
  });
});

test("inside a frame nothing is kept", async () => {
  await withPage({ serviceWorkers: "allow" }, async ({ page, context, url }) => {
    await page.goto(url);
    await page.locator(".ways").waitFor();
    await withStatic(async ({ url: inner, edit }) => {
      edit("frame.html", () => `<!doctype html><link rel="icon" href="img/icon.svg"><iframe src="index.html" width="900" height="700"></iframe>`);
      const outer = await context.newPage();
      await outer.clock.install();
      const registered = () => outer.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length);
      await outer.goto(`${inner}frame.html`);
      await outer.frameLocator("iframe").locator(".ways").waitFor();
      await outer.clock.runFor(20_000); // longer than the page waits before it registers anything
      await student.frames(outer, 10);
      assert.equal(await registered(), 0);
      // By itself the same page registers its worker in that time.
      await outer.goto(inner);
      await outer.locator(".ways").waitFor();
      await outer.clock.runFor(20_000);
      await kept(outer).waitFor();
      assert.equal(await registered(), 1);
    });
  });
});
