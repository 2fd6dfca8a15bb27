// Accessibility: no complaint of axe on any screen in either theme, no sideways scrolling, and a whole attempt by keys alone.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import AxeBuilder from "@axe-core/playwright";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const { pressButton } = student;
const size = (width) => ({ width, height: width < 1000 ? 780 : 900 });

/** On a small screen, turns to a pane; on a wide one all are there. */
async function turnTo(page, pane) {
  const tab = page.getByRole("navigation").getByRole("button", { name: pane, exact: true });
  if (await tab.isVisible()) await tab.click();
}

/** Takes a page through all its screens; calls see(name) on each. */
async function screens(page, url, see) {
  await page.goto(url);
  await page.locator("#start .card").first().waitFor();
  await see("start");
  await page.getByRole("link", { name: "A thick, fuzzy trace" }).click();
  await page.locator(".plug").first().waitFor({ state: "attached" });
  await turnTo(page, "Bench");
  await see("bench");
  await turnTo(page, "Strip");
  await page.waitForTimeout(700);
  await see("live strip");
  await pressButton(page, "Record");
  await page.waitForTimeout(3500);
  await see("live strip, recording");
  await pressButton(page, "Stop recording");
  await page.locator(".strip.is-measuring").waitFor();
  await page.getByLabel("Cursor A, s").fill("0.5");
  await page.getByLabel("Cursor B, s").fill("2.5");
  await pressButton(page, "Mark at A");
  await page.getByText("Beat marks, one by one").click();
  await see("take");
  await turnTo(page, "Worksheet");
  await student.fillSheet(page, { count: 3, seconds: 2, multiplier: "x", rate: "" });
  const first = await student.check(page);
  assert.equal(first.truth, null);
  await see("first debrief");
  const second = await student.check(page);
  assert.ok(second.truth);
  await see("debrief with the truth");
  await page.reload();
  await page.locator("#ask").waitFor();
  await see("question");
  await pressButton(page, "Start afresh");
  await student.openFile(page, student.syntheticRecording());
  await page.locator(".strip.is-measuring").waitFor();
  await see("recording");
  await student.openFile(page, { name: "words.csv", mimeType: "text/csv", buffer: Buffer.from("no numbers") });
  await page.locator("#calm").filter({ hasText: "words.csv" }).waitFor();
  await see("message");
}

async function noComplaint(page, screen) {
  const { violations, passes } = await new AxeBuilder({ page }).analyze();
  assert.ok(passes.length > 10, `axe looked at too little of "${screen}"`);
  assert.deepEqual(violations.map((one) => `${one.id}: ${one.help}: ${one.nodes.map((node) => `${node.target} (${node.failureSummary})`).join("; ")}`), [], screen);
}

const noSidewaysScroll = async (page, screen) => {
  const [inner, client] = await page.evaluate(() => [Math.max(document.documentElement.scrollWidth, document.body.scrollWidth), document.documentElement.clientWidth]);
  assert.ok(inner <= client, `${screen}: ${inner} px of content on ${client} px`);
};

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
async function pick(page, locator, words) {
  await tabTo(page, locator);
  const options = await locator.locator("option").allInnerTexts();
  const from = await locator.evaluate((el) => el.selectedIndex);
  const to = options.indexOf(words);
  assert.ok(to >= 0, `"${words}" is not among ${options}`);
  await page.keyboard.press("Space");
  for (let k = 0; k < Math.abs(to - from); k += 1) await page.keyboard.press(to > from ? "ArrowDown" : "ArrowUp");
  await page.keyboard.press("Enter");
  assert.equal(await locator.evaluate((el) => el.selectedOptions[0].textContent), words);
}

const type = async (page, locator, text) => {
  await tabTo(page, locator);
  await page.keyboard.press("Control+A");
  await page.keyboard.type(String(text));
};

describe("accessibility", { concurrency: 3 }, () => {
  for (const colorScheme of ["light", "dark"]) {
    for (const width of [1280, 390]) {
      test(`axe has no complaint, ${colorScheme}, ${width} px`, async () => {
        await withPage({ viewport: size(width), colorScheme }, async ({ page, url }) => {
          await screens(page, url, async (screen) => {
            await noComplaint(page, screen);
            await noSidewaysScroll(page, screen);
          });
        });
      });
    }
  }

  test("nothing scrolls sideways on 320 px", async () => {
    await withPage({ viewport: size(320), hasTouch: true, isMobile: true }, async ({ page, url }) => {
      await screens(page, url, (screen) => noSidewaysScroll(page, screen));
    });
  });

  test("a whole attempt by keys alone: wire, strap, tune, record, cursors, marks, worksheet, check", async () => {
    await withPage({ viewport: size(1280) }, async ({ page, url }) => {
      const list = (label) => page.getByLabel(label, { exact: true });
      const act = async (name) => {
        await tabTo(page, page.getByRole("button", { name, exact: true }));
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

      await pick(page, list("Mains lead, unit end"), "unit, mains inlet");
      await pick(page, list("Mains lead, wall end"), "power strip, outlet 1");
      await pick(page, list("Data lead, unit end"), "unit, data socket");
      await pick(page, list("Data lead, computer end"), "computer, port 2");
      await pick(page, list("Pad lead, plug"), "unit, input 1");
      await tabTo(page, list("Recorder unit"));
      await page.keyboard.press("Space");
      await page.locator(".link.is-seen").waitFor();
      await tabTo(page, list("Pad strapped on"));
      await page.keyboard.press("Space");
      const slider = list("Strap, looser to tighter");
      await tabTo(page, slider);
      for (let k = 0; k < 100 && Number(await slider.inputValue()) < 72; k += 1) await page.keyboard.press("ArrowRight");
      await page.locator(".feel").filter({ hasText: "Snug" }).waitFor();

      const range = list("Full-scale range");
      for (let k = 0; k < 20 && (await range.evaluate((el) => el.selectedOptions[0].textContent)) !== "±50 mV"; k += 1) await act("Smaller range");
      await page.waitForTimeout(6000);
      await act("Strip in words");
      assert.match(await page.locator(".strip-note").innerText(), /fills a good part/);
      await act("Record");
      await page.waitForFunction(() => document.querySelector(".elapsed").textContent >= "0:20", null, { timeout: 90_000 });
      await act("Stop recording");
      await page.locator(".strip.is-measuring").waitFor();

      const [download] = await Promise.all([page.waitForEvent("download"), act("Save take as CSV")]);
      const peaks = student.peaksOf(await student.readTake(download));
      const [a, b, count] = student.windowBetween(peaks, 15);
      for (const [which, time, key, turn] of [["a", a, "Home", "PageUp"], ["b", b, "End", "PageDown"]]) {
        const cursor = page.locator(`.cursor-${which}`);
        await tabTo(page, cursor);
        await page.keyboard.press(key);
        const now = async () => Number(await cursor.getAttribute("aria-valuenow"));
        const ahead = async () => (key === "Home" ? time - (await now()) : (await now()) - time);
        for (const [name, step] of [[turn, 0.6], [key === "Home" ? "ArrowRight" : "ArrowLeft", 0]]) {
          for (let k = 0; k < 400 && (await ahead()) > step; k += 1) await page.keyboard.press(name);
        }
        assert.ok(Math.abs((await now()) - time) < 0.05, `cursor ${which} stands at ${await now()}, not ${time}`);
        assert.match(await cursor.getAttribute("aria-valuetext"), /^\d+\.\d\d s$/);
      }
      await page.waitForTimeout(400);
      // One mark by the letter, where cursor B stands; a second press takes it away.
      await page.keyboard.press("m");
      assert.equal(await page.locator(".mark-list button").count(), 1);
      await page.keyboard.press("m");
      assert.equal(await page.locator(".mark-list button").count(), 0);

      const seconds = Number((await student.reading(page, "Interval A to B")).replace(/ s$/, ""));
      const multiplier = (60 / seconds).toFixed(3);
      await type(page, list("Between A and B I count N ="), count);
      await type(page, list("in a window of T ="), seconds);
      await type(page, list("To make a minute of it I multiply by"), multiplier);
      await type(page, list("so the heart rate is"), (count * multiplier).toFixed(1));
      await act("Check my reading");
      const debrief = await student.readDebrief(page);
      assert.equal(debrief.firstOpen, null, debrief.text);
      assert.equal(Number(debrief.truth[0]), count);
      assert.ok(await page.evaluate(() => document.activeElement.closest(".debrief") !== null), "the focus is not on the debrief");
    });
  });

  test("arrows in a plug's list do not stop at a socket that it does not fit", async () => {
    await withPage({ viewport: size(1280) }, async ({ page, url }) => {
      await student.openScenario(page, url, "first-wiring", 3);
      const plug = page.getByLabel("Pad lead, plug", { exact: true });
      await tabTo(page, plug);
      for (let k = 0; k < 4; k += 1) await page.keyboard.press("ArrowDown"); // the first opens the list; then inlet, data, input 1
      await page.keyboard.press("Enter");
      assert.equal(await plug.inputValue(), "in1");
    });
  });
});
