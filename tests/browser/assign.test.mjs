// What stands in the form of #assign is what is passed on, and what cannot be is told before anybody gets it.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { mkdtempSync, writeFileSync } from "node:fs";
import { inflateRawSync } from "node:zlib";
import os from "node:os";
import path from "node:path";
import { withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const { pressButton } = student;
const wide = { viewport: { width: 1280, height: 900 } };

async function openAssign(page, url) {
  await page.goto(`${url}#assign`);
  await page.locator("#assign .preview-table svg").waitFor();
}

const problem = (page, words) => page.locator("#assign .calm").filter({ hasText: words }).waitFor();
const unpacked = (link) => inflateRawSync(Buffer.from(link.split("#a=")[1], "base64url")).toString("utf8");

describe("what is passed on", { concurrency: 2 }, () => {
  test("a number that cannot be is in no link, and the message names the field and what stands there", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      const copy = page.getByRole("button", { name: "Copy the link" });
      for (const [field, bad, good] of [["Attempts", "200", "20"], ["Age, years", "400", "40"], ["Shortest counting window, s", "1", "15"]]) {
        await page.getByLabel(field, { exact: true }).fill(bad);
        await problem(page, `${field}: “${bad}” is not possible`);
        assert.ok(await copy.isDisabled());
        assert.equal(await page.locator(".out .address").innerText(), "", "an older link is still shown");
        assert.equal(await page.getByRole("link", { name: "Open it as a student" }).count(), 0);
        await page.getByLabel(field, { exact: true }).fill(good);
        await page.locator("#assign .calm").waitFor({ state: "hidden" });
      }
      await page.getByLabel("Text after the last check").fill("Twenty.");
      const text = unpacked(await student.linkWith(page, "Twenty."));
      assert.match(text, /^attempts = 20$/m);
      assert.match(text, /^age_years = 40/m);
    });
  });

  test("what does not fit together is told: a window beyond the recording, a loose and a tight strap, no fault to name", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      await page.getByLabel("Shortest counting window, s").fill("60");
      await problem(page, "Look at “Shortest counting window, s”");
      assert.equal(await page.getByLabel("Shortest counting window, s").getAttribute("aria-invalid"), "true");
      await page.getByLabel("Shortest recording, s").fill("60");
      await page.locator("#assign .calm").waitFor({ state: "hidden" });
      await page.getByLabel("Add a fault").selectOption("strap_loose");
      await page.getByLabel("Add a fault").selectOption("strap_tight");
      await problem(page, "strap_tight");
      for (const k of [1, 0]) await page.locator(".fault-row").nth(k).getByRole("button").click();
      await page.locator("#assign .calm").waitFor({ state: "hidden" });
      await page.getByLabel("What is asked").selectOption("name_fault");
      await problem(page, "no fault");
      await page.getByLabel("Add a fault").selectOption("moving");
      await page.locator("#assign .calm").waitFor({ state: "hidden" });
    });
  });

  test("where brief, criteria and faults do not fit together it is said, and a fault that nobody listed is added by one press", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      assert.equal(await page.locator(".agree").isVisible(), false);
      await page.getByLabel("Shortest recording, s").fill("30");
      await page.locator('.agree [data-code="brief_recording"]').filter({ hasText: "30 s" }).waitFor();
      await page.getByLabel("Finger, °C").fill("19");
      const cold = page.locator('.agree [data-code="unlisted"]').first();
      await cold.waitFor();
      await cold.getByRole("button", { name: /^Add “/ }).click();
      await cold.waitFor({ state: "detached" });
      assert.equal(await page.locator('.fault-row').count() > 0, true);
    });
  });

  test("a formula that cannot be stands marked in its own field, in words, and nothing can be packed meanwhile", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      await pressButton(page, "Add a misreading");
      const formula = page.locator('[data-field="misreading[0].formula"]');
      await formula.fill("2 * (n_true");
      const said = page.locator(".field-wrong");
      await said.filter({ hasText: "The formula does not work" }).waitFor();
      assert.equal(await formula.getAttribute("aria-describedby"), await said.getAttribute("id"));
      const save = page.getByRole("button", { name: "Save the package" });
      assert.ok(await save.isDisabled());
      await formula.fill("2 * n_true + 1");
      await said.waitFor({ state: "detached" });
      assert.equal(await formula.getAttribute("aria-invalid"), null);
      assert.ok(await save.isEnabled());
    });
  });

  test("of a bench that was handed out its word’s hash is kept and not shown, and another word replaces it", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      await page.getByLabel("Password for the true values (may stay empty)").fill("chalk and cheese");
      await page.getByLabel("Text after the last check").fill("With a word.");
      const text = unpacked(await student.linkWith(page, "With a word."));
      const hash = /^password = "(sha256:[^"]+)"/m.exec(text)?.[1];
      assert.ok(hash, text);
      const folder = mkdtempSync(path.join(os.tmpdir(), "dicrotic-"));
      writeFileSync(path.join(folder, "out.toml"), text);
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Open a scenario file")]);
      await chooser.setFiles(path.join(folder, "out.toml"));
      const word = page.getByLabel("Password for the true values (may stay empty)");
      await page.waitForFunction(() => document.querySelector('[data-field="assignment.password"]')?.placeholder.includes("kept"));
      assert.equal(await word.inputValue(), "");
      await page.getByLabel("Text after the last check").fill("The same word.");
      assert.ok(unpacked(await student.linkWith(page, "The same word.")).includes(hash), "the word was lost");
      await word.fill("slate and sponge");
      await page.getByLabel("Text after the last check").fill("Another word.");
      const other = unpacked(await student.linkWith(page, "Another word."));
      assert.ok(/^password = "sha256:/m.test(other) && !other.includes(hash));
    });
  });

  test("a file’s scripted attempts are not dropped without a word", async () => {
    const scripted = path.join(mkdtempSync(path.join(os.tmpdir(), "dicrotic-assign-")), "mine.toml");
    const head = 'id = "mine"\nlevel = 2\ntitle = "Mine"\naim = "a"\nbrief = "b"\n';
    const attempt = '[[attempt]]\nname = "waits"\nseed = 1\nsteps = [{ wait = 1.0 }]\nexpect = { passed = false }\n';
    writeFileSync(scripted, head + attempt + attempt);
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Open a scenario file")]);
      await chooser.setFiles(scripted);
      await page.locator(".assign-note").filter({ hasText: "mine.toml has 2 scripted attempts" }).waitFor();
    });
  });

  test("a link to this machine alone is told to be one, and another address makes another link", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      await page.locator(".out-at .problem").filter({ hasText: "this computer only" }).waitFor();
      const at = page.getByLabel("Address of the page for your students");
      await at.fill("https://course.example/pulse/?week=3#top");
      await page.waitForFunction(() => document.querySelector(".out .address").textContent.startsWith("https://course.example/pulse/#a="));
      assert.equal(await page.locator(".out-at .problem").innerText(), "");
      await at.fill("course page");
      await page.locator(".out-at .problem").filter({ hasText: "not a web address" }).waitFor();
    });
  });

  test("a course says what it still needs, and which parts look alike", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      await page.locator(".course-maker summary").first().click();
      const lacks = page.locator(".course-lacks");
      assert.equal(await lacks.innerText(), "");
      await pressButton(page, "Add the scenario of this form");
      await lacks.filter({ hasText: "The course needs a title. Then there is a link." }).waitFor();
      await page.getByLabel("Title of the course").fill("Pulse");
      await page.locator(".course-maker .address").filter({ hasText: "#c=" }).waitFor();
      assert.equal(await lacks.innerText(), "");
      await pressButton(page, "Add the scenario of this form");
      await lacks.filter({ hasText: /Two parts have the heading “.+”\./ }).waitFor();
    });
  });
});
