// Nothing that is written on the workspace lies over something else or is cut: the worksheet's names and blanks, what is told under the trace
// and over the bench's foot, for each kind of question, on a laptop and on a phone, in both languages. And what a phone shows at once.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { withPage } from "./lib.mjs";
import { openFile, openScenario, settled, side, syntheticRecording } from "./student.mjs";

/** A scenario of each kind of question. */
const KINDS = {
  own_window: "rest-pulse", given_window: "given-window", intervals: "between-the-same-features", irregular: "a-longer-window", after_exercise: "soon-after-exercise",
  clean_part: "the-clean-stretch", read_range: "read-the-range", name_fault: "what-is-it", compare: "two-windows",
};
const LAPTOP = { viewport: { width: 1280, height: 720 } };
const SMALL_LAPTOP = { viewport: { width: 1024, height: 600 } };
const PHONE = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true };
const LOCALES = ["en-US", "es-MX"];

/**
 * What is cut, and what lies over what, in a part of the page. A text's boxes are those of its own lines, half a pixel narrower; another
 * control's box is a control's that does not hold the text, and that the text's own control does not hold.
 */
const troubles = (page, places) => page.evaluate((places) => {
  const CONTROLS = "button, input, select, summary, .cursor-flag";
  const seen = (el) => el.checkVisibility({ visibilityProperty: true, opacityProperty: true }) && !el.closest(".vh, [aria-hidden='true'] .layers");
  const tiny = (box) => box.width < 3 || box.height < 3;
  const found = [];
  const texts = [], controls = [];
  for (const place of document.querySelectorAll(places)) {
    if (!seen(place)) continue;
    for (const el of place.querySelectorAll(CONTROLS)) if (seen(el) && !tiny(el.getBoundingClientRect())) controls.push(el);
    const walk = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const el = node.parentElement;
      if (!node.textContent.trim() || !seen(el) || el.closest("option, svg")) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      const boxes = [...range.getClientRects()].filter((box) => !tiny(box));
      const own = el.getBoundingClientRect();
      if (boxes.length === 0 || tiny(own) || getComputedStyle(el).clipPath !== "none") continue;
      texts.push({ el, text: node.textContent.trim().slice(0, 40), boxes });
      // Cut: by its own element, or by one about it that does not scroll.
      for (let one = el; one && one !== place.parentElement; one = one.parentElement) {
        const style = getComputedStyle(one), box = one.getBoundingClientRect();
        const hides = (flow) => ["hidden", "clip"].includes(flow);
        if (hides(style.overflowX) && boxes.some((line) => line.left < box.left - 1 || line.right > box.right + 1)) found.push(`"${node.textContent.trim().slice(0, 40)}" is cut at the side`);
        if (hides(style.overflowY) && boxes.some((line) => line.top < box.top - 2 || line.bottom > box.bottom + 2)) found.push(`"${node.textContent.trim().slice(0, 40)}" is cut below`);
        if (style.textOverflow === "ellipsis" && one.scrollWidth > one.clientWidth) found.push(`"${one.textContent.trim().slice(0, 40)}" ends in dots`);
      }
    }
  }
  for (const el of document.querySelectorAll(".bench-told")) if (seen(el) && (el.scrollHeight > el.clientHeight + 1 || el.scrollWidth > el.clientWidth)) found.push(`what the bench says is cut: ${el.scrollHeight} px in ${el.clientHeight}`);
  for (const el of document.querySelectorAll(":is(.page, .blanks, .line, .line-name, .margin-foot, .foot-says, .strip-note)")) if (seen(el) && el.scrollWidth > el.clientWidth) found.push(`${el.className}: ${el.scrollWidth} px in ${el.clientWidth}`);
  const over = (a, b) => a.left + 0.5 < b.right && b.left + 0.5 < a.right && a.top + 1 < b.bottom && b.top + 1 < a.bottom;
  texts.forEach(({ el, text, boxes }, i) => {
    for (const other of controls) {
      if (other.contains(el) || el.contains(other) || other.closest("label")?.contains(el)) continue;
      if (boxes.some((box) => over(box, other.getBoundingClientRect()))) found.push(`"${text}" lies over ${other.tagName.toLowerCase()} "${(other.textContent || other.dataset.field || other.getAttribute("aria-label") || "").trim().slice(0, 30)}"`);
    }
    for (const other of texts.slice(i + 1)) if (!other.el.contains(el) && !el.contains(other.el) && boxes.some((box) => other.boxes.some((b) => over(box, b)))) found.push(`"${text}" and "${other.text}" lie over each other`);
  });
  return { texts: texts.length, controls: controls.length, found: [...new Set(found)] };
}, places);

const PLACES = "#worksheet, #strip, #says";

describe("what is written on the workspace", { concurrency: 1 }, () => {
  for (const locale of LOCALES) {
    for (const size of [LAPTOP, ...(locale === "es-MX" ? [SMALL_LAPTOP] : []), PHONE]) { // the longer words on the smaller laptop
      test(`stands free and whole for each kind of question, ${locale}, ${size.viewport.width} px`, { timeout: 600_000 }, async () => {
        await withPage({ ...size, locale }, async ({ page, url }) => {
          const wrong = [];
          for (const [kind, id] of Object.entries(KINDS)) {
            await page.goto("about:blank");
            await openScenario(page, url, id, 11);
            const look = async (where) => {
              await settled(page);
              const { texts, found } = await troubles(page, PLACES);
              assert.ok(texts > 12, `${kind}, ${where}: ${texts} texts are seen`);
              wrong.push(...found.map((one) => `${kind}, ${where}: ${one}`));
            };
            const half = page.locator(".offer-ways button").nth(1);
            if (await half.count()) await half.click();
            await side(page, "bench");
            await look("at the start");
            if (await page.locator(".strip.is-measuring").count()) {
              const { height, window } = await page.evaluate(() => ({ height: document.querySelector(".field").getBoundingClientRect().height, window: innerHeight }));
              const least = size === LAPTOP ? (kind === "compare" ? 220 : 0.33 * window) : 120;
              if (height < least) wrong.push(`${kind}: the trace is ${height} px high`);
            }
            await page.locator(".margin-ways .btn").first().click();
            await look("told in words");
          }
          assert.deepEqual(wrong, []);
        });
      });
    }
  }

  test("names that lie over each other or over a blank, and a line that is cut, are found", async () => {
    await withPage({ ...LAPTOP }, async ({ page, url }) => {
      await openScenario(page, url, "rest-pulse", 11);
      await settled(page);
      await page.evaluate(() => {
        const [first, second] = document.querySelectorAll(".line-name");
        for (const el of [first, second]) el.style.setProperty("white-space", "nowrap");
        first.firstElementChild.textContent = "a name that is much too long for the place that it has on this page";
        const foot = document.querySelector(".foot-says");
        foot.style.setProperty("overflow", "hidden");
        foot.style.setProperty("height", "4px");
      });
      const { found } = await troubles(page, PLACES);
      assert.ok(found.some((one) => /a name that is much too long.* and .* lie over each other/.test(one)), found.join("; "));
      assert.ok(found.some((one) => /is cut below/.test(one)), found.join("; "));
    });
  });

  test("what each control does is written in its panel, and the trace keeps its height: of a scenario, and of an opened recording", async () => {
    await withPage({ ...LAPTOP }, async ({ page, url }) => {
      const height = () => page.locator(".field").evaluate((el) => el.getBoundingClientRect().height);
      for (const opened of [false, true]) {
        await page.goto("about:blank");
        await openScenario(page, url, "rest-pulse", opened ? 12 : 11); // one that is kept would be asked about
        await page.locator(".offer-ways button").nth(2).click();
        if (opened) {
          await openFile(page, syntheticRecording());
          await page.locator(".strip.is-measuring").waitFor();
        }
        await settled(page);
        const before = await height();
        await page.locator('.stage[data-stage="amplifier"]').click();
        await page.locator(".stage-panel .explain-all:visible").click();
        assert.ok(await page.locator(".stage-panel .explain:visible").count() > 0, "nothing is written");
        await page.keyboard.press("Escape");
        await settled(page);
        assert.ok(Math.abs((await height()) - before) < 2, `${opened ? "recording" : "scenario"}: ${before} px before, ${await height()} after`);
        await page.locator('.stage[data-stage="amplifier"]').click();
        await page.locator(".stage-panel .explain-all:visible").click(); // it is kept for the next visit otherwise
      }
    });
  });

  test("the answer of a look is seen whole where the finger is: in the list, and in the card of a touched part", async () => {
    for (const locale of LOCALES) for (const size of [LAPTOP, PHONE]) {
      await withPage({ ...size, locale }, async ({ page, url }) => {
        await openScenario(page, url, "rest-pulse", 11);
        const alone = page.locator(".offer-ways button").nth(2);
        if (await alone.count()) await alone.click();
        await side(page, "list");
        const ways = page.locator(".list-try .btn");
        const before = await page.locator(".bench-note").innerText();
        for (const way of (await ways.all()).slice(-2)) {
          await way.scrollIntoViewIfNeeded();
          await way.click();
          await page.waitForFunction((before) => document.querySelector(".bench-note").textContent !== before, before);
          await settled(page);
          const told = await page.locator(".bench-told").evaluate((el) => {
            const box = el.getBoundingClientRect(), lines = el.querySelector(".bench-note").getBoundingClientRect();
            const over = document.elementFromPoint(box.x + box.width / 2, lines.bottom - 4);
            return { cut: el.scrollHeight > el.clientHeight + 1, inside: box.top >= 0 && box.bottom <= innerHeight + 0.5, free: el.contains(over) };
          });
          assert.deepEqual(told, { cut: false, inside: true, free: true }, `${locale}, ${size.viewport.width} px`);
        }
      });
    }
  });
});

describe("a phone", { concurrency: 1 }, () => {
  test("shows drawing and trace at once, with Record, range and time base, and the range is set while the sensor's card is open", async () => {
    for (const locale of LOCALES) {
      await withPage({ ...PHONE, locale }, async ({ page, url }) => {
        await openScenario(page, url, "rest-pulse", 11);
        await page.locator(".offer-ways button").nth(2).click();
        await settled(page);
        const seen = () => page.evaluate(() => {
          const box = (selector) => document.querySelector(selector).getBoundingClientRect();
          const floor = document.querySelector(".touch-card:not([hidden])")?.getBoundingClientRect().top ?? innerHeight;
          return { out: [".table", ".btn-record", ".btn-record-for", ".range-at", ".field", ".time-at"].filter((one) => box(one).top < -1 || box(one).bottom > innerHeight + 0.5), above: [".table", ".range-at select"].filter((one) => box(one).bottom > floor), field: floor - box(".field").top, page: document.documentElement.scrollHeight };
        });
        const first = await seen();
        assert.deepEqual(first.out, [], locale);
        assert.ok(first.page < 1650, `the page is ${first.page} px high`);
        // The card of the sensor: bench, range and the better part of the trace stay in sight over it.
        const [x, y] = await page.locator(".sensor.press").evaluate((el) => {
          const box = (el.querySelector(".hit") ?? el).getBoundingClientRect();
          return [box.x + box.width / 2, box.y + box.height / 2];
        });
        await page.touchscreen.tap(x, y);
        await page.locator(".touch-card").waitFor();
        await settled(page);
        const card = await seen();
        assert.deepEqual(card.above, [], locale);
        assert.ok(card.field > 100, `${card.field} px of the trace are seen above the card`);
        const range = page.locator(".range-at select");
        const was = await range.inputValue();
        await page.locator(".range-at .btn").first().tap();
        await page.waitForFunction((was) => document.querySelector(".range-at select").value !== was, was);
        assert.ok(await page.locator(".touch-card").isVisible(), "the card was closed by setting the range");
      });
    }
  });

  test("has the ways of the head in one menu, each by its name", async () => {
    await withPage({ ...PHONE }, async ({ page, url }) => {
      await openScenario(page, url, "rest-pulse", 11);
      const menu = page.getByRole("button", { name: "Menu", exact: true });
      assert.equal(await page.getByRole("button", { name: "Scenarios", exact: true }).count(), 0);
      await menu.tap();
      for (const name of ["Scenarios", "Faults and tests", "Open a file"]) {
        const way = page.locator(".tools-ways").getByRole("button", { name, exact: true });
        assert.ok((await way.locator(".word").boundingBox()).width > 40, `${name} is not written`);
      }
      await page.keyboard.press("Escape");
      assert.equal(await menu.getAttribute("aria-expanded"), "false");
      await menu.tap();
      await page.locator(".tools-ways").getByRole("button", { name: "Scenarios", exact: true }).tap();
      await page.locator("#start .card").first().waitFor();
    });
  });
});

describe("after a check", { concurrency: 1 }, () => {
  test("there is one next step, and a tick only where the bench or the check says right", async () => {
    await withPage({ ...LAPTOP }, async ({ page, url }) => {
      await openScenario(page, url, "rest-pulse", 11);
      await page.locator(".offer-ways button").nth(1).click();
      await page.locator(".strip.is-measuring").waitFor();
      for (const el of await page.locator(".blank").all()) await el.fill("3");
      const check = page.locator("#worksheet .btn-strong"), line = page.locator(".steps-next");
      const dot = "M10 7.200a2.800 2.800 0 1 1 0 5.600a2.800 2.800 0 0 1 0-5.600ZM10 9.600v.8";
      const signs = () => page.locator(".steps-one").evaluateAll((all) => all.map((el) => el.querySelector(".steps-sign path")?.getAttribute("d") ?? ""));
      await check.click();
      await line.filter({ hasText: "Fix what the result points to. Then check again." }).waitFor();
      assert.ok((await signs()).slice(4).every((sign) => sign === "" || sign === dot), "a wrong reading has a tick");
      assert.notEqual((await signs())[0], dot);
      await check.click();
      await page.locator("dialog[open] .btn-strong").click();
      await line.filter({ hasText: "This attempt is closed. Try again with a new seed." }).waitFor();
      // The first screen does not offer to go on with it.
      await page.getByRole("button", { name: "Scenarios", exact: true }).click();
      await page.locator(".way-kept h2", { hasText: "Last attempt (closed)" }).waitFor();
      const [kept, next] = [await page.locator(".way-kept").boundingBox(), await page.locator(".way").first().boundingBox()];
      assert.ok(next.y - (kept.y + kept.height) >= 15, "it stands on the rule below it");
    });
  });
});
