// The trace for the ear: silent until asked for, a click a crest, hum as hum, silent again.
import assert from "node:assert/strict";
import { test } from "node:test";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

/** Notes what the page gives to the loudspeaker: pitches of clicks, and the power of what it plays. */
const overhear = () => {
  window.heard = { pitches: [], power: 0, seconds: 0 };
  const { OscillatorNode: Tone, AudioBufferSourceNode: Played } = window;
  window.OscillatorNode = class extends Tone {
    constructor(context, options) {
      super(context, options);
      window.heard.pitches.push(options.frequency);
    }
  };
  window.AudioBufferSourceNode = class extends Played {
    constructor(context, options) {
      super(context, options);
      window.heard.power += options.buffer.getChannelData(0).reduce((sum, v) => sum + v * v, 0) / options.buffer.sampleRate;
      window.heard.seconds += options.buffer.duration;
    }
  };
};

/** Opens a scenario, listens for some seconds: {pitches, rms}. */
async function listen(page, url, id, { wired = async () => {} } = {}) {
  await page.addInitScript(overhear);
  await student.openScenario(page, url, id, "7");
  await wired();
  await student.worldRuns(page, 6);
  assert.deepEqual(await page.evaluate(() => window.heard), { pitches: [], power: 0, seconds: 0 }, "it sounds before it was asked to");
  const button = page.getByRole("button", { name: "Listen", exact: true });
  await button.click();
  assert.equal(await button.getAttribute("aria-pressed"), "true");
  await page.waitForFunction(() => window.heard.seconds > 6);
  const heard = await page.evaluate(() => ({ ...window.heard }));
  await button.click();
  assert.equal(await button.getAttribute("aria-pressed"), "false");
  const after = await page.evaluate(() => window.heard.seconds);
  await student.worldRuns(page, 2);
  assert.equal(await page.evaluate(() => window.heard.seconds), after, "it sounds after it was turned off");
  return { pitches: heard.pitches, rms: Math.sqrt(heard.power / heard.seconds) };
}

test("a quiet bench clicks with the heart and hums little; one full of hum hums", async () => {
  const [calm, humming] = await Promise.all(["rest-pulse", "hum-on-the-trace"].map((id) => withPage({ viewport: { width: 1280, height: 900 }, speed: 8 }, ({ page, url }) => listen(page, url, id))));
  assert.ok(calm.pitches.length >= 4 && calm.pitches.length <= 20, `${calm.pitches.length} clicks in 6 s`);
  for (const pitch of calm.pitches) assert.ok(pitch > 330 && pitch <= 1320, `${pitch} Hz`);
  assert.ok(humming.rms > 5 * calm.rms, `${humming.rms} and ${calm.rms}`);
});
