// The previews behind the doors of the first screen: the page itself in a frame. They run, are paused, gone through and closed, keep
// nothing, and stand still where that is wanted.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage, words } from "./lib.mjs";
import { frames, pressButton } from "./student.mjs";

const told = (page) => page.locator(".glimpse-told").innerText();
const hold = (page, name) => page.locator(".glimpse-tools").getByRole("button", { name, exact: true });
const open = async (page, url, door) => {
  await page.goto(url);
  await page.locator(`.way-${door} .way-look`).click();
  await page.locator(".glimpse-told").filter({ hasText: /./ }).waitFor();
  return page.frames().find((frame) => frame.url().includes("?preview"));
};
/** How much of the example is done, 0 to 1. */
const done = (page) => page.locator(".glimpse-way i").evaluate((el) => Number(el.style.getPropertyValue("--done")));
/** How many plugs are in their sockets in the frame: the drawing there is the page's own. */
const plugged = (frame) => frame.locator(".table .socket.is-taken").count();

describe("half a minute behind each door", { concurrency: 2 }, () => {
  test("the page itself plays its worked example; it is paused, stepped and closed by keys, and nothing is kept of it", async () => {
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      await page.goto(url);
      const device = () => page.evaluate(() => [Object.keys(localStorage), Object.keys(sessionStorage), history.length, location.href]);
      const before = await device();
      const frame = await open(page, url, "rehearse");
      assert.match(frame.url(), /\?preview#watch=first-wiring$/);
      for (const part of ["#steps .steps-one", ".table .plug", "#strip canvas", "#worksheet .blank"]) assert.ok(await frame.locator(part).first().isVisible(), part);
      assert.equal(await frame.locator(".narrator").isVisible(), false);
      const early = await plugged(frame);
      await page.waitForFunction((was) => document.querySelector(".glimpse-frame").contentDocument.querySelectorAll(".table .socket.is-taken").length > was, early);
      await page.keyboard.press("Enter"); // the focus is on Pause
      await hold(page, "Continue").waitFor();
      const [held, seen] = [await done(page), await plugged(frame)];
      await frames(page, 90);
      assert.deepEqual([await done(page), await plugged(frame)], [held, seen], "it goes on while it is paused");
      await pressButton(page, "Next step");
      await frames(page, 3);
      assert.ok(await done(page) > held, "no step was done");
      assert.equal(await told(page), await frame.locator(".narrator-deed").evaluate((el) => el.textContent));
      await page.keyboard.press("Escape");
      await page.locator(".glimpse").waitFor({ state: "detached" });
      assert.equal(page.frames().length, 1);
      assert.ok(await page.evaluate(() => document.activeElement.matches(".way-rehearse .way-look")), "the focus is lost");
      assert.deepEqual(await device(), before);
    });
  });

  test("to its end, the result in the frame, and once more; from there the scenario begins", async () => {
    await withPage({ viewport: { width: 390, height: 844 } }, async ({ page, url }) => {
      const frame = await open(page, url, "rehearse");
      const box = await page.locator(".glimpse").boundingBox();
      assert.ok(box.x >= 0 && box.x + box.width <= 390 && box.y >= 0 && box.y + box.height <= 844, JSON.stringify(box));
      await hold(page, "Pause").click();
      const next = hold(page, "Next step");
      for (let k = 0; k < 80 && await next.isEnabled(); k += 1) {
        await next.click();
        await frames(page, 2);
      }
      await hold(page, "Again").waitFor();
      await frame.locator("#result .debrief .step").first().waitFor();
      assert.equal(await done(page), 1);
      await hold(page, "Again").click();
      await hold(page, "Pause").waitFor();
      assert.ok(await done(page) < 1);
      await page.locator(".glimpse-tools .btn-strong").click();
      await page.locator("#lab").waitFor();
      assert.match(page.url(), /#s=first-wiring/);
      assert.equal(await page.locator(".glimpse").count(), 0);
    });
  });

  test("a slow computer does not make it longer than half a minute", async () => {
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      await page.clock.install();
      const frame = await open(page, url, "check");
      assert.equal(await frame.locator("html").getAttribute("data-preview"), "");
      await page.clock.fastForward(31_000);
      await hold(page, "Again").waitFor();
      assert.equal(await done(page), 1);
    });
  });

  test("the instructor's door shows the instructor's screen part by part, and leaves no draft", async () => {
    const texts = await words("glimpse");
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      const frame = await open(page, url, "assign");
      await hold(page, "Pause").click();
      const tops = [];
      for (const [k, part] of [".assign-faults", ".assign-side", ".fairness", ".out"].entries()) {
        assert.equal(await told(page), texts[`glimpse-assign-${k + 1}`]);
        await frame.waitForFunction((part) => {
          const { top } = document.querySelector(part).getBoundingClientRect();
          return top < innerHeight - 40;
        }, part);
        tops.push(await frame.locator(part).first().isVisible());
        await pressButton(page, "Next step");
        await frames(page, 3);
      }
      assert.deepEqual(tops, [true, true, true, true]);
      await hold(page, "Again").waitFor();
      assert.ok(await frame.locator(".assign-faults li").count() > 0, "no fault is shown");
      assert.equal(await page.evaluate(() => localStorage.getItem("dicrotic:assign")), null);
    });
  });

  test("where motion is not wanted it stands still and is gone through step by step", async () => {
    await withPage({ viewport: { width: 1280, height: 900 }, reducedMotion: "reduce" }, async ({ page, url }) => {
      const frame = await open(page, url, "rehearse");
      await hold(page, "Continue").waitFor();
      const at = async () => [await done(page), await told(page), await plugged(frame)];
      const first = await at();
      await frames(page, 90);
      assert.deepEqual(await at(), first);
      await pressButton(page, "Next step");
      await frames(page, 3);
      assert.notDeepEqual(await at(), first);
    });
  });
});
