// Whole rehearsals as a student does them: by hand at the drawn bench, through the list, on the trace, in the worksheet.
// The right count comes from the recording that the page saves, counted here; the bench's own truth is looked at only where the page shows it.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const { choose, dragPlug, press, pressButton } = student;

/** Puts the bench of "first wiring" together: some of it on the drawing, some in the list. */
async function wire(page) {
  await dragPlug(page, "power_recorder", "recorder_inlet");
  await dragPlug(page, "power_wall", "outlet2");
  await choose(page, "Data cable, recorder end", "recorder, data");
  await choose(page, "Data cable, computer end", "computer, port 1");
  await dragPlug(page, "sensor", "in1");
  await press(page, '[data-press="switch:recorder"]');
  await page.locator(".link.is-seen").waitFor();
  await (await student.control(page, "Sensor strapped on")).check();
  await student.slideTo(page, "Strap, looser to tighter", 0.72);
  await page.locator(".feel").filter({ hasText: "It fits well" }).waitFor();
  await choose(page, "Full-scale range", "±50 mV");
  await student.worldRuns(page, 6);
  const words = await student.inWords(page);
  assert.match(words, /fills a good part of the screen/);
  assert.match(words, /The trace is clean/);
}

const MOST_RECORDINGS = 4;

/** Records 20 s, anew where the finger moved in the midst of it, sets the cursors about 15 s apart away from beats, and finds the right count: [count, T as shown]. */
async function measure(page, { byClicks = true } = {}) {
  let peaks, window = null;
  for (let n = 1; window === null; n += 1) {
    await student.record(page, 20);
    const samples = await student.savedRecording(page);
    peaks = student.peaksOf(samples);
    const onScreen = student.levelPeaks(samples, peaks).filter((time) => time < 20);
    window = student.windowBetween(onScreen, 15, 0.4, { may: n < MOST_RECORDINGS });
  }
  const [a, b, count] = window;
  await student.dragCursor(page, "a", a);
  await student.dragCursor(page, "b", b);
  const inside = peaks.filter((time) => time > a && time < b);
  assert.equal(inside.length, count);
  if (byClicks) {
    await student.clickMarks(page, inside);
    assert.equal(await student.reading(page, "Marks"), String(count));
  }
  const interval = await student.reading(page, "A to B");
  return { count, seconds: Number(interval.replace(/ s$/, "")), inside };
}

const worked = (count, seconds) => {
  const multiplier = (60 / seconds).toFixed(3);
  return { count, seconds, multiplier, rate: (count * multiplier).toFixed(1) };
};

/** The shown truth agrees with what was counted in the recording: beats, and a rate near it. */
function assertTruth(debrief, count, seconds) {
  assert.ok(debrief.truth, "no truth is shown");
  const [beats, windowRate, recordRate] = debrief.truth.map(Number);
  assert.equal(beats, count, "the bench's own beats differ from the peaks in the saved take");
  for (const rate of [windowRate, recordRate]) assert.ok(Math.abs(rate - (60 * count) / seconds) < 8, `a true rate of ${rate} for ${count} beats in ${seconds} s`);
  assert.ok(debrief.trueBeats >= count, "the true beats do not stand under the strip");
}

describe("rehearsals", { concurrency: true }, () => {
  test("first wiring: wired, recorded, left and resumed, counted right", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "first-wiring", 11);
      await wire(page);
      const { count, seconds, inside } = await measure(page);
      await student.fillSheet(page, worked(count, seconds));
      await page.locator("#worksheet").getByLabel("heart rate =").press("Tab");

      await student.kept(page);
      await page.reload();
      await pressButton(page, "Continue it");
      await page.locator(".strip.is-measuring").waitFor();
      assert.equal(await page.locator(".beat-ticks path").count(), inside.length, "marks after the reload");
      assert.equal(await student.reading(page, "A to B"), `${seconds.toPrecision(3)} s`);
      assert.equal(await page.getByLabel("Between A and B I count N =").inputValue(), String(count));
      await page.locator(".link.is-seen").waitFor();

      const debrief = await student.check(page);
      assert.deepEqual(debrief.steps.map((step) => step.verdict), [...Array(6).fill("correct"), "worth knowing"], debrief.text);
      assert.match(debrief.text, /Your reading is correct/);
      assertTruth(debrief, count, seconds);
    });
  });

  test("first wiring: one beat too many is named, and no number told before the second look", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "first-wiring", 25);
      await wire(page);
      const { count, seconds } = await measure(page, { byClicks: false });
      await student.fillSheet(page, worked(count + 1, seconds));
      const first = await student.check(page);
      assert.equal(first.firstOpen, "The count, N", first.text);
      assert.match(first.steps.find((step) => step.first).text, /N does not quite fit this counting window/);
      assert.equal(first.verdictOf("The multiplier"), "correct");
      student.assertNoTruth(first, count);
      const second = await student.check(page);
      assert.equal(second.firstOpen, "The count, N");
      assertTruth(second, count, seconds);
    });
  });

  test("hum on the strip: chased away, a wrong multiplier named, put right", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "hum-on-the-trace", 11);
      await student.worldRuns(page, 5.5);
      const before = await student.fuzz(page);
      assert.ok(before >= 1, "there is no clear hum to chase");
      await student.unplugCharger(page);
      await student.worldRuns(page, 5.5);
      const without = await student.fuzz(page);
      await student.dragPart(page, "cable1", 44, 66);
      await student.dragPart(page, "cable2", 66, 70);
      await choose(page, "Full-scale range", "±50 mV");
      await student.worldRuns(page, 6);
      const away = await student.fuzz(page);
      assert.ok(without <= before && away < before, `fuzz ${before} with the charger, ${without} without, ${away} with the cable away`);
      assert.equal(away, 0);

      const { count, seconds } = await measure(page);
      await student.fillSheet(page, { count, seconds, multiplier: 6, rate: count * 6 });
      const first = await student.check(page);
      assert.equal(first.verdictOf("The trace"), "correct", first.text);
      assert.equal(first.firstOpen, "The multiplier", first.text);
      assert.match(first.text, /You multiply by 6/);
      student.assertNoTruth(first, count);

      await student.fillSheet(page, worked(count, seconds));
      const second = await student.check(page);
      assert.equal(second.firstOpen, null, second.text);
      assertTruth(second, count, seconds);
    });
  });

  test("hum on the strip: measured in the fuzz, the trace is the first open step; the truth only when asked for", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "hum-on-the-trace", 17);
      await student.worldRuns(page, 2);
      await student.record(page, 20);
      await student.dragCursor(page, "a", 2);
      await student.dragCursor(page, "b", 17.5);
      await student.fillSheet(page, worked(20, 15.5));
      const first = await student.check(page);
      assert.equal(first.firstOpen, "The trace", first.text);
      assert.match(first.steps[0].text, /noise on the pulse/);
      assert.equal(first.truth, null);
      assert.equal(first.trueBeats, 0);
      await pressButton(page, "Show the true heart rate");
      await student.sayYes(page);
      await page.locator(".truth").waitFor();
      const closed = await student.readDebrief(page);
      assert.ok(closed.truth.every((value) => Number(value) > 0), "a revealed truth without numbers");
      assert.ok(await page.getByRole("button", { name: "Check my reading" }).isDisabled(), "a revealed attempt can still be checked");
    });
  });
});
