// Nothing on a bench moves by itself while it loads: every layout shift that the browser tells, from the first paint on.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import { frames, worldRuns } from "./student.mjs";

const sizes = [[1280, 720], [390, 844]];

/** What moved since the page began: how far, and what. */
const shifts = (page) => page.evaluate(() => new Promise((done) => {
  const told = [];
  const take = (list) => told.push(...list.filter((one) => !one.hadRecentInput).map((one) => `${one.value}: ${one.sources.map(({ node }) => node?.className || node?.nodeName).join()}`));
  const watch = new PerformanceObserver((list) => take(list.getEntries()));
  watch.observe({ type: "layout-shift", buffered: true });
  // What is buffered comes before the second frame; entries that are still waiting are taken as well.
  requestAnimationFrame(() => requestAnimationFrame(() => {
    take(watch.takeRecords());
    watch.disconnect();
    done(told);
  }));
}));

describe("layout shift", { concurrency: 2 }, () => {
  for (const [width, height] of sizes) {
    test(`a bench at ${width} x ${height} px comes without moving anything`, async () => {
      await withPage({ viewport: { width, height } }, async ({ page, url }) => {
        await page.goto(`${url}#s=hum-on-the-trace&seed=1`);
        await page.waitForFunction(() => document.documentElement.dataset.ready === "1");
        await worldRuns(page, 2);
        assert.deepEqual(await shifts(page), []);
      });
    });
  }

  test("what moves is seen", async () => {
    await withPage({ viewport: { width: 1280, height: 720 } }, async ({ page, url }) => {
      await page.goto(`${url}#s=hum-on-the-trace&seed=1`);
      await page.waitForFunction(() => document.documentElement.dataset.ready === "1");
      await page.evaluate(() => document.body.prepend(Object.assign(document.createElement("p"), { textContent: "late", style: "height: 80px" })));
      await frames(page, 3);
      assert.ok((await shifts(page)).length > 0);
    });
  });
});
