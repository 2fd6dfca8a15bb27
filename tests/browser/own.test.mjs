// Misreadings and hints that an instructor writes: in the form, handed out, and to the student in the instructor's words, as text.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { inflateRawSync } from "node:zlib";
import path from "node:path";
import { root, withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const HOSTILE = `<img src=x onerror="document.title='hit'"><b>both</b> bumps`;
const unpacked = (link) => inflateRawSync(Buffer.from(link.split("#a=")[1], "base64url")).toString("utf8");
const problem = (page, words) => page.locator("#assign .calm").filter({ hasText: words }).waitFor();
const calm = (page) => page.locator("#assign .calm").waitFor({ state: "hidden" });

describe("misreadings and hints of the instructor's own", { concurrency: 2 }, () => {
  test("are written in the form, refused where a right answer meets them, and travel with the link", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#assign`);
      await page.locator("#assign .preview-table svg").waitFor();
      const fields = await page.getByRole("link", { name: "All fields of a scenario file" }).getAttribute("href");
      const told = await (await page.request.get(`${url}${fields}`)).text();
      assert.match(told, /<code>misreading\[\]\.formula<\/code>/);
      await student.pressButton(page, "Add a misreading");
      const row = page.locator(".own-row").first();
      await row.getByLabel("Short name, for the class results").fill("Both bumps");
      await row.getByLabel("The wrong number, as a formula").fill("2 ** n");
      await problem(page, "Look at “The wrong number, as a formula”: The formula does not work");
      await row.locator(".field-wrong").waitFor();
      assert.ok(await page.getByRole("button", { name: "Copy the link" }).isDisabled());
      await row.getByLabel("The wrong number, as a formula").fill("n_true + 0");
      await problem(page, "Right answers give this number too");
      await row.getByLabel("The wrong number, as a formula").fill("2*n_true + 1");
      await calm(page);
      await row.getByLabel("Plus or minus").fill("much");
      await problem(page, "Look at “Plus or minus”");
      await row.getByLabel("Plus or minus").fill("1");
      await row.getByLabel("What the student reads").fill(HOSTILE);
      await student.pressButton(page, "Add a hint");
      const hint = page.locator(".own-row").nth(1);
      await hint.getByLabel("The step").selectOption("rate");
      await hint.getByLabel("The hint", { exact: true }).selectOption("rule");
      await hint.getByLabel("What the student reads").fill("See slide 12.");
      const text = unpacked(await student.linkWith(page, "See slide 12."));
      for (const part of ['name = "both_bumps"', 'formula = "2*n_true + 1"', "tolerance = 1", 'about = "rate"', 'rung = "rule"']) assert.ok(text.includes(part), `${part}\n${text}`);
      // Out again.
      await row.getByRole("button", { name: "Remove “both_bumps”" }).click();
      await page.waitForFunction(() => document.querySelectorAll(".own-row").length === 1);
      await page.getByLabel("Text after the last check").fill("Gone.");
      const left = unpacked(await student.linkWith(page, "Gone."));
      assert.ok(left.includes("See slide 12.") && !left.includes("[[misreading]]"), left);
    });
  });

  test("are told to the student as text, in the place of the built-in words", async () => {
    const file = readFileSync(path.join(root, "scenarios/54-given-window.toml"), "utf8");
    const own = `\n[[misreading]]\nname = "both"\nfield = "count"\nformula = "2 * n_true"\nwords = ${JSON.stringify(`You counted ${HOSTILE}.\nSecond line.`)}\n`
      + `\n[[hint]]\nabout = "count"\nrung = "look"\nwords = ${JSON.stringify(`Slide 12: ${HOSTILE}`)}\n`
      + `\n[[hint]]\nabout = "bumps"\nrung = "look"\nwords = ${JSON.stringify(`Slide 13: ${HOSTILE}`)}\n`;
    await withPage(wide, async ({ page, url }) => {
      await page.route("**/54-given-window.toml", (route) => route.fulfill({ body: `${file}${own}`, contentType: "application/toml" }));
      await student.openHalf(page, url, "given-window", 11);
      const asked = Number((await page.locator(".task-line").innerText()).match(/window of ([\d.]+) s/)[1]);
      const peaks = student.peaksOf(await student.savedRecording(page));
      const [a, b] = student.windowOf(peaks, asked, 29);
      await student.putCursors(page, a, b);
      const right = student.rightAnswers(peaks, a, b);
      await student.fillBlanks(page, { ...right, count: 2 * right.count, rate: 2 * right.rate, multiplier: `60/${asked}` });
      const first = await student.checkAll(page);
      const told = page.locator(".step .own-words");
      assert.deepEqual(await told.allInnerTexts(), [`You counted ${HOSTILE}.`, "Second line."], first.text);
      student.assertNoTruth(first, right.count);
      await page.locator(".hints .btn").click();
      assert.equal(await page.locator(".hint-text .pencil").innerText(), `Slide 13: ${HOSTILE}`);
      assert.equal(await page.locator(".debrief img, .hints img").count(), 0);
      assert.notEqual(await page.title(), "hit");
    });
  });
});
