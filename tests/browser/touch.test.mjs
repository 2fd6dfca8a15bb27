// The bench by touch: plugs, parts and the sensor follow a finger, the page stays, and what slid under the finger was not pressed.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };

/** Where an element of the drawing lies in the window: its middle, or its own origin. */
const middle = (page, selector) => page.locator(selector).first().evaluate((el) => {
  const box = (el.querySelector(".hit") ?? el).getBoundingClientRect();
  return [box.x + box.width / 2, box.y + box.height / 2];
});
const origin = (page, selector) => page.locator(selector).first().evaluate((el) => {
  const m = el.getScreenCTM();
  return [m.e, m.f];
});

/** Drags with one finger, as the device reports it. */
async function swipe(page, [x0, y0], [x1, y1], steps = 12) {
  const cdp = await page.context().newCDPSession(page);
  const touch = (type, at) => cdp.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [{ x: at[0], y: at[1] }] : [] });
  await touch("touchStart", [x0, y0]);
  for (let k = 1; k <= steps; k += 1) await touch("touchMove", [x0 + ((x1 - x0) * k) / steps, y0 + ((y1 - y0) * k) / steps]);
  await touch("touchEnd");
  await cdp.detach();
}

const scrolled = (page) => page.evaluate(() => scrollY);

/** The bench before anything is wired, in sight, with nobody showing it. */
async function begin(page, url) {
  await student.openScenario(page, url, "first-wiring", 3);
  await student.pressButton(page, "On my own");
  await page.locator(".table").scrollIntoViewIfNeeded();
}

async function plugIn(page, end, socket) {
  const hold = await middle(page, `.plug[data-end="${end}"]`), plug = await origin(page, `.plug[data-end="${end}"]`), target = await origin(page, `.socket[data-socket="${socket}"]`);
  const top = await scrolled(page);
  await swipe(page, hold, [target[0] + hold[0] - plug[0], target[1] + hold[1] - plug[1]]);
  await page.locator(`.socket[data-socket="${socket}"].is-taken`).waitFor({ state: "attached" });
  assert.equal(await scrolled(page), top, `the page slid away under the plug of ${end}`);
}

describe("the bench by touch", { concurrency: 1 }, () => {
  test("plugs go in, the sensor goes onto the finger and off again, and the page stays where it is", async () => {
    await withPage(phone, async ({ page, url }) => {
      await begin(page, url);
      const sockets = await page.$$eval(".socket", (all) => all.map((el) => el.dataset.socket));
      assert.ok(sockets.length > 6);
      await plugIn(page, "power_wall", "outlet1");
      const before = await student.kept(page);
      // The sensor: onto the finger, and it is not tapped by that.
      await swipe(page, await middle(page, ".sensor:not(.press)"), await middle(page, ".part-hand .dusk-fill"));
      await page.locator(".sensor.press.is-on").waitFor({ state: "attached" });
      assert.equal(await page.locator(".bench-note").filter({ hasText: /tap/i }).count(), 0);
      assert.equal(await student.kept(page), before + 1, "one drag is one deed");
      const [x, y] = await middle(page, ".sensor.press");
      await swipe(page, [x, y], [x > 195 ? x - 130 : x + 130, y]);
      await page.locator(".sensor.press:not(.is-on)").waitFor({ state: "attached" });
    });
  });

  test("what fits lights up while a plug is dragged, a wrong socket says why, and the bench says so in sight", async () => {
    await withPage(phone, async ({ page, url }) => {
      await begin(page, url);
      const hold = await middle(page, '.plug[data-end="sensor"]'), plug = await origin(page, '.plug[data-end="sensor"]'), target = await origin(page, '.socket[data-socket="outlet1"]');
      const to = [target[0] + hold[0] - plug[0], target[1] + hold[1] - plug[1]];
      const cdp = await page.context().newCDPSession(page);
      const touch = (type, at) => cdp.send("Input.dispatchTouchEvent", { type, touchPoints: at ? [{ x: at[0], y: at[1] }] : [] });
      await touch("touchStart", hold);
      for (let k = 1; k <= 12; k += 1) await touch("touchMove", hold.map((v, i) => v + ((to[i] - v) * k) / 12));
      await page.locator(".bubble.is-wrong", { hasText: "the shape does not fit" }).waitFor();
      assert.deepEqual(await page.$$eval(".socket.is-fit", (all) => all.map((el) => el.dataset.socket).sort()), ["in1", "in2", "in3"]);
      await touch("touchEnd");
      await cdp.detach();
      const note = page.locator(".bench-note:not(:empty)");
      await note.waitFor();
      const over = await note.evaluate((el) => {
        const box = el.getBoundingClientRect();
        return { inside: box.top >= 0 && box.bottom <= innerHeight, free: el.contains(document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2)) };
      });
      assert.deepEqual(over, { inside: true, free: true });
    });
  });

  test("a touched part opens a sheet at the foot with targets of 44 px; a plug goes in from there, and one tap takes it back", async () => {
    await withPage(phone, async ({ page, url }) => {
      await begin(page, url);
      const [x, y] = await middle(page, '.plug[data-end="power_recorder"]');
      await page.touchscreen.tap(x, y);
      const card = page.locator(".touch-card");
      await card.waitFor();
      const box = await card.boundingBox();
      assert.ok(box.y + box.height > 843 && box.width > 385, "the sheet does not stand at the foot");
      const small = await card.locator("button, input, select").evaluateAll((all) => all.filter((el) => el.getBoundingClientRect().height < 43.5).map((el) => el.textContent));
      assert.deepEqual(small, []);
      await card.getByRole("button", { name: "recorder, power" }).tap();
      await page.locator('.socket[data-socket="recorder_inlet"].is-taken').waitFor({ state: "attached" });
      await card.getByRole("button", { name: "Close", exact: true }).tap();
      await page.getByRole("button", { name: "Undo" }).first().tap();
      await page.locator('.socket[data-socket="recorder_inlet"]:not(.is-taken)').waitFor({ state: "attached" });
    });
  });
});
