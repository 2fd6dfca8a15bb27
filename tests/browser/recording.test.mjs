// Recordings of a real pulse on the page: what is known about them is said, and a bad file costs nothing.
import { test } from "node:test";
import { existsSync } from "node:fs";
import path from "node:path";
import assert from "node:assert/strict";
import { root, withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const { openFile, pressButton, syntheticRecording: synthetic } = student;

const file = (name, text) => ({ name, mimeType: "text/csv", buffer: Buffer.from(text) });

/** Measures the opened recording in a window of about 15 s and gives what the page makes of it. */
async function readIt(page) {
  await page.locator(".strip.is-measuring").waitFor();
  assert.match(await page.locator("#brief").innerText(), /Nobody knows its true heart rate/);
  await page.locator("#bench").waitFor({ state: "hidden" });
  await student.choose(page, "Time base, per screen", "20 s");
  const peaks = student.peaksOf(await student.savedRecording(page));
  const [a, b, count] = student.windowBetween(peaks, 15);
  await student.dragCursor(page, "a", a);
  await student.dragCursor(page, "b", b);
  const seconds = Number((await student.reading(page, "A to B")).replace(/ s$/, ""));
  const multiplier = (60 / seconds).toFixed(3);
  await student.fillSheet(page, { count, seconds, multiplier, rate: (count * multiplier).toFixed(1) });
  return { debrief: await student.check(page), count, seconds };
}

function assertCompared({ debrief, count, seconds }) {
  assert.equal(debrief.firstOpen, null, debrief.text);
  assert.match(debrief.text, /What this page’s own detector found/i);
  assert.match(debrief.text, /Neither is the truth/);
  assert.doesNotMatch(debrief.text, /The true values/i);
  const [beats, rate] = debrief.truth.map(Number);
  assert.equal(beats, count);
  assert.ok(Math.abs(rate - (60 * count) / seconds) < 6, `the detector's rate is ${rate}`);
}

test("a recording is compared with the project's own detector, and the page says so", async () => {
  await withPage(wide, async ({ page, url }) => {
    await page.goto(url);
    await openFile(page, synthetic());
    const read = await readIt(page);
    assertCompared(read);
    assert.equal(read.count, 19);
  });
});

test("the detector's rate can be asked for after a wrong reading, not before one", async () => {
  await withPage(wide, async ({ page, url }) => {
    await page.goto(url);
    await openFile(page, synthetic());
    await page.locator(".strip.is-measuring").waitFor();
    // It is an answer to one's own reading, and is not offered before there is one.
    assert.equal(await page.getByRole("button", { name: "Show the detector’s heart rate" }).count(), 0);
    assert.equal(await page.locator(".truth").count(), 0);
    await student.choose(page, "Time base, per screen", "20 s");
    await student.dragCursor(page, "a", 1);
    await student.dragCursor(page, "b", 17);
    await student.fillSheet(page, { count: 25, seconds: 16, multiplier: "3.75", rate: "93.75" });
    const first = await student.check(page);
    assert.equal(first.firstOpen, "The count, N");
    student.assertNoTruth(first, 20);
    await pressButton(page, "Show the detector’s heart rate");
    await page.locator(".truth").waitFor();
    const closed = await student.readDebrief(page);
    assert.deepEqual(closed.truth.map(Number), [20, 75, 75]);
  });
});

/** A finger pulse of 75 beats/min at 250 Hz in millivolts, upside down, with hum of 50 Hz as tall as half of it. */
function spoilt() {
  const value = (time) => {
    const u = time % 0.8;
    return 500 - 40 * Math.exp(-(((u - 0.2) / 0.07) ** 2)) - 12 * Math.exp(-(((u - 0.45) / 0.08) ** 2)) + 20 * Math.sin(2 * Math.PI * 50 * time);
  };
  const lines = Array.from({ length: 250 * 30 }, (_, k) => `${(k / 250).toFixed(3)},${value(k / 250).toFixed(3)}`);
  return file("spoilt.csv", `t_s,PPG (mV)\n${lines.join("\n")}\n`);
}

/** How far neighbouring samples lie apart on the mean, against the height of all: what hum is to the eye. */
function roughness(samples) {
  const values = samples.map(([, value]) => value);
  const step = values.slice(1).reduce((sum, value, k) => sum + Math.abs(value - values[k]), 0) / values.length;
  return step / (Math.max(...values) - Math.min(...values));
}

/** A stage of the signal's path, opened. */
async function stage(page, name) {
  await page.locator(`.stage[data-stage="${name}"]`).click();
  return page.locator(`.stage-panel.stage-${name}`);
}

test("how a recording is shown is chosen by range, zero, polarity and filters; what is shown is counted and saved", async () => {
  await withPage(wide, async ({ page, url }) => {
    await page.goto(url);
    await openFile(page, spoilt());
    await page.locator(".strip.is-measuring").waitFor();
    // The whole height stands first; other ranges have the file's unit, and only those are offered that show something of it.
    const range = page.getByLabel("Full-scale range", { exact: true });
    const offered = () => range.locator("option").allInnerTexts();
    assert.deepEqual(await offered(), ["±1,000 mV", "±500 mV", "whole height"]);
    // Far from zero every range about zero is taller than the whole height: there is no smaller one before "Zero here".
    assert.ok(await page.getByRole("button", { name: "Smaller range" }).isDisabled());
    const before = await student.savedRecording(page);
    await pressButton(page, "Zero here");
    assert.deepEqual(await offered(), ["±100 mV", "±50 mV", "whole height", "±20 mV", "±10 mV", "±5 mV", "±2 mV", "±1 mV"]);
    await page.getByRole("button", { name: "Smaller range" }).click();
    assert.equal(await range.inputValue(), "20");
    await page.getByRole("button", { name: "Larger range" }).click();
    assert.equal(await range.inputValue(), "0");
    await pressButton(page, "Undo zero");
    // Undo takes "Zero here" back as well.
    await pressButton(page, "Zero here");
    await page.locator("#views-more").getByRole("button", { name: "Undo", exact: true }).click();
    assert.deepEqual(await offered(), ["±1,000 mV", "±500 mV", "whole height"]);

    assert.deepEqual(await page.locator(".stage-name").allInnerTexts(), ["Amplifier", "Filters", "Screen"]);
    await (await stage(page, "amplifier")).getByLabel("Invert").check();
    const filters = await stage(page, "filters");
    assert.deepEqual(await filters.getByLabel("Notch filter", { exact: true }).locator("option").allInnerTexts(), ["off", "50 Hz", "60 Hz"]);
    await filters.getByLabel("Notch filter", { exact: true }).selectOption("50");
    await page.locator('.stage[data-stage="filters"]').click();
    await filters.waitFor({ state: "hidden" });
    const after = await student.savedRecording(page);
    assert.ok(roughness(before) > 5 * roughness(after), `${roughness(before)}, ${roughness(after)}`);
    const ways = "inverted, notch filter 50 Hz";
    assert.equal(await page.locator(".margin-top > .pencil").innerText(), `spoilt.csv, shown ${ways}`);
    const told = await page.locator(".measure-rest .quiet").allTextContents();
    assert.ok(told.includes(`Files and pictures are saved as shown: ${ways}.`), told.join("\n"));
    const csv = (await student.saved(page, "Save recording as CSV")).bytes.toString();
    assert.match(csv, /# note,0,,"?shown inverted=true notch_hz=50"?/);
    const svg = (await student.saved(page, "Save trace as SVG")).bytes.toString();
    assert.ok(svg.includes(`As shown: ${ways}</text>`), svg.slice(-300));

    // What is shown is what the detector reads: the beats are those of the upright wave.
    const { debrief, count } = await readIt(page);
    assert.equal(debrief.firstOpen, null, debrief.text);
    assert.equal(Number(debrief.truth[0]), count);
  });
});

test("after a check another counting window is chosen with one press, as often as one likes", async () => {
  await withPage(wide, async ({ page, url }) => {
    await page.goto(url);
    await openFile(page, synthetic());
    await page.locator(".strip.is-measuring").waitFor();
    await student.choose(page, "Time base, per screen", "20 s");
    const another = page.getByRole("button", { name: "Choose another counting window" });
    await student.dragCursor(page, "a", 0.6);
    for (const [k, end] of [17.4, 16.6, 15.8].entries()) {
      await student.dragCursor(page, "b", end);
      assert.equal(await another.count(), 0);
      await student.clickMarks(page, [2.6, 3.4]);
      await student.fillSheet(page, { count: Math.round((end - 0.6) / 0.8), seconds: (end - 0.6).toFixed(1), multiplier: (60 / (end - 0.6)).toFixed(3), rate: 75 });
      const { firstOpen, text } = await student.check(page);
      assert.equal(firstOpen, null, text);
      await page.locator(".result-ways").getByRole("button", { name: "Choose another counting window" }).click();
      // Blanks, marks and result are gone, and the cursors stay.
      await page.locator("#result").waitFor({ state: "hidden" });
      assert.equal(await page.getByLabel("Between A and B I count N =").inputValue(), "");
      assert.equal(await page.locator(".beat-ticks path[d^=M], .mark-list .btn").count(), 0);
      assert.equal(await student.reading(page, "A to B"), `${(end - 0.6).toFixed(1)} s`, `window ${k + 1}`);
      assert.equal(await page.locator(".cursor-a").evaluate((el) => el === document.activeElement), true);
      assert.match(await page.locator(".strip-note").innerText(), /The cursors stay where they were/);
      // The result that was there can still be read, and nothing of it stands about elsewhere.
      const earlier = page.locator("#brief .earlier details");
      assert.equal(await earlier.count(), k + 1);
      assert.equal(await earlier.nth(k).locator("summary").innerText(), `Counting window ${k + 1}: A 0.60 s, B ${end.toFixed(2)} s`);
      await earlier.nth(k).locator("summary").click();
      assert.match(await earlier.nth(k).innerText(), /Your reading agrees with the detector\..*from A to B.*shown like this: as in the file; range whole height/s);
      assert.equal(await earlier.nth(k).locator("button").count(), 0);
      await earlier.nth(k).locator("summary").click();
      await page.locator(".cursor-a").focus();
      assert.equal(await page.locator(".sheet-note").innerText(), "");
    }
    // Two wrong readings close a window, not the recording.
    for (const go of [1, 2]) {
      await student.fillSheet(page, { count: 40 + go, seconds: 15.2, multiplier: 3.947, rate: 158 });
      await student.check(page);
    }
    await page.locator("#worksheet").getByRole("button", { name: "Choose another counting window" }).click();
    await page.locator("#worksheet").getByRole("button", { name: "Check my reading (1 of 2)" }).waitFor();
  });
});

// A recording by others, read where it lies; it is no part of the project. 24.8 s of a finger pulse at 100 Hz, no times.
const shared = path.resolve(root, process.env.DICROTIC_DATA ?? "../shared/data", "heartpy_examples/data.csv");

test("a recording without times asks for its sampling rate", async () => {
  await withPage(wide, async ({ page, url }) => {
    await page.goto(url);
    const lines = synthetic().buffer.toString().trim().split("\n").slice(1).map((line) => line.split(",")[1]);
    await openFile(page, file("bare.csv", lines.join("\n")));
    await page.getByLabel("Samples per second, Hz").fill("five");
    await pressButton(page, "Open it");
    assert.match(await page.locator("#ask .problem").innerText(), /from 10 to 10,000/);
    await page.getByLabel("Samples per second, Hz").fill("100");
    await pressButton(page, "Open it");
    assertCompared(await readIt(page));

    if (existsSync(shared)) {
      await openFile(page, shared);
      await page.getByLabel("Samples per second, Hz").fill("100");
      await pressButton(page, "Open it");
      await page.locator("#brief").filter({ hasText: "data.csv" }).waitFor();
      assertCompared(await readIt(page));
    } else {
      console.log(`NOT READ: ${shared} is missing; the synthetic recording alone was read.`);
    }

    lines[7] = "pause";
    await openFile(page, file("spoilt.csv", lines.join("\n")));
    await page.getByLabel("Samples per second, Hz").fill("100");
    await pressButton(page, "Open it");
    await page.getByText("spoilt.csv, line 8, column 1: expected", { exact: false }).waitFor();
  });
});

test("a bad file gets a clear message, and nothing is lost", async () => {
  await withPage(wide, async ({ page, url }) => {
    await student.openScenario(page, url, "hum-on-the-trace", 5);
    await student.worldRuns(page, 1.5);
    await student.take(page, 2);
    await page.getByLabel("Between A and B I count N =").fill("7");
    for (const [name, text, told] of [
      ["words.csv", "this is\nno table\n", /words\.csv has no line with numbers/],
      ["cell.csv", "t_s,value\n0,1\n0.01,2\n0.02,many\n0.03,3\n", /cell\.csv, line 4, column 2: expected .* found “many”/],
      ["back.csv", "t_s,value\n0,1\n0.01,2\n0.005,3\n0.02,4\n", /back\.csv, line 4: the time must increase/],
    ]) {
      await openFile(page, file(name, text));
      await page.locator("#calm").filter({ hasText: name }).waitFor();
      assert.match(await page.locator("#calm").innerText(), told);
      assert.match(await page.locator("#calm").innerText(), /The file that was open stays open/);
      await page.locator(".strip.is-measuring").waitFor();
      assert.equal(await page.getByLabel("Between A and B I count N =").inputValue(), "7");
      assert.ok(page.url().includes("#s=hum-on-the-trace&seed=5"), page.url());
    }
    // A good file takes the place of the attempt, which is kept.
    await openFile(page, synthetic());
    await page.locator("#brief").filter({ hasText: "Nobody knows its true heart rate" }).waitFor();
    await page.locator("#calm").waitFor({ state: "hidden" });
    await page.goto(`${url}?again#s=hum-on-the-trace&seed=5`);
    await pressButton(page, "Continue it");
    await page.locator(".strip.is-measuring").waitFor();
    assert.equal(await page.getByLabel("Between A and B I count N =").inputValue(), "7");
  });
});
