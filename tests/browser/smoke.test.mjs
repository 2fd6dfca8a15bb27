// The page comes up in a browser without a complaint, under the strict policy, with a core that starts.
import { test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";

test("the page comes up without a complaint", async () => {
  await withPage({}, async ({ page, url }) => {
    await page.goto(url, { waitUntil: "networkidle" });
    assert.match(await page.title(), /Dicrotic/);
    assert.notEqual((await page.locator("body").innerText()).trim(), "", "the page is empty");
    assert.ok(await page.locator("html[lang]").count(), "the page does not say its language");
  });
});

test("the core starts and knows every scenario of the index", async () => {
  await withPage({}, async ({ page, url }) => {
    await page.goto(url);
    const briefs = await page.evaluate(async () => {
      const core = await import("/wasm/dicrotic.js");
      await core.default();
      const index = await (await fetch("/scenarios/index.json")).json();
      return Promise.all(index.map(async (entry) => {
        const toml = await (await fetch(`/scenarios/${entry.file}`)).text();
        return { entry, brief: JSON.parse(core.scenarioBrief(toml)) };
      }));
    });
    assert.ok(briefs.length > 0, "no scenario");
    for (const { entry, brief } of briefs) {
      assert.equal(brief.id, entry.id, entry.file);
      assert.equal(brief.level, entry.level, entry.file);
    }
  });
});

test("the policy keeps inline scripts and other hosts out", async () => {
  // The wording is Chromium's.
  const expected = [/violates .*script-src/, /violates .*connect-src/, /Refused to connect/];
  await withPage({ expected }, async ({ page, url }) => {
    await page.goto(url);
    // The same server by another name is another host to the browser, and reachable.
    const ran = await page.evaluate(async (port) => {
      const script = document.createElement("script");
      script.textContent = "globalThis.inlineRan = true";
      document.body.append(script);
      const elsewhere = await fetch(`http://localhost:${port}/`, { mode: "no-cors" }).then(() => "reached", () => "refused");
      return { inline: globalThis.inlineRan ?? false, elsewhere };
    }, new URL(url).port);
    assert.deepEqual(ran, { inline: false, elsewhere: "refused" });
  });
});
