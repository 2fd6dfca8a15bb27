// What goes on paper: sheets of the bench that is being set, one page each, none of which tells a student what is wrong.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { AxeBuilder } from "@axe-core/playwright";
import { withPage } from "./lib.mjs";
import { pressButton } from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const FAULTS = ["charger_near", "strap_loose"];

/** The number of pages of a PDF: its leaves of the page tree. */
const pagesOf = (pdf) => (pdf.toString("latin1").match(/\/Type\s*\/Page[^s]/g) ?? []).length;

/** Sets a bench with two faults and two tries, then opens the sheets. */
async function openSheets(page, url) {
  await page.goto(`${url}#assign`);
  for (const fault of FAULTS) await page.getByLabel("Add a fault").selectOption(fault);
  await page.locator(".out .address").filter({ hasText: "#a=" }).waitFor();
  await page.getByRole("link", { name: "On paper" }).click();
  await page.locator(".paper-sheet").first().waitFor();
}

describe("on paper", () => {
  test("three sheets and a key, each a page of A4 or Letter, and only the key says what is wrong", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openSheets(page, url);
      const kinds = () => page.locator(".paper-sheet").evaluateAll((all) => all.map((one) => one.dataset.sheet));
      assert.deepEqual(await kinds(), ["handout", "worksheet", "station"]);
      const names = await page.evaluate(async (faults) => (await (await import(new URL("js/faults/words.js", document.baseURI).href)).faultWords()).faults.filter(({ id }) => faults.includes(id)).map(({ name, cause }) => [name, cause]), FAULTS);
      const told = await page.locator(".paper-sheets").innerText();
      for (const word of names.flat()) assert.ok(!told.includes(word), `a student reads: ${word}`);
      await page.getByLabel("Instructor’s sheet", { exact: true }).check();
      await page.locator('[data-sheet="key"]').waitFor();
      const key = await page.locator('[data-sheet="key"]').innerText();
      for (const word of names.flat()) assert.ok(key.includes(word), word);
      for (const format of ["A4", "Letter"]) assert.equal(pagesOf(await page.pdf({ format })), 4, format);
      const { violations } = await new AxeBuilder({ page }).analyze();
      assert.deepEqual(violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target)}`), []);
    });
  });

  test("the handout says what the page asks, and its picture is that of the link with the address that is given", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openSheets(page, url);
      const handout = page.locator('[data-sheet="handout"]');
      const asked = await handout.locator("section").first().locator("li").allInnerTexts();
      const points = await handout.locator(".paper-points li").allInnerTexts();
      assert.match(await handout.innerText(), /You have 2 attempts\./);
      assert.match(await page.locator(".paper-tools").innerText(), /this computer only/);
      const before = await handout.locator(".paper-link svg").innerHTML();
      await page.getByLabel(/address/i).fill("https://lab.example/bench/");
      await page.waitForFunction((old) => document.querySelector(".paper-link svg")?.innerHTML !== old, before);
      assert.doesNotMatch(await page.locator(".paper-tools").innerText(), /this computer only/);
      // Typed once, the address stands wherever a link is made; the page's own puts it away again.
      await page.goto(`${url}#assign`);
      await page.locator(".out .address").filter({ hasText: "https://lab.example/bench/#a=" }).waitFor();
      await page.getByLabel(/address/i).first().fill(url);
      await page.locator(".out .address").filter({ hasText: url }).waitFor();
      // The student who opens it is asked the same.
      const link = await page.locator(".out .address").filter({ hasText: "#a=" }).innerText();
      await page.goto("about:blank");
      await page.goto(link);
      await page.getByLabel(/student ID/i).first().fill("A12");
      await pressButton(page, "Start attempt 1 of 2");
      await page.locator(".asked-list").waitFor({ state: "attached" });
      assert.deepEqual(await page.locator(".asked-list li").evaluateAll((all) => all.map((one) => one.textContent)), asked);
      await page.locator(".asked-points").evaluate((one) => { one.open = true; });
      await page.locator(".asked-points li").first().waitFor({ state: "attached" });
      assert.deepEqual(await page.locator(".asked-points li").evaluateAll((all) => all.map((one) => one.textContent)), points);
    });
  });

  test("blanks on the worksheet are those of the question", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#assign`);
      await page.getByLabel("What is asked").selectOption("compare");
      await page.locator(".out .address").filter({ hasText: "#a=" }).waitFor();
      await page.getByRole("link", { name: "On paper" }).click();
      const lines = page.locator('[data-sheet="worksheet"] .paper-reading .paper-line');
      await lines.first().waitFor();
      assert.equal(await lines.count(), 7);
      // Those of each window stand under its head, as on the page.
      const windows = page.locator('[data-sheet="worksheet"] .paper-two-windows > div');
      assert.deepEqual(await windows.locator("h4").allInnerTexts(), ["Counting window 1", "Counting window 2"]);
      assert.deepEqual([await windows.nth(0).locator(".paper-line").count(), await windows.nth(1).locator(".paper-line").count()], [3, 4]);
    });
  });
});
