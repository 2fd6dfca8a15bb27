// A packed assignment: in a course site of either standard, with scorm-again as its run-time, and by itself from a folder.
import { test } from "node:test";
import { execFile } from "node:child_process";
import { mkdirSync } from "node:fs";
import path from "node:path";
import { promisify } from "node:util";
import { pathToFileURL } from "node:url";
import assert from "node:assert/strict";
import { host, root, withContexts } from "./lib.mjs";
import { pack, serveSite, siteHas, unpack, viewport, withSite, work } from "./site.mjs";
import * as student from "./student.mjs";

const shots = path.join(root, "tests/browser/shots");
mkdirSync(shots, { recursive: true });

const seedShown = (lab) => lab.locator(".where .seed").innerText();

for (const standard of ["scorm12", "scorm2004"]) {
  test(`${standard}: launched, worked, closed, taken up again, finished; status and score come back from the run-time`, async () => {
    await withSite(standard, async ({ open, files }) => {
      const manifest = files.get("imsmanifest.xml").toString();
      const listed = [...manifest.matchAll(/<file href="([^"]+)"/g)].map((found) => found[1]);
      assert.deepEqual(listed.sort(), [...files.keys()].filter((name) => name !== "imsmanifest.xml").sort());
      assert.ok(![...files.keys()].includes("sw.js"), "the site's page would be kept on the device");

      // Launch: a zero is told at the start, and the work begins as incomplete.
      let { page, lab } = await open();
      let has = await siteHas(page, standard);
      assert.equal(has.status, "incomplete");
      assert.deepEqual([has.raw, has.min, has.max].map(Number), [0, 0, 100]);
      if (standard === "scorm2004") assert.equal(Number(has.scaled), 0);
      assert.equal(has.launch, "rest-pulse");
      assert.equal(await lab.getByRole("button", { name: "Scenarios", exact: true }).count(), 0, "other scenarios in an assignment");
      const seed = await seedShown(lab);

      // Work: each step is set and committed.
      // One passes, the other does not: the range is left as it was found, and the pulse is small in it.
      if (standard === "scorm12") await student.choose(lab, "Full-scale range", "±50 mV");
      await student.record(lab, 18);
      await lab.getByLabel("A (s)", { exact: true }).fill("1");
      await lab.getByLabel("A (s)", { exact: true }).press("Enter");
      await lab.getByText("The course site has everything up to now").waitFor();
      await student.kept(lab);
      const before = await siteHas(page, standard);
      assert.match(before.state, /^S2\.\d+\.1\.1\.[a-z0-9]+\.D3\.[\x21-\x7e]+$/);
      const calls = await page.evaluate(() => window.calls);
      const sets = calls.filter(([name, key]) => name === "SetValue" && key === "cmi.suspend_data").length;
      assert.ok(sets >= 2 && calls.filter(([name]) => name === "Commit").length >= sets, `${sets} states`);
      assert.deepEqual(calls.filter((call) => call.at(-1) !== "true"), [], "a call that the run-time refused");
      await page.screenshot({ path: path.join(shots, `course-${standard}.png`) });

      // Closed without a word; the site keeps what was committed.
      const kept = await page.evaluate(() => {
        window.keep();
        const all = JSON.parse(localStorage.getItem("site"));
        (all.core ?? all).entry = "resume";
        return JSON.stringify(all);
      });
      await page.close();
      // Another device: nothing of the attempt is there but what the site has.
      ({ page, lab } = await open(kept));
      await lab.locator(".strip.is-measuring").waitFor();
      assert.equal(await seedShown(lab), seed);
      assert.equal(await lab.locator(".cursor-a").getAttribute("aria-valuenow"), "1.000");
      has = await siteHas(page, standard);
      assert.ok(has.state.length > 0, "a fresh start wrote over the state");

      // Measured and checked: the score and the status go over.
      const [download] = await Promise.all([page.waitForEvent("download"), student.pressButton(lab, "Save recording as CSV")]);
      const peaks = student.peaksOf(await student.readRecording(download));
      const [a, b, count] = student.windowBetween(peaks, 15);
      for (const [name, time] of [["A", a], ["B", b]]) {
        await lab.getByLabel(`${name} (s)`, { exact: true }).fill(time.toFixed(2));
        await lab.getByLabel(`${name} (s)`, { exact: true }).press("Enter");
      }
      const seconds = Number((await student.reading(lab, "A to B")).replace(/ s$/, ""));
      await student.fillSheet(lab, { count, seconds, multiplier: (60 / seconds).toFixed(3), rate: ((60 * count) / seconds).toFixed(1) });
      await student.pressCheck(lab);
      const debrief = await student.readDebrief(lab);
      const word = debrief.firstOpen === null ? "passed" : "failed";
      assert.equal(word, standard === "scorm12" ? "passed" : "failed", debrief.text);
      await student.kept(lab);
      has = await siteHas(page, standard);
      assert.ok(Number(has.raw) > 0 && Number(has.raw) <= 100, `score ${has.raw}`);
      if (standard === "scorm12") assert.equal(has.status, word);
      else {
        assert.equal(has.status, "completed");
        assert.equal(has.success, word);
        assert.equal(Number(has.scaled), Number(has.raw) / 100);
      }

      // The finish is asked for, never left to the closing of a window.
      await student.pressButton(lab, "Finish and submit");
      await lab.locator("#calm").filter({ hasText: "You can close this browser tab" }).waitFor();
      const told = await page.evaluate(() => window.calls);
      assert.equal(told.at(-1)[0], standard === "scorm12" ? "Finish" : "Terminate");
      assert.equal(told.at(-1).at(-1), "true");
      const time = told.find(([name, key]) => name === "SetValue" && /session_time$/.test(key));
      assert.match(time[2], standard === "scorm12" ? /^\d{2,4}:\d\d:\d\d\.\d\d$/ : /^PT\d+H\d+M[\d.]+S$/);
      const exit = told.find(([name, key]) => name === "SetValue" && /exit$/.test(key));
      assert.ok(["", "suspend", "normal"].includes(exit[2]), exit[2]);
      assert.deepEqual(told.filter((call) => call.at(-1) !== "true"), [], "a call that the run-time refused");
      await page.screenshot({ path: path.join(shots, `course-${standard}-end.png`) });
    });
  });
}

test("scorm12: the state of a long attempt stays under 4,096 characters, and one that grows too long is told", async () => {
  await withSite("scorm12", async ({ open }) => {
    const { page, lab } = await open();
    // What a choice in the list brings about, without the hand that makes it: one in two frames, some of the world's time apart.
    const deeds = async (n) => {
      await lab.getByLabel("Full-scale range", { exact: true }).evaluate(async (list, times) => {
        for (let k = 0; k < times; k += 1) {
          list.value = [...list.options].find((one) => one.textContent === (k % 2 ? "±200 mV" : "±500 mV")).value;
          list.dispatchEvent(new Event("change", { bubbles: true }));
          for (let frame = 0; frame < 2; frame += 1) await new Promise((done) => requestAnimationFrame(done));
        }
      }, n);
      await student.kept(lab);
    };
    await deeds(250);
    const long = (await siteHas(page, "scorm12")).state;
    assert.ok(long.length > 1200 && long.length < 4096, `${long.length} characters`);
    console.log(`250 actions: ${long.length} characters`);
    let note = "";
    for (let k = 0; k < 12 && !/too long/.test(note); k += 1) {
      await deeds(100);
      note = await lab.locator(".course [role=status]").innerText();
    }
    assert.match(note, /too long for the course site\. This device keeps all of it/);
    const last = (await siteHas(page, "scorm12")).state;
    assert.ok(last.length >= long.length && last.length <= 4096, `${last.length} characters`);
    // The device has the newer one, and it is what goes on.
    const shownRange = await lab.getByLabel("Full-scale range", { exact: true }).inputValue();
    await page.evaluate(() => window.keep());
    await page.reload();
    await page.frameLocator("iframe").locator(".plug").first().waitFor({ state: "attached" });
    const again = page.frames()[1];
    assert.equal(await again.getByLabel("Full-scale range", { exact: true }).inputValue(), shownRange);
    const here = await page.evaluate(() => Object.entries(localStorage).find(([key]) => key.includes("course:"))[1]);
    assert.ok(JSON.parse(here).saved.length > 4096, "the device kept no more than the site");
  });
});

test("where no course site is, the page says so and keeps the attempt on the device", async () => {
  const files = unpack(path.join(work, "scorm12.zip"));
  const site = await serveSite("scorm12", files);
  try {
    await withContexts(async (newContext) => {
      const page = await (await newContext({ viewport })).newPage();
      await page.goto(site.url.replace("/site", "/package/index.html"));
      await page.getByText("This page found no course site").waitFor();
      const seed = await seedShown(page);
      await student.choose(page, "Full-scale range", "±500 mV");
      await student.kept(page);
      // A page beside the bench is left by the browser's own way back, and by the page's name: to the bench, which has no address here.
      const leave = [() => page.goBack(), () => page.locator("#brand").click()];
      for (const back of leave) {
        await student.pressButton(page, "Faults and tests");
        await page.locator("#faults h1").waitFor();
        await back();
        await page.locator("#lab").waitFor({ timeout: 5000 });
      }
      await page.reload();
      await student.pressButton(page, "Continue it");
      await page.locator(".plug").first().waitFor({ state: "attached" });
      assert.equal(await seedShown(page), seed);
    });
  } finally {
    await site.stop();
  }
});

test("one page opens from a folder by itself, with nothing fetched, and goes on after a reload", async () => {
  const file = await pack("rest-pulse.html");
  await withContexts(async (newContext) => {
    const page = await (await newContext({ viewport })).newPage();
    const troubles = [];
    const asked = [];
    page.on("pageerror", (error) => troubles.push(error.message));
    page.on("console", (message) => ["error", "warning"].includes(message.type()) && troubles.push(message.text()));
    page.on("request", (request) => asked.push(request.url()));
    await page.goto(pathToFileURL(file).href);
    await page.waitForFunction(() => document.documentElement.dataset.ready === "1");
    await student.worldRuns(page, 1.5);
    await student.choose(page, "Full-scale range", "±200 mV");
    await student.kept(page);
    const seed = await seedShown(page);
    await page.screenshot({ path: path.join(shots, "alone.png") });
    await student.pressButton(page, "Faults and tests");
    await page.locator("#faults h1, #faults h2").first().waitFor();
    await page.goBack();
    await page.reload();
    await student.pressButton(page, "Continue it");
    await page.locator(".plug").first().waitFor({ state: "attached" });
    assert.equal(await seedShown(page), seed);
    assert.equal(await page.getByLabel("Full-scale range", { exact: true }).locator("option:checked").innerText(), "±200 mV");
    assert.deepEqual(asked.filter((url) => !url.startsWith("data:") && !url.startsWith("file:") && !url.startsWith("blob:")), []);
    assert.deepEqual([...new Set(asked.filter((url) => url.startsWith("file:")).map((url) => url.split("#")[0]))], [pathToFileURL(file).href]);
    assert.deepEqual(troubles, []);
  });
});

test("what cannot be packed is refused by name", async () => {
  for (const [given, told] of [
    [["scenarios/04-rest-pulse.toml", "--to", path.join(work, "x.txt")], /\.zip or \.html/],
    [["scenarios/none.toml", "--to", path.join(work, "x.zip")], /scenarios\/none\.toml/],
    [["Cargo.toml", "--to", path.join(work, "x.zip")], /Cargo\.toml/],
    [["scenarios/04-rest-pulse.toml", "--to", path.join(work, "x.html"), "--standard", "scorm12"], /--standard belongs to a \.zip/],
  ]) {
    await assert.rejects(promisify(execFile)(host, ["pack", ...given], { cwd: root }), (error) => error.code === 2 && told.test(error.stderr));
  }
});
