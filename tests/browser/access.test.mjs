// Accessibility: a whole attempt and a whole assignment by keys alone.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const size = (width) => ({ width, height: width < 1000 ? 780 : 900 });

/** Presses Tab until the element has the focus; fails if it cannot be reached. */
async function tabTo(page, locator) {
  const what = await locator.elementHandle();
  const there = () => page.evaluate((el) => document.activeElement === el, what);
  for (let k = 0; k < 200; k += 1) {
    if (await there()) return;
    await page.keyboard.press("Tab");
  }
  assert.fail(`the Tab key does not reach ${locator}`);
}

/** Chooses in a list that has the focus, by opening it and going down to the words. */
async function pick(page, locator, words, stays = words) {
  await tabTo(page, locator);
  const options = await locator.locator("option").allInnerTexts();
  const from = await locator.evaluate((el) => el.selectedIndex);
  const to = options.indexOf(words);
  assert.ok(to >= 0, `"${words}" is not among ${options}`);
  await page.keyboard.press("Space");
  for (let k = 0; k < Math.abs(to - from); k += 1) await page.keyboard.press(to > from ? "ArrowDown" : "ArrowUp");
  await page.keyboard.press("Enter");
  assert.equal(await locator.evaluate((el) => el.selectedOptions[0].textContent), stays);
}

const type = async (page, locator, text) => {
  await tabTo(page, locator);
  await page.keyboard.press("Control+A");
  await page.keyboard.type(String(text));
};

describe("by keys alone", { concurrency: 3 }, () => {
  test("a whole attempt by keys alone: wire, strap, tune, record, cursors, marks, worksheet, check", async () => {
    await withPage({ viewport: size(1280) }, async ({ page, url }) => {
      const list = (label) => page.getByLabel(label, { exact: true });
      const act = async (name) => {
        await tabTo(page, page.getByRole("button", typeof name === "string" ? { name, exact: true } : { name }));
        await page.keyboard.press("Enter");
      };
      await page.goto(url);
      await page.locator("#start .card").first().waitFor();
      await tabTo(page, page.getByRole("link", { name: "First wiring", exact: true }));
      await page.keyboard.press("Enter");
      await page.locator(".plug").first().waitFor({ state: "attached" });
      await page.waitForLoadState("networkidle");
      await page.goto(`${url}?keys#s=first-wiring&seed=11`);
      await page.locator(".plug").first().waitFor({ state: "attached" });

      await act("All equipment");
      await pick(page, list("Power cord, recorder end"), "recorder, power");
      await pick(page, list("Power cord, outlet end"), "power strip, outlet 1");
      await pick(page, list("Data cable, recorder end"), "recorder, data");
      await pick(page, list("Data cable, computer end"), "computer, port 2");
      await pick(page, list("Sensor cable, plug"), "recorder, input 1");
      await tabTo(page, list("Recorder"));
      await page.keyboard.press("Space");
      await page.locator(".link.is-seen").waitFor({ state: "attached" });
      await tabTo(page, list("Sensor strapped on"));
      await page.keyboard.press("Space");
      const slider = list("Strap, looser to tighter");
      await tabTo(page, slider);
      for (let k = 0; k < 100 && Number(await slider.inputValue()) < 72; k += 1) await page.keyboard.press("ArrowRight");
      await page.locator(".feel").filter({ hasText: "It fits well" }).waitFor();

      const range = list("Full-scale range");
      for (let k = 0; k < 20 && (await range.evaluate((el) => el.selectedOptions[0].textContent)) !== "±50 mV"; k += 1) await act("Smaller range");
      await student.worldRuns(page, 6);
      await act("Trace in words");
      assert.match(await page.locator(".strip-note").innerText(), /fills a good part/);
      await act("Record");
      await student.recorded(page, 20);
      await act("Stop recording");
      await page.locator(".strip.is-measuring").waitFor();

      await tabTo(page, page.locator(".measure-more > summary"));
      await page.keyboard.press("Enter");
      const [download] = await Promise.all([page.waitForEvent("download"), act("Save recording as CSV")]);
      const peaks = student.peaksOf(await student.readRecording(download));
      const [a, b, count] = student.windowBetween(peaks, 15);
      for (const [which, time, key, turn] of [["a", a, "Home", "PageUp"], ["b", b, "End", "PageDown"]]) {
        const cursor = page.locator(`.cursor-${which}`);
        await tabTo(page, cursor);
        await page.keyboard.press(key);
        const now = async () => Number(await cursor.getAttribute("aria-valuenow"));
        const ahead = async () => (key === "Home" ? time - (await now()) : (await now()) - time);
        for (const [name, step] of [[turn, 1.1], [key === "Home" ? "ArrowRight" : "ArrowLeft", 0]]) {
          for (let k = 0; k < 400 && (await ahead()) > step; k += 1) await page.keyboard.press(name);
        }
        assert.ok(Math.abs((await now()) - time) < 0.05, `cursor ${which} stands at ${await now()}, not ${time}`);
        assert.match(await cursor.getAttribute("aria-valuetext"), /^\d+\.\d\d s$/);
      }
      // One mark by the letter, where cursor B stands; a second press takes it away.
      await page.keyboard.press("m");
      assert.equal(await page.locator(".mark-list button").count(), 1);
      await page.keyboard.press("m");
      assert.equal(await page.locator(".mark-list button").count(), 0);

      const seconds = Number((await student.reading(page, "A to B")).replace(/ s$/, ""));
      const multiplier = (60 / seconds).toFixed(3);
      await type(page, list("Between A and B I count N ="), count);
      await type(page, list("time T ="), seconds);
      await type(page, list("60/T ="), multiplier);
      await type(page, list("heart rate ="), (count * multiplier).toFixed(1));
      await act(/^Check my reading/);
      const debrief = await student.readDebrief(page);
      assert.equal(debrief.firstOpen, null, debrief.text);
      assert.equal(Number(debrief.truth[0]), count);
      assert.ok(await page.evaluate(() => document.activeElement.closest(".debrief") !== null), "the focus is not on the debrief");
    });
  });

  test("an assignment composed, passed on and opened by keys alone", async () => {
    await withPage({ viewport: size(1280) }, async ({ page, context, url }) => {
      await context.grantPermissions(["clipboard-read", "clipboard-write"]);
      const list = (label) => page.getByLabel(label, { exact: true });
      const act = async (role, name) => {
        await tabTo(page, page.getByRole(role, { name, exact: true }));
        await page.keyboard.press(role === "switch" || role === "checkbox" ? "Space" : "Enter");
      };
      await page.goto(url);
      await page.locator("#start .card").first().waitFor();
      await act("link", "Assign a scenario");
      await page.locator("#assign .preview-table svg").waitFor();
      await type(page, list("Heading"), "By keys alone");
      await type(page, list("Aim, in a sentence"), "Clear the hum, then count.");
      await pick(page, list("What is asked"), "count in a counting window of a given length");
      await pick(page, list("Add a fault"), "Charger beside the sensor cable", "choose one"); // it goes into the list above at once
      assert.equal(await page.locator(".assign-faults > li").count(), 1);
      const mildest = list("“Charger beside the sensor cable”: mildest");
      await tabTo(page, mildest);
      const before = Number(await mildest.inputValue());
      for (let k = 0; k < 6; k += 1) await page.keyboard.press("ArrowRight");
      assert.ok(Number(await mildest.inputValue()) > before, "the arrows do not move the severity");
      await pick(page, list("Help"), "on your own");
      await type(page, list("Heart rate at rest, beats/min"), 66);
      await type(page, list("Attempts"), 2);
      await type(page, list("Key of the assignment"), "keys, week 1");
      await type(page, list("Text before the first attempt"), "No mouse needed.");
      await act("button", "Copy the link");
      await page.locator(".out [role=status]").filter({ hasText: "Copied" }).waitFor();
      const copied = await page.evaluate(() => navigator.clipboard.readText());
      assert.match(copied, /#a=/);
      await page.goto(`${copied.replace("/#", "/?opened#")}`);
      await page.locator("#ask").waitFor();
      assert.match(await page.locator("#ask").innerText(), /By keys alone[\s\S]*No mouse needed/);
      await type(page, page.getByLabel(/student ID/i), "K1");
      await act("button", "Start attempt 1 of 2");
      await page.locator(".plug").first().waitFor({ state: "attached" });
      assert.match(await page.locator(".task-line").innerText(), /window of [\d.]+ s/);
    });
  });

  test("arrows in a plug's list do not stop at a socket that it does not fit", async () => {
    await withPage({ viewport: size(1280) }, async ({ page, url }) => {
      await student.openScenario(page, url, "first-wiring", 3);
      const plug = await student.control(page, "Sensor cable, plug");
      await tabTo(page, plug);
      for (let k = 0; k < 4; k += 1) await page.keyboard.press("ArrowDown"); // the first opens the list; then inlet, data, input 1
      await page.keyboard.press("Enter");
      assert.equal(await plug.inputValue(), "in1");
    });
  });
});
