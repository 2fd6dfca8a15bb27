// What was agreed, kept by a package in a course site: tries, words, new attempts, several items, edits, and what the site's reports show.
// scorm-again is the site's run-time.
import { describe, test } from "node:test";
import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import assert from "node:assert/strict";
import { root, withPage } from "./lib.mjs";
import { killsInCourse } from "./kill_course.mjs";
import { packFile, siteHas, unpack, viewport, withSite, work } from "./site.mjs";
import * as student from "./student.mjs";

const OPENING = "Read page 12 before you begin.", CLOSING = "Bring your lab book on Tuesday.";
const plain = readFileSync(path.join(root, "scenarios/04-rest-pulse.toml"), "utf8");
const assigned = (text = plain, attempts = 2) => `${text}\n[assignment]\nkey = "bio-101"\nseeds = "each"\nattempts = ${attempts}\nopening = "${OPENING}"\nclosing = "${CLOSING}"\n`;

async function packed(name, standard, text) {
  const toml = path.join(work, `${name}.toml`);
  writeFileSync(toml, text);
  return unpack(await packFile(toml, `${name}-${standard}.zip`, "--standard", standard));
}

/** Launches an item of the course in a new tab of a device. */
async function launch(context, url, { item = "", who = "", folder = "package", expectBench = true } = {}) {
  const page = await context.newPage();
  page.on("console", (message) => message.type() === "error" && page.complaints.push(message.text()));
  page.complaints = [];
  await page.goto(`${url}?item=${item}&package=${folder}${who && `&student=${who}`}`);
  const lab = await (await page.locator("iframe").elementHandle()).contentFrame();
  if (expectBench) await lab.locator(".plug").first().waitFor({ state: "attached" });
  return { page, lab };
}
const begin = async (lab, n, of = 2) => {
  await lab.locator("#ask").getByText(OPENING).waitFor();
  await student.pressButton(lab, `Start attempt ${n} of ${of}`);
  await lab.locator(".plug").first().waitFor({ state: "attached" });
};
const seedOf = (lab) => lab.locator(".where .seed").innerText();
const rangeOf = (lab) => lab.getByLabel("Full-scale range", { exact: true }).evaluate((el) => el.selectedOptions[0].textContent);
const setRange = (lab, label) => student.choose(lab, "Full-scale range", label);

/** Records, answers wrongly twice, and so closes the attempt. */
async function closeAttempt(lab) {
  await student.record(lab, 4);
  for (const rate of [300, 301]) {
    await student.fillSheet(lab, { count: 5, seconds: 4, multiplier: 15, rate });
    await student.check(lab);
  }
  await student.kept(lab);
}
/** What the site does when it lets a student begin again: all that it had of the attempt is gone. */
const newAttempt = (page, item = "") => page.evaluate((key) => localStorage.removeItem(key), `site${item}`);

for (const standard of ["scorm12", "scorm2004"]) {
  describe(standard, { concurrency: 1 }, () => {
    test("the words, the tries and the end are those of the assignment, and the site's next attempt begins anew", async () => {
      await withSite(standard, async ({ device, url, troubles }) => {
        const context = await device();
        let { page, lab } = await launch(context, url, { expectBench: false });
        await begin(lab, 1);
        const first = await seedOf(lab);
        assert.equal(await lab.locator(".course").getByText("Attempt 1 of 2").count(), 1);
        await closeAttempt(lab);
        await lab.locator(".handin").getByText(CLOSING).waitFor();
        const said = await lab.locator("#result").innerText();
        assert.doesNotMatch(said, /This page sends nothing|^Submit$/m, "the site takes it, and the page says that it does not");
        assert.match(said, /The course site gets your points, each step and what you did/);
        let has = await siteHas(page, standard);
        assert.match(has.state, /^S2\.\d+\.1\.1\./);
        const raw = Number(has.raw);
        assert.ok(raw > 0 && raw < 80, `${raw}`);

        // The second try is another bench; there is no third.
        await student.pressButton(lab, "Try again with a new seed");
        await student.pressButton(lab, "Start attempt 2 of 2");
        await lab.locator(".course").getByText("Attempt 2 of 2").waitFor();
        const second = await seedOf(lab);
        assert.notEqual(second, first);
        await student.pressButton(lab, "Try again with a new seed");
        await lab.locator("#calm").getByText("There are 2 attempts, and you have used them all.").waitFor();
        assert.equal(await seedOf(lab), second);
        await setRange(lab, "±50 mV");
        await student.kept(lab);
        has = await siteHas(page, standard);
        assert.match(has.state, /^S2\.\d+\.2\.2\./);
        assert.equal(Number(has.raw), raw, "the score of the first try is gone");
        await page.close();

        // Taken up by the site: the second try, as it was left.
        ({ page, lab } = await launch(context, url));
        assert.equal(await seedOf(lab), second);
        assert.equal(await rangeOf(lab), "±50 mV");
        await closeAttempt(lab);
        await student.pressButton(lab, "Finish and submit");
        await lab.locator("#calm").filter({ hasText: "The course site has your result. You can close this browser tab." }).waitFor();
        assert.deepEqual(await page.evaluate(() => Object.keys(localStorage).filter((key) => /:course:/.test(key))), [], "an attempt that the site has stays on the device");

        // The site lets the student begin again.
        await newAttempt(page);
        await page.close();
        ({ page, lab } = await launch(context, url, { expectBench: false }));
        await begin(lab, 1);
        assert.equal(await lab.locator(".debrief .step").count(), 0, "the closed attempt is back");
        assert.ok(![first, second].includes(await seedOf(lab)), "a heart that has been met is met again");
        has = await siteHas(page, standard);
        assert.equal(has.status, "incomplete");
        assert.match(has.state, /^S2\.1\.3\.1\./);
        assert.deepEqual(troubles, []);
        assert.deepEqual(page.complaints, []);
      }, { files: await packed("agreed", standard, assigned()) });
    });

    test("two items of one package share nothing, nor do two students at one device", async () => {
      await withSite(standard, async ({ device, url }) => {
        const context = await device();
        const all = [];
        for (const [item, who, label] of [["a", "ann", "±50 mV"], ["b", "ann", "±500 mV"], ["a", "ben", "±1 V"]]) {
          const { page, lab } = await launch(context, url, { item, who });
          assert.equal(await rangeOf(lab), "±200 mV", `${item} of ${who} begins with another's bench`);
          await setRange(lab, label);
          await student.kept(lab);
          all.push({ item, who, label, page, lab, seed: await seedOf(lab) });
        }
        for (const { page, lab, label } of all) {
          assert.equal(await rangeOf(lab), label);
          await page.close();
        }
        for (const { item, who, label, seed } of all) {
          const { page, lab } = await launch(context, url, { item, who });
          assert.deepEqual([await rangeOf(lab), await seedOf(lab)], [label, seed], `${item} of ${who}`);
          // Nothing of the others stands beside the bench either.
          await lab.evaluate(() => (location.hash = "#notebook"));
          await lab.locator("#notebook h1").waitFor();
          assert.equal(await lab.locator("#notebook .trial-page").count(), 0);
          await page.close();
        }
      }, { random: true });
    });

    test("an edited package of the same name never shows the old one's work, and a change of words alone loses nothing", async () => {
      const text = assigned(plain, 3);
      const more = { words: await packed("words", standard, text.replace("A pulse at rest", "A calm pulse")), edit: await packed("edit", standard, text.replace("rest_rate_bpm = 66.0", "rest_rate_bpm = 84.0")) };
      await withSite(standard, async ({ device, url }) => {
        const context = await device();
        let { page, lab } = await launch(context, url, { expectBench: false });
        await begin(lab, 1, 3);
        await setRange(lab, "±50 mV");
        await student.kept(lab);
        const seed = await seedOf(lab);
        await page.close();
        ({ page, lab } = await launch(context, url, { folder: "words" }));
        assert.deepEqual([await seedOf(lab), await rangeOf(lab)], [seed, "±50 mV"]);
        await lab.locator(".brief h2").filter({ hasText: "A calm pulse" }).waitFor({ state: "attached" });
        await page.close();
        ({ page, lab } = await launch(context, url, { folder: "edit", expectBench: false }));
        await begin(lab, 1, 3);
        await lab.locator("#calm").filter({ hasText: "another version of this assignment" }).waitFor();
        assert.equal(await rangeOf(lab), "±200 mV");
      }, { files: await packed("before", standard, text), more });
    });

    test("the site's reports show each step and the misreading, and what was put right later", async () => {
      await withSite(standard, async ({ device, url }) => {
        const { page, lab } = await launch(await device(), url);
        await setRange(lab, "±50 mV");
        await student.record(lab, 18);
        const { right, turned } = await student.readWindow(page, lab);
        await student.fillSheet(lab, turned);
        await student.check(lab);
        await student.kept(lab);
        const told = () => page.evaluate((global) => JSON.parse(JSON.stringify(window[global].cmi)), standard === "scorm12" ? "API" : "API_1484_11").then(({ interactions, objectives }) => ({
          interactions: interactions.childArray ?? Object.values(interactions), objectives: objectives.childArray ?? Object.values(objectives),
        }));
        const calls = await page.evaluate(() => window.calls);
        assert.deepEqual(calls.filter((call) => call.at(-1) !== "true"), [], "a call that the run-time refused");
        const set = (form) => calls.filter(([name, key]) => name === "SetValue" && form.test(key));
        const steps = await lab.locator(".debrief .step").count();
        const ids = set(/^cmi\.interactions\.\d+\.id$/).map(([, , id]) => id);
        assert.equal(ids.filter((id) => id.startsWith("step-")).length, steps);
        assert.deepEqual(ids.filter((id) => id.startsWith("misreading-")), ["misreading-turned_over"]);
        const status = standard === "scorm12" ? /^cmi\.objectives\.\d+\.status$/ : /^cmi\.objectives\.\d+\.success_status$/;
        const objectives = set(/^cmi\.objectives\.\d+\.id$/).map(([, key, id]) => [id, set(status).findLast(([, other]) => other.split(".")[2] === key.split(".")[2])[2]]);
        const reached = Object.fromEntries(objectives);
        assert.equal(reached["step-multiplier"], "failed");
        assert.equal(reached["step-trace"], "passed");
        assert.equal(reached["misreading-turned_over"], "failed");
        const answers = set(/response$/).map(([, , answer]) => answer);
        assert.ok(answers.some((answer) => answer.includes(turned.multiplier)), `${answers}`);
        assert.ok((await told()).interactions.length >= steps);

        // Put right: the objective of the misreading is reached, and no objective stands twice.
        await student.fillSheet(lab, right);
        await student.check(lab);
        await student.kept(lab);
        const after = await page.evaluate(() => window.calls);
        assert.deepEqual(after.filter((call) => call.at(-1) !== "true"), [], "a call that the run-time refused");
        assert.equal(after.filter(([name, key]) => name === "SetValue" && /^cmi\.objectives\.\d+\.id$/.test(key)).length, objectives.length);
        const place = set(/^cmi\.objectives\.\d+\.id$/).find(([, , id]) => id === "misreading-turned_over")[1].split(".")[2];
        assert.equal(after.filter(([name, key]) => name === "SetValue" && status.test(key) && key.split(".")[2] === place).at(-1)[2], "passed");
      });
    });

    test("what the site does not take is kept here, offered to its student alone, and gone once the site has it", async () => {
      await withSite(standard, async ({ device, url }) => {
        const context = await device();
        await context.addInitScript(() => (window.refuses = true));
        const { page, lab } = await launch(context, url, { who: "ann" });
        await setRange(lab, "±50 mV");
        await lab.getByText("The course site did not accept the last step").waitFor();
        await student.kept(lab);
        const seed = await seedOf(lab);
        await page.close();
        await context.addInitScript(() => (window.refuses = false));
        const other = await launch(context, url, { who: "ben" });
        assert.equal(await rangeOf(other.lab), "±200 mV");
        await other.page.close();
        const again = await launch(context, url, { who: "ann", expectBench: false });
        await student.pressButton(again.lab, "Continue it");
        await again.lab.locator(".plug").first().waitFor({ state: "attached" });
        assert.deepEqual([await seedOf(again.lab), await rangeOf(again.lab)], [seed, "±50 mV"]);
        await again.lab.getByText("The course site has everything up to now").waitFor();
        await again.page.close();
        const third = await launch(context, url, { who: "ann" });
        assert.equal(await seedOf(third.lab), seed);
      }, { random: true });
    });
  });
}

test("a tab killed at any moment: what was told as kept comes back, to its own student and item alone", { timeout: 600_000 }, async () => {
  const sum = await killsInCourse(10);
  assert.equal(sum.kills, 10);
  assert.ok(sum.due > 5, `only ${sum.due} actions were due: the kills came too early to tell`);
});

for (const [standard, manifest] of [["scorm2004", "imsmanifest.xml"], ["cmi5", "cmi5.xml"]]) {
  test(`${standard}: the page packs what the command line packs, file for file, and the package runs`, async () => {
    const { file, toml } = await withPage({ viewport }, async ({ page, url }) => {
      await page.goto(`${url}#assign`);
      await page.locator("#assign .preview-table svg").waitFor();
      await page.getByLabel("Text before the first attempt").fill(OPENING);
      await page.getByLabel("Standard").selectOption(standard);
      const link = await student.linkWith(page, OPENING);
      const [download] = await Promise.all([page.waitForEvent("download"), student.pressButton(page, "Save the package")]);
      assert.ok(download.suggestedFilename().endsWith(`-${standard}.zip`));
      const toml = await page.evaluate(async (packed) => (await import("./js/hand/link.js")).unpackText(packed), link.split("#a=")[1]);
      return { file: await student.bytesOf(download), toml };
    });
    const zip = path.join(work, `from-page-${standard}.zip`);
    writeFileSync(zip, file);
    const here = unpack(zip), there = await packed("from-line", standard, toml);
    assert.deepEqual([...here.keys()].toSorted(), [...there.keys()].toSorted());
    assert.equal([...here.keys()][0], manifest);
    for (const [name, bytes] of there) assert.ok(Buffer.compare(bytes, here.get(name)) === 0, name);
    if (standard === "cmi5") return; // cmi5.test.mjs runs what the command line packs
    await withSite(standard, async ({ device, url }) => {
      const { lab } = await launch(await device(), url, { expectBench: false });
      await begin(lab, 1);
    }, { files: here });
  });
}

test("the manifest tells the score that passes, the page's own rule says the same, and no status contradicts it", async () => {
  const { MASTERY } = { MASTERY: Number(readFileSync(path.join(root, "www/js/course/lms.js"), "utf8").match(/MASTERY = (\d+)/)[1]) };
  const old = (await packed("mastery", "scorm12", assigned())).get("imsmanifest.xml").toString();
  assert.equal(Number(old.match(/<adlcp:masteryscore>(\d+)<\/adlcp:masteryscore>/)?.[1]), MASTERY);
  const now = (await packed("mastery", "scorm2004", assigned())).get("imsmanifest.xml").toString();
  assert.equal(Number(now.match(/<imsss:minNormalizedMeasure>([\d.]+)<\/imsss:minNormalizedMeasure>/)?.[1]) * 100, MASTERY);
  const unit = (await packed("mastery", "cmi5", assigned())).get("cmi5.xml").toString();
  assert.equal(Number(unit.match(/ masteryScore="([\d.]+)"/)?.[1]) * 100, MASTERY);
});
