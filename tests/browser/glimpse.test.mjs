// The pictures behind the doors of the first screen: they run, are held, gone through and closed, and stand still where that is wanted.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { strings, withPage, words } from "./lib.mjs";
import { frames, pressButton } from "./student.mjs";

const told = await words("glimpse");
const texts = (door) => [1, 2, 3, 4, 5].map((k) => strings(told[`glimpse-${door}-${k}`]).join(""));
const on = (page) => page.locator(".glimpse-scene.is-on .glimpse-told").innerText();
const open = async (page, url, door) => {
  await page.goto(url);
  await page.locator(`.way-${door} .way-look`).click();
  await page.locator(".glimpse").waitFor();
};
/** How much of each picture can be seen and how its parts stand, as the browser computes it. */
const look = (page) => page.locator(".glimpse-field").evaluateAll((all) => all.map((field) => [...field.querySelectorAll("*")].map((el) => {
  const { opacity, transform, strokeDashoffset } = getComputedStyle(el);
  return [opacity, transform, strokeDashoffset].join();
}).join(";")));

describe("half a minute behind each door", { concurrency: 2 }, () => {
  test("it runs by itself, is held, gone through and closed by keys, and the focus goes back to the door", async () => {
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      await open(page, url, "rehearse");
      assert.deepEqual(await page.locator(".glimpse-told").allInnerTexts(), texts("rehearse"));
      const early = await look(page);
      let later = early;
      for (let k = 0; k < 40 && later[0] === early[0]; k += 1) {
        await frames(page, 10);
        later = await look(page);
      }
      assert.notEqual(later[0], early[0], "nothing moves");
      assert.equal(later[4], early[4], "the last picture is drawn before its time");
      await page.keyboard.press("Enter"); // the focus is on the button that holds
      const held = await look(page);
      await frames(page, 20);
      assert.deepEqual(await look(page), held, "it moves on while it is held");
      await pressButton(page, "The next picture");
      assert.equal(await on(page), texts("rehearse")[1]);
      await pressButton(page, "The picture before");
      assert.equal(await on(page), texts("rehearse")[0]);
      await page.keyboard.press("Escape");
      await page.locator(".glimpse").waitFor({ state: "detached" });
      assert.ok(await page.evaluate(() => document.activeElement.matches(".way-rehearse .way-look")), "the focus is lost");
      assert.equal(await page.locator(".hero-pulse").count(), 1);
    });
  });

  test("to its end and once more; each door has its own", async () => {
    await withPage({ viewport: { width: 390, height: 780 } }, async ({ page, url }) => {
      await page.clock.install();
      for (const door of ["check", "assign"]) {
        await open(page, `${url}?${door}`, door);
        await page.waitForFunction(() => { // scrolled to where it can be seen whole
          const { top, bottom } = document.querySelector(".glimpse").getBoundingClientRect();
          return top >= 0 && bottom <= innerHeight;
        }, null, { timeout: 5000 });
        for (let k = 0; k < 4; k += 1) await pressButton(page, "The next picture");
        assert.equal(await on(page), texts(door)[4]);
        await page.clock.fastForward(6000); // as long as a picture is on
        await page.getByRole("button", { name: "Again" }).waitFor();
        await pressButton(page, "Again");
        assert.equal(await on(page), texts(door)[0]);
      }
    });
  });

  test("where motion is not wanted all five stand there at once", async () => {
    await withPage({ viewport: { width: 1280, height: 900 }, reducedMotion: "reduce" }, async ({ page, url }) => {
      await open(page, url, "assign");
      const first = await look(page);
      await frames(page, 20);
      assert.deepEqual(await look(page), first);
      assert.equal(await page.locator(".glimpse-scene.is-to-come").count(), 0);
    });
  });
});
