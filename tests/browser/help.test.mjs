// The helps: how a bench can be taken, the worked example that plays itself, the half-finished one, the hint ladder, and what
// fades with them.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const { checkAll, fillBlanks, openHalf, pressButton, putCursors, rightAnswers } = student;
const told = (page) => page.locator(".narrator-deed").innerText();

describe("helps", { concurrency: 2 }, () => {
  test("the worked example plays itself on the bench, to a passed check; then it is the student's turn", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "first-wiring", 5);
      await pressButton(page, "Watch it done first");
      await page.locator(".narrator-deed").waitFor();
      await student.setSpeed(page, 8);
      await page.locator(".narrator-deed").filter({ hasText: "plugged into" }).waitFor(); // it goes on by itself
      const early = await told(page);
      assert.match(await page.locator(".narrator-why").innerText(), /\w+ \w+ \w+/);
      await pressButton(page, "Pause the example");
      const still = await told(page);
      await student.setSpeed(page, 16);
      await student.frames(page, 60); // sixteen seconds of the example, longer than a step stands there
      assert.equal(await told(page), still, "it does not stand still when paused");
      const deeds = new Set([early]);
      const next = page.getByRole("button", { name: "Next step", exact: true });
      for (let k = 0; k < 80 && (await next.isVisible()); k += 1) {
        await next.click();
        deeds.add(await told(page));
        if ((await told(page)).startsWith("Written: N")) assert.equal(await page.locator('.blank[data-field="count"]').inputValue(), (await told(page)).match(/= (.*)\.$/)[1]);
      }
      assert.ok(deeds.size > 10, `${[...deeds]}`);
      assert.equal(await page.locator(".link.is-seen").count(), 1, "the wiring was not done on the bench itself");
      const debrief = await student.readDebrief(page);
      assert.equal(debrief.firstOpen, null, debrief.text);
      assert.match(debrief.text, /Your reading is correct/);
      // The example is nobody's trial.
      assert.equal(await page.evaluate(() => Object.keys(localStorage).filter((key) => /page:|history/.test(key)).length), 0);
      await pressButton(page, "Your turn");
      await page.locator(".bench-note").filter({ hasText: "Your turn" }).waitFor();
      assert.match(page.url(), /#s=first-wiring&seed=\d+/);
      assert.equal(await page.locator(".link.is-seen").count(), 0, "the student's own bench is wired already");
      await page.locator(".narrator").waitFor({ state: "hidden" });
    });
  });

  test("a worked example can be left at once, and refuses a hand in it", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#watch=rest-pulse`);
      // What is seen first says what this is, in whole sentences, and asks for nothing.
      await page.locator(".narrator-deed").filter({ hasText: "Watch how it is done here." }).waitFor();
      assert.equal(await page.locator(".steps-next").innerText(), "This is the example. Watch: you do not need to do anything.");
      assert.deepEqual(await page.$$eval(".narrator-deed, .steps-next", (all) => all.filter((el) => el.scrollWidth > el.clientWidth + 1 || el.scrollHeight > el.clientHeight + 1).map((el) => el.textContent)), [], "a sentence is cut off");
      await page.locator(".narrator-deed").waitFor();
      await pressButton(page, "Record");
      assert.match(await page.locator(".strip-note").innerText(), /does every step itself/);
      await pressButton(page, "Stop and do it yourself");
      await page.locator(".bench-note").filter({ hasText: "Your turn" }).waitFor();
    });
  });

  test("after a result the next heart can be connected as the last one was, by one press; nobody who comes new is offered that", async () => {
    await withPage(wide, async ({ page, url }) => {
      const again = page.getByRole("button", { name: "Connect it as last time", exact: true });
      await openHalf(page, url, "first-wiring", 5);
      assert.equal(await again.count(), 0, "it was never connected before");
      await fillBlanks(page, { count: 3, seconds: 2, multiplier: 1, rate: 4 });
      await checkAll(page);
      await pressButton(page, "Try again with a new seed");
      await page.locator('.where .seed', { hasNotText: /\b5$/ }).waitFor();
      assert.equal(await page.locator(".link.is-seen").count(), 0);
      await again.click();
      await page.locator(".link.is-seen").waitFor();
      await again.waitFor({ state: "hidden" });
      assert.deepEqual(await page.locator(".plug").evaluateAll((all) => all.filter((el) => !el.classList.contains("is-in")).map((el) => el.dataset.end)), []);
      // Undone by hand, it is offered again; after a result it is not.
      await pressButton(page, "Undo");
      await again.waitFor();
    });
  });

  test("half finished: a take lies open, the measuring is the student's; running count and snap are offered, and not to who is alone", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openHalf(page, url, "given-window", 11);
      assert.equal(await page.locator(".cursor.is-parked").count(), 2, "the cursors are set already");
      const count = page.locator(".reading", { hasText: "Marks" });
      await count.waitFor();
      const snap = page.getByLabel("Marks and dragged cursors go to the nearest peak");
      assert.ok(!(await snap.isChecked()), "snap is on before anyone asked");
      const peaks = student.peaksOf(await student.savedRecording(page));
      await putCursors(page, peaks[1] - 0.3, peaks[4] + 0.3);
      await snap.check();
      await page.locator('[aria-label="Cursor A"]').focus();
      await student.choose(page, "Time base, per screen", "20 s");
      await student.clickMarks(page, [peaks[2] + 0.12]);
      const marked = Number((await page.locator(".mark-list").first().textContent()).match(/[\d.]+/)[0]);
      assert.ok(Math.abs(marked - peaks[2]) < 0.05, `marked at ${marked}, the peak is at ${peaks[2]}`);
      assert.equal(await student.reading(page, "Marks"), "1");

      await page.goto(`${url}?alone#s=loose-and-restless&seed=12`); // meant to be done alone
      await page.locator(".plug").first().waitFor({ state: "attached" });
      await pressButton(page, "On my own");
      await student.take(page, 2);
      await count.waitFor({ state: "hidden" });
      await snap.waitFor({ state: "hidden" });
    });
  });

  test("looking closer shows the stretch between the cursors, and all of it again", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openHalf(page, url, "given-window", 11);
      await putCursors(page, 3, 4.2);
      const span = async () => {
        const [from, to] = (await page.locator(".pen-at").innerText()).match(/[\d.]+/g).map(Number);
        return [from, to];
      };
      const before = await span();
      await pressButton(page, "Zoom in");
      const [from, to] = await span();
      assert.ok(from > 2.8 && from < 3 && to > 4.2 && to < 4.4, `${from} to ${to}`);
      assert.equal(await student.reading(page, "A to B"), "1.20 s");
      await pressButton(page, "Zoom out");
      const after = await span();
      assert.ok(Math.abs(after[1] - after[0] - (before[1] - before[0])) < 0.02, `${after} after ${before}`);
    });
  });

  test("the hint ladder: one rung a press, no number of one's own before the second check, the answer after it", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openHalf(page, url, "given-window", 11);
      const asked = Number((await page.locator(".task-line").innerText()).match(/window of ([\d.]+) s/)[1]);
      const peaks = student.peaksOf(await student.savedRecording(page));
      const [a] = student.windowOf(peaks, asked, 29.5);
      await putCursors(page, a, a + asked);
      const right = rightAnswers(peaks, a, a + asked);
      await fillBlanks(page, { ...right, count: right.count + 2, rate: Math.round((60 * (right.count + 2)) / asked) });
      const first = await checkAll(page);
      assert.equal(first.firstOpen, "The count, N", first.text);
      const hint = page.locator(".hint-text");
      const here = page.locator(".rung.is-here");
      const told = [];
      await pressButton(page, "A hint");
      for (const rung of ["look", "locate", "rule", "worked step"]) {
        await here.filter({ hasText: rung }).waitFor();
        told.push(await hint.innerText());
        if (rung === "locate") assert.equal(await page.locator(".spot-hint, .cursor.is-pointed, .line.is-pointed").count() > 0, true, "nothing is pointed at");
        if (rung !== "worked step") await pressButton(page, "Another hint");
      }
      assert.equal(new Set(told).size, 4);
      for (const text of told.slice(0, 3)) assert.doesNotMatch(text, new RegExp(`\\b${right.count}\\b`), text);
      assert.ok(await page.getByRole("button", { name: "Another hint" }).isDisabled(), "the answer can be had before the second try");
      await page.getByText("You see the answer only after a second check").waitFor();
      await checkAll(page);
      await pressButton(page, "A hint");
      for (let k = 0; k < 4 && (await page.getByRole("button", { name: "Another hint", exact: true }).isEnabled()); k += 1) await pressButton(page, "Another hint");
      await here.filter({ hasText: "answer" }).waitFor();
      assert.match(await hint.innerText(), new RegExp(`\\b${right.count}\\b`));
    });
  });

  test("the course: the first wrong step is marked, chosen by keys, told as a list, and the rubric turns to it", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openHalf(page, url, "given-window", 11);
      await putCursors(page, 2, 12);
      await fillBlanks(page, { count: 13, seconds: 10, multiplier: 10, rate: 130 });
      await checkAll(page);
      const ticks = page.getByRole("option").filter({ has: page.locator(":scope.trail-tick") });
      assert.ok((await ticks.count()) > 5);
      assert.equal(await page.locator(".trail-tick.is-wrong").count(), 1);
      assert.match(await page.locator(".trail-told").innerText(), /first went wrong/);
      await page.locator('.trail-tick[tabindex="0"]').focus();
      const wrong = await page.locator(".trail-told").innerText();
      await page.keyboard.press("ArrowLeft");
      assert.notEqual(await page.locator(".trail-told").innerText(), wrong);
      await page.keyboard.press("Home");
      assert.match(await page.locator(".trail-told").innerText(), /half done/);
      assert.equal(await page.locator('.trail-tick[aria-selected="true"]').count(), 1);
      await pressButton(page, "To the first wrong step");
      assert.equal(await page.locator(".trail-told").innerText(), wrong);
      await page.locator(".trail").getByText("As a list").click();
      assert.equal(await page.locator(".trail-list li").count(), await page.locator(".trail-tick").count());
      for (const row of await page.locator(".rubric-row summary").all()) await row.click();
      const see = page.getByRole("button", { name: "Show it" });
      if (await see.count()) {
        await see.first().click();
        assert.ok(await page.evaluate(() => document.activeElement.classList.contains("trail-tick")));
      } else assert.match(await page.locator(".rubric").innerText(), /see: /);
    });
  });
});
