// A class of three hundred in the page: each in the right line, nothing lost by going about, saved and opened, out again.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { host, root, withPage } from "./lib.mjs";
import { classOfThreeHundred } from "./screens.mjs";
import * as student from "./student.mjs";

const { pressButton } = student;
const wide = { viewport: { width: 1280, height: 900 } };

async function open(page, button, files) {
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, button)]);
  await chooser.setFiles(files);
}

/** Waits until all that was given is graded: how much came in is told then. */
const graded = (page, students) => page.waitForFunction((n) => document.querySelector("#class .report")?.dataset.students === String(n)
  && document.querySelector("#class .intake")?.dataset.busy === "" && /^\d+ results;/.test(document.querySelector("#class .intake-wide [role=status]").textContent), students, { timeout: 120_000 });

async function save(page, button) {
  const [download] = await Promise.all([page.waitForEvent("download"), pressButton(page, button)]);
  return { name: download.suggestedFilename(), text: (await student.bytesOf(download)).toString("utf8") };
}

const stands = (page) => page.$$eval("#class .students tbody tr", (rows) => Object.fromEntries(rows.map((row) => [row.dataset.code, row.dataset.state])));

async function takeIn(page, url, made) {
  await page.goto(`${url}#class`);
  await page.locator(".intake").waitFor();
  await open(page, "Open the assignment", [made.assignment]);
  await open(page, "Open the list", [made.roster]);
  await open(page, "Choose files", made.files);
  await graded(page, 300);
}

describe("a class of three hundred", { concurrency: 1 }, () => {
  test("each is in the right line, on one screen stands who is ready, who is missing and what to talk about", async () => {
    const made = classOfThreeHundred();
    await withPage(wide, async ({ page, url }) => {
      const began = Date.now();
      await takeIn(page, url, made);
      console.log(`# three hundred results, from choosing files to the list: ${((Date.now() - began) / 1000).toFixed(1)} s`);
      await page.getByLabel("Show the student IDs").check();
      assert.deepEqual(await stands(page), Object.fromEntries(readFileSync(made.states, "utf8").trim().split("\n").map((line) => line.split(","))));
      // The whole of it without scrolling, once the list is where one looks.
      await page.locator(".class-results").evaluate((el) => el.scrollIntoView());
      for (const part of [".tiles", ".heat-misreadings li", ".heat-trace li", ".groups tbody tr >> nth=2"]) {
        const box = await page.locator(part).first().boundingBox();
        assert.ok(box && box.y >= 0 && box.y + box.height <= 900, `${part} is out of sight: ${JSON.stringify(box)}`);
      }
      assert.match(await page.locator(".tile-absent").innerText(), /15 of 300\s*nothing submitted/);
      assert.match(await page.locator(".heat-misreadings li").first().innerText(), /multiplier of another T\s*60 at first, 30 at last/);
      // Found, filtered, sorted.
      await page.locator(".tile-unusable").click();
      assert.equal(await page.locator(".students tbody tr").count(), 30);
      await page.locator(".tile-unusable").click();
      // From what is talked about to those whom it is about, and back.
      await page.locator('[data-about="misreadings:other_multiplier"]').click();
      assert.equal(await page.locator(".students tbody tr").count(), 60);
      assert.ok((await page.locator(".students tbody tr .remarks, .students tbody tr .c-wrong").allInnerTexts()).some((text) => /multiplier of another T/.test(text)));
      await page.getByRole("button", { name: /show all again/ }).click();
      assert.equal(await page.locator(".students tbody tr").count(), 300);
      // A reason stands beside whoever cannot be graded, and the other one of two alike is named.
      const told = await page.$$eval('.students tbody tr[data-state="unusable"], .students tbody tr[data-state="wrong_bench"]', (rows) => rows.filter((row) => !row.querySelector(".remarks")).length);
      assert.equal(told, 0, "somebody cannot be graded, and nobody says why");
      assert.ok((await page.locator(".students .remarks").allInnerTexts()).some((text) => /The same actions, with the same pauses, came from .*S-0/.test(text)));
      await page.getByLabel("Find a student").fill("s17@");
      assert.equal(await page.locator(".students tbody tr").count(), 1);
      await page.getByLabel("Find a student").fill("");
      await page.getByLabel("Group", { exact: true }).selectOption("Group B");
      assert.equal(await page.locator(".students tbody tr").count(), 100);
      await page.getByLabel("Group", { exact: true }).selectOption("");
      const { violations } = await new AxeBuilder({ page }).analyze();
      assert.deepEqual(violations.map((one) => `${one.id}: ${one.nodes.slice(0, 3).map((node) => node.target)}`), []);
      // On paper it takes two pages.
      const [, pages] = (await page.pdf({ format: "A4" })).toString("latin1").match(/\/Count (\d+)/) ?? [];
      assert.ok(pages === "1" || pages === "2", `${pages} pages`);
      await page.emulateMedia({ media: "print" });
      const hidden = await page.$$eval(".students tbody tr", (rows) => rows.filter((row) => row.getBoundingClientRect().height < 8).length);
      assert.equal(hidden, 0, "a student is not on paper");
    });
  });

  test("a second bench of one name is asked about, and what was set by mistake is taken back", async () => {
    const made = classOfThreeHundred();
    const folder = mkdtempSync(path.join(os.tmpdir(), "dicrotic-"));
    const set = readFileSync(made.assignment, "utf8");
    const easier = path.join(folder, "easier.toml");
    writeFileSync(easier, set.split("[[fault]]")[0].replace("name_faults = true", ""));
    const result = made.files.find((file) => /attempt-11\./.test(file)) ?? made.files[0];
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#class`);
      await page.locator(".intake").waitFor();
      await open(page, "Open the assignment", [made.assignment]);
      await page.locator(".given[data-n='1']").waitFor();
      assert.match(await page.locator(".given-list li").innerText(), /Faults: .+ and .+\. 3 attempts\./);
      await open(page, "Open the assignment", [easier]);
      await page.locator("dialog[open]").getByText("easier.toml has the same name but is another scenario.").waitFor();
      await pressButton(page, "Leave it as it was");
      assert.equal(await page.locator(".given-list li").count(), 1);
      await open(page, "Open the assignment", [easier]);
      await pressButton(page, "Assign both");
      await page.locator(".given[data-n='2']").waitFor();
      assert.equal(await page.getByText("Another scenario with this name is assigned too.").count(), 2);
      await page.getByRole("button", { name: /Remove .* \(easier\.toml\)/ }).click();
      await page.locator(".given[data-n='1']").waitFor();
      assert.equal(await page.getByText("Another scenario with this name is assigned too.").count(), 0);
      // A result is not what was set; a bench is no result.
      await open(page, "Open the assignment", [result]);
      await page.locator(".given-wrong").getByText("It is a result, not an assignment.").waitFor();
      await page.locator("summary", { hasText: "Or paste its link" }).click();
      await page.getByLabel("Link of the assignment or the course").fill("no link");
      await pressButton(page, "Use the link");
      await page.locator(".given-wrong").getByText("There is no link with an assignment in it.").waitFor();
      assert.equal(await page.locator(".given-wrong li").count(), 1, "what was told before outlives its cause");
      await open(page, "Choose files", [easier]);
      await page.locator("dialog[open]").getByText("easier.toml is a scenario or a course, not a result.").waitFor();
      await pressButton(page, "No, leave it out");
      await page.locator(".intake-wrong").getByText("It was left out").waitFor();
      assert.equal(await page.locator(".given-list li").count(), 1);
    });
  });

  test("nothing is lost by a look, by Back, by a reload, and what was decided goes along into the file and the gradebook", async () => {
    const made = classOfThreeHundred();
    const files = made.files.filter((file) => /S-00|S-01|attempt-(11|25|39)\./.test(file));
    await withPage(wide, async ({ page, url }) => {
      page.on("dialog", (dialog) => dialog.accept()); // leaving with something that no file holds asks first
      await page.goto(`${url}#class`);
      await page.locator(".intake").waitFor();
      await open(page, "Open the assignment", [made.assignment]);
      await page.getByText("Or paste the list").click();
      await page.getByLabel(/One student per line/).fill("code,name\nS-001,Ada\nS-001,Ben\n");
      await pressButton(page, "Use the list");
      await page.getByText("Line 3: the student ID is already on line 2.").waitFor();
      assert.match(await page.locator(".roster-said").innerText(), /One student is on the list/, "one line that is wrong takes the list along");
      await open(page, "Open the list", [made.assignment]);
      await page.getByText("This is not a list of students").waitFor();
      await open(page, "Open the list", [made.roster]);
      await open(page, "Choose files", files);
      await graded(page, 300);
      await page.getByLabel("Show the student IDs").check();
      await page.getByLabel("Find a student").fill("S-015");
      await page.getByRole("button", { name: /Exceptions for/ }).click();
      await page.getByLabel("Excused").check();
      await page.getByLabel("Note to the student").fill("ill; =1+1");
      await pressButton(page, "Save");
      await page.locator('.students tr[data-state="waived"]').waitFor();
      await page.getByLabel("Find a student").fill("");
      const before = await stands(page);
      const wrong = await page.locator(".intake-wide .intake-wrong li").allInnerTexts();
      assert.ok(wrong.length > 0);
      const look = page.locator(".students [data-look]").nth(3);
      await look.scrollIntoViewIfNeeded();
      await look.click();
      await page.locator(".debrief").waitFor();
      await page.goBack();
      await look.waitFor();
      assert.ok(await look.evaluate((el) => el === document.activeElement), "the place is lost");
      assert.deepEqual(await page.locator(".intake-wide .intake-wrong li").allInnerTexts(), wrong);
      await page.waitForFunction(() => document.documentElement.dataset.classKept);
      await page.reload();
      await graded(page, 300);
      await page.getByLabel("Show the student IDs").check();
      assert.deepEqual(await stands(page), before);
      assert.deepEqual(await page.locator(".intake-wide .intake-wrong li").allInnerTexts(), wrong);
      // Out to the course site, with titles of its own.
      await page.getByText("Gradebook file", { exact: true }).click();
      await page.getByLabel("Title of column 1").fill("SIS id");
      await page.getByLabel("Rows").selectOption("all");
      await page.getByLabel("Start with a byte order mark").check();
      const book = (await save(page, "Save the gradebook")).text;
      assert.ok(book.startsWith("\ufeffSIS id,name,points,most points,feedback\r\n") || book.startsWith("\ufeffSIS id,name,points,"), book.slice(0, 80));
      assert.equal(book.trim().split("\r\n").length, 301);
      const ill = book.split("\r\n").find((line) => line.startsWith("S-015"));
      assert.match(ill, /,20,"Excused\. ill;' =1\+1"$/, "a formula where semicolons divide");
      // To the file, and back from it in another tab.
      const kept = await save(page, "Save the class");
      const file = path.join(mkdtempSync(path.join(os.tmpdir(), "dicrotic-class-")), kept.name);
      writeFileSync(file, kept.text);
      await pressButton(page, "Delete all");
      await pressButton(page, "Keep it");
      assert.ok((await page.locator(".students tbody tr").count()) > 0, "forgotten without a yes");
      await pressButton(page, "Delete all");
      await pressButton(page, "Delete it");
      await page.locator(".class-results").waitFor({ state: "hidden" });
      await open(page, "Open a saved class", [file]);
      await graded(page, 300);
      await page.getByLabel("Show the student IDs").check();
      assert.deepEqual(await stands(page), before);
      assert.equal(await page.locator(".class-changes").count(), 0);
      // Stricter: what changes is told.
      const strict = path.join(path.dirname(file), "strict.toml");
      writeFileSync(strict, `${readFileSync(made.assignment, "utf8")}\n[pass]\nwindow_s = 30.0\nrecord_s = 30.0\n`);
      await open(page, "Open the assignment", [strict]);
      await page.locator(".class-changes").waitFor();
      await graded(page, 300);
      const after = await stands(page);
      const changed = Object.keys(before).filter((code) => before[code] !== after[code]);
      assert.ok(changed.length > 0 && changed.every((code) => before[code] === "ready" && after[code] === "tried"), JSON.stringify(changed));
      assert.match(await page.locator(".class-changes summary").innerText(), /\d+ students’ results changed/);
      // The answer key: three tries for each of the list. What was opened is the instructor's own file, with the word in it.
      await page.getByText("Answer key", { exact: true }).click();
      // It is made beside the page, which goes on meanwhile, and it can be stopped.
      await pressButton(page, "Save the answer key");
      await page.getByText(/^[1-9]\d* of 300 students$/).waitFor();
      await page.locator(".class-out").getByRole("button", { name: "Stop", exact: true }).click();
      await page.getByText("Stopped. No file was saved.").waitFor();
      await page.evaluate(() => {
        globalThis.longest = 0;
        new PerformanceObserver((list) => list.getEntries().forEach(({ duration }) => (globalThis.longest = Math.max(globalThis.longest, duration)))).observe({ type: "longtask" });
      });
      const key = (await save(page, "Save the answer key")).text.trim().split("\n");
      console.log(`# the longest task of the page while the answer key of 300 was made: ${await page.evaluate(() => globalThis.longest)} ms`);
      assert.equal(key.length, 1 + 3 * 300);
      // The command line makes the same, student by student in one go.
      const out = path.join(path.dirname(file), "key.csv");
      execFileSync(host, ["class", "--roster", made.roster, "--set", made.assignment, "--answers", out], { cwd: root, stdio: "pipe" });
      assert.deepEqual(key, readFileSync(out, "utf8").trim().split("\n"));
      assert.match(key[1], /^S-001,"Student 1, the 1th",Group A,1,\d+,power_strip_off charger_near,1\.00 0\.80,\d\d\.\d$/);
    });
  });

  test("grading goes on beside the page and can be stopped", async () => {
    const made = classOfThreeHundred();
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#class`);
      await page.locator(".intake").waitFor();
      await open(page, "Choose files", made.files);
      await page.getByRole("button", { name: "Stop grading" }).waitFor();
      await page.waitForFunction(() => document.querySelectorAll("#class .students tbody tr").length > 3);
      await pressButton(page, "Stop grading");
      await page.getByText(/Stopped\. \d+ results were not graded\./).waitFor();
      const students = Number(await page.locator(".report").getAttribute("data-students"));
      assert.ok(students > 3 && students < 260, `${students}`);
    });
  });
});
