// Setting a bench for a class, passing it on, handing in, and what the class handed in.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { host, launch, root, startServer, withPage } from "./lib.mjs";
import { classOfThirty } from "./screens.mjs";
import * as student from "./student.mjs";

const { choose, pressButton } = student;
const wide = { viewport: { width: 1280, height: 900 } };
const HOSTILE = `<img src=x onerror="document.title='hit'"><b>"'&`;

const scratch = () => mkdtempSync(path.join(os.tmpdir(), "dicrotic-hand-"));

async function openAssign(page, url) {
  await page.goto(`${url}#assign`);
  await page.locator("#assign .preview-table svg").waitFor();
}

/** Composes a bench with two faults; the link. */
async function compose(page) {
  await page.getByLabel("Heading").fill(`Week three ${HOSTILE}`);
  await page.getByLabel("Add a fault").selectOption("power_strip_off");
  await page.getByLabel("Add a fault").selectOption("charger_near");
  const mildest = page.getByLabel("“Charger beside the sensor cable”: mildest");
  await mildest.fill("0.6");
  await page.getByLabel("Heart rate at rest, beats/min").fill("66");
  await page.getByLabel("Early beats, per min").fill("0");
  await page.getByLabel("Power line", { exact: true }).selectOption("60/120");
  await page.getByLabel("Key of the assignment").fill("bio-101, week 3");
  await page.getByLabel("Attempts").fill("3");
  await page.getByLabel("Text before the first attempt").fill(`Please do this before Tuesday. ${HOSTILE}`);
  await page.getByLabel("Text after the last check").fill("Hand in the file.");
  return student.linkWith(page, "Hand in the file.");
}

/** Opens a link as a student with a code. */
async function begin(page, link, code) {
  await page.goto(link);
  await page.locator("#ask").waitFor();
  await page.getByLabel(/student ID/i).fill(code);
  await pressButton(page, "Start attempt 1 of 3");
  await page.locator(".plug").first().waitFor({ state: "attached" });
}

async function save(page, name) {
  const [download] = await Promise.all([page.waitForEvent("download"), pressButton(page, name)]);
  return { name: download.suggestedFilename(), text: (await student.bytesOf(download)).toString("utf8") };
}

describe("a class", { concurrency: 2 }, () => {
  test("a bench is composed, saved, accepted by the command line, and opened again as it was", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      await compose(page);
      const file = await save(page, "Save the scenario file");
      assert.match(file.name, /^week-three-[\w-]*\.toml$/);
      assert.match(file.text, /^# How it is handed out/m);
      const saved = path.join(scratch(), file.name);
      writeFileSync(saved, file.text);
      const checked = spawnSync(host, ["check", saved], { encoding: "utf8" });
      assert.equal(checked.status, 0, checked.stderr);
      // Reading it back gives the same file.
      await page.getByLabel("Start with").selectOption({ label: "A thick, noisy trace" });
      assert.equal(await page.getByLabel("Heading").inputValue(), "A thick, noisy trace");
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Open a scenario file")]);
      await chooser.setFiles(saved);
      await page.waitForFunction(() => [...document.querySelectorAll(".fault-row b")].length === 2);
      assert.equal((await save(page, "Save the scenario file")).text, file.text);
      // What cannot be is told, and nothing is passed on meanwhile.
      await page.getByLabel("Key of the assignment").fill("");
      await page.locator("#assign .calm").filter({ hasText: "Look at “Key of the assignment”" }).waitFor();
      assert.ok(await page.getByRole("button", { name: "Copy the link" }).isDisabled());
    });
  });

  test("the preview of fairness is worked out and shows why a tolerance round the mean is not used", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      await page.locator('.fairness[data-students="400"]').waitFor({ timeout: 90_000 });
      const shares = (await page.locator(".fair-value").allInnerTexts()).map((text) => parseFloat(text));
      const [own, exact, two, three, four] = shares;
      assert.ok(own < 1 && exact < 10, `${shares}`);
      assert.ok(two > 20 && two >= three && three >= four, `${shares}`);
    });
  });

  test("a link gives the same bench in two browsers, another to a neighbour, and nothing of it goes over the wire", async () => {
    const server = await startServer();
    const browsers = [await launch(), await launch()];
    try {
      const first = await (await browsers[0].newContext(wide)).newPage();
      await openAssign(first, server.url);
      const link = await compose(first);
      console.log(`# a link with two faults and texts: ${link.length} characters`);
      assert.ok(link.length < 1500, `${link.length}`);
      const seeds = [], hashes = [];
      for (const [browser, code] of [[browsers[0], "Group A-01"], [browsers[1], " group a 01"], [browsers[1], "Group A-02"]]) {
        const page = await (await browser.newContext(wide)).newPage();
        const asked = [];
        page.on("request", (request) => asked.push(request.url()));
        await begin(page, link, code);
        seeds.push((await page.locator(".where .seed").innerText()).replace("seed ", ""));
        assert.ok(asked.every((one) => !one.includes("a=")), "the link's content was asked for");
        hashes.push(await page.evaluate(async ([packed, seed]) => {
          const { unpackText } = await import("./js/hand/link.js");
          const { fingerprint } = await import("./wasm/dicrotic.js");
          return fingerprint(await unpackText(packed), seed, 200_000);
        }, [link.split("#a=")[1], seeds.at(-1)]));
        await page.close();
      }
      assert.equal(seeds[0], seeds[1]);
      assert.equal(hashes[0], hashes[1]);
      assert.notEqual(hashes[0], hashes[2]);
      assert.equal(spawnSync(host, ["seed", "bio-101, week 3", "GROUP A01"], { encoding: "utf8" }).stdout.trim(), seeds[0]);
    } finally {
      for (const browser of browsers) await browser.close();
      await server.stop();
    }
  });

  test("a damaged link is told and leads to the scenarios", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      const link = await compose(page);
      for (const bad of [link.slice(0, -40), `${url}#a=`, `${url}#a=%00%%%`, `${url}#a=AAAA`]) {
        await page.goto("about:blank");
        await page.goto(bad);
        await page.locator("#calm").filter({ hasText: "This link cannot be used" }).waitFor();
        await page.locator("#start .card").first().waitFor();
      }
    });
  });

  test("handed in: the file and the code hold the attempt, the class view replays both, and no name becomes a page", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      const link = await compose(page);
      const name = HOSTILE.slice(0, 50);
      await begin(page, link, name);
      await (await student.control(page, "Power strip")).check();
      await student.worldRuns(page, 1.5);
      await student.take(page, 3);
      assert.equal(await page.locator(".handin").count(), 0, "nothing to hand in yet");
      await student.check(page);
      await page.locator(".handin").waitFor();
      const file = await save(page, "Save the result file");
      assert.match(file.name, /^week-three[\w-]*\.dicrotic-result\.json$/);
      const result = JSON.parse(file.text);
      assert.equal(result.about.student, name);
      await page.getByText("Show the result code").click();
      const code = await page.getByLabel("The attempt as a result code").inputValue();
      assert.match(code, /^D3\.[\w-]+$/);
      console.log(`# the code of a short attempt: ${code.length} characters`);

      const folder = scratch();
      writeFileSync(path.join(folder, file.name), file.text);
      writeFileSync(path.join(folder, "codes.txt"), `${code}\n`);
      writeFileSync(path.join(folder, "bench.toml"), result.scenario);
      const graded = spawnSync(host, ["grade", path.join(folder, file.name), path.join(folder, "codes.txt"), "--set", path.join(folder, "bench.toml"), "--out", path.join(folder, "grades.csv")], { encoding: "utf8" });
      assert.equal(graded.status, 0, graded.stderr);
      assert.match(graded.stdout, /1 submitted more than once/);

      await page.goto(`${url}?class#class`);
      await page.locator(".intake").waitFor();
      // A code alone does not tell its bench; with the link beside it, it does. Mail programs fold lines.
      await page.getByText("Or paste result codes from e-mails").click();
      await page.getByLabel(/Or paste result codes/).fill(`From: someone\n> ${code.slice(0, 40)}\n${code.slice(40)}\n`);
      await pressButton(page, "Use the result codes");
      await page.locator(".intake-wrong li").filter({ hasText: "scenario is not here" }).waitFor();
      await page.getByLabel(/Or paste result codes/).fill(`See ${link}`);
      await pressButton(page, "Use the result codes");
      await page.locator(".students tbody tr").waitFor();
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Choose files")]);
      await chooser.setFiles([path.join(folder, file.name)]);
      await page.getByText("2 results").waitFor();
      assert.equal(await page.locator(".students tbody tr").count(), 1, "file and code are of one student");
      assert.match(await page.locator(".students tbody th").innerText(), /^Student 1/);
      await page.getByLabel("Show the student IDs").check();
      assert.ok((await page.locator(".students tbody th").innerText()).startsWith(name));
      assert.equal(await page.locator(".students img, .students b").count(), 0);
      assert.notEqual(await page.title(), "hit");
      const table = await save(page, "Save as a table (CSV)");
      assert.equal(table.text.trim().split("\n").length, 2, "file and code are one attempt");
      assert.match(await page.locator(".class-note").allInnerTexts().then((all) => all.join(" ")), /One result was submitted more than once/);
      assert.match(await page.locator(".given-list li").innerText(), /^Week three/);

      // Looking at it: the same trace and debrief, and nothing can be changed.
      await page.locator(".students .c-look button").first().click();
      await page.locator(".debrief").waitFor();
      await page.locator(".strip.is-measuring").waitFor();
      const modes = await page.locator(".strip-head .segs").innerText();
      assert.match(modes, /Recording 1/);
      await (await student.control(page, "Power strip")).click();
      await page.locator(".bench-note").filter({ hasText: "only look at" }).waitFor();
      assert.ok(await (await student.control(page, "Power strip")).isChecked());
      await pressButton(page, "Back to the class");
      await page.locator(".students tbody tr").waitFor();
      assert.ok(await page.getByLabel("Show the student IDs").isChecked(), "the class was forgotten");
      // The browser's own Back leads to the class as well, to where one was.
      const look = page.locator(".students .c-look button").first();
      await look.click();
      await page.locator(".debrief").waitFor();
      assert.match(page.url(), /#class&look=0$/);
      await page.goBack();
      await look.waitFor();
      assert.ok(await look.evaluate((el) => el === document.activeElement), "the place is lost");
      assert.ok(await look.evaluate((el) => el.getBoundingClientRect().top < innerHeight), "the place is out of sight");
    });
  });

  test("a bench without its faults is told not to be the one set, as a file and as a code, and is never ready", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      const link = await compose(page);
      // What a student can do: the link in #assign, the faults taken out, a link of the rest.
      for (const fault of ["Power strip switched off", "Charger beside the sensor cable"]) await page.getByRole("button", { name: `Remove “${fault}”` }).click();
      await page.getByLabel("Text after the last check").fill("Easy.");
      const easy = await student.linkWith(page, "Easy.");
      assert.notEqual(easy, link);
      await begin(page, easy, "Mallory");
      await student.worldRuns(page, 1.5);
      await student.take(page, 3);
      await student.check(page);
      await page.locator(".handin").waitFor();
      const file = await save(page, "Save the result file");
      await page.getByText("Show the result code").click();
      const code = await page.getByLabel("The attempt as a result code").inputValue();
      const folder = scratch();
      writeFileSync(path.join(folder, file.name), file.text);

      await page.goto(`${url}?class#class`);
      await page.locator(".intake").waitFor();
      assert.match(await page.locator(".given").innerText(), /No assignment is open yet/);
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Choose files")]);
      await chooser.setFiles([path.join(folder, file.name)]);
      await page.locator(".class-note").filter({ hasText: "was not compared with an assignment" }).waitFor();
      assert.equal(await page.locator(".students .remarks").filter({ hasText: "not the scenario that was assigned" }).count(), 0);
      // With what was set given, what came in before is compared with it too.
      await page.getByText("Or paste result codes from e-mails").click();
      await page.getByLabel(/Or paste result codes/).fill(link);
      await pressButton(page, "Use the result codes");
      await page.locator(".students .remarks").filter({ hasText: "This is not the scenario that was assigned." }).waitFor();
      assert.equal(await page.locator(".students .state").innerText(), "wrong scenario");
      assert.equal(await page.locator(".class-note").count(), 0);
      await page.getByLabel(/Or paste result codes/).fill(code);
      await pressButton(page, "Use the result codes");
      await page.locator('.intake:not([data-busy="1"])').waitFor();
      await page.locator(".intake-wide .intake-wrong li").filter({ hasText: "This is not the scenario that was assigned." }).waitFor();
      assert.equal(await page.locator(".students .state").innerText(), "wrong scenario");
    });
  });

  test("the instructor’s word leaves the page as a hash, and the students’ hearts hang on it", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      await compose(page);
      await page.getByLabel("Password for the true values").fill("short");
      await page.locator("#assign .calm").filter({ hasText: "Look at “Password for the true values" }).waitFor();
      await page.getByLabel("Password for the true values").fill("chalk and slate");
      await page.getByLabel("Text after the last check").fill("With a word.");
      const link = await student.linkWith(page, "With a word.");
      const file = await save(page, "Save the scenario file");
      const shipped = await page.evaluate(async (packed) => (await import("./js/hand/link.js")).unpackText(packed), link.split("#a=")[1]);
      for (const text of [file.text, shipped]) {
        assert.doesNotMatch(text, /chalk/);
        assert.match(text, /^password = "sha256:[0-9a-f]{64}"$/m);
      }
      const folder = scratch();
      const [saved, out, truth] = ["set.toml", "a.csv", "truth.txt"].map((name) => path.join(folder, name));
      writeFileSync(saved, file.text);
      const render = (...word) => spawnSync(host, ["render", saved, "--seconds", "5", "--out", out, "--truth", truth, ...word], { encoding: "utf8" });
      assert.equal(render().status, 2);
      assert.equal(render("--password", "chalk and slate").status, 0);
    });
  });

  test("where the assignment says so its example is watched before the try, on another heart", async () => {
    const folder = scratch();
    const file = path.join(folder, "worked.toml");
    writeFileSync(file, `${readFileSync(path.join(root, "scenarios/02-hum-on-the-trace.toml"), "utf8")}\n[assignment]\nkey = "watching"\nworked = true\n`);
    await withPage(wide, async ({ page, url }) => {
      const link = spawnSync(host, ["link", file, "--at", url], { encoding: "utf8" }).stdout.trim();
      await page.goto(link);
      await page.locator("#ask").waitFor();
      await pressButton(page, "Watch an example first");
      await page.locator(".narrator-deed").waitFor();
      await pressButton(page, "Stop and do it yourself"); // back to the question
      await page.getByLabel(/student ID/i).fill("B7");
      await pressButton(page, "Start attempt 1");
      await page.locator(".plug").first().waitFor({ state: "attached" });
      await page.locator("#offer").waitFor({ state: "hidden" });
    });
  });

  test("tries are counted, and the last one can be gone on with", async () => {
    await withPage(wide, async ({ page, url }) => {
      await openAssign(page, url);
      const link = await compose(page);
      await begin(page, link, "B7");
      const seed = await page.locator(".where .seed").innerText();
      await (await student.control(page, "Power strip")).check();
      await student.kept(page);
      await page.reload();
      await page.locator("#ask").waitFor();
      assert.equal(await page.getByLabel(/student ID/i).inputValue(), "", "a code stands there before anybody has typed it");
      await page.getByLabel(/student ID/i).fill("B7");
      await page.getByRole("button", { name: "Start attempt 2 of 3" }).waitFor();
      await pressButton(page, "Continue attempt 1");
      await page.locator(".plug").first().waitFor({ state: "attached" });
      assert.equal(await page.locator(".where .seed").innerText(), seed);
      assert.ok(await (await student.control(page, "Power strip")).isChecked());
    });
  });

  test("a class of thirty: from the folder to the list of who is ready", async () => {
    const files = classOfThirty();
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#class`);
      await page.locator(".intake").waitFor();
      const bad = path.join(path.dirname(files[0]), "cake.json");
      writeFileSync(bad, "{\"format\": \"a cake\"}");
      const began = Date.now();
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Choose files")]);
      await chooser.setFiles([...files, bad]);
      await page.locator('.report[data-students="30"]').waitFor({ timeout: 60_000 });
      await page.locator('.intake[data-busy=""]').waitFor();
      console.log(`# thirty results from folder to list: ${((Date.now() - began) / 1000).toFixed(1)} s`);
      // Its name stands there only with the student IDs.
      const wrong = await page.locator(".intake-wide .intake-wrong").innerText();
      assert.match(wrong, /This is not a result file[^]*File 1/);
      assert.doesNotMatch(wrong, /cake\.json/);
      const states = await page.locator(".students .state").allInnerTexts();
      assert.deepEqual(states, [...Array(12).fill("not ready"), ...Array(18).fill("ready")]);
      assert.match(await page.locator(".heat-faults li").first().innerText(), /Charger beside the sensor cable\s*3 of 30/);
      assert.match(await page.locator(".heat-misreadings").innerText(), /multiplier of another T\s*3/);
      assert.doesNotMatch(await page.locator(".report").innerText(), /Group/);
      assert.match(await page.locator(".class-note").innerText(), /^30 results were not compared with an assignment/);
      const set = path.join(path.dirname(files[0]), "..", `set-${process.pid}.toml`);
      writeFileSync(set, JSON.parse(readFileSync(files[0], "utf8")).scenario);
      const [given] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Open the assignment")]);
      await given.setFiles([set]);
      await page.waitForFunction(() => document.querySelectorAll(".class-note").length === 0 && document.querySelector("#class .intake")?.dataset.busy === "", null, { timeout: 60_000 });
      assert.equal(await page.locator(".students .remarks").count(), 0, "a remark on an honest attempt");
      assert.deepEqual(await page.locator(".students .state").allInnerTexts(), states);
      const { violations } = await new AxeBuilder({ page }).analyze();
      assert.deepEqual(violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target)}`), []);
    });
  });

  test("a fault is shown to a room, cured, frozen and named", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#class`);
      await page.getByLabel("Fault", { exact: true }).selectOption("charger_near");
      await pressButton(page, "Show it");
      const dialog = page.locator("dialog.projector");
      await dialog.waitFor();
      assert.equal(await dialog.locator(".show-state").innerText(), "With the fault");
      const picture = () => dialog.locator(".show-side:not([hidden]) canvas").nth(1).evaluate((el) => el.toDataURL().length);
      const first = await picture();
      await page.waitForFunction((before) => document.querySelectorAll("dialog .show-side:not([hidden]) canvas")[1].toDataURL().length !== before, first); // it runs
      await pressButton(page, "Pause");
      await student.frames(page, 2);
      const found = await picture();
      await student.frames(page, 30);
      assert.equal(await picture(), found, "it moves on");
      await page.keyboard.press("c");
      assert.equal(await dialog.locator(".show-state").innerText(), "Fixed");
      await student.frames(page, 10); // the other trace comes to its size, and is drawn
      assert.ok((await picture()) < found, "a clean trace is less of a picture than a thick one");
      await pressButton(page, "Show its name");
      assert.equal(await dialog.locator(".show-title").innerText(), "Charger beside the sensor cable");
      const { violations } = await new AxeBuilder({ page }).analyze();
      assert.deepEqual(violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target)}`), []);
      await page.keyboard.press("Escape");
      await dialog.waitFor({ state: "detached" });
    });
  });

  test("the bench stands beside its strip, with the power line of the region, and its look-alikes follow", async () => {
    await withPage(wide, async ({ page, url }) => {
      await page.goto(`${url}#class`);
      await page.getByLabel("Fault", { exact: true }).selectOption("charger_near");
      await page.locator(".show-fault").getByLabel("Power line").selectOption("60/120");
      await pressButton(page, "Show it");
      const dialog = page.locator("dialog.projector");
      await dialog.waitFor();
      const side = dialog.locator(".show-side:not([hidden])");
      assert.ok((await side.locator(".show-table svg [data-part], .show-table svg .cable").count()) > 3, "a bench is drawn");
      const place = dialog.locator(".show-place");
      const alike = Number((await place.innerText()).match(/^1 of (\d+) similar faults · power line 120 V, 60 Hz$/)?.[1]);
      assert.ok(alike > 1, await place.innerText());
      await pressButton(page, "Show its name");
      const names = [await dialog.locator(".show-title").innerText()];
      for (let k = 2; k <= alike; k += 1) {
        await page.keyboard.press("ArrowRight");
        assert.match(await place.innerText(), new RegExp(`^${k} of ${alike} `));
        assert.equal(await dialog.locator(".show-title").isVisible(), false, "the next one is found out, not read");
        await page.keyboard.press("w");
        names.push(await dialog.locator(".show-title").innerText());
      }
      assert.equal(new Set(names).size, alike, names.join(", "));
      assert.ok(await page.getByRole("button", { name: "Next similar fault" }).isDisabled());
      await page.keyboard.press("ArrowLeft");
      assert.match(await place.innerText(), new RegExp(`^${alike - 1} of `));
      await page.keyboard.press("Escape");
      await dialog.waitFor({ state: "detached" });
    });
  });
});

test("page, command line and results agree on what a student's code is, however long", async () => {
  const codes = ["A17", "Q".repeat(100), "María del Carmen ".repeat(8), "Zoe\u0308 \u{1f9ea} ".repeat(20), "  aB-cD_".repeat(20)];
  const toml = `${readFileSync(path.join(root, "scenarios/04-rest-pulse.toml"), "utf8")}\n[assignment]\nkey = "bio-101"\nattempts = 2\n`;
  const folder = scratch();
  writeFileSync(path.join(folder, "set.toml"), toml);
  const run = (...args) => spawnSync(host, args, { encoding: "utf8" });
  await withPage(wide, async ({ page, url }) => {
    await page.goto(url);
    await page.locator("#start").waitFor();
    const made = await page.evaluate(async ({ toml, codes }) => {
      const { Bench, loadCore, seedOf } = await import("./js/core.js");
      await loadCore();
      return codes.map((student) => {
        const seed = seedOf("bio-101", student, 1), bench = Bench.fresh(toml, seed);
        const about = { student, try: 1, begun_s: 1790000000, ended_s: 1790000600 };
        return { seed, file: bench.result(about), code: bench.code(about) };
      });
    }, { toml, codes });
    for (const [k, { seed, file, code }] of made.entries()) {
      assert.equal(run("seed", "bio-101", codes[k]).stdout.trim(), seed, codes[k]);
      assert.equal(run("seed", "bio-101", JSON.parse(file).about.student).stdout.trim(), seed, "made again from what is kept");
      const inFolder = path.join(folder, `in${k}`);
      mkdirSync(inFolder);
      writeFileSync(path.join(inFolder, "a.dicrotic-result.json"), file);
      writeFileSync(path.join(inFolder, "a.txt"), code);
      const graded = run("grade", inFolder, "--set", path.join(folder, "set.toml"), "--out", path.join(folder, "g.csv"));
      assert.equal(graded.status, 0, `${codes[k]}: ${graded.stderr}`);
      assert.match(readFileSync(path.join(folder, "g.csv"), "utf8"), /,yes,/);
    }
  });
});
