// A question bank: the file that the page saves is the command line's, the first question is shown as it will be, and the page stays alive.
import { describe, test } from "node:test";
import { execFile } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { promisify } from "node:util";
import assert from "node:assert/strict";
import { AxeBuilder } from "@axe-core/playwright";
import { host, root, withPage } from "./lib.mjs";
import { unpack } from "./site.mjs";
import { pressButton } from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const phone = { viewport: { width: 390, height: 800 } };
const folder = mkdtempSync(path.join(tmpdir(), "dicrotic-bank-"));
const run = promisify(execFile);

const saidIn = (page) => page.locator(".bank .row [role=status]");

/** Opens the part of the screen, and asks for questions of the pulse at rest. */
async function openBank(page, url, { seed = "42", count = "3" } = {}) {
  await page.goto(`${url}#paper`);
  await page.locator(".bank summary").click();
  await page.getByLabel("Traces from").selectOption({ label: "A pulse at rest" });
  await page.getByLabel("Seed", { exact: true }).fill(seed);
  await page.getByLabel("Number of questions").fill(count);
  // What was shown before gives way to what is asked for now.
  await page.locator(`.bank-first[data-of="rest-pulse ${seed}"]`).waitFor();
  assert.equal(await page.locator(".bank-item").innerText(), "A pulse at rest: trace 1");
}

/** Saves the bank; its files by name. */
async function saved(page) {
  const coming = page.waitForEvent("download");
  await pressButton(page, "Save the question bank");
  const file = await coming;
  const kept = path.join(folder, file.suggestedFilename());
  await file.saveAs(kept);
  return { name: file.suggestedFilename(), files: unpack(kept) };
}

/** The same bank from the command line. */
async function fromLine(form, seed, count) {
  const out = path.join(folder, `line-${form}.zip`);
  await run(host, ["bank", path.join(root, "scenarios/04-rest-pulse.toml"), "--form", form, "--seed", seed, "--count", count, "--out", out]);
  return unpack(out);
}

describe("question bank", () => {
  for (const [form, label] of [["qti", "QTI 3, for a course site"], ["csv", "Table (CSV) with pictures"]]) {
    test(`${form}: what the page saves is what the command line writes`, async () => {
      await withPage(wide, async ({ page, url }) => {
        await openBank(page, url);
        await page.getByLabel("File", { exact: true }).selectOption({ label });
        const { name, files } = await saved(page);
        assert.equal(name, `rest-pulse-questions-${form}.zip`);
        const line = await fromLine(form, "42", "3");
        assert.equal(files.size, form === "qti" ? 7 : 4);
        assert.deepEqual([...files.keys()].sort(), [...line.keys()].sort());
        for (const [one, bytes] of files) assert.equal(bytes.toString(), line.get(one).toString(), one);
        assert.equal(await saidIn(page).innerText(), "Saved: 3 questions.");
      });
    });
  }

  test("the first question is shown with its picture and answers, as it stands in the file", async () => {
    for (const view of [wide, phone]) {
      await withPage(view, async ({ page, url }) => {
        await openBank(page, url, { count: "1" });
        const shown = page.locator(".bank-first");
        const answers = await shown.locator(".bank-answer").allInnerTexts();
        const right = await shown.locator(".bank-right .bank-answer").innerText();
        const picture = await shown.locator("svg").evaluate((one) => one.outerHTML);
        assert.ok(await shown.locator("svg").getAttribute("aria-label"));
        const { files } = await saved(page);
        const item = [...files].find(([name]) => name.startsWith("items/"))[1].toString();
        assert.deepEqual([...item.matchAll(/<qti-simple-choice [^>]*>([^<]*)</g)].map((found) => found[1]), answers);
        assert.equal(answers[Number(item.match(/<qti-value>ANSWER-(\d)/)[1]) - 1], right);
        const trace = /<path clip-path="[^"]*" fill="none"[^>]* d="([^"]+)"/;
        assert.equal(picture.match(trace)[1], [...files].find(([name]) => name.endsWith(".svg"))[1].toString().match(trace)[1]);
        const { violations } = await new AxeBuilder({ page }).analyze();
        assert.deepEqual(violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target)}`), []);
        assert.equal(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), true, "the page is wider than its window");
      });
    }
  });

  test("a number that cannot be is told beside its field, and nothing is made", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openBank(page, url);
      for (const [label, bad, why] of [["Number of questions", "0", /1 to 500/], ["Number of questions", "501", /1 to 500/], ["Number of questions", "two", /1 to 500/], ["Seed", "-1", /0 to 18446744073709551615/], ["Seed", "18446744073709551616", /0 to/]]) {
        const field = page.getByLabel(label, { exact: true });
        const good = await field.inputValue();
        await field.fill(bad);
        await page.locator(".bank-fields .problem").filter({ hasText: why }).waitFor();
        await pressButton(page, "Save the question bank");
        assert.equal(await page.getByRole("button", { name: "Stop" }).count(), 0, `${label} ${bad}`);
        await field.fill(good);
        assert.equal(await field.getAttribute("aria-invalid"), null);
      }
    });
  });

  test("while a large bank is made the page tells how far it is, answers, and can stop it", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openBank(page, url, { count: "500" });
      await pressButton(page, "Save the question bank");
      await saidIn(page).filter({ hasText: /^Question \d+ of 500$/ }).waitFor();
      // It answers meanwhile: a sheet goes and comes.
      await page.getByLabel("Worksheet", { exact: true }).uncheck();
      await page.locator('[data-sheet="worksheet"]').waitFor({ state: "detached" });
      assert.match(await saidIn(page).innerText(), /of 500$/);
      await pressButton(page, "Stop");
      await saidIn(page).filter({ hasText: "Stopped. No file was saved." }).waitFor();
      // And goes on to make another.
      await page.getByLabel("Number of questions").fill("2");
      assert.equal((await saved(page)).files.size, 5);
    });
  });

  test("the bench that was set last is among them, by the title that it has", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#assign`);
      await page.getByLabel("Heading", { exact: true }).fill("Ours <b>& theirs</b>");
      await page.locator(".out .address").filter({ hasText: "#a=" }).waitFor();
      await page.getByRole("link", { name: "On paper" }).click();
      await page.locator(".bank summary").click();
      await page.locator(".bank-item").filter({ hasText: "Ours <b>& theirs</b>: trace 1" }).waitFor();
      await page.getByLabel("Number of questions").fill("1");
      const { files } = await saved(page);
      const item = [...files].find(([name]) => name.startsWith("items/"))[1].toString();
      assert.match(item, / title="Ours &lt;b&gt;&amp; theirs&lt;\/b&gt;: trace 1"/);
    });
  });
});
