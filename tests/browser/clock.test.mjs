// The world can run faster than real time: by how much, for how long, and that nothing but the waiting changes.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const speedOf = (page) => page.locator("html").getAttribute("data-speed");

/** Over so many frames: how far the pen ran, the time that the frames took (none counts more than a quarter of a second), and the longest. */
const watchFrames = (page, count) => page.evaluate((n) => new Promise((done) => {
  const pen = () => Number(document.querySelector(".pen-at").textContent.match(/[\d.]+/)[0]);
  let from = null, last = null, time = 0, longest = 0, left = n;
  const frame = (now) => {
    if (last !== null) {
      const dt = Math.min(0.25, (now - last) / 1000);
      time += dt;
      longest = Math.max(longest, dt);
    }
    from ??= pen();
    last = now;
    if (left-- > 0) requestAnimationFrame(frame);
    else done({ ran: pen() - from, time, longest });
  };
  requestAnimationFrame(frame);
}), count);

describe("the world's clock", { concurrency: 2 }, () => {
  for (const speed of [1, 16]) {
    test(`a take made at ${speed} times real time is the take that its log gives when it is done again`, async () => {
      await withPage({ ...wide, speed }, async ({ page, url }) => {
        await student.openScenario(page, url, "hum-on-the-trace", "7");
        await student.worldRuns(page, 1, speed);
        await student.pressButton(page, "Record");
        await student.worldRuns(page, 1, speed);
        await student.choose(page, "Low-pass", "30 Hz");
        await student.worldRuns(page, 1, speed);
        await student.pressButton(page, "Stop recording");
        await page.locator(".strip.is-measuring").waitFor();
        const { bytes } = await student.saved(page, "Save recording as CSV");
        await student.kept(page);
        const again = await page.evaluate(async () => {
          const { Lab } = await import(new URL("wasm/dicrotic.js", location.href).href);
          const { saved } = JSON.parse(localStorage.getItem("dicrotic:attempt:hum-on-the-trace:7"));
          return Lab.restore(saved).recordingCsv(0);
        });
        const values = (text) => text.split("\n").filter((line) => /^\d/.test(line));
        const made = values(bytes.toString("utf8"));
        assert.ok(made.length > 2000, `${made.length} samples`);
        assert.deepEqual(made, values(again));
      });
    });

    test(`at ${speed} times real time the pen runs ${speed} seconds a second`, async () => {
      await withPage({ ...wide, speed }, async ({ page, url }) => {
        await student.openScenario(page, url, "hum-on-the-trace", "7");
        await student.worldRuns(page, 0.5, speed);
        const { ran, time, longest } = await watchFrames(page, 60);
        assert.ok(time > 0.5, `${time} s for 60 frames`);
        // The page may have drawn one frame more or less than was counted here; the pen is told to a tenth of a second.
        assert.ok(Math.abs(ran - speed * time) <= speed * longest + 0.2, `the pen ran ${ran} s in ${time} s`);
      });
    });
  }

  test("the address asks for a speed, from 1 to 16, and the tab keeps it; without a word it is real time", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(url);
      assert.equal(await speedOf(page), "1");
      for (const [asked, given] of [["4", "4"], ["99", "16"], ["0", "1"], ["-3", "1"], ["fast", "1"], ["2.5", "2.5"]]) {
        await page.goto(`${url}?speed=${asked}`);
        assert.equal(await speedOf(page), given, asked);
      }
      await page.goto(`${url}?other#s=hum-on-the-trace&seed=3`);
      await student.worldRuns(page, 0.2, 2.5);
      assert.equal(await speedOf(page), "2.5");
    });
  });

  test("the worked example keeps pace with it", async () => {
    await withPage({ ...wide, speed: 16 }, async ({ page, url }) => {
      await page.addInitScript(() => {
        // From the narrator's first words to the next: the frames' time, none more than a quarter of a second.
        let first = null, last = null;
        globalThis.told = { time: 0, moved: false };
        const frame = (now) => {
          const words = document.querySelector(".narrator-deed")?.textContent;
          first ??= words;
          globalThis.told.moved ||= Boolean(words) && words !== first;
          if (words && last !== null && !globalThis.told.moved) globalThis.told.time += Math.min(0.25, (now - last) / 1000);
          last = now;
          requestAnimationFrame(frame);
        };
        requestAnimationFrame(frame);
      });
      await page.goto(`${url}#watch=first-wiring`);
      await page.waitForFunction(() => globalThis.told.moved);
      const time = await page.evaluate(() => globalThis.told.time);
      assert.ok(time < 0.8, `${time} s; in real time it begins after 1.2`);
    });
  });
});
