// The page's own ways: the first screen's ways in, the docked trace, the stylus, filters, taps beside a cursor.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const { choose, pressButton } = student;
const wide = { viewport: { width: 1280, height: 900 } };

/** Records a few seconds of the wired bench. */
async function shortRecording(page, url, seed) {
  await student.openScenario(page, url, "hum-on-the-trace", seed);
  await student.worldRuns(page, 1.2);
  await student.take(page, 3);
}

describe("the page", { concurrency: 2 }, () => {
  test("the first screen shows all three ways in without scrolling, also on a phone", async () => {
    for (const viewport of [{ width: 1280, height: 720 }, { width: 390, height: 780 }]) {
      await withPage({ viewport }, async ({ page, url }) => {
        await page.goto(url);
        for (const way of ["Prepare for the lab", "Quick self-check", "For your class"]) {
          const box = await page.getByRole("heading", { name: way, exact: true }).boundingBox();
          assert.ok(box.y + box.height < viewport.height, `"${way}" is out of sight on ${viewport.width} px`);
        }
        // One strong button, the student's, and it is seen.
        const strong = page.locator("#start .btn-strong");
        assert.deepEqual(await strong.allInnerTexts(), ["Start with “First wiring”"]);
        const box = await strong.boundingBox();
        assert.ok(box.y + box.height < viewport.height, `the student's button is out of sight on ${viewport.width} px`);
        assert.match(await page.locator(".way-rehearse .way-for").innerText(), /^Students/);
        assert.match(await page.locator(".way-assign .way-for").innerText(), /^Instructors/);
        // The head has one line, with theme and language in it.
        const head = await page.locator(".top").boundingBox();
        assert.ok(head.height < 60, `the head is ${head.height} px high on ${viewport.width} px`);
        for (const name of ["Theme", "Language"]) await page.locator(".top").getByLabel(name, { exact: true }).waitFor();
      });
    }
  });

  test("the theme is chosen by name, stays, and an old kept name is still read", async () => {
    await withPage({ ...wide, colorScheme: "dark" }, async ({ page, url }) => {
      await page.goto(url);
      const choice = page.getByLabel("Theme", { exact: true });
      const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
      assert.equal(await choice.inputValue(), "dark");
      assert.deepEqual(await choice.locator("option").allInnerTexts(), ["Light", "Dark"]);
      const dark = await ground();
      await choice.focus();
      await page.keyboard.press("ArrowUp");
      assert.equal(await choice.inputValue(), "light");
      const light = await ground();
      assert.notEqual(light, dark);
      assert.equal(await page.locator(".pick .word").first().innerText(), "Light");
      await page.reload();
      assert.equal(await choice.inputValue(), "light");
      assert.equal(await ground(), light);
      for (const [old, now] of [["smoked", "dark"], ["paper", "light"]]) {
        await page.evaluate((old) => localStorage.setItem("dicrotic:theme", JSON.stringify(old)), old);
        await page.reload();
        assert.equal(await choice.inputValue(), now);
        assert.equal(await ground(), now === "dark" ? dark : light);
      }
    });
  });

  test("an instructor's ways cable to setting a bench and to what came in; a fresh bench has a seed of its own", async () => {
    await withPage(wide, async ({ page, url }) => {
      for (const [link, heading] of [["Assign a scenario", "Assign a scenario to a class"], ["Class results", "Class results"]]) {
        await page.goto(`${url}?${link.length}`);
        await page.getByRole("link", { name: link, exact: true }).click();
        await page.getByRole("heading", { level: 1, name: heading, exact: true }).waitFor();
        assert.ok(await page.evaluate(() => document.activeElement.tagName === "H1"), "the focus is not on the heading");
        await page.getByRole("button", { name: "Scenarios" }).click();
        await page.locator("#start .card").first().waitFor();
      }
      await pressButton(page, "Start a self-check");
      await page.locator("#lab").waitFor();
      assert.match(page.url(), /#s=[\w-]+&seed=\d{9}$/);
    });
  });

  test("an attempt that was left stands on the first screen and goes on without a question", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(url);
      assert.equal(await page.getByText("Continue where you stopped").count(), 0);
      await student.openScenario(page, `${url}?a`, "first-wiring", 77);
      await choose(page, "Sensor cable, plug", "recorder, input 3");
      await page.getByRole("button", { name: "Scenarios" }).click();
      await page.locator(".kept a").click();
      await page.locator("#lab").waitFor();
      assert.equal(await page.locator("#ask").isVisible(), false);
      assert.equal(await page.locator(".where .seed").innerText(), "seed 77");
      assert.equal(await (await student.control(page, "Sensor cable, plug")).inputValue(), "in3");
    });
  });

  test("from the first step to the result bench and trace stand side by side without scrolling, and the trace takes two fifths of the window", async () => {
    for (const viewport of [{ width: 1280, height: 720 }, { width: 1024, height: 600 }, { width: 1920, height: 1080 }]) {
      await withPage({ viewport }, async ({ page, url }) => {
        const look = async (where) => {
          const seen = await page.evaluate(() => {
            const lab = document.querySelector("#lab").getBoundingClientRect();
            const field = document.querySelector(".field").getBoundingClientRect();
            const over = [...document.querySelectorAll(":is(.steps-bar, .left, .strip, .sheet, .page, .drum, .path, .under)")].filter((el) => el.checkVisibility() && (el.getBoundingClientRect().bottom > innerHeight + 0.5 || el.getBoundingClientRect().right > innerWidth + 0.5)).map((el) => el.className);
            return { top: lab.top >= 0, bottom: lab.bottom <= innerHeight + 0.5, share: field.height / innerHeight, over, scrolled: scrollY };
          });
          assert.ok(seen.top && seen.bottom && seen.scrolled === 0, `${where}: the workspace does not fit ${viewport.width} x ${viewport.height}`);
          assert.deepEqual(seen.over, [], where);
          assert.ok(seen.share >= 0.395, `${where}: the trace takes ${seen.share} of the window at ${viewport.width} x ${viewport.height}`);
        };
        await student.openScenario(page, url, "rest-pulse", 3);
        await look("at the start");
        await pressButton(page, "On my own");
        await look("at the bench");
        await student.worldRuns(page, 6);
        await student.take(page, 20);
        await look("with a recording");
        await student.putCursors(page, 2, 17.5);
        await student.fillBlanks(page, { count: 15, seconds: 15.5, multiplier: 4, rate: 60 });
        await student.checkAll(page);
        await look("with a result");
      });
    }
  });

  test("the stylus stands at the end of the live trace and is taken off under hold and over a take", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "hum-on-the-trace", 3);
      const tip = page.locator(".stylus-tip");
      await tip.waitFor();
      // Its place in the field's width, and the time that is written below, of one frame.
      const at = () => page.evaluate(() => {
        const [tip, field] = [".stylus-tip", ".field"].map((one) => document.querySelector(one).getBoundingClientRect());
        return { place: (tip.x - field.x) / field.width, time: Number(document.querySelector(".pen-at").textContent.match(/[\d.]+/)[0]) };
      });
      let before, after;
      do { // at the right edge it begins anew at the left
        before = await at();
        await student.worldRuns(page, 0.7, 1);
        after = await at();
      } while (after.place < before.place && after.time < 60);
      const [moved, due] = [after.place - before.place, (after.time - before.time) / 10];
      assert.ok(moved > 0.5 * due && moved < 1.5 * due, `the tip moved by ${moved} of the screen in ${10 * due} of 10 s`);
      await pressButton(page, "Pause");
      await tip.waitFor({ state: "hidden" });
      await pressButton(page, "Live");
      await tip.waitFor();
      await student.take(page, 2);
      await tip.waitFor({ state: "hidden" });
    });
  });

  test("a check pressed straight after a blank that cannot be read is not lost to the complaint under it", async () => {
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      await student.openHalf(page, url, "given-window", 11);
      await student.fillBlanks(page, { count: 12, seconds: 10, multiplier: 6 });
      const check = page.getByRole("button", { name: "Check my reading" });
      await check.scrollIntoViewIfNeeded();
      await page.locator('.blank[data-field="rate"]').click();
      await page.keyboard.type("about seventy");
      const { x, y, width, height } = await check.boundingBox();
      await page.mouse.move(x + width / 2, y + height - 3);
      await page.mouse.down();
      await student.frames(page, 15); // a slow finger
      await page.mouse.up();
      await page.locator(".debrief .step").first().waitFor();
      await page.locator(".line-rate .problem").filter({ hasText: "is not a number" }).waitFor();
    });
  });

  test("Enter in a blank goes on to the next that is empty, then to the way to keep a first window, and spends no check on half a reading", async () => {
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      const at = () => page.evaluate(() => document.activeElement.dataset.field ?? document.activeElement.textContent.trim());
      await student.openHalf(page, url, "rest-pulse", 11);
      await page.locator('.blank[data-field="count"]').click();
      const went = [];
      for (const text of ["12", "10", "6", "72"]) {
        await page.keyboard.type(text);
        await page.keyboard.press("Enter");
        went.push(await at());
        if (went.length < 4) assert.equal(await page.locator(".debrief").isVisible(), false, `a check was spent at ${went}`);
      }
      await page.locator(".debrief .step").first().waitFor(); // the uncertainty may be left out
      assert.deepEqual(went.slice(0, 3), ["seconds", "multiplier", "rate"]);
      assert.match(await page.locator(".page-do .btn").first().innerText(), /2 of 2/);

      await student.openHalf(page, url, "two-windows", 11);
      await student.putCursors(page, 2, 12);
      await page.locator('.blank[data-field="count_1"]').click();
      for (const text of ["12", "10", "72"]) {
        await page.keyboard.type(text);
        await page.keyboard.press("Enter");
      }
      assert.match(await at(), /^Keep this as counting window 1/);
      await page.keyboard.press("Enter");
      await page.getByRole("button", { name: "Delete counting window 1" }).waitFor();
      assert.equal(await page.locator(".debrief").isVisible(), false);
    });
  });

  test("a page to read that is left before it has come does not lie over the bench", async () => {
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      await student.openScenario(page, url, "rest-pulse", 3);
      const bench = await page.evaluate(() => location.hash);
      const words = "**/texts/en.teach.json";
      let letCome;
      const gate = new Promise((open) => (letCome = open));
      await page.route(words, async (route) => {
        await gate;
        await route.continue();
      });
      await Promise.all([page.waitForRequest(words), page.evaluate(() => (location.hash = "#teach"))]);
      await page.evaluate((hash) => (location.hash = hash), bench);
      await student.frames(page, 2);
      const [answer] = await Promise.all([page.waitForResponse(words), letCome()]);
      await answer.finished();
      await student.frames(page, 20);
      await page.locator("#lab").waitFor();
      await page.locator("#read").waitFor({ state: "hidden" });
      await student.worldRuns(page, 0.6); // the bench does not stand still
    });
  });

  test("a filter has an order, once it is on", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "hum-on-the-trace", 3);
      const order = page.locator("#lab").getByLabel("Low-pass order", { exact: true });
      assert.ok(await order.isDisabled());
      await choose(page, "Low-pass", "30 Hz");
      await choose(page, "Low-pass order", "1st order");
      assert.match(await page.locator('.stage[data-stage="filters"]').innerText(), /low-pass 30 Hz, 1st order/);
      await choose(page, "Low-pass order", "2nd order");
      assert.match(await page.locator('.stage[data-stage="filters"]').innerText(), /low-pass 30 Hz, 2nd order/);
      await choose(page, "Low-pass", "off");
      assert.ok(await order.isDisabled());
    });
  });

  test("a tap beside a cursor's flag marks a beat, a tap on the flag does not", async () => {
    await withPage(wide, async ({ page, url }) => {
      await shortRecording(page, url, 3);
      await page.getByLabel("A (s)", { exact: true }).fill("1.2");
      await page.getByLabel("A (s)", { exact: true }).press("Tab");
      const flag = await page.locator(".cursor-a .cursor-flag").boundingBox();
      const field = await page.locator(".field").boundingBox();
      await page.mouse.click(flag.x + 2, field.y + field.height / 2);
      assert.equal(await page.locator(".beat-ticks path").count(), 1);
      await page.mouse.click(flag.x + flag.width / 2, flag.y + flag.height / 2);
      assert.equal(await page.locator(".beat-ticks path").count(), 1);
      assert.equal(await page.locator(".cursor-a").getAttribute("aria-valuenow"), "1.200");
    });
  });

  test("the socket that the charger is in says so, and refuses a plug", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "hum-on-the-trace", 3);
      await choose(page, "Power cord, outlet end", "power strip, outlet 4 (the charger is in it)");
      assert.match(await page.locator(".bench-note").innerText(), /Something is already in that socket/);
      assert.equal(await (await student.control(page, "Power cord, outlet end")).inputValue(), "outlet2");
      await (await student.control(page, "Charger")).uncheck();
      await choose(page, "Power cord, outlet end", "power strip, outlet 4");
      assert.equal(await (await student.control(page, "Power cord, outlet end")).inputValue(), "outlet4");
    });
  });
});
