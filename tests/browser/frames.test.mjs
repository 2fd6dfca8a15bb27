// What a frame costs: no text is written or read to pass numbers between the core and the page while nothing is done.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import { kept, openFile, openScenario, pressButton, record, syntheticRecording, worldRuns } from "./student.mjs";

const FRAMES = 120;

/** Counts what JSON is asked to do, before any script of the page runs. */
function countJson() {
  window.asked = [];
  for (const name of ["parse", "stringify"]) {
    const real = JSON[name];
    JSON[name] = (...given) => {
      window.asked.push(`${name} ${String(new Error().stack).split("\n").slice(2, 5).join(" < ")}`);
      return real(...given);
    };
  }
}

/** What JSON was asked to do in so many frames, and how far the trace's canvas has changed meanwhile. */
const inFrames = (page, canvas) => page.evaluate(async ([frames, selector]) => {
  const next = () => new Promise((done) => requestAnimationFrame(done));
  const pixels = () => document.querySelector(selector).toDataURL();
  await next();
  window.asked.length = 0;
  const before = pixels();
  for (let k = 0; k < frames; k += 1) await next();
  return { asked: [...window.asked], moved: pixels() !== before };
}, [FRAMES, canvas]);

const TRACE = "#strip .layer:last-of-type";

describe("a frame", { concurrency: 2 }, () => {
  test("of a running bench, and of one that records, uses no JSON", async () => {
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      await page.addInitScript(countJson);
      await openScenario(page, url, "hum-on-the-trace", 7);
      await pressButton(page, "On my own");
      await worldRuns(page, 7); // where the work stands is told when it changes, and it does until there is a trace
      await kept(page);
      assert.deepEqual(await inFrames(page, TRACE), { asked: [], moved: true });
      await pressButton(page, "Record");
      await kept(page);
      assert.deepEqual(await inFrames(page, TRACE), { asked: [], moved: true });
      await pressButton(page, "Stop recording");
      await record(page, 1);
      await kept(page);
      assert.deepEqual(await inFrames(page, TRACE), { asked: [], moved: false }, "over an open take");
    });
  });

  test("of an opened recording that is shown with filters uses no JSON", async () => {
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      await page.addInitScript(countJson);
      await page.goto(url);
      await openFile(page, syntheticRecording());
      await page.locator(".strip.is-measuring").waitFor();
      await page.locator('.stage[data-stage="filters"]').click();
      await page.getByLabel("High-pass", { exact: true }).selectOption("0.5");
      assert.deepEqual(await inFrames(page, TRACE), { asked: [], moved: false });
    });
  });

  test("of an instructor's preview uses no JSON", async () => {
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      await page.addInitScript(countJson);
      await page.goto(`${url}#assign`);
      await page.locator('.fairness[data-students="400"]').waitFor({ timeout: 90_000 });
      assert.deepEqual(await inFrames(page, "#assign .preview-strip .layer:last-of-type"), { asked: [], moved: true });
    });
  });
});
