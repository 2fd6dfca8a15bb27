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
