// What is kept: the notebook with its exports and its printed report, the skill map after passes and failures, and that a kept
// attempt gives the same debrief wherever it is replayed.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { host, root, withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const { checkAll, fillBlanks, openHalf, pressButton, putCursors, rightAnswers } = student;

/** One trial in a given window, right or with three beats too many; returns its answers. */
async function trial(page, url, seed, { right = true } = {}) {
  await openHalf(page, `${url}?${seed}`, "given-window", seed);
  const asked = Number((await page.locator(".task-line").innerText()).match(/window of ([\d.]+) s/)[1]);
  const peaks = student.peaksOf(await student.savedRecording(page));
  const [a] = student.windowOf(peaks, asked, 29.5);
  await putCursors(page, a, a + asked);
  const answers = rightAnswers(peaks, a, a + asked);
  if (!right) Object.assign(answers, { count: answers.count + 3, rate: Math.round((60 * (answers.count + 3)) / asked) });
  await fillBlanks(page, { ...answers, uncertainty: Math.round(60 / asked) });
  const debrief = await checkAll(page);
  assert.equal(debrief.firstOpen, right ? null : "The count, N", debrief.text);
  return answers;
}

async function turnTo(page, hash) {
  await page.evaluate((to) => (location.hash = to), hash);
  await page.locator(`${hash.split("=")[0]} h1`).waitFor();
}

const saved = async (page, name) => {
  const [download] = await Promise.all([page.waitForEvent("download"), pressButton(page, name)]);
  return (await student.bytesOf(download)).toString("utf8");
};

describe("what is kept", { concurrency: 2 }, () => {
  test("the notebook: a page a trial, notes, exports, deleted and put back, gone for good after that", async () => {
    await withPage(wide, async ({ page, url }) => {
      await trial(page, url, 12, { right: false });
      const answers = await trial(page, url, 11);
      await turnTo(page, "#notebook");
      const pages = page.locator(".trial-page");
      assert.equal(await pages.count(), 2);
      assert.match(await pages.first().innerText(), /seed 11/, "the latest does not lie on top");
      assert.match(await pages.first().innerText(), new RegExp(`${answers.count} beats`));
      assert.match(await pages.first().innerText(), /Correct at the first check/);
      assert.match(await pages.nth(1).innerText(), /First step that is not correct at check 1: The count, N/);
      assert.ok((await pages.first().locator(".pic-line").getAttribute("d")).length > 2000, "no strip on the page");
      await pages.first().getByLabel("Notes").fill("=calm, seated");
      await pages.first().getByLabel("Notes").press("Tab");

      const json = JSON.parse(await saved(page, "Export as JSON"));
      assert.deepEqual(json.pages.map((one) => [one.seed, one.check.passed]), [["11", true], ["12", false]]);
      assert.equal(json.pages[0].read.count, String(answers.count));
      const [head, ...lines] = (await saved(page, "Export as CSV")).trim().split("\r\n");
      assert.equal(lines.length, 2);
      const cell = (name) => lines[0].split(/,(?=(?:[^"]*"[^"]*")*[^"]*$)/)[head.split(",").indexOf(name)];
      assert.equal(cell("rate"), String(answers.rate));
      assert.equal(cell("note"), "\"'=calm, seated\"", "a note that a spreadsheet would take for a formula");

      await pages.nth(1).getByRole("button", { name: /^Delete/ }).click();
      assert.equal(await pages.count(), 1);
      await pressButton(page, "Undo");
      assert.equal(await pages.count(), 2);
      await pressButton(page, "Delete all pages");
      assert.equal(await pages.count(), 0);
      await page.reload();
      await page.getByText("No attempt yet").waitFor();
    });
  });

  test("a store that is full or off is told, and the attempt goes on", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.addInitScript(() => {
        Storage.prototype.setItem = () => {
          throw new DOMException("full", "QuotaExceededError");
        };
      });
      await trial(page, url, 13);
      await page.locator("#calm").filter({ hasText: "is not in the notebook" }).waitFor();
      await turnTo(page, "#notebook");
      await page.getByText("No attempt yet").waitFor();
    });
  });

  test("the report: one or two pages on A4 and on Letter, with strip, readings and caution, no controls", async () => {
    await withPage({ ...wide, colorScheme: "dark" }, async ({ page, url }) => {
      const answers = await trial(page, url, 11);
      await pressButton(page, "Report for printing");
      await page.locator(".report-sheet").waitFor();
      const text = await page.locator(".report-sheet").innerText();
      for (const part of ["A counting window of a given length", `${answers.rate} beats/min`, "For teaching, not for diagnosis", "Pre-lab rubric"]) assert.ok(text.includes(part), `${part} is not in: ${text}`);
      for (const format of ["A4", "Letter"]) {
        const pdf = (await page.pdf({ format })).toString("latin1");
        const count = Math.max(...[...pdf.matchAll(/\/Count (\d+)/g)].map((found) => Number(found[1])));
        assert.ok(count === 1 || count === 2, `${count} pages of ${format}`);
      }
      await page.emulateMedia({ media: "print" });
      for (const control of [".report-tools", ".top", ".foot"]) await page.locator(control).waitFor({ state: "hidden" });
      assert.equal(await page.locator(".report-sheet").evaluate((el) => getComputedStyle(el).backgroundColor), "rgb(255, 255, 255)");
      const line = await page.locator(".pic-line").evaluate((el) => getComputedStyle(el).stroke.match(/\d+/g).slice(0, 3).map(Number));
      assert.ok(Math.max(...line) < 110, `the strip is printed in ${line}`);
    });
  });

  test("the skill map: right and wrong steps move its estimates, it says what is wanting, and it proposes what is next", async () => {
    await withPage(wide, async ({ page, url }) => {
      const card = (skill) => page.locator(`.skill[data-skill="${skill}"]`);
      const stateOf = (skill) => card(skill).locator(".skill-state").innerText();
      // The estimate and both its bounds: all are told in tenths, and a step may move only one of them to the next.
      const estimateOf = async (skill) => (await card(skill).locator(".skill-sure").innerText()).match(/\d+/g).map(Number);
      await page.goto(`${url}#skills`);
      await page.locator("#skills h1").waitFor();
      assert.equal(await page.locator(".skill[data-skill]").count(), 12);
      assert.equal(await stateOf("counting"), "not started");
      await trial(page, url, 11);
      await turnTo(page, "#skills");
      assert.equal(await stateOf("counting"), "in practice");
      assert.match(await card("counting").innerText(), /1 of your last 1 steps correct/);
      const once = await estimateOf("counting");
      await trial(page, url, 12, { right: false });
      await turnTo(page, "#skills");
      assert.match(await card("counting").innerText(), /1 of your last 2 steps correct.*Not sure yet/s);
      const twice = await estimateOf("counting");
      assert.ok(twice.every((tenths, k) => tenths <= once[k]) && String(twice) !== String(once), `a wrong step did not lower the estimate: ${once}, then ${twice}`);
      assert.match(await card("arithmetic").innerText(), /of your last \d steps correct.*One more with another fault or scenario/s);
      assert.match(await page.locator(".skills-go").innerText(), /\w+: not started\./);
      assert.match(await page.locator(".skills-go a").getAttribute("href"), /^#s=[\w-]+&seed=\d+$/);
      await card("counting").locator("summary").click();
      assert.equal(await card("counting").locator(".skill-past li").count(), 2);
      const json = JSON.parse(await saved(page, "Export as JSON"));
      assert.equal(json.attempts.length, 2);
      await pressButton(page, "Delete all attempts");
      assert.equal(await stateOf("counting"), "not started");
      await pressButton(page, "Undo");
      assert.equal(await stateOf("counting"), "in practice");
    });
  });

  test("a scenario that is begun again under its seed gives no credit, and a notebook's file brings all of it back", async () => {
    await withPage(wide, async ({ page, url }) => {
      await trial(page, url, 12, { right: false });
      await turnTo(page, "#skills");
      const card = page.locator('.skill[data-skill="counting"]');
      const before = await card.locator(".skill-sure").innerText();
      // The same bench from the start, now that it was told what is wrong.
      await page.evaluate(() => {
        const key = Object.keys(localStorage).find((one) => one.endsWith(":history"));
        const [first] = JSON.parse(localStorage.getItem(key));
        const right = first.judged.map((step) => ({ ...step, right: true }));
        localStorage.setItem(key, JSON.stringify([first, { ...first, passed: true, tries: 1, judged: right, at_ms: first.at_ms + 60000 }]));
      });
      await page.reload();
      await card.waitFor();
      assert.equal(await card.locator(".skill-sure").innerText(), before);
      assert.match(await page.locator(".skills-without").innerText(), /Same scenario and seed again, no credit: 1/);

      await turnTo(page, "#notebook");
      const text = await saved(page, "Export as JSON");
      const file = JSON.parse(text);
      assert.deepEqual([file.format, file.version, file.pages.length, file.attempts.length], ["dicrotic-notebook", 2, 1, 2]);
      assert.equal(file.learner.form, 1);
      assert.ok(file.learner.skills.counting.var > 0 && Number.isFinite(file.learner.skills.counting.mean));
      await page.evaluate(() => localStorage.clear());
      await page.reload();
      await page.getByText("No attempt yet").waitFor();
      const read = async (name, words) => {
        const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Read a notebook file")]);
        await chooser.setFiles({ name, mimeType: "application/json", buffer: Buffer.from(words) });
      };
      await read("other.json", '{"format": "another"}');
      await page.getByText("This file is not a notebook of this page.").waitFor();
      await read("dicrotic-notebook.json", text);
      await page.locator("#notebook .undo").getByText("Read from the file. Pages: 1. Attempts: 2.").waitFor();
      assert.equal(await page.locator(".trial-page").count(), 1);
      assert.equal(await saved(page, "Export as JSON"), text, "what was read back is not what was written");
      await turnTo(page, "#skills");
      assert.equal(await card.locator(".skill-sure").innerText(), before);
    });
  });

  test("a kept attempt gives the same debrief live, replayed in the page, and replayed natively", async () => {
    await withPage(wide, async ({ page, url }) => {
      await trial(page, url, 14, { right: false });
      await pressButton(page, "A hint");
      await page.locator(".hint-text").filter({ hasText: /\w/ }).waitFor();
      await student.kept(page);
      const { kept, live, again } = await page.evaluate(async () => {
        const { Lab } = await import(new URL("wasm/dicrotic.js", location.href).href);
        const text = JSON.parse(localStorage.getItem("dicrotic:attempt:given-window:14")).saved;
        return { kept: text, live: JSON.parse(localStorage.getItem("dicrotic:page:given-window:14")).hash, again: Lab.restore(text).debriefHash() };
      });
      assert.match(live, /^[0-9a-f]{64}$/);
      assert.equal(again, live);
      const folder = mkdtempSync(path.join(os.tmpdir(), "dicrotic-replay-"));
      try {
        writeFileSync(path.join(folder, "attempt.json"), kept);
        const native = execFileSync(host, ["replay", path.join(folder, "attempt.json")], { cwd: root, encoding: "utf8" });
        assert.match(native, new RegExp(`\\b${live}\\b`));
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    });
  });
});
