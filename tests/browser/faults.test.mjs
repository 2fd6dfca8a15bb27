// Faults that must be found by testing: what can be asked and tried, naming what is wrong, the debrief that follows, and the
// card index of faults.
import { describe, test } from "node:test";
import { readFileSync } from "node:fs";
import path from "node:path";
import assert from "node:assert/strict";
import { root, strings, withPage, words } from "./lib.mjs";
import * as student from "./student.mjs";

const { choose, press, pressButton } = student;
const size = (width) => ({ width, height: width < 1000 ? 780 : 900 });
const wide = { viewport: size(1280) };
const texts = await words();
const catalogue = await words("faults");
const nameOf = (fault) => catalogue[`entry-${fault}`];
const note = (page) => page.locator(".bench-note");
const CHARGER = nameOf("charger_near"), CABLE = nameOf("cable_on_power_strip");

/** The first shipped scenario in which faults are to be named: {id, fault}, the fault read from its file. */
async function firstWithNames(page, url) {
  await page.goto(url);
  await page.locator("#start .card").first().waitFor();
  const found = await page.evaluate(async () => {
    const { scenarioBrief } = await import(new URL("wasm/dicrotic.js", location.href).href);
    for (const { file } of await (await fetch("scenarios/index.json")).json()) {
      const toml = await (await fetch(`scenarios/${file}`)).text();
      const brief = JSON.parse(scenarioBrief(toml));
      if (brief.name_faults) return { id: brief.id, toml };
    }
    return null;
  });
  assert.ok(found, "no shipped scenario asks for the names of faults (name_faults = true)");
  const fault = found.toml.match(/\[\[fault\]\]\s+name = "(\w+)"/)?.[1];
  assert.ok(fault, `${found.id} asks for names but holds no fault`);
  return { id: found.id, fault };
}

/** The impression of a fault, as the core's catalogue has it. */
const impressionOf = (page, fault) => page.evaluate(async (id) => {
  const { faultCatalogue } = await import(new URL("wasm/dicrotic.js", location.href).href);
  return JSON.parse(faultCatalogue()).find((one) => one.id === id).impression;
}, fault);

/** Peaks with one put into each gap of two beats: a beat beside a taller one can be too low for the reader with the ruler. */
function withoutGaps(peaks) {
  const gaps = peaks.slice(1).map((time, i) => time - peaks[i]);
  const usual = [...gaps].sort((x, y) => x - y)[Math.floor(gaps.length / 2)];
  return peaks.flatMap((time, i) => (gaps[i] > 1.6 * usual ? [time, time + gaps[i] / 2] : [time]));
}

/** Opens an impression and presses a fault's name. */
async function name(page, impression, fault) {
  await student.side(page, "name");
  const group = page.locator(`.impression[data-impression="${impression}"]`);
  await group.waitFor();
  if ((await group.getAttribute("open")) === null) await group.locator("summary").click();
  await group.getByRole("button", { name: fault, exact: true }).click();
}

const named = (page) => page.locator(".named li > span").allInnerTexts();

/** Presses Tab until the element has the focus; fails if it cannot be reached. */
async function tabTo(page, locator) {
  const what = await locator.elementHandle();
  for (let k = 0; k < 250; k += 1) {
    if (await page.evaluate((el) => document.activeElement === el, what)) return;
    await page.keyboard.press("Tab");
  }
  assert.fail(`the Tab key does not reach ${locator}`);
}

describe("faults", { concurrency: 3 }, () => {
  test("tested, named, taken back, named again, put right, recorded, read; no name before the truth", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "thick-trace-a", 91);
      await student.worldRuns(page, 5.5);
      assert.ok((await student.fuzz(page)) >= 1, "there is no fuzz to look into");

      await pressButton(page, "Press the finger");
      assert.match(await note(page).innerText(), /You press the sensor on the finger/);
      await pressButton(page, "Ask how the finger feels");
      assert.match(await note(page).innerText(), /“It feels warm.”/);
      assert.match(await page.locator(".speech").textContent(), /“It feels warm.”/);
      await pressButton(page, "Sensor on the finger");
      assert.match(await note(page).innerText(), /The sensor is at the fingertip, sensing side to the skin/);

      await name(page, "fuzzy", CABLE);
      assert.deepEqual(await named(page), [CABLE]);
      await pressButton(page, `Remove: ${CABLE}`);
      assert.deepEqual(await named(page), []);
      await name(page, "fuzzy", CHARGER);
      assert.deepEqual(await named(page), [CHARGER]);
      await page.locator(".debrief").waitFor({ state: "hidden" });

      await choose(page, "Time base, per screen", "500 ms");
      await student.worldRuns(page, 2.5);
      await choose(page, "Time base, per screen", "10 s");
      await student.unplugCharger(page);
      await student.worldRuns(page, 6.5);
      assert.equal(await student.fuzz(page), 0);

      await student.record(page, 20);
      const peaks = withoutGaps(student.peaksOf(await student.savedRecording(page)));
      const [a, b, count] = student.windowBetween(peaks, 15);
      await student.dragCursor(page, "a", a);
      await student.dragCursor(page, "b", b);
      const seconds = Number((await student.reading(page, "A to B")).replace(/ s$/, ""));
      const sheet = (n) => ({ count: n, seconds, multiplier: (60 / seconds).toFixed(3), rate: ((n * 60) / seconds).toFixed(1) });

      await student.fillSheet(page, sheet(count + 1));
      const first = await student.check(page);
      assert.equal(first.verdictOf("The fault you named"), "correct", first.text);
      assert.equal(first.firstOpen, "The count, N", first.text);
      student.assertNoTruth(first, count);
      assert.match(first.text, /N is about one off/);
      assert.doesNotMatch(first.text, /too many|too few/, "the misreading gives the count away");
      assert.match(first.text, /How you worked/);
      assert.match(first.text, /A test showed the cause/);
      for (const { name: word } of Object.values(catalogue)) if (word) assert.ok(!first.text.includes(word), `"${word}" is told before the truth`);

      await student.fillSheet(page, sheet(count));
      const second = await student.check(page);
      assert.equal(second.firstOpen, null, second.text);
      assert.equal(Number(second.truth[0]), count);
      await page.locator(".there-fault").waitFor();
      assert.match(await page.locator(".there").innerText(), new RegExp(`${CHARGER}.*you named it`, "s"));
      for (const part of ["cause", "seen", "test", "remedy"]) assert.ok((await page.locator(".there").innerText()).includes(catalogue[`entry-charger_near.${part}`]), part);
      assert.match(await page.locator(".process li").first().innerText(), new RegExp(`${CHARGER}: a test showed that this was the cause`));
      assert.ok(await page.locator(".named button").count() === 0, "a name can be taken back after the end");
    });
  });

  test("named wrongly and filtered: the first debrief asks, the closed one tells what was there and what was not", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "thick-trace-a", 92);
      await name(page, "fuzzy", CABLE);
      await choose(page, "Low-pass", "10 Hz");
      await student.record(page, 2);
      const first = await student.check(page);
      assert.equal(first.firstOpen, "The fault you named", first.text);
      assert.match(first.steps[0].text, /the trace would look different/);
      assert.match(first.text, /A cause is still there/);
      assert.match(first.text, /A filter is on while a cause is still there/);
      assert.ok(!first.text.includes(CHARGER) && !first.text.includes(CABLE), first.text);
      await pressButton(page, "Show the true heart rate");
      await student.sayYes(page);
      await page.locator(".there-fault").waitFor();
      const told = await page.locator(".debrief").innerText();
      assert.match(told, new RegExp(`You also named these, but they are not here: ${CABLE}`));
      assert.match(told, new RegExp(`${CHARGER}: the cause is still there`));
    });
  });

  test("a look at each place tells what is there, whatever it is; cloth, lamp and other hand are drawn", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "hum-on-the-trace", 5);
      const look = async () => {
        const told = [];
        for (const place of ["Recorder", "Computer", "Power strip", "Sensor cable", "Sensor on the finger", "Subject", "Phone, desk lamp, charger"]) {
          await pressButton(page, place);
          told.push(await note(page).innerText());
        }
        return told.join("\n");
      };
      const before = await look();
      for (const part of [/indicator light is on: recorder/i, /indicator light is on: power strip/i, /indicator light is on: charger/i, /computer end: in its socket/i, /The phone is about \d+ cm from the sensor cable/, /The desk lamp is off/, /The other hand is in the lap/]) assert.match(before, part);
      assert.doesNotMatch(before, /hum|fault|wrong|because/i);
      await page.locator(".other-hand").waitFor({ state: "hidden" });
      await page.locator(".cloth").waitFor({ state: "hidden" });

      await press(page, '[data-drag="part:lamp"]');
      await page.locator(".touch-card").getByLabel("On", { exact: true }).check();
      await page.locator(".lamp-pool").waitFor();
      await page.locator(".touch-card").getByRole("button", { name: "Close", exact: true }).click();
      assert.ok(await (await student.control(page, "Desk lamp")).isChecked());
      await (await student.control(page, "Cloth over the finger")).check();
      await student.side(page, "bench");
      await page.locator(".cloth").waitFor();
      await pressButton(page, "on the laptop");
      await student.side(page, "bench");
      assert.match(await note(page).innerText(), /The other hand is on the laptop/);
      await page.locator(".other-hand").waitFor();
      await (await student.control(page, "Power strip")).uncheck();
      await choose(page, "Data cable, computer end", "loose on the table");
      await (await student.control(page, "Sensor strapped on")).uncheck();
      const after = await look();
      for (const part of [/indicator light is off: recorder/i, /indicator light is off: power strip/i, /computer end: loose on the table/i, /The desk lamp is on/, /A cloth covers the finger/, /The other hand is on the laptop/, /The sensor is beside the hand/]) assert.match(after, part);
      await pressButton(page, "in the lap");
      await page.locator(".other-hand").waitFor({ state: "hidden" });
    });
  });

  test("each request is answered, and each answer is told again when asked again", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "loose-and-restless", 5);
      const answers = [["Ask to keep still", /“All right, I’ll keep still.”/], ["Ask to keep still", /“I am keeping still.”/], ["Ask to keep still", /“I am keeping still.”/], ["Ask to be quiet", /I’ll be quiet and breathe quietly/],
        ["Warm the hand", /warm towel/], ["Take another sensor cable", /another sensor cable/], ["Put the arm on a cushion", /on a cushion/], ["Tell the instructor", /Thank you for telling me/], ["Tap the sensor", /tap the sensor/], ["Wiggle: Sensor cable, plug", /wiggle the plug/]];
      for (const [button, answer] of answers) {
        await pressButton(page, "Let the computer look again");
        await pressButton(page, button);
        assert.match(await note(page).innerText(), answer, button);
      }
      await (await student.control(page, "Strap, looser to tighter")).fill("100");
      await page.locator(".feel").filter({ hasText: "throbs" }).waitFor();
      await pressButton(page, "Ask how the finger feels");
      assert.match(await note(page).innerText(), /It hurts a little, and it throbs/);
    });
  });

  test("five minutes pass at one press: a cold finger under a warm towel gets warm, and the clock has gone on", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "small-pulse-b", 7);
      const feels = async () => {
        await pressButton(page, "Ask how the finger feels");
        return note(page).innerText();
      };
      assert.match(await feels(), /My finger is cold/);
      await pressButton(page, "Warm the hand");
      const before = await student.pen(page);
      await pressButton(page, "1 min");
      assert.match(await note(page).innerText(), /You wait 1 min\. The clock/);
      for (let k = 0; k < 3; k += 1) await pressButton(page, "5 min");
      assert.match(await note(page).innerText(), /You wait 5 min/);
      assert.ok(await student.pen(page) >= before + 960, `${before} s before, ${await student.pen(page)} s after 16 minutes`);
      assert.match(await feels(), /It feels warm/);
      await pressButton(page, "Record");
      await pressButton(page, "1 min");
      assert.match(await note(page).innerText(), /You cannot change that while you record/);
    });
  });

  test("the trace can be switched off and on, and values scaled", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openScenario(page, url, "hum-on-the-trace", 5);
      await student.worldRuns(page, 2.5);
      const inked = () => page.locator("canvas.layer").nth(1).evaluate((canvas) => {
        const blank = Object.assign(document.createElement("canvas"), { width: canvas.width, height: canvas.height });
        return canvas.toDataURL() !== blank.toDataURL();
      });
      assert.ok(await inked(), "nothing is drawn at first");
      await (await student.control(page, "Show the trace")).uncheck();
      await student.worldRuns(page, 0.6);
      assert.equal(await inked(), false);
      await page.locator(".stylus").waitFor({ state: "hidden" });
      assert.match(await page.locator('.stage[data-stage="screen"]').innerText(), /trace not shown/);
      await (await student.control(page, "Show the trace")).check();
      await student.worldRuns(page, 0.6);
      assert.ok(await inked(), "the trace does not come back");
      await choose(page, "Value scale", "×1,000");
      assert.match(await page.locator('.stage[data-stage="amplifier"]').innerText(), /×1,000/);
    });
  });

  test("naming by keys alone, on the first scenario that asks for it; four names are the most", async () => {
    await withPage(wide, async ({ page, url }) => {
      const { id, fault } = await firstWithNames(page, url);
      const impression = await impressionOf(page, fault);
      const word = nameOf(fault);
      await page.goto(`${url}?keys#s=${id}&seed=7`);
      await tabTo(page, page.locator('.views .seg[data-view="name"]'));
      await page.keyboard.press("Enter");
      const group = page.locator(`.impression[data-impression="${impression}"]`);
      await group.waitFor();
      const summary = group.locator("summary");
      await tabTo(page, summary);
      await page.keyboard.press("Enter");
      assert.notEqual(await group.getAttribute("open"), null);
      const button = group.getByRole("button", { name: word, exact: true });
      await tabTo(page, button);
      await page.keyboard.press("Enter");
      assert.deepEqual(await named(page), [word]);
      assert.equal(await button.getAttribute("aria-pressed"), "true");
      await page.waitForFunction((text) => document.getElementById("say").textContent === text, `Named: ${word}.`);

      await page.keyboard.press("Shift+Tab");
      const back = page.getByRole("button", { name: `Remove: ${word}`, exact: true });
      for (let k = 0; k < 30 && !(await back.evaluate((el) => document.activeElement === el)); k += 1) await page.keyboard.press("Shift+Tab");
      await page.keyboard.press("Space");
      assert.deepEqual(await named(page), []);
      assert.equal(await button.getAttribute("aria-pressed"), "false");
      assert.ok(await page.evaluate(() => document.activeElement.closest(".naming") !== null), "the focus is lost when a name is taken back");
      await tabTo(page, button);
      await page.keyboard.press("Space");
      assert.deepEqual(await named(page), [word]);

      const others = await page.locator(`.impression:not([data-impression="${impression}"])`).evaluateAll((all) => all.slice(0, 4).map((el) => [el.dataset.impression, el.querySelector("button").textContent]));
      for (const [kind, other] of others) await name(page, kind, other);
      assert.equal((await named(page)).length, 4);
      assert.match(await page.locator(".naming-problem").innerText(), /at most 4 faults/);

      // What was named is kept with the attempt.
      await student.kept(page);
      await page.reload();
      await pressButton(page, "Continue it");
      await student.side(page, "name");
      await page.locator(".named li").first().waitFor();
      assert.equal((await named(page))[0], word);
    });
  });

  test("the card index: all faults, look-alikes linked, the bench waits meanwhile; its words come once and only when needed", async () => {
    await withPage(wide, async ({ page, url }) => {
      let fetched = 0;
      page.on("request", (request) => (fetched += request.url().endsWith("en.faults.json") ? 1 : 0));
      await student.openScenario(page, url, "hum-on-the-trace", 5);
      await student.worldRuns(page, 1.5);
      await page.waitForLoadState("networkidle");
      assert.equal(fetched, 0, "the words of the faults are fetched where nobody needs them");
      await pressButton(page, "Faults and tests");
      await page.locator(".fault-card").first().waitFor();
      const ids = Object.keys(catalogue).filter((key) => /^entry-\w+$/.test(key));
      assert.equal(await page.locator(".fault-card").count(), ids.length);
      const standing = await page.locator(".pen-at").first().textContent();
      const charger = page.locator("#fault-charger_near");
      await charger.locator("summary h3").click();
      for (const part of ["", ".seen", ".test", ".remedy", ".cause"]) assert.ok((await charger.innerText()).includes(catalogue[`entry-charger_near${part}`]), part);
      await charger.getByRole("link", { name: CABLE }).click();
      await page.waitForFunction(() => document.activeElement?.closest("#fault-cable_on_power_strip"));
      await student.frames(page, 20);
      assert.equal(await page.locator(".pen-at").first().textContent(), standing, "the bench runs on behind the card index");
      await page.locator(".faults-lead").getByRole("button", { name: "Back to the scenario" }).click();
      await page.locator("#lab").waitFor();
      assert.match(page.url(), /#s=hum-on-the-trace&seed=5$/);
      await page.waitForFunction((then) => document.querySelector(".pen-at").textContent !== then, standing);
      await pressButton(page, "Faults and tests");
      await page.locator("#faults").waitFor();
      await page.goBack();
      await page.locator("#lab").waitFor();
      await page.locator("#faults").waitFor({ state: "hidden" });
      assert.equal(fetched, 1);

      await pressButton(page, "Scenarios");
      await page.getByRole("link", { name: "Open the list of faults" }).click();
      await page.locator("#faults").waitFor();
      await page.locator(".fault-card").first().waitFor();
      assert.equal(fetched, 1);
    });
  });

  test("words that do not come are told, at the naming too, and can be asked for again", async () => {
    await withPage({ ...wide, expected: [/: .*en\.faults\.json/, /Failed to load resource/] }, async ({ page, url }) => {
      await page.route("**/en.faults.json", (route) => route.fulfill({ status: 404, body: "gone" }));
      await student.openScenario(page, url, "thick-trace-a", 1);
      await student.side(page, "name");
      await page.locator(".naming .problem").filter({ hasText: "en.faults.json" }).waitFor();
      await page.unroute("**/en.faults.json");
      await page.locator(".naming").getByRole("button", { name: "Try again" }).click();
      await page.locator(".impression").first().waitFor();
    });
  });

  test("the scenarios stand by level, benches of a kind together, and are found by a word", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(url);
      await page.locator("#start .card").first().waitFor();
      const index = await (await page.request.get(`${url}scenarios/index.json`)).json();
      const links = await page.locator(".shelf .card a").evaluateAll((all) => all.map((el) => new URLSearchParams(el.hash.slice(1)).get("s")));
      assert.deepEqual(links.sort(), index.map((one) => one.id).sort(), "a scenario is missing from the list, or stands there twice");
      const levels = await page.locator(".start-list > .shelf > .level").allInnerTexts();
      assert.deepEqual(levels, [...new Set(index.filter((one) => one.path).map((one) => one.level))].sort((a, b) => a - b).map((v) => `Level ${v}`));
      // What stands open draws its faults; where a heading tells the fault the list is folded.
      const beside = await page.locator(".beside .card a").evaluateAll((all) => all.map((el) => new URLSearchParams(el.hash.slice(1)).get("s")));
      assert.deepEqual(beside.sort(), index.filter((one) => !one.path).map((one) => one.id).sort());
      assert.equal(await page.locator(".beside .card:visible").count(), 0);
      assert.ok(beside.includes("no-recorder-a") && !beside.some((id) => id.startsWith("find-the-fault")));
      await page.getByLabel("Find by a word").fill("thick");
      const left = await page.locator(".shelf .card:visible").allInnerTexts();
      assert.ok(left.length > 0 && left.every((text) => /thick/i.test(text)), left.join());
      await page.getByLabel("Find by a word").fill("no such thing");
      assert.equal(await page.locator(".shelf .card:visible").count(), 0);
      assert.match(await page.locator(".finder").innerText(), /No scenario has “no such thing”/);
    });
  });
});

test("every code of the core's judgement has its words", () => {
  const source = (file) => readFileSync(path.join(root, "src/assess", file), "utf8");
  const codes = (file, pattern) => [...new Set([...source(file).matchAll(pattern)].map((found) => found[1]))];
  const verdicts = ["verdict.rs", "asked.rs", "counting.rs", "arithmetic.rs"].flatMap((file) => codes(file, /"((?:name|trace|window|count|seconds|multiplier|rate|middle|range|amplitude|uncertainty|plausible)_[a-z_]+)"/g)).filter((code) => !/_(min|max|s)$/.test(code));
  const remarks = codes("process.rs", /"(process_\w+)"/g);
  const [, misreadings] = source("misreading.rs").match(/pub enum Misreading \{(.*?)\n\}/s);
  const readings = [...misreadings.matchAll(/^ {4}(\w+),/gm)].map((found) => found[1].replace(/(?<!^)[A-Z]/g, (letter) => `_${letter}`).toLowerCase());
  assert.ok(verdicts.length > 25 && remarks.length === 6 && readings.length === 28, `${verdicts.length} verdicts, ${remarks.length} remarks, ${readings.length} misreadings were found in the sources`);
  const there = (key) => key in texts;
  const stems = [...verdicts.map((code) => `step-${code}`), ...remarks.map((code) => `process-${code}`), ...readings.map((id) => `misreading-${id}`)];
  assert.deepEqual(stems.filter((stem) => !there(`${stem}.see`)), []);
  assert.deepEqual(readings.flatMap((id) => ["ask", "do"].map((part) => `misreading-${id}.${part}`)).filter((key) => !there(key)), []);
  for (const [key, message] of Object.entries(texts)) if (/^(misreading|process)-/.test(key)) assert.doesNotMatch(strings(message).join(" "), /\b(you are wrong|mistake|error|failed)\b/i, key);
});

describe("pictures of every fault, drawn by the bench", { concurrency: 1 }, () => {
  /** Share of a canvas that differs from another of the same size. */
  const differ = (page, selector) => page.evaluate((card) => {
    const [a, b] = [...document.querySelectorAll(`${card} canvas.shot`)].map((canvas) => canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height));
    let n = 0;
    for (let k = 0; k < a.data.length; k += 4) if (Math.abs(a.data[k] - b.data[k]) + Math.abs(a.data[k + 1] - b.data[k + 1]) + Math.abs(a.data[k + 2] - b.data[k + 2]) > 60) n += 1;
    return n / (a.data.length / 4);
  }, selector);

  test("they are made when they come into sight, and with each fault the screen is otherwise than without it", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#faults`);
      await page.locator(".fault-card figure[data-made]").first().waitFor();
      const cards = await page.$$eval(".fault-card", (all) => all.map((card) => ({ id: card.id, pictured: Boolean(card.querySelector(".shots")) })));
      assert.ok((await page.locator("summary figure[data-made]").count()) < cards.length / 2, "all pictures were made at once");
      const alike = [];
      for (const { id, pictured } of cards) {
        if (!pictured) {
          await page.locator(`#${id}`).getByText("The live trace does not show this. The mistake is in the recording or in the worksheet.").waitFor();
          continue;
        }
        await page.locator(`#${id} summary`).scrollIntoViewIfNeeded();
        await page.locator(`#${id} figure[data-made]`).waitFor();
        await page.locator(`#${id} summary h3`).click();
        await page.locator(`#${id} .shots[data-made]`).waitFor();
        const unseen = await page.locator(`#${id} .shot-none`).first().isVisible();
        const share = unseen ? 1 : await differ(page, `#${id}`);
        if (share < 0.001) alike.push(id);
      }
      assert.deepEqual(alike, ["fault-paused"], "a picture with the fault looks like the one without it, which only a screen that stands may do");
      // Mild is a picture of its own.
      const card = page.locator("#fault-charger_near");
      await card.scrollIntoViewIfNeeded();
      const strong = await card.locator("canvas").first().evaluate((el) => el.toDataURL());
      await card.getByRole("button", { name: "Mild", exact: true }).click();
      await page.waitForFunction((before) => document.querySelector("#fault-charger_near figure[data-made] canvas")?.toDataURL() !== before, strong);
      assert.match(await card.locator("figcaption").first().innerText(), /With the fault, mild · 2 s across/);
      assert.equal(await page.locator("#fault-charger_near .shot-ring").count(), 1, "no part of the table is ringed");
    });
  });

  test("cards are found by what is seen; those that look alike stand side by side; the projector leads to a card", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#faults`);
      await page.locator(".fault-card").first().waitFor();
      const all = await page.locator(".fault-card:visible").count();
      await page.getByLabel("Search: what do you see?").fill("thick giraffe");
      assert.equal(await page.locator(".fault-card:visible").count(), 0);
      await page.getByLabel("Search: what do you see?").fill("PHONE spik");
      await page.locator("#fault-phone_near:visible").waitFor();
      const found = await page.locator(".fault-card:visible").count();
      assert.ok(found > 0 && found < all / 4, `${found} of ${all}`);
      assert.match(await page.locator(".faults-search [role=status]").innerText(), new RegExp(`^${found} cards?$`));
      // A link to a card shows it, whatever was searched for.
      await page.evaluate(() => { location.hash = "#faults=charger_near"; });
      await page.locator("#fault-charger_near:visible").waitFor();
      assert.equal(await page.locator(".fault-card:visible").count(), all);
      assert.ok(await page.locator("#fault-charger_near").evaluate((el) => el.open), "the card that a link leads to is closed");
      await page.locator("#fault-charger_near").getByRole("button", { name: /side by side/i }).click();
      const shown = page.locator(".alike-shots section");
      const names = await shown.locator("h3").allInnerTexts();
      assert.ok(names.includes(CHARGER) && names.includes(CABLE) && names.length > 2, names.join(", "));
      await page.waitForFunction(() => [...document.querySelectorAll(".alike-shots canvas")].every((canvas) => canvas.width > 200));
      await page.keyboard.press("Escape");
      await page.locator(".alike-shots").waitFor({ state: "hidden" });
    });
  });
});
