// One's own pulse by touch and by a silent count: what is tapped is what is told, what runs can be taken back, two ways are compared, and
// a whole measurement is done by keys alone.
import { before, describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage, words } from "./lib.mjs";

let said;
before(async () => {
  said = await words("own");
});

const wide = { viewport: { width: 1280, height: 900 } };
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

/** The page with a clock that moves only when it is told to: each tap falls on its millisecond. */
async function atOwn(page, url, way = "touch") {
  await page.goto(`${url}#own`);
  await page.locator(`.own-chosen .seg[data-key="${way}"]`).click();
  await page.waitForLoadState("networkidle");
  await page.clock.install();
  await page.clock.pauseAt(Date.now() + 1000);
}
const taps = async (page, gaps, press = () => page.keyboard.press("Space")) => {
  await page.locator(".own-tap").focus();
  await press();
  for (const gap of gaps) {
    await page.clock.runFor(gap);
    await press();
  }
};
const row = (page, name) => page.locator(".own-two:not([hidden]) .own-figures > div").filter({ hasText: name }).locator("dd").innerText();
const count = (page) => page.locator(".own-two:not([hidden])").getAttribute("data-taps");

describe("the pulse by touch", { concurrency: 2 }, () => {
  test("taps tell heart rate, beat interval and how far it may be off; the time ends by itself", async () => {
    await withPage(wide, async ({ page, url }) => {
      await atOwn(page, url);
      await page.getByRole("button", { name: "15 s", exact: true }).first().click();
      await taps(page, Array(17).fill(800));
      await page.clock.runFor(2000); // span: past the fifteen seconds, by the page's own clock
      assert.match(await row(page, said["own-rate"]), /^75 ± \S+ beats\/min$/);
      assert.match(await row(page, said["own-interval"]), /^800 ms/);
      assert.match(await row(page, said["own-tap_n"]), /^18 taps, so 17 beat intervals in 13\.6 s$/);
      assert.equal(await page.locator(".own-list li").count(), 1);
    });
  });

  test("a missed beat and a double tap are told; the last tap can be taken back", async () => {
    await withPage(wide, async ({ page, url }) => {
      await atOwn(page, url);
      await taps(page, [800, 810, 790, 1600, 800, 400, 400, 800, 790, 805]);
      await page.getByRole("button", { name: said["own-undo"], exact: true }).click();
      assert.equal(await count(page), "10");
      await page.getByRole("button", { name: said["own-stop"], exact: true }).click();
      await page.locator(".own-two:not([hidden]) .own-figures").waitFor();
      const told = await page.locator(".own-two:not([hidden]) .own-result").innerText();
      assert.match(told, /One beat interval is about twice as long/);
      assert.match(told, /beat intervals? (?:is|are) about half as long/);
    });
  });

  test("too few taps give no heart rate", async () => {
    await withPage(wide, async ({ page, url }) => {
      await atOwn(page, url);
      await taps(page, []);
      await page.getByRole("button", { name: said["own-stop"], exact: true }).click();
      await page.getByText(said["own-tap_few"], { exact: true }).waitFor();
      assert.equal(await page.locator(".own-list li").count(), 0);
    });
  });

  test("by a finger on a phone each touch is one tap, a held key is one, and what can be touched is 44 px high", async () => {
    await withPage(phone, async ({ page, url }) => {
      await atOwn(page, url);
      const tap = page.locator(".own-tap");
      await tap.tap();
      await page.clock.runFor(700);
      await tap.tap();
      assert.equal(await count(page), "2");
      await tap.focus();
      await page.keyboard.down("Space");
      for (let k = 0; k < 5; k += 1) await page.keyboard.down("Space"); // repeats while it is down
      await page.keyboard.up("Space");
      assert.equal(await count(page), "3");
      for (const way of ["touch", "count", "camera"]) {
        await page.locator(`.own-chosen .seg[data-key="${way}"]`).tap();
        const small = await page.locator("#own").locator("button, a, input").evaluateAll((all) => all.filter((el) => el.checkVisibility() && el.getBoundingClientRect().height < 43.5).map((el) => el.textContent));
        assert.deepEqual(small, [], way);
      }
    });
  });

  test("the taps open as a recording, with its detector's beats", async () => {
    await withPage(wide, async ({ page, url }) => {
      await atOwn(page, url);
      await taps(page, Array(22).fill(850));
      await page.getByRole("button", { name: said["own-stop"], exact: true }).click();
      await page.getByRole("button", { name: said["own-open"], exact: true }).waitFor();
      await page.clock.resume();
      await page.getByRole("button", { name: said["own-open"], exact: true }).click();
      await page.locator(".strip.is-measuring").waitFor();
      assert.equal(await page.evaluate(() => document.body.dataset.kind), "recording");
    });
  });
});

describe("the silent count", { concurrency: 2 }, () => {
  test("shows no time, ends by itself, and works out the heart rate with its step", async () => {
    await withPage(wide, async ({ page, url }) => {
      await atOwn(page, url, "count");
      await page.getByRole("button", { name: said["own-count_start"], exact: true }).click();
      const panel = page.locator(".own-two:not([hidden]) .own-dark");
      const early = await panel.innerText();
      await page.clock.runFor(29_000);
      assert.equal(await panel.innerText(), early, "something on the page tells the time");
      await page.clock.runFor(1500);
      const field = page.getByLabel(said["own-count_n"], { exact: true });
      await field.waitFor();
      assert.ok(await field.evaluate((el) => el === document.activeElement));
      await field.fill("many");
      await page.keyboard.press("Enter");
      await page.getByText(/^Type a whole number from 0 to/).waitFor();
      await field.fill("36");
      await page.keyboard.press("Enter");
      await page.locator(".own-two:not([hidden]) .own-figures").waitFor();
      assert.equal(await row(page, said["own-rate"]), "72 ± 2 beats/min");
      assert.match(await page.locator(".own-two:not([hidden]) .own-result").innerText(), /36 beats in 30 s: 36 × 2 = 72 beats\/min/);
    });
  });

  test("can be broken off", async () => {
    await withPage(wide, async ({ page, url }) => {
      await atOwn(page, url, "count");
      await page.getByRole("button", { name: said["own-count_start"], exact: true }).click();
      await page.getByRole("button", { name: said["own-count_leave"], exact: true }).click();
      await page.clock.runFor(60_000);
      assert.equal(await page.getByLabel(said["own-count_n"], { exact: true }).isVisible(), false);
    });
  });
});

describe("one with another", { concurrency: 2 }, () => {
  test("two measurements are compared: within what both may be off, and beyond", async () => {
    await withPage(wide, async ({ page, url }) => {
      await atOwn(page, url, "count");
      const measure = async (n) => {
        await page.getByRole("button", { name: said["own-count_start"], exact: true }).click();
        await page.clock.runFor(30_500);
        await page.getByLabel(said["own-count_n"], { exact: true }).fill(String(n));
        await page.keyboard.press("Enter");
      };
      await measure(36);
      await page.getByText(said["own-list_one"], { exact: true }).waitFor();
      await measure(37);
      await page.getByText(/^The last two are 2 beats\/min apart\. Each of them may be off/).waitFor();
      await measure(45);
      await page.getByText(/^The last two are 16 beats\/min apart\. That is more/).waitFor();
      assert.equal(await page.locator(".own-list li").count(), 3);
    });
  });

  test("the way there: from the first screen, from the head, and back to a scenario that waited", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(url);
      await page.locator(".start-pulse a").click();
      await page.locator("#own h1").waitFor();
      assert.equal(await page.title(), `${said["own-title"]} · Dicrotic`);
      assert.ok(await page.locator("#own h1").evaluate((el) => el === document.activeElement));
      await page.goto(`${url}?waits#s=rest-pulse&seed=3`);
      await page.locator(".plug").first().waitFor({ state: "attached" });
      await page.getByRole("button", { name: "Your own pulse", exact: true }).click();
      await page.locator("#own h1").waitFor();
      await page.getByRole("button", { name: "Back to the scenario", exact: true }).click();
      await page.locator("#lab").waitFor();
      assert.match(page.url(), /#s=rest-pulse&seed=3$/);
    });
  });
});
