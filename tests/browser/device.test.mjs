// Shared machines and shared servers: whose work lies on a device, nobody's work offered to another, guests, forgetting, room, damage,
// and several copies of the page at one address.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import os from "node:os";
import path from "node:path";
import { host, root, withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const { choose, kept, pressButton } = student;
const wide = { viewport: { width: 1280, height: 900 } };
const keys = (page) => page.evaluate(async () => {
  const names = (await indexedDB.databases()).map(({ name }) => name);
  const there = [];
  for (const name of names) {
    const database = await new Promise((done) => { const asked = indexedDB.open(name); asked.onsuccess = () => done(asked.result); });
    if (database.objectStoreNames.length > 0) there.push(...await new Promise((done) => { const asked = database.transaction("attempts").objectStore("attempts").getAllKeys(); asked.onsuccess = () => done(asked.result); }));
    database.close();
  }
  return { here: Object.keys(localStorage).filter((key) => !/language|theme|explain|brief$/.test(key)), there };
});

/** A link of an assigned bench: each has a heart of their own, or all the same one. */
async function assignedLink(page, url, seeds = "each") {
  await page.goto(url);
  await page.locator("#start .card").first().waitFor();
  return page.evaluate(async ([file, how]) => {
    const { linkOf } = await import("./js/hand/link.js");
    const toml = await (await fetch(`scenarios/${file}`)).text();
    return linkOf(`${toml}\n[assignment]\nkey = "week 3"\nseeds = "${how}"\nattempts = 3\n`);
  }, ["04-rest-pulse.toml", seeds]);
}
const code = (page) => page.getByLabel(/student ID/i);
async function begin(page, link, who, n = 1) {
  await page.goto("about:blank");
  await page.goto(link);
  await code(page).fill(who);
  await pressButton(page, `Start attempt ${n} of 3`);
  await page.locator(".plug").first().waitFor({ state: "attached" });
}
const rangeOf = (page) => page.getByLabel("Full-scale range", { exact: true }).evaluate((el) => el.selectedOptions[0].textContent);
const side = async (page, url, name) => {
  await page.goto("about:blank");
  await page.goto(`${url}#${name}`);
  await page.locator(`#${name} h1`).waitFor();
};

describe("a device that many use", { concurrency: 1 }, () => {
  for (const seeds of ["each", "same"]) {
    test(`the next student sees no code and no attempt of the one before (seeds: ${seeds})`, async () => {
      await withPage(wide, async ({ page, url }) => {
        const link = await assignedLink(page, url, seeds);
        await begin(page, link, "Ann-2041");
        await choose(page, "Full-scale range", "±50 mV");
        await kept(page);
        // Nothing that is kept holds the code.
        const all = await page.evaluate(() => JSON.stringify({ ...localStorage, ...sessionStorage }));
        assert.doesNotMatch(all, /ann-?2041/i);
        await page.goto("about:blank");
        await page.goto(link);
        assert.equal(await code(page).inputValue(), "");
        assert.equal(await page.getByRole("button", { name: /Continue attempt/ }).count(), 0);
        await code(page).fill("Ben-7");
        assert.equal(await page.getByRole("button", { name: /Continue attempt/ }).count(), 0);
        await pressButton(page, "Start attempt 1 of 3");
        await page.locator(".plug").first().waitFor({ state: "attached" });
        assert.equal(await rangeOf(page), "±200 mV", "another's attempt is taken up");
        await choose(page, "Full-scale range", "±1 V");
        await kept(page);
        // Their own is found by their own code, however it is typed.
        await page.goto("about:blank");
        await page.goto(link);
        await code(page).fill("ann 2041");
        await pressButton(page, "Continue attempt 1");
        await page.locator(".plug").first().waitFor({ state: "attached" });
        assert.equal(await rangeOf(page), "±50 mV");
      });
    });
  }

  test("the notebook and the first screen list the attempts of whoever is here, assigned ones too, and nobody else's", async () => {
    await withPage(wide, async ({ page, context, url }) => {
      const link = await assignedLink(page, url);
      await begin(page, link, "Ann-2041");
      await choose(page, "Full-scale range", "±50 mV");
      await kept(page);
      await page.evaluate(() => (location.hash = "#notebook"));
      await page.locator("#notebook .device-list a").filter({ hasText: "A pulse at rest" }).waitFor();
      assert.match(await page.locator("#notebook .device-list").innerText(), /attempt 1, from/);
      await side(page, url, "device");
      assert.match(await page.locator("#device").innerText(), /starts like this: A….*\n?.*\(you\)/);
      // Another tab is nobody's by name.
      const other = await context.newPage();
      await side(other, url, "notebook");
      assert.equal(await other.locator("#notebook .device-list a").count(), 0);
      await other.goto(url);
      await other.locator("#start .card").first().waitFor();
      assert.equal(await other.locator(".kept a").count(), 0);
      await side(other, url, "device");
      const told = await other.locator("#device").innerText();
      assert.match(told, /starts like this: A…/);
      assert.doesNotMatch(told, /2041/);
      await other.getByLabel("My student ID").fill("ann2041");
      await pressButton(other, "Show my work");
      await other.getByRole("link", { name: "A pulse at rest" }).waitFor();
      await pressButton(other, "I am done here");
      await other.getByText("None of yours.").waitFor();
    });
  });

  test("forget me leaves the others' work, forget everything leaves nothing", async () => {
    await withPage(wide, async ({ page, url }) => {
      const link = await assignedLink(page, url);
      for (const who of ["Ann-2041", "Ben-7"]) {
        await begin(page, link, who);
        await choose(page, "Full-scale range", "±50 mV");
        await kept(page);
        await student.record(page, 3);
        await student.fillSheet(page, { count: 3, seconds: 3, multiplier: 20, rate: 60 });
        await student.check(page);
        await kept(page);
        await page.waitForFunction(() => Object.keys(localStorage).some((key) => key.includes("page:")));
      }
      const before = await keys(page);
      await page.evaluate(() => (location.hash = "#device"));
      await pressButton(page, "Delete all my work");
      await pressButton(page, "Keep it");
      assert.deepEqual((await keys(page)).here.toSorted(), before.here.toSorted());
      await pressButton(page, "Delete all my work");
      await pressButton(page, "Delete it");
      await page.locator("#device .undo").getByText("Deleted.").waitFor();
      const after = await keys(page);
      assert.equal(after.there.length, 1);
      assert.ok(after.here.length > 0 && after.here.length <= before.here.length / 2, `${after.here}`);
      await page.goto("about:blank");
      await page.goto(link);
      await code(page).fill("Ben-7");
      assert.equal(await page.getByRole("button", { name: /Continue attempt/ }).count(), 0);
      await code(page).fill("Ann-2041");
      await page.getByRole("button", { name: "Continue attempt 1" }).waitFor();
      await pressButton(page, "Not now");
      await side(page, url, "device");
      await pressButton(page, "Delete everything on this device");
      await pressButton(page, "Delete it");
      await page.getByText("Nothing is kept here.").waitFor();
      assert.deepEqual(await keys(page), { here: [], there: [] });
    });
  });

  test("a guest leaves nothing, sees nothing, and can save what is handed in", async () => {
    await withPage(wide, async ({ page, url }) => {
      const link = await assignedLink(page, url);
      await begin(page, link, "Ann-2041");
      await choose(page, "Full-scale range", "±50 mV");
      await kept(page);
      const before = await keys(page);
      await page.goto("about:blank");
      await page.goto(link);
      await code(page).fill("Ann-2041");
      await page.getByLabel(/Keep nothing on this device/).check();
      await page.getByRole("button", { name: /Continue attempt/ }).waitFor({ state: "detached" });
      await pressButton(page, "Start attempt 1 of 3");
      await page.locator(".plug").first().waitFor({ state: "attached" });
      assert.equal(await rangeOf(page), "±200 mV");
      await choose(page, "Full-scale range", "±1 V");
      await kept(page);
      await student.record(page, 3);
      await student.fillSheet(page, { count: 3, seconds: 3, multiplier: 20, rate: 60 });
      await student.check(page);
      await kept(page);
      const [file] = await Promise.all([page.waitForEvent("download"), pressButton(page, "Save the result file")]);
      assert.match(file.suggestedFilename(), /dicrotic-result\.json$/);
      await page.evaluate(() => (location.hash = "#notebook"));
      await page.locator("#notebook .trial-page").first().waitFor(); // within the tab all is there
      assert.deepEqual(await keys(page), before);
      await page.reload();
      await page.locator("#notebook h1").waitFor();
      assert.equal(await page.locator("#notebook .trial-page").count(), 0);
      assert.deepEqual(await keys(page), before);
      // In the address, for the machines of a lab.
      await page.evaluate(() => sessionStorage.clear());
      await page.goto(`${url}?guest#device`);
      await page.getByText(/A guest\. Nothing is kept/).waitFor();
      await pressButton(page, "Stop being a guest");
      await page.getByText(/starts like this: A…/).first().waitFor();
    });
  });

  test("the attempt beyond the last place asks, and nobody's work makes room by itself", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "hum-on-the-trace", "41");
      await choose(page, "Low-pass", "30 Hz");
      await kept(page);
      const fill = (owner) => page.evaluate((mark) => {
        const one = localStorage.getItem("dicrotic:attempt:hum-on-the-trace:41");
        for (const key of Object.keys(localStorage).filter((name) => /attempt:/.test(name) && !name.endsWith(":41"))) localStorage.removeItem(key);
        for (let k = 0; k < 23; k += 1) localStorage.setItem(`dicrotic:attempt:hum-on-the-trace${mark}:${100 + k}`, JSON.stringify({ ...JSON.parse(one), at: 1000 + k, title: "Hum" }));
      }, owner);
      const count = async () => (await keys(page)).here.filter((key) => /attempt:/.test(key)).length;
      await fill("@12345678901");
      await page.goto("about:blank");
      await page.goto(`${url}#s=hum-on-the-trace&seed=900`);
      await page.locator("#ask").getByText("This device keeps 24 attempts").waitFor();
      await pressButton(page, "Start without keeping it");
      await page.locator(".plug").first().waitFor({ state: "attached" });
      await choose(page, "Low-pass", "30 Hz");
      await page.locator("#calm").getByText(/cannot keep more attempts/).waitFor();
      assert.equal(await count(), 24);
      await fill("");
      await page.goto("about:blank");
      await page.goto(`${url}#s=hum-on-the-trace&seed=900`);
      await pressButton(page, "Delete my 12 oldest");
      await page.locator(".plug").first().waitFor({ state: "attached" });
      await choose(page, "Low-pass", "30 Hz");
      await kept(page);
      assert.equal(await count(), 13);
    });
  });

  test("what was kept in a wrong shape is laid aside and told, and every screen opens", async () => {
    const BAD = ["{", "7", "[]", "{\"id\":1}", "{\"id\":\"x:1\",\"at_ms\":1e99,\"check\":{}}", "{\"id\":\"x\",\"at_ms\":5,\"check\":{\"steps\":[{}],\"rubric\":{}},\"read\":{},\"cursors\":{},\"marks\":[],\"note\":\"\",\"picture\":3}"];
    await withPage(wide, async ({ page, url }) => {
      await page.goto(url);
      await page.locator("#start .card").first().waitFor();
      await page.evaluate((bad) => {
        bad.forEach((text, k) => localStorage.setItem(`dicrotic:page:bad:${k}`, text));
        localStorage.setItem("dicrotic:history", JSON.stringify([7, null, { at_ms: 5 }, { scenario: "x", at_ms: 1, skills: { count: 3 } }, { scenario: "x", seed: 4, at_ms: "soon", skills: {} }]));
        localStorage.setItem("dicrotic:assign", JSON.stringify({ id: "x", fault: 7, assignment: [], pass: "no" }));
        for (const key of ["theme", "language", "explain", "brief"]) localStorage.setItem(`dicrotic:${key}`, "[[");
      }, BAD);
      await page.goto("about:blank");
      for (let k = 0; k < BAD.length; k += 1) {
        await page.goto("about:blank");
        await page.goto(`${url}#report=bad:${k}`);
        await page.locator("#report h1, #report h2").first().waitFor();
      }
      await side(page, url, "notebook");
      assert.equal(await page.locator("#notebook .trial-page").count(), 0);
      await side(page, url, "skills");
      await page.locator("#skills .calm").getByText(/could not be read/).waitFor();
      await page.locator("#skills .skill").nth(11).waitFor();
      await page.goto("about:blank");
      await page.goto(`${url}#assign`);
      await page.locator("#assign .calm").getByText(/could not be read/).waitFor();
      await page.locator("#assign .preview-table svg").waitFor();
      await side(page, url, "device");
      const rows = page.locator("#device li").filter({ hasText: /page:bad|history|assign/ });
      assert.ok(await rows.count() >= BAD.length + 1, `${await rows.allInnerTexts()}`);
      const [file] = await Promise.all([page.waitForEvent("download"), rows.filter({ hasText: "assign" }).getByRole("button", { name: "Save" }).click()]);
      assert.match((await student.bytesOf(file)).toString("utf8"), /"fault":7/);
      await rows.filter({ hasText: "assign" }).getByRole("button", { name: /Delete/ }).click();
      assert.equal(await page.locator("#device li").filter({ hasText: "assign" }).count(), 0);
    });
  });

  test("start afresh lays the attempt aside and throws nothing away", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "hum-on-the-trace", "41");
      await choose(page, "Low-pass", "30 Hz");
      await kept(page);
      await page.reload();
      await pressButton(page, "Start again");
      await page.locator(".plug").first().waitFor({ state: "attached" });
      assert.match(await page.evaluate(() => localStorage.getItem("dicrotic:aside:hum-on-the-trace:41")), /low_pass/);
    });
  });
});

const TYPES = { ".html": "text/html", ".js": "text/javascript", ".css": "text/css", ".json": "application/json", ".wasm": "application/wasm", ".svg": "image/svg+xml", ".png": "image/png", ".toml": "application/toml", ".webmanifest": "application/manifest+json" };

test("copies of the page at one address share nothing: attempts, database, files for when there is no network", async () => {
  const folder = mkdtempSync(path.join(os.tmpdir(), "dicrotic-copies-"));
  execFileSync(host, ["build", "--out", folder], { cwd: root, stdio: "ignore" });
  const answering = { yes: true };
  // Three copies: at the root, and in two folders, of which one has another scenario under the same name.
  const server = createServer((request, response) => {
    const name = decodeURIComponent(new URL(request.url, "http://x/").pathname).slice(1).replace(/^(one|two)\//, "") || "index.html";
    try {
      if (!answering.yes) return void request.socket.destroy();
      const bytes = readFileSync(path.join(folder, name));
      response.writeHead(200, { "content-type": TYPES[path.extname(name)] ?? "application/octet-stream", "cache-control": "no-cache" });
      response.end(bytes);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  const base = `http://127.0.0.1:${server.address().port}/`;
  try {
    await withPage({ ...wide, serviceWorkers: "allow", expected: [] }, async ({ page }) => {
      const copies = [[base, "±50 mV"], [`${base}one/`, "±500 mV"], [`${base}two/`, "±1 V"]];
      for (const [url, label] of copies) {
        await page.goto("about:blank");
        await page.goto(`${url}#s=rest-pulse&seed=41`);
        await page.locator(".plug").first().waitFor({ state: "attached" });
        assert.equal(await page.locator("#ask[open]").count(), 0, "another copy's attempt is offered");
        await choose(page, "Full-scale range", label);
        await kept(page);
        await page.locator("#kept").filter({ hasText: "also opens without a network" }).waitFor();
      }
      const stores = await page.evaluate(() => caches.keys());
      assert.equal(stores.length, 3, `${stores}`);
      const sizes = await page.evaluate(async (all) => Promise.all(all.map(async (name) => (await (await caches.open(name)).keys()).length)), stores);
      assert.equal(new Set(sizes).size, 1, `a copy has lost files to another: ${sizes}`);
      answering.yes = false; // no network: each opens from its own
      for (const [url, label] of copies) {
        await page.goto("about:blank");
        await page.goto(`${url}index.html#s=rest-pulse&seed=41`);
        await pressButton(page, "Continue it");
        await page.locator(".plug").first().waitFor({ state: "attached" });
        assert.equal(await rangeOf(page), label);
      }
    });
  } finally {
    server.closeAllConnections();
    server.close();
    rmSync(folder, { recursive: true, force: true });
  }
});
