// Each kind of question at the page: done wrong once and right once, with the words that answer it.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const { checkAll, fillBlanks, openHalf, pressButton, putCursors, rightAnswers, windowOf } = student;
const fields = (page) => page.locator(".blank").evaluateAll((all) => all.map((el) => el.dataset.field));
const taskLine = (page) => page.locator(".task-line").innerText();
const take = async (page, apart, early) => student.peaksOf(await student.savedRecording(page), apart, early);

describe("kinds of question", { concurrency: 2 }, () => {
  test("a given window: its length is asked, another length is the first open step", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openHalf(page, url, "given-window", 11);
      assert.deepEqual(await fields(page), ["count", "seconds", "multiplier", "rate", "uncertainty"]);
      const asked = Number((await taskLine(page)).match(/window of ([\d.]+) s/)[1]);
      const peaks = await take(page);
      const [a, b] = windowOf(peaks, asked, 29);
      await putCursors(page, a, b - 3);
      await fillBlanks(page, rightAnswers(peaks, a, b - 3));
      const first = await checkAll(page);
      assert.equal(first.firstOpen, "The counting window", first.text);
      await putCursors(page, a, b);
      assert.equal(await student.reading(page, "A to B"), `${asked.toPrecision(3)} s`);
      await fillBlanks(page, { ...rightAnswers(peaks, a, b), multiplier: `60/${asked}` });
      const second = await checkAll(page);
      assert.equal(second.firstOpen, null, second.text);
      assert.equal(Number(second.truth[0]), rightAnswers(peaks, a, b).count);
    });
  });

  test("intervals: beats counted for intervals are named, intervals from peak to peak hold", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openHalf(page, url, "between-the-same-features", 21);
      assert.deepEqual(await fields(page), ["count", "seconds", "rate", "uncertainty"]);
      const n = Number((await taskLine(page)).match(/time (\d+) beat intervals/)[1]);
      const peaks = await take(page);
      const from = peaks.findIndex((peak, i) => i > 0 && i + n < peaks.length && student.even(peaks, peak, peaks[i + n]));
      assert.ok(from > 0, `no ${n} even intervals`);
      const seconds = Number((peaks[from + n] - peaks[from]).toPrecision(3));
      await putCursors(page, peaks[from], peaks[from + n]);
      await fillBlanks(page, { count: n + 1, seconds, rate: Math.round((60 * n) / seconds) });
      const first = await checkAll(page);
      assert.equal(first.firstOpen, "The count, N", first.text);
      await fillBlanks(page, { count: n, seconds, rate: Math.round((60 * n) / seconds) });
      const second = await checkAll(page);
      assert.equal(second.firstOpen, null, second.text);
    });
  });

  test("an uneven pulse: fifteen seconds are too short for it", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openHalf(page, url, "a-longer-window", 31);
      const least = Number((await taskLine(page)).match(/window of ([\d.]+) s or longer/)[1]);
      const peaks = await take(page, 0.45, true);
      const [a, b] = windowOf(peaks, 15, 44, { uneven: true });
      await putCursors(page, a, b);
      await fillBlanks(page, rightAnswers(peaks, a, b));
      const first = await checkAll(page);
      assert.equal(first.firstOpen, "The counting window", first.text);
      const [c, d] = windowOf(peaks, least + 1, 44.5, { uneven: true });
      await putCursors(page, c, d);
      await fillBlanks(page, rightAnswers(peaks, c, d));
      const second = await checkAll(page);
      assert.equal(second.firstOpen, null, second.text);
    });
  });

  test("after exercise: the time of the middle counts from the end of exercise", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openHalf(page, url, "soon-after-exercise", 41);
      assert.ok((await fields(page)).includes("middle"));
      await page.getByText("How to find the time of the middle").click();
      assert.match(await page.locator(".how").innerText(), /half-way between A and B/);
      const after = Number((await page.locator(".measure-after").innerText()).match(/started ([\d.]+) s/)[1]);
      assert.ok(after > 0);
      const peaks = await take(page, 0.28); // a fast pulse
      const lengths = [10.6, 10.8, 11, 11.2, 11.4];
      const [a, b] = lengths.map((seconds) => windowOf(peaks, seconds, 15.8, { may: true })).find(Boolean);
      await putCursors(page, a, b);
      const right = { ...rightAnswers(peaks, a, b), middle: (after + (a + b) / 2).toFixed(1) };
      await fillBlanks(page, { ...right, middle: ((a + b) / 2).toFixed(1) });
      const first = await checkAll(page);
      assert.equal(first.firstOpen, "The time of the middle", first.text);
      await fillBlanks(page, right);
      const second = await checkAll(page);
      assert.equal(second.firstOpen, null, second.text);
    });
  });

  test("the clean stretch: no blanks; the wild stretch is the open step, a calm one holds", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "the-clean-stretch", 309);
      assert.deepEqual(await fields(page), []);
      await page.locator(".strip.is-measuring").waitFor();
      await putCursors(page, 0.5, 16);
      const first = await checkAll(page);
      assert.equal(first.firstOpen, "The trace", first.text);
      await page.reload();
      await page.locator("#ask").waitFor();
      await pressButton(page, "Start again");
      await page.locator(".strip.is-measuring").waitFor();
      // Looked through as a reader would: fifteen seconds in which each beat is as tall as its neighbours.
      const samples = await student.savedRecording(page);
      const calm = calmest(samples, 15.5);
      await putCursors(page, calm, calm + 15.5);
      const second = await checkAll(page);
      assert.equal(second.firstOpen, null, second.text);
    });
  });

  test("the range: read to one side in mV, and from foot to peak of one beat", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openHalf(page, url, "read-the-range", 51);
      assert.deepEqual(await fields(page), ["range", "amplitude"]);
      const samples = await student.savedRecording(page);
      const peak = student.peaksOf(samples)[3];
      const near = samples.filter(([time]) => time > peak - 0.45 && time <= peak + 0.08);
      const top = near.reduce((best, one) => (one[1] > best[1] ? one : best));
      const foot = near.filter(([time]) => time < top[0]).reduce((best, one) => (one[1] <= best[1] ? one : best));
      await putCursors(page, foot[0], top[0]);
      await page.waitForFunction(() => /mV/.test(document.querySelectorAll(".reading output")[1].textContent));
      const height = Number((await student.reading(page, "Height A to B")).replace(/ mV$/, ""));
      const range = Number((await page.getByLabel("Full-scale range").locator("option:checked").innerText()).match(/[\d.]+/)[0]);
      await fillBlanks(page, { range: 2 * range, amplitude: height });
      const first = await checkAll(page);
      assert.match(first.firstOpen ?? "", /range/i, first.text);
      await fillBlanks(page, { range, amplitude: height });
      const second = await checkAll(page);
      assert.equal(second.firstOpen, null, second.text);
    });
  });

  test("naming only: no take and no blanks; the name is what is judged", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "what-is-it", 61);
      assert.deepEqual(await fields(page), []);
      const name = async (fault) => {
        await student.side(page, "name");
        const button = page.locator(`.fault-name[data-fault="${fault}"]`);
        await button.waitFor({ state: "attached" });
        if (!(await button.isVisible())) await page.locator(".impression", { has: button }).locator("summary").click();
        await button.click();
      };
      await name("finger_cold");
      const first = await checkAll(page);
      assert.match(first.firstOpen ?? "", /The fault you named/, first.text);
      await name("finger_cold");
      await name("strap_loose");
      const second = await checkAll(page);
      assert.equal(second.firstOpen, null, second.text);
    });
  });

  test("two windows: the first is kept as a ghost, and an uncertainty is asked", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openHalf(page, url, "two-windows", 71);
      assert.deepEqual(await fields(page), ["count_1", "seconds_1", "rate_1", "count", "seconds", "rate", "uncertainty"]);
      await pressButton(page, "Keep this as counting window 1");
      assert.match(await page.locator(".sheet-note").innerText(), /Set both cursors first/);
      const peaks = await take(page);
      const [a, b] = windowOf(peaks, 15.4, 20);
      await putCursors(page, a, b);
      const one = rightAnswers(peaks, a, b);
      await fillBlanks(page, { count: one.count, seconds: one.seconds, rate: one.rate });
      await pressButton(page, "Keep this as counting window 1");
      await page.locator(".spot-kept").waitFor();
      assert.equal(await page.locator('.blank[data-field="count_1"]').inputValue(), String(one.count));
      assert.equal(await page.locator('.blank[data-field="count"]').inputValue(), "");
      const late = peaks.findIndex((time) => time > 21);
      const [c, d] = windowOf(peaks.slice(late - 1), 15.4, 41.5);
      await putCursors(page, c, d);
      const two = rightAnswers(peaks, c, d);
      await fillBlanks(page, { count: two.count, seconds: two.seconds, rate: two.rate, uncertainty: 0.1 });
      const first = await checkAll(page);
      assert.equal(first.firstOpen, "The uncertainty", first.text);
      await fillBlanks(page, { uncertainty: (60 / two.seconds).toFixed(0) });
      const second = await checkAll(page);
      assert.equal(second.firstOpen, null, second.text);
      assert.ok((await page.locator(".spread-dot").count()) > 5, "what other windows give is not drawn");
    });
  });
});

/** Where a stretch of so many seconds begins in which the heights of the single seconds differ least. */
function calmest(samples, seconds) {
  const rate = (samples.length - 1) / (samples.at(-1)[0] - samples[0][0]);
  const step = Math.round(rate);
  const spans = [];
  for (let i = 0; i + step <= samples.length; i += step) {
    const values = samples.slice(i, i + step).map(([, value]) => value);
    spans.push(Math.max(...values) - Math.min(...values));
  }
  const long = Math.ceil(seconds);
  let best = 0;
  let least = Infinity;
  for (let i = 1; i + long < spans.length; i += 1) {
    const part = spans.slice(i, i + long);
    const unrest = Math.max(...part) / Math.min(...part);
    if (unrest < least) [least, best] = [unrest, i];
  }
  return best + 0.2;
}
