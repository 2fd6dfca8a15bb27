// A course: put together by an instructor, done part by part by a student, handed in as one file, read by class and command line.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { host, root, withPage } from "./lib.mjs";
import * as student from "./student.mjs";

const { pressButton } = student;
const wide = { viewport: { width: 1280, height: 900 } };
const HOSTILE = `<img src=x onerror="document.title='hit'">`;
const scratch = () => mkdtempSync(path.join(os.tmpdir(), "dicrotic-course-"));

/** Two assignments out of the project's scenarios, as an instructor has them on disk. */
function assignments(folder) {
  const assigned = (file, key) => {
    const text = readFileSync(path.join(root, "scenarios", file), "utf8");
    const at = path.join(folder, file);
    writeFileSync(at, `${text.split("\n[[attempt]]")[0]}\n[assignment]\nkey = "${key}"\nattempts = 2\npassword = "chalk and slate"\n`);
    return at;
  };
  return [assigned("58-what-is-it.toml", "week 1"), assigned("54-given-window.toml", "week 2")];
}

function ran(...args) {
  const done = spawnSync(host, args, { encoding: "utf8" });
  return { status: done.status, out: done.stdout, told: done.stderr };
}

async function choose(page, button, files) {
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, button)]);
  await chooser.setFiles(files);
}

async function save(page, name) {
  const [download] = await Promise.all([page.waitForEvent("download"), pressButton(page, name)]);
  return { name: download.suggestedFilename(), text: (await student.bytesOf(download)).toString("utf8") };
}

async function nameFault(page, fault) {
  await student.side(page, "name");
  const button = page.locator(`.fault-name[data-fault="${fault}"]`);
  await button.waitFor({ state: "attached" });
  if (!(await button.isVisible())) await page.locator(".impression", { has: button }).locator("summary").click();
  await button.click();
}

const told = (page) => page.locator(".course-parts[data-told]").waitFor({ state: "attached" });
const states = (page) => page.locator(".course-part").evaluateAll((all) => all.map((el) => [el.dataset.phase, el.dataset.state]));

describe("a course", { concurrency: 2 }, () => {
  test("from the form to the list, from the list to one file, and from the file to one line a student", async () => {
    const folder = scratch();
    const [one, two] = assignments(folder);
    let link = "";
    let file;
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#assign`);
      await page.locator("#assign .preview-table svg").waitFor();
      await page.locator(".course-maker > summary").click();
      await page.getByLabel("Title of the course").fill(`Two weeks ${HOSTILE}`);
      await page.getByLabel("Text above the list").fill(`One a week. ${HOSTILE}`);
      await choose(page, "Add assignment files or links", [one, two]);
      await page.waitForFunction(() => document.querySelectorAll(".course-making > li").length === 2);
      // The same bench twice cannot be told apart.
      await choose(page, "Add assignment files or links", [one]);
      await page.locator(".course-maker .problem").filter({ hasText: "Part 3: " }).waitFor();
      await page.locator(".course-making > li").nth(2).getByRole("button", { name: /^Remove/ }).click();
      await page.locator(".course-making > li").nth(0).getByLabel("Due").fill("2026-01-05T12:00");
      await page.locator(".course-making > li").nth(1).getByLabel("Opens").fill("2099-01-05T12:00");
      await page.waitForFunction(() => document.querySelector(".course-maker .address").textContent.includes("#c="));
      await page.waitForFunction(() => !document.querySelector(".course-maker .btn-strong").disabled);
      // What is being put together is there again after a reload.
      await page.reload();
      await page.waitForFunction(() => document.querySelector(".course-maker[open] .address")?.textContent.includes("#c="));
      assert.equal(await page.locator(".course-making > li").count(), 2);
      assert.equal(await page.getByLabel("Title of the course").inputValue(), `Two weeks ${HOSTILE}`);
      file = await save(page, "Save the course file");
      await page.waitForFunction(() => document.querySelector(".course-maker .address").textContent.includes("#c="));
      link = await page.locator(".course-maker .address").innerText();
      const { violations } = await new AxeBuilder({ page }).include(".course-maker").analyze();
      assert.deepEqual(violations.map((one) => one.id), []);
    });
    assert.match(file.name, /^two-weeks-[\w-]*\.toml$/);
    assert.ok(!file.text.includes("chalk"), "the instructor's word is in the file");
    const course = path.join(folder, file.name);
    writeFileSync(course, file.text);
    const checked = ran("course", course, "--check");
    assert.equal(checked.status, 0, checked.told);
    assert.match(checked.out, /valid, 2 parts[^]*1\. What is it\?, due 2026-01-05T/);

    let handed;
    await withPage(wide, async ({ page, url }) => {
      const address = `${url}${link.slice(link.indexOf("#"))}`;
      await page.goto(address);
      await told(page);
      assert.equal(await page.locator("#parts h1").innerText(), `Two weeks ${HOSTILE}`);
      assert.equal(await page.locator("#parts img").count(), 0);
      assert.deepEqual(await states(page), [["closed", "nothing"], ["later", "nothing"]]);
      assert.ok(await page.getByRole("button", { name: "Save one result file for all parts" }).isDisabled());
      const { violations } = await new AxeBuilder({ page }).include("#parts").analyze();
      assert.deepEqual(violations.map((found) => found.id), []);
      await page.getByLabel("Your student ID").fill("Ada 1");
      await page.getByRole("link", { name: "Open “What is it?”" }).click();
      await page.locator("#ask").waitFor();
      assert.equal(await page.locator("#ask").getByLabel(/student ID/i).inputValue(), "Ada 1", "it was typed already");
      await pressButton(page, "Start attempt 1 of 2");
      await nameFault(page, "finger_cold");
      await student.checkAll(page);
      await student.kept(page);
      await page.getByRole("link", { name: "Back to the course" }).click();
      await told(page);
      await page.locator('.course-part[data-state="checked"], .course-part[data-state="done"]').first().waitFor();
      // After a reload nobody's work is shown before somebody says who they are.
      await page.reload();
      await told(page);
      assert.deepEqual((await states(page)).map(([, state]) => state), ["nothing", "nothing"]);
      await page.getByLabel("Your student ID").fill("ada 1");
      await page.locator('.course-part[data-state="checked"], .course-part[data-state="done"]').first().waitFor();
      await page.waitForFunction(() => !document.querySelector("#parts .handin .btn-strong").disabled);
      handed = await save(page, "Save one result file for all parts");
      await pressButton(page, "Copy all result codes");
      assert.match(await page.getByLabel("The result codes, one line each").inputValue(), /^D3\.[\w-]+$/);
    });
    assert.match(handed.name, /^two-weeks-[\w-]*-ada-1\.dicrotic-course-result\.json$/);
    const result = path.join(folder, handed.name);
    writeFileSync(result, handed.text);
    const table = path.join(folder, "grades.csv");
    for (const set of [course, link]) {
      const graded = ran("grade", result, "--set", set, "--out", table);
      assert.equal(graded.status, 0, graded.told);
      assert.equal(readFileSync(table, "utf8").trim().split("\n").length, 2);
      assert.match(ran("class", result, "--set", set, "--names").out, /^ada 1 .*\(1: (not ready|ready) \d+, after its due date; 2: nothing submitted\)/m);
    }

    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#class`);
      await page.locator(".intake").waitFor();
      await choose(page, "Open the assignment", [course]);
      await page.locator('.given[data-n="2"]').waitFor({ state: "attached" });
      await choose(page, "Choose files", [result]);
      await page.locator("#class .students tbody tr").waitFor();
      const parts = page.locator("#class .line-parts li");
      assert.equal(await parts.count(), 2);
      assert.match(await parts.nth(0).innerText(), /\d+ points, after its due date$/);
      assert.equal(await parts.nth(1).innerText(), "nothing submitted");
      assert.match(await page.locator("#class .c-score").last().innerText(), /\d+ of 40$/);
    });
  });

  test("a link that is damaged or holds something else is told, and leads to the first screen", async () => {
    await withPage(wide, async ({ page, url }) => {
      const packed = (text) => page.evaluate(async (plain) => {
        const bytes = new Uint8Array(await new Response(new Blob([plain]).stream().pipeThrough(new CompressionStream("deflate-raw"))).arrayBuffer());
        return btoa(String.fromCharCode(...bytes)).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");
      }, text);
      await page.goto(url);
      const bad = ["x", await packed("no"), await packed("{}"), await packed('{"course":{"title":"t"},"part":[]}'), await packed('{"course":{"title":"t"},"part":[{"scenario":3}]}'), await packed(`{"course":{"title":"t"},"part":[${Array(21).fill('{"scenario":""}').join(",")}]}`)];
      for (const [k, address] of bad.entries()) {
        await page.goto(`${url}?bad=${k}#c=${address}`);
        await page.locator("#calm").filter({ hasText: "This link cannot be used." }).waitFor();
        assert.ok(await page.locator(".card a").count() > 1, "no list of scenarios");
      }
    });
  });
});
