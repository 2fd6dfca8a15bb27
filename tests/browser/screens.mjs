// A walk through every screen of the page and every state of it that looks different, for whoever wants to see them all: the tests of
// accessibility, and pictures.mjs. `see(name)` is called on each; what needs a fresh page asks `fresh()` for one.
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { Cmi5Host } from "./cmi5_site.mjs";
import { root } from "./lib.mjs";
import { pack, serveSite, unpack } from "./site.mjs";
import * as student from "./student.mjs";

const { checkAll, fillBlanks, openHalf, pressButton, putCursors } = student;

/** Another page of the same document: the fragment alone would keep what is open. */
let visits = 0;
const visit = (page, url, hash = "") => page.goto(`${url}?${(visits += 1)}${hash}`);

const scratch = () => mkdtempSync(path.join(os.tmpdir(), "dicrotic-screens-"));

let written = null;

/** The class of the Rust tests, as files: written by the program's own test helper, once for a test file. */
export function classOfThirty() {
  if (written) return written;
  const folder = scratch();
  execFileSync("cargo", ["test", "--quiet", "--test", "exchange_handin", "thirty_results_are_written", "--", "--exact", "--nocapture"], { cwd: root, env: { ...process.env, DICROTIC_CLASS: folder }, stdio: ["ignore", "pipe", "pipe"] });
  return written = Array.from({ length: 30 }, (_, k) => path.join(folder, `${String(k).padStart(2, "0")}.dicrotic-result.json`));
}

let hundreds = null;

/** The class of three hundred of the Rust tests: files, what was set, the list, and where each must stand. */
export function classOfThreeHundred() {
  if (hundreds) return hundreds;
  const folder = path.join(scratch(), "in");
  mkdirSync(folder);
  execFileSync("cargo", ["test", "--quiet", "--test", "class_lines", "three_hundred_results_are_written", "--", "--exact", "--nocapture"], { cwd: root, env: { ...process.env, DICROTIC_CLASS_300: folder }, stdio: ["ignore", "pipe", "pipe"] });
  const beside = (name) => path.join(folder, "..", name);
  return hundreds = { files: readdirSync(folder).sort().map((name) => path.join(folder, name)), assignment: beside("assignment.toml"), roster: beside("roster.csv"), states: beside("states.csv") };
}

async function bench({ page, url }, see) {
  await visit(page, url);
  await page.locator("#start .card").first().waitFor();
  await see("start");
  await page.locator(".way-check .way-look").click();
  await page.locator(".glimpse-told").filter({ hasText: /./ }).waitFor();
  await page.getByRole("button", { name: "Pause", exact: true }).click();
  await see("start, behind a door");
  await page.keyboard.press("Escape");
  await page.getByLabel("Find by a word").fill("no such thing");
  await see("start, nothing found");

  await visit(page, url, "#s=first-wiring&seed=11");
  await page.locator(".plug").first().waitFor({ state: "attached" });
  await see("offer and bench before anything is wired");
  await see("strip before anything is wired");

  await visit(page, url, "#s=thick-trace-a&seed=5");
  await page.locator(".plug").first().waitFor({ state: "attached" });
  await pressButton(page, "On my own");
  await student.side(page, "bench");
  await (await student.control(page, "Cloth over the finger")).check();
  await (await student.control(page, "Desk lamp")).check();
  await (await student.control(page, "Ask the subject to")).selectOption("ice_water");
  await pressButton(page, "on the case");
  await pressButton(page, "Sensor on the finger");
  await see("bench, looked around");
  await student.worldRuns(page, 0.7);
  await pressButton(page, "Trace in words");
  await see("live strip, told in words");
  await pressButton(page, "Record");
  await student.recorded(page, 3);
  await see("recording");
  await pressButton(page, "Stop recording");
  await page.locator(".strip.is-measuring").waitFor();
  await page.getByLabel("A (s)", { exact: true }).fill("0.5");
  await page.getByLabel("B (s)", { exact: true }).fill("2.5");
  await pressButton(page, "Mark at A");
  await page.getByText("Beat marks, one by one").click();
  await see("take");
  await student.side(page, "name");
  const impression = page.locator('.impression[data-impression="fuzzy"]');
  await impression.waitFor();
  await impression.locator("summary").click();
  await impression.getByRole("button").first().click();
  await see("naming");
  await fillBlanks(page, { count: 3, seconds: 2, multiplier: "x", rate: "" });
  await see("worksheet with a blank that cannot be read");
  await student.check(page);
  await see("first debrief");
  await student.check(page);
  await page.locator(".there-fault").waitFor();
  await see("debrief with the truth");
  await page.reload();
  await page.locator("#ask").waitFor();
  await see("question");
  await pressButton(page, "Start again");
  await student.openFile(page, student.syntheticRecording());
  await page.locator(".strip.is-measuring").waitFor();
  await see("recording from a file");
  await student.openFile(page, { name: "words.csv", mimeType: "text/csv", buffer: Buffer.from("no numbers") });
  await page.locator("#calm").filter({ hasText: "words.csv" }).waitFor();
  await see("message");
}

async function after({ page, url }, see) {
  await openHalf(page, url, "given-window", 11);
  await putCursors(page, 2, 12);
  await fillBlanks(page, { count: 20, seconds: 10, multiplier: 6, rate: 120 });
  await checkAll(page);
  await pressButton(page, "A hint");
  await pressButton(page, "Another hint");
  for (const row of await page.locator(".rubric-row summary").all()) await row.click();
  await see("debrief with a hint and the rubric");
  await checkAll(page);
  await see("debrief with the spread");
  await page.locator(".trail").getByText("As a list").click();
  await see("course of the attempt");
  await visit(page, url, "#notebook");
  await page.locator("#notebook .trial-page").first().waitFor();
  await see("notebook");
  await visit(page, url, "#device");
  await page.locator("#device .device-list").first().waitFor();
  await see("what this device keeps");
  await page.goBack();
  await page.locator("#notebook .trial-page").first().waitFor();
  await page.getByRole("link", { name: "Report" }).click();
  await page.locator(".report-sheet").waitFor();
  await see("report");
  await visit(page, url, "#skills");
  await page.locator("#skills li, #skills tr").first().waitFor();
  await see("skill map");
  await visit(page, url);
  await page.locator("#start .card").first().waitFor();
  await see("start, with an attempt that was left");
  await visit(page, url, "#watch=first-wiring");
  await page.locator(".narrator-deed").waitFor();
  for (let k = 0; k < 3; k += 1) await pressButton(page, "Next step");
  await see("worked example");
}

async function kinds({ page, url }, see) {
  for (const id of ["between-the-same-features", "a-longer-window", "soon-after-exercise", "read-the-range", "two-windows"]) {
    await visit(page, url, `#s=${id}&seed=7`);
    await page.locator(".plug").first().waitFor({ state: "attached" });
    await pressButton(page, "Half done, I finish it");
    await page.locator(".strip.is-measuring").waitFor();
    await see(`question of ${id}`);
  }
}

async function reading({ page, url }, see) {
  for (const [hash, ready] of [["faults", ".fault-card"], ["words", "#read dt"], ["teach", "#read h2"], ["skills", "#skills h1, #skills h2"], ["notebook", "#notebook h1, #notebook h2"]]) {
    await visit(page, url, `#${hash}`);
    await page.locator(ready).first().waitFor();
    await see({ faults: "card index", words: "words", teach: "for instructors", skills: "skill map, nothing done", notebook: "notebook, empty" }[hash]);
  }
  await visit(page, url, "#a=1.nothing");
  await page.locator("#calm").waitFor();
  await see("damaged link");
  await visit(page, url, "#s=no-such-bench&seed=3");
  await page.locator("#calm").waitFor();
  await see("unknown scenario");
}

async function instructor({ page, url }, see) {
  await visit(page, url, "#assign");
  await page.locator("#assign .preview-table svg").waitFor();
  await see("compose");
  await page.getByLabel("Heading").fill("Week three");
  await page.getByLabel("Add a fault").selectOption("power_strip_off");
  await page.getByLabel("Add a fault").selectOption("charger_near");
  await page.getByLabel("Key of the assignment").fill("bio-101, week 3");
  await page.getByLabel("Attempts").fill("3");
  await page.getByLabel("Text before the first attempt").fill("Please do this before Tuesday.");
  await page.getByLabel("Text after the last check").fill("Hand in the file.");
  await page.locator(".qr svg").waitFor();
  const link = await student.linkWith(page, "Hand in the file.");
  await see("compose, two faults");
  await page.goto(link);
  await page.locator("#ask").waitFor();
  await see("link opened");
  await page.getByLabel(/student ID/i).fill("B7");
  await pressButton(page, "Start attempt 1 of 3");
  await page.locator(".plug").first().waitFor({ state: "attached" });
  await see("assignment under way");
  await visit(page, url, "#class");
  await page.locator(".intake").waitFor();
  await see("class, nothing yet");
  const folder = scratch();
  const bad = path.join(folder, "cake.json");
  writeFileSync(bad, "{\"format\": \"a cake\"}");
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Choose files")]);
  await chooser.setFiles([...classOfThirty(), bad]);
  await page.locator('.report[data-students="30"]').waitFor({ timeout: 60_000 });
  await see("class of thirty");
  await page.getByText("Gradebook file", { exact: true }).click();
  await page.getByText("Answer key", { exact: true }).click();
  await see("class, gradebook and answer key");
  await page.getByText("Gradebook file", { exact: true }).click();
  await page.getByText("Answer key", { exact: true }).click();
  await page.getByLabel("Show the student IDs").check();
  await page.getByRole("button", { name: /^Exceptions/ }).first().click();
  await page.getByLabel("Note to the student").fill("Was ill on Monday.");
  await see("class, a decision");
  await pressButton(page, "Save");
  await page.getByLabel("Show the student IDs").uncheck();
  await page.locator(".students .c-look button").first().click();
  await page.locator(".strip.is-measuring").waitFor({ state: "attached" });
  await page.locator(".debrief").waitFor();
  await see("an attempt looked at");
  await visit(page, url, "#class");
  await page.getByLabel("Fault", { exact: true }).selectOption("charger_near");
  await pressButton(page, "Show it");
  await page.locator("dialog.projector").waitFor();
  await student.frames(page, 10);
  await pressButton(page, "Pause");
  await pressButton(page, "Show its name");
  await see("fault shown to a room");
}

/** A package in a course site of cmi5: no other screens are so much of the site's. */
async function course({ page }, see) {
  const files = unpack(await pack("screens-cmi5.zip", "--standard", "cmi5"));
  const host = new Cmi5Host({ publisher: files.get("cmi5.xml").toString().match(/<au id="([^"]+)"/)[1] });
  const site = await serveSite("scorm12", files);
  const place = site.url.replace("/site", "/package/index.html");
  try {
    await host.serve(page.context());
    await page.goto(place + host.launch(host.register()));
    await page.locator("#ask").getByText("Your work goes to").waitFor();
    await see("what is sent");
    await pressButton(page, "Start attempt 1");
    await page.locator(".plug").first().waitFor({ state: "attached" });
    await page.getByText("The course site has everything up to now").waitFor();
    await see("bench in a course site");
      await student.record(page, 4);
      await student.fillSheet(page, { count: 5, seconds: 4, multiplier: 15, rate: 300 });
    await student.check(page);
    await page.locator(".handin").getByText("Points:").waitFor();
    await see("result in a course site");
    host.down = true;
    await pressButton(page, "Finish and submit");
    await page.getByText("The course site does not know yet that you are finished").waitFor();
    await see("the end could not be told");
    host.down = false;
    await pressButton(page, "Finish and submit");
    await page.locator("#calm").filter({ hasText: "You can close this browser tab" }).waitFor();
    await see("end of a visit");
    await page.reload();
    await page.locator("#calm").filter({ hasText: "This visit is over" }).waitFor();
    await see("a visit that is over");
  } finally {
    await site.stop();
  }
}

/** What the page may complain of there: records that do not exist yet, as xAPI tells it (404), and a network that fails once. */
course.expected = [/^\w+: https:\/\/records\.example\//, /Failed to load resource/];

/** Instead of a camera a canvas in the color of a fingertip, with a pulse of 72 beats/min. */
const fingerCanvas = () => {
  navigator.mediaDevices.getUserMedia = async () => {
    const canvas = Object.assign(document.createElement("canvas"), { width: 160, height: 120 });
    const context = canvas.getContext("2d");
    const draw = () => {
      const u = ((performance.now() / 1000) * 1.2) % 1;
      const blood = u < 0.16 ? u / 0.16 : (1 - u) / 0.84;
      for (let y = 0; y < 120; y += 8) for (let x = 0; x < 160; x += 8) {
        const grain = 3 * (Math.random() - 0.5);
        context.fillStyle = `rgb(${205 - 2.5 * blood + grain} ${62 - 2.5 * blood + grain} ${44 - 1.5 * blood + grain})`;
        context.fillRect(x, y, 8, 8);
      }
      requestAnimationFrame(draw);
    };
    draw();
    return canvas.captureStream(30);
  };
};

async function own({ page, url }, see) {
  await visit(page, url, "#own");
  await page.locator("#own .own-tap").waitFor();
  await see("own pulse, by touch");
  for (let k = 0; k < 5; k += 1) {
    await page.locator(".own-tap").press("Space");
    await student.frames(page, 20);
  }
  await see("own pulse, tapping");
  await page.locator(".own-two:not([hidden])").getByRole("button", { name: "Stop", exact: true }).click();
  await page.locator(".own-two:not([hidden]) .own-figures").waitFor();
  await see("own pulse, tapped");
  await page.locator('.own-chosen .seg[data-key="count"]').click();
  await see("own pulse, silent count");
  await pressButton(page, "Start on a beat");
  await see("own pulse, counting");
  await page.locator('.own-chosen .seg[data-key="camera"]').click();
  await see("own pulse, before the camera");
  await page.evaluate(() => {
    navigator.mediaDevices.getUserMedia = async () => {
      throw new DOMException("Permission denied", "NotAllowedError");
    };
  });
  await pressButton(page, "Start the camera");
  await page.locator('.own-two[data-state="failed"]').waitFor();
  await see("own pulse, no camera");
  await page.evaluate(fingerCanvas);
  await page.locator(".own-two:not([hidden])").getByRole("button", { name: "15 s", exact: true }).click();
  await pressButton(page, "Start the camera");
  await page.locator('.own-two[data-state="recording"]').waitFor();
  await see("own pulse, recording");
  await page.locator('.own-two[data-state="done"]').waitFor();
  await see("own pulse, recorded");
}

/** The parts of the walk; each begins on a page of its own. */
export const parts = { bench, after, kinds, reading, instructor, course, own };
