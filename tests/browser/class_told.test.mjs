// What the class's screen tells and what it keeps to itself: names of files while student IDs are hidden, and of whom its numbers are.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { deflateRawSync } from "node:zlib";
import { root, withPage } from "./lib.mjs";
import { classOfThirty } from "./screens.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };

async function open(page, button, files) {
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), student.pressButton(page, button)]);
  await chooser.setFiles(files);
}

async function opened(page, url) {
  await page.goto(`${url}#class`);
  await page.locator(".intake").waitFor();
}

const graded = (page) => page.waitForFunction(() => document.querySelector("#class .intake")?.dataset.busy === "" && /\d+ results;/.test(document.querySelector("#class .intake-wide [role=status]").textContent));

describe("what the screen of a class tells", { concurrency: 2 }, () => {
  test("a file's name can hold a student ID: it is hidden wherever student IDs are, and shown with them", async () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), "dicrotic-names-"));
    const [whole] = classOfThirty();
    const cut = path.join(folder, "s7654321.dicrotic-result.json"), cake = path.join(folder, "s7654322.json"), text = path.join(folder, "s7654323.txt"), good = path.join(folder, "s7654324.dicrotic-result.json");
    writeFileSync(cut, readFileSync(whole, "utf8").slice(0, 900));
    writeFileSync(cake, '{"format": "a cake"}');
    writeFileSync(text, "nothing in here");
    copyFileSync(whole, good);
    await withPage(wide, async ({ page, url }) => {
      await opened(page, url);
      await open(page, "Open the assignment", [good]);
      await page.locator(".given-wrong").getByText("It is a result, not an assignment.").waitFor();
      await page.getByText("Or paste the list").click();
      await page.getByLabel(/One student per line/).fill("code,name\ns7654321,Ada\ns7654321,Ben\n");
      await student.pressButton(page, "Use the list");
      await page.getByText(/Line 3: .* already on line 2\./).waitFor();
      await open(page, "Choose files", [cut, cake, text, good]);
      await graded(page);
      const shown = () => page.locator("#class").innerText();
      assert.doesNotMatch(await shown(), /s765432/, "a student ID stands on the screen while student IDs are hidden");
      const wrong = page.locator(".intake-wide .intake-wrong");
      assert.match(await wrong.innerText(), /File names can contain student IDs, so they are hidden\./);
      assert.match(await wrong.innerText(), /File 1[^]*File 2[^]*File 3/, "files that could not be used are not told apart");
      await page.getByLabel("Show the student IDs").check();
      for (const name of [/s7654321\.dicrotic-result\.json/, /s7654322\.json/, /s7654323\.txt/]) assert.match(await wrong.innerText(), name);
      assert.match(await page.locator(".given-wrong").innerText(), /s7654324\.dicrotic-result\.json/);
      assert.match(await page.locator(".roster-wrong").innerText(), /the student ID “s7654321” is already on line 2/);
      assert.doesNotMatch(await wrong.innerText(), /so they are hidden/);
      await page.getByLabel("Show the student IDs").uncheck();
      assert.doesNotMatch(await shown(), /s765432/, "hidden again, and still there");
    });
  });

  test("a screen opens at its top; what was told of files opened before goes with the next; a link beside codes has no name; a key needs an assignment", async () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), "dicrotic-manners-"));
    const codes = path.join(folder, "s7654325.txt"), empty = path.join(folder, "s7654326.txt");
    const toml = readFileSync(path.join(root, "scenarios/04-rest-pulse.toml"), "utf8");
    writeFileSync(empty, "nothing in here");
    writeFileSync(codes, `Here is mine: http://127.0.0.1/#a=${deflateRawSync(toml).toString("base64url")}\n`);
    await withPage({ viewport: { width: 390, height: 844 } }, async ({ page, url }) => {
      await page.goto(url);
      await page.locator("#start h1").waitFor();
      await page.evaluate(() => scrollTo(0, 1500));
      await page.waitForFunction(() => scrollY > 1000);
      await page.evaluate(() => { location.hash = "#class"; });
      await page.locator(".intake").waitFor();
      await page.waitForFunction(() => document.body.dataset.view === "class");
      assert.equal(await page.evaluate(() => scrollY), 0, "the screen opens where the one before was scrolled to");
      await page.getByText("Or paste the list").click();
      await page.getByLabel(/One student per line/).fill("code,name\ns7654325,Ada\n");
      await student.pressButton(page, "Use the list");
      await page.locator(".class-out summary").getByText("Answer key").click();
      await student.pressButton(page, "Save the answer key");
      await page.locator(".class-out").getByText("Open the assignment first. Only an assignment has an answer key.").waitFor();
      const wrong = page.locator(".intake-wide .intake-wrong");
      await open(page, "Choose files", [empty]);
      await wrong.getByText(/no result code/i).waitFor();
      await open(page, "Choose files", [codes]);
      await page.locator(".given-list").getByText("a link beside the result codes").waitFor();
      assert.equal(await wrong.innerText(), "", "what was wrong with the file before still stands");
      assert.doesNotMatch(await page.locator("#class").innerText(), /s765432/, "the name of a file with codes stands on the screen");
    });
  });

  test("what is counted says of whom, and who is not on the list is counted apart", async () => {
    const files = classOfThirty();
    await withPage(wide, async ({ page, url }) => {
      await opened(page, url);
      await open(page, "Choose files", files);
      await graded(page);
      await page.getByLabel("Show the student IDs").check();
      const codes = await page.$$eval("#class .students tbody tr", (rows) => rows.map((row) => row.dataset.code));
      const everybody = codes.length;
      assert.ok(everybody > 5, codes.join());
      assert.equal(await page.locator(".tiles-of").innerText(), `${everybody} students have submitted results. No list is open.`);
      // Two of them stand on the list, and somebody who handed in nothing.
      await page.getByText("Or paste the list").click();
      await page.getByLabel(/One student per line/).fill(`code,name\n${codes[0]},Ada\n${codes[1]},Ben\nnobody-yet,Cem\n`);
      await student.pressButton(page, "Use the list");
      await page.locator(".tile-unlisted").waitFor();
      assert.equal(await page.locator(".tiles-of").innerText(), "Of the 3 students on the list:");
      const count = async (tile) => Number((await page.locator(`${tile} b`).innerText()).match(/^\d+/)?.[0]);
      const tiles = await page.$$eval(".tiles .tile:not(.tile-unlisted) b", (all) => all.map((one) => one.textContent));
      assert.equal(tiles.reduce((sum, text) => sum + Number(text.match(/^\d+/)?.[0]), 0), 3, tiles.join());
      assert.ok(tiles.every((text) => /^\d+ of 3$/.test(text ?? "")), tiles.join());
      assert.equal(await count(".tile-absent"), 1);
      assert.equal(await count(".tile-unlisted"), everybody - 2);
      // A tile leads to as many lines as it counts.
      for (const tile of [".tile-absent", ".tile-tried", ".tile-ready", ".tile-unlisted"]) {
        await page.locator(tile).click();
        assert.equal(await page.locator(".students tbody tr").count(), await count(tile), tile);
        await page.locator(tile).click();
      }
    });
  });

  test("an attempt that is looked at says whose it is, and that a look changes nothing", async () => {
    const [file] = classOfThirty();
    await withPage(wide, async ({ page, url }) => {
      await opened(page, url);
      await open(page, "Choose files", [file]);
      await graded(page);
      await page.locator(".students [data-look]").first().click();
      await page.locator(".debrief").waitFor();
      assert.equal(await page.locator("#calm").innerText(), "This is an attempt of Student 1. You only look at it. Nothing that you do here changes it.");
      await page.goBack();
      await page.locator(".students [data-look]").first().waitFor();
      assert.equal(await page.locator("#calm").isVisible(), false);
    });
  });
});
