// The input by hand: buffer, calibrator and integral stand on the way of the signal, say what they do, and the trace follows.
import { test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const says = (page, name) => page.locator(`.stage[data-stage="${name}"] .stage-says`).innerText();

/** Ticks a box of a stage, and closes the stage again. */
async function tick(page, label, on) {
  await (await student.control(page, label)).setChecked(on);
  await page.keyboard.press("Escape");
}

/** The share of time that a recording stands above the middle between its lowest and its highest value: small for narrow waves. */
async function above(page) {
  await student.worldRuns(page, 15);
  await student.record(page, 12);
  const values = (await student.savedRecording(page)).map(([, value]) => value).sort((a, b) => a - b);
  const middle = (values[Math.floor(values.length / 100)] + values[Math.floor((values.length * 99) / 100)]) / 2;
  await student.pressButton(page, "Live");
  return values.filter((value) => value > middle).length / values.length;
}

test("the calibrator is read off the screen and not recorded; a plain input gives a slope pulse, its integral a volume pulse", async () => {
  await withPage({ viewport: { width: 1280, height: 720 } }, async ({ page, url }) => {
    await student.openScenario(page, url, "odd-wave-e", 119);
    assert.equal(await says(page, "sensor"), "input 1, plain");
    await tick(page, "Calibrator instead of the sensor", true);
    assert.equal(await says(page, "sensor"), "calibrator");
    await student.pressButton(page, "Record");
    await page.getByText("The trace shows the calibrator, not the finger. Turn the calibrator off, then record.").first().waitFor();
    await tick(page, "Calibrator instead of the sensor", false);

    const slope = await above(page);
    await tick(page, "Integral", true);
    assert.match(await says(page, "filters"), /integral/);
    const integral = await above(page);
    await tick(page, "Integral", false);
    await tick(page, "Input buffer", true);
    assert.equal(await says(page, "sensor"), "input 1");
    const volume = await above(page);
    assert.ok(slope < 0.75 * integral && slope < 0.75 * volume, `above the middle: slope ${slope}, integral ${integral}, volume ${volume}`);
  });
});
