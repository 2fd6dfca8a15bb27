// Recordings go out of the page and come in again: every form, by choice and by drop, with all that was marked.
import { test } from "node:test";
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import assert from "node:assert/strict";
import { root, withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const { choose, openFile, pressButton, saved } = student;
const shots = path.join(root, "tests/browser/shots");
mkdirSync(shots, { recursive: true });

/** The stored files of an archive. */
function unzip(bytes) {
  const files = [];
  for (let at = 0; bytes.readUInt32LE(at) === 0x04034b50;) {
    assert.equal(bytes.readUInt16LE(at + 8), 0, "a packed file");
    const [size, name, extra] = [bytes.readUInt32LE(at + 22), bytes.readUInt16LE(at + 26), bytes.readUInt16LE(at + 28)];
    const start = at + 30 + name + extra;
    files.push({ name: bytes.toString("utf8", at + 30, at + 30 + name), mimeType: "application/octet-stream", buffer: bytes.subarray(start, start + size) });
    at = start + size;
  }
  return files;
}

const upload = ({ name, bytes }) => ({ name, mimeType: "application/octet-stream", buffer: bytes });

/** What a saved table says: values, and notes as [s, length, text]. */
function table({ bytes }) {
  const lines = bytes.toString("utf8").trim().split("\n");
  assert.equal(lines[0], "t_s,value");
  return {
    values: lines.slice(1).filter((line) => !line.startsWith("#")).map((line) => Number(line.split(",")[1])),
    notes: lines.filter((line) => line.startsWith("# note,")).map((line) => line.slice(7).split(",")).map(([at, length, ...text]) => [Number(at), length, text.join(",")]),
  };
}

/** Drops files on the page, as a hand would from a folder. */
async function drop(page, files) {
  const carried = await page.evaluateHandle((all) => {
    const data = new DataTransfer();
    for (const { name, bytes } of all) data.items.add(new File([new Uint8Array(bytes)], name));
    return data;
  }, files.map(({ name, buffer }) => ({ name, bytes: [...buffer] })));
  await page.dispatchEvent("body", "dragover", { dataTransfer: carried });
  assert.ok(await page.locator("body").evaluate((el) => el.hasAttribute("data-drop")), "nothing shows that files may be dropped");
  await page.dispatchEvent("body", "drop", { dataTransfer: carried });
}

/** A recording with a change of range, a tap on the sensor, three marks and both cursors. */
async function makeRecording(page, url) {
  await student.openScenario(page, url, "rest-pulse", 4);
  await student.worldRuns(page, 0.8);
  await pressButton(page, "Record");
  await student.worldRuns(page, 1.2);
  await choose(page, "Full-scale range", "±200 mV");
  await student.worldRuns(page, 0.6);
  await choose(page, "Full-scale range", "±100 mV");
  await student.worldRuns(page, 0.6);
  await pressButton(page, "Tap the sensor");
  await student.worldRuns(page, 1.5);
  await pressButton(page, "Stop recording");
  await page.locator(".strip.is-measuring").waitFor();
  await choose(page, "Time base, per screen", "20 s");
  await student.clickMarks(page, [0.5, 1.4, 2.2]);
  await student.dragCursor(page, "a", 0.25);
  await student.dragCursor(page, "b", 2.75);
}

const cursorTimes = (page) => Promise.all(["a", "b"].map(async (which) => Number(await page.locator(`.cursor-${which}`).getAttribute("aria-valuenow"))));

test("a take is saved in every form and opens again from each with the same samples, marks and cursors", async () => {
  await withPage({ ...wide, acceptDownloads: true }, async ({ page, url }) => {
    await makeRecording(page, url);
    const files = {};
    for (const kind of ["CSV", "EDF+", "WFDB"]) files[kind] = await saved(page, `Save recording as ${kind}`);
    assert.deepEqual(Object.values(files).map((file) => file.name), ["dicrotic-recording-1.csv", "dicrotic-recording-1.edf", "dicrotic-recording-1.zip"]);
    await page.screenshot({ path: path.join(shots, "files-save.png") });

    const first = table(files.CSV);
    const texts = first.notes.map(([, , text]) => text);
    assert.equal(texts.filter((text) => text === "beat").length, 3);
    for (const part of ["cursor a", "cursor b", "window", "range v=0.2", "range v=0.1", "tap_sensor"]) assert.ok(texts.includes(part), `${part} is not among ${texts}`);
    assert.ok(texts.some((text) => text.startsWith("settings ") && text.includes("rate_hz=1000")), `${texts}`);
    assert.ok(!texts.some((text) => /answer|scroll|^record|^stop/.test(text)), `${texts}`);
    const cursors = await cursorTimes(page);

    const record = unzip(files.WFDB.bytes);
    assert.deepEqual(record.map((file) => file.name), ["dicrotic_recording_1.hea", "dicrotic_recording_1.dat", "dicrotic_recording_1.atr"]);
    // The step of the widest range that was on: all of what the files keep lies within half of it.
    const half = 0.2 / 32768 / 2;
    for (const [what, open] of [
      ["CSV", () => openFile(page, upload(files.CSV))],
      ["EDF+", () => openFile(page, upload(files["EDF+"]))],
      ["WFDB, an archive", () => openFile(page, upload(files.WFDB))],
      ["WFDB, its files", () => openFile(page, record)],
      ["WFDB, dropped", () => drop(page, [...record].reverse())],
      ["EDF+, dropped", () => drop(page, [upload(files["EDF+"])])],
    ]) {
      await page.goto(`${url}?${encodeURIComponent(what)}`);
      await page.locator("#start-h").waitFor();
      await open();
      await page.locator("#brief").filter({ hasText: "Nobody knows its true heart rate" }).waitFor();
      assert.equal(await page.locator(".beat-ticks path").count(), 3, what);
      const there = await cursorTimes(page);
      for (const k of [0, 1]) assert.ok(Math.abs(there[k] - cursors[k]) <= 0.0011, `${what}: cursors ${there}, not ${cursors}`);
      const again = table(await saved(page, "Save recording as CSV"));
      assert.equal(again.values.length, first.values.length, what);
      const apart = Math.max(...again.values.map((value, i) => Math.abs(value - first.values[i])));
      assert.ok(apart <= 1.5 * half, `${what}: ${apart} V apart`);
      const kept = again.notes.map(([, , text]) => text);
      assert.deepEqual([...kept].sort(), [...texts].sort(), what);
      await page.getByText("Notes that came with the file").click();
      await page.getByRole("button", { name: /tap_sensor/ }).waitFor();
    }
    await page.screenshot({ path: path.join(shots, "files-notes.png"), fullPage: true });
    for (const { name, bytes } of Object.values(files)) writeFileSync(path.join(shots, name), bytes);
  });
});

test("the strip is saved as a picture of dots and as a drawing", async () => {
  await withPage({ ...wide, acceptDownloads: true }, async ({ page, url, browser }) => {
    await makeRecording(page, url);
    const png = await saved(page, "Save trace as PNG");
    assert.equal(png.name, "dicrotic-trace-1.png");
    assert.deepEqual([...png.bytes.subarray(0, 8)], [137, 80, 78, 71, 13, 10, 26, 10]);
    const field = await page.locator(".field").boundingBox();
    assert.deepEqual([png.bytes.readUInt32BE(16), png.bytes.readUInt32BE(20)], [Math.round(field.width), Math.round(field.height)]);
    const svg = await saved(page, "Save trace as SVG");
    assert.equal(svg.name, "dicrotic-trace-1.svg");
    const text = svg.bytes.toString("utf8");
    assert.match(text, /font-family="[^"]*serif"/);
    writeFileSync(path.join(shots, png.name), png.bytes);
    writeFileSync(path.join(shots, svg.name), text);

    // Another page draws it: no error of the parser, the trace where it belongs, both cursors, three marks, the labels.
    const view = await browser.newPage({ viewport: { width: 1300, height: 500 } });
    await view.setContent(text);
    assert.equal(await view.locator("parsererror").count(), 0);
    const parts = await view.evaluate(() => {
      const trace = document.querySelector("path[clip-path]");
      const box = trace.getBBox();
      const labels = [...document.querySelectorAll("text")].map((el) => el.textContent);
      return { points: trace.getAttribute("d").split(/[ML]/).length, box: [box.width, box.height], labels };
    });
    // As wide as what was recorded, at the least 3.9 s, is long at the scale on which the cursors stand.
    const [xa, xb] = await Promise.all(["a", "b"].map((which) => page.locator(`.cursor-${which}`).evaluate((el) => el.getBoundingClientRect().x)));
    const second = (xb - xa) / (2.75 - 0.25);
    assert.ok(parts.points > 200 && parts.box[0] > 3.8 * second && parts.box[0] < field.width && parts.box[1] > 20, JSON.stringify({ ...parts, second }));
    for (const label of ["A", "B", "100 mV", "20 s"]) assert.ok(parts.labels.includes(label), `${label} is not among ${parts.labels}`);
    assert.equal(await view.locator('path[d$="l-4 -7h8z"]').count(), 3);
    await view.screenshot({ path: path.join(shots, "files-svg.png") });
    await view.close();
  });
});

test("a bad file is told with its name, the place and what was expected, and costs nothing", async () => {
  await withPage({ ...wide, acceptDownloads: true }, async ({ page, url }) => {
    await page.goto(url);
    await openFile(page, student.syntheticRecording());
    await page.locator(".strip.is-measuring").waitFor();
    const edf = await saved(page, "Save recording as EDF+");
    const [header, data] = unzip((await saved(page, "Save recording as WFDB")).bytes);
    const damaged = (at, text) => {
      const bytes = Buffer.from(edf.bytes);
      bytes.write(text, at, "latin1");
      return { name: "bad.edf", mimeType: "application/octet-stream", buffer: bytes };
    };
    const spoilt = { ...data, buffer: Buffer.from(data.buffer) };
    spoilt.buffer[100] ^= 4;
    for (const [files, told] of [
      [damaged(252, "many"), /bad\.edf, byte 252, number of signals: expected a whole number from 1 to 4,096, found “many/],
      [damaged(192, "EDF+D"), /bad\.edf cannot be read here: it is a recording with gaps.*\(EDF\+D\)/],
      [{ ...damaged(0, "0"), buffer: edf.bytes.subarray(0, 3000) }, /bad\.edf is cut short: its header says [\d,]+ bytes, and there are 3,000/],
      [header, /dicrotic_recording_1\.hea keeps its samples in dicrotic_recording_1\.dat\. Choose or drop both/],
      [data, /dicrotic_recording_1\.dat is read with its header/],
      [[header, spoilt], /the samples of Pulse add up to −?[\d,]+, but its header says −?[\d,]+\. One of the files is damaged/],
      [[header, upload(edf)], /are two recordings\. Open one at a time/],
      [{ name: "photo.jpg", mimeType: "image/jpeg", buffer: Buffer.from([255, 216, 255, 224, 0, 16]) }, /photo\.jpg cannot be read here: it is neither a table of text, nor EDF, nor a WFDB record \(jpg\)/],
    ]) {
      await openFile(page, files);
      await page.waitForFunction((source) => new RegExp(source).test(document.getElementById("calm").textContent), told.source);
      assert.match(await page.locator("#calm").innerText(), /The file that was open stays open/);
      await page.locator(".strip.is-measuring").waitFor();
    }
    await page.screenshot({ path: path.join(shots, "files-bad.png") });
  });
});

test("of several channels one is asked for", async () => {
  await withPage(wide, async ({ page, url }) => {
    await page.goto(url);
    const one = student.syntheticRecording();
    const lines = one.buffer.toString().trim().split("\n").map((line, i) => (i === 0 ? "t_s,flat,pulse" : line.replace(",", ",3,")));
    const file = { ...one, name: "two.csv", buffer: Buffer.from(lines.join("\n")) };
    await openFile(page, file);
    await page.getByRole("dialog").getByText("two.csv has 2 channels").waitFor();
    await page.keyboard.press("Escape");
    await page.locator("#start").waitFor();
    await openFile(page, file);
    // Five seconds of each: the pictures choose as well, and tell what is chosen.
    const pictures = page.getByRole("group", { name: "Five seconds of each channel" }).getByRole("button");
    await pictures.nth(1).waitFor();
    assert.deepEqual(await pictures.allInnerTexts(), ["flat", "pulse"]);
    const heights = await pictures.locator("path").evaluateAll((paths) => paths.map((path) => Math.round(path.getBBox().height)));
    assert.deepEqual(heights, [0, 32]);
    await pictures.nth(0).click();
    assert.equal(await page.getByLabel("Channel", { exact: true }).inputValue(), "flat");
    await page.getByLabel("Channel", { exact: true }).selectOption("pulse");
    assert.deepEqual(await pictures.evaluateAll((all) => all.map((one) => one.getAttribute("aria-pressed"))), ["false", "true"]);
    await pressButton(page, "Open it");
    await page.locator(".strip.is-measuring").waitFor();
    const peaks = student.peaksOf(await student.savedRecording(page));
    assert.ok(peaks.length > 25, `${peaks.length} peaks`);
  });
});
