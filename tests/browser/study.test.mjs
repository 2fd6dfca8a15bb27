// A test of a study: the question before it, once for a student on a device, and what becomes of the answer.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { host, root, withPage } from "./lib.mjs";
import { classOfThirty } from "./screens.mjs";
import * as student from "./student.mjs";

const pool = (name) => path.join(root, "scenarios", `${name}.toml`);

/** A study of two students with two benches a test; the links of each one's first test, by student ID. */
function planned(url) {
  const folder = mkdtempSync(path.join(os.tmpdir(), "dicrotic-study-"));
  const list = path.join(folder, "list.csv"), out = path.join(folder, "study");
  writeFileSync(list, "student ID\nAda-1\nBo-2\n");
  const tests = ["64-find-the-fault-02", "65-find-the-fault-03"].flatMap((name) => ["--test", pool(name)]);
  const run = spawnSync(host, ["study", "plan", "--id", "pulse-1", "--title", "Pulse", "--word", "oak and ash 7", "--roster", list, ...tests, "--out", out, "--at", url], { encoding: "utf8" });
  assert.equal(run.status, 0, run.stderr);
  const cells = (name) => readFileSync(path.join(out, name), "utf8").trim().split("\n").slice(1).map((line) => line.split(","));
  const links = new Map(cells("links.csv"));
  return new Map(cells("arms.csv").map(([code, , first]) => [code, links.get(first)]));
}

/** Begins a part of a course as a student. */
async function begin(page, link, code, part) {
  await page.goto("about:blank");
  await page.goto(link);
  await page.locator(".course-part").first().waitFor();
  await page.locator(".course-who input").fill(code);
  await page.locator(".course-part").nth(part).getByRole("link").click();
  await page.locator("#ask[open]").waitFor();
  await page.locator("#ask .btn-strong").click();
}

const question = (page) => page.locator("#ask[open] .consent");
const bench = (page) => page.locator(".plug").first().waitFor({ state: "attached" });

/** What the attempts that are kept on the device say about the study. */
const answers = (page) => page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes(":attempt:")).sort().map((key) => {
  const found = /\\?"do\\?":\\?"consent\\?"[^}]*/.exec(localStorage.getItem(key) ?? "");
  return found ? /true/.test(found[0]) : null;
}));

describe("a study's test", () => {
  test("asks once whether results may be used, opens whatever is answered, and keeps the answer with the attempt", async () => {
    await withPage({ viewport: { width: 390, height: 780 }, hasTouch: true }, async ({ page, url }) => {
      const links = planned(url);
      await begin(page, links.get("Ada-1"), "Ada-1", 0);
      await question(page).waitFor();
      const [yes, no] = [question(page).getByRole("button", { name: "Yes, use my results" }), question(page).getByRole("button", { name: "No, do not use them" })];
      // Neither answer is put before the other: same looks, no focus, large enough for a finger.
      const looks = (button) => button.evaluate((el) => [el.className, getComputedStyle(el).backgroundColor, el === document.activeElement, el.getBoundingClientRect().height >= 44]);
      assert.deepEqual(await looks(yes), await looks(no));
      assert.deepEqual((await looks(yes)).slice(2), [false, true]);
      const { violations } = await new AxeBuilder({ page }).include("#ask").analyze();
      assert.deepEqual(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`), []);
      await no.click();
      await bench(page);
      await student.kept(page);
      assert.deepEqual(await answers(page), [false]);
      // The second bench of the same student: not asked again, and told all the same.
      await begin(page, links.get("Ada-1"), "Ada-1", 1);
      await bench(page);
      await student.kept(page);
      assert.equal(await question(page).count(), 0);
      assert.deepEqual(await answers(page), [false, false]);
      // Another student of the same device is asked. Who turns away has said nothing, and works all the same.
      await begin(page, links.get("Bo-2"), "Bo-2", 0);
      await question(page).waitFor();
      await page.keyboard.press("Escape");
      await bench(page);
      await begin(page, links.get("Bo-2"), "Bo-2", 1);
      await question(page).waitFor();
      await page.keyboard.press("Tab");
      await page.keyboard.press("Enter");
      await bench(page);
      await student.kept(page);
      assert.deepEqual((await answers(page)).filter((said) => said !== null).sort(), [false, false, true]);
    });
  });

  test("says it in Spanish, too", async () => {
    await withPage({ viewport: { width: 1280, height: 900 }, locale: "es-ES" }, async ({ page, url }) => {
      await begin(page, planned(url).get("Ada-1"), "Ada-1", 0);
      await question(page).getByRole("heading", { name: "¿Podemos usar tus resultados?" }).waitFor();
      await question(page).getByRole("button", { name: "Sí, usen mis resultados" }).click();
      await bench(page);
      await student.kept(page);
      assert.deepEqual(await answers(page), [true]);
    });
  });
});

describe("the items of a class", () => {
  test("stand in a part of their own, a row for what was wrong in each scenario", async () => {
    const files = classOfThirty();
    await withPage({ viewport: { width: 1280, height: 900 } }, async ({ page, url }) => {
      await page.goto(`${url}#class`);
      await page.locator(".intake").waitFor();
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), student.pressButton(page, "Choose files")]);
      await chooser.setFiles(files);
      await page.locator('.report[data-students="30"]').waitFor({ timeout: 60_000 });
      await page.locator('.intake[data-busy=""]').waitFor();
      const items = page.locator(".class-items");
      assert.equal(await items.locator("table").count(), 0, "worked out before anybody looks");
      await items.locator("summary").focus();
      await page.keyboard.press("Enter");
      await page.locator(".class-items[data-rows]").waitFor();
      // As the command line has it, cell by cell.
      const out = path.join(mkdtempSync(path.join(os.tmpdir(), "dicrotic-items-")), "items.csv");
      const run = spawnSync(host, ["class", ...files, "--items", out], { encoding: "utf8" });
      assert.equal(run.status, 0, run.stderr);
      const lines = readFileSync(out, "utf8").trim().split("\n").slice(1).map((line) => line.match(/"[^"]*"|[^,]+|(?<=,)(?=,|$)/g).map((cell) => cell.replaceAll('"', "")));
      const rows = await items.locator("tbody tr").evaluateAll((all) => all.map((row) => [...row.querySelectorAll("td")].map((cell) => cell.textContent)));
      assert.ok(lines.length > 0);
      assert.deepEqual(rows.map(([n, right, discrimination, , minutes]) => [n, right, discrimination, Number(minutes)]),
        lines.map(([, n, right, discrimination, , , minutes]) => [n, `${Math.round(100 * Number(right))}%`, discrimination === "" ? "–" : discrimination, Number(minutes)]));
      assert.match(await items.locator("tbody th").first().innerText(), /Charger beside the sensor cable/);
      const { violations } = await new AxeBuilder({ page }).include(".class-items").analyze();
      assert.deepEqual(violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`), []);
    });
  });
});
