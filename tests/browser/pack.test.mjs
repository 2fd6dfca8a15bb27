// A packed assignment: in a course site of either standard, with scorm-again as its run-time, and by itself from a folder.
import { test } from "node:test";
import { execFile } from "node:child_process";
import { createServer } from "node:http";
import { mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { promisify } from "node:util";
import { pathToFileURL } from "node:url";
import { inflateRawSync } from "node:zlib";
import assert from "node:assert/strict";
import { host, root, withContexts } from "./lib.mjs";
import * as student from "./student.mjs";

const work = path.join(root, process.env.CARGO_TARGET_DIR ?? "target", "pack-test");
mkdirSync(work, { recursive: true });
const shots = path.join(root, "tests/browser/shots");
mkdirSync(shots, { recursive: true });
const viewport = { width: 1280, height: 900 };

async function pack(to, ...more) {
  const file = path.join(work, to);
  const { stdout } = await promisify(execFile)(host, ["pack", path.join(root, "scenarios/04-rest-pulse.toml"), "--to", file, ...more], { cwd: root });
  assert.match(stdout, /files in \d+ kB/);
  return file;
}

/** The files of an archive, by its central list. */
function unpack(file) {
  const bytes = readFileSync(file);
  const files = new Map();
  const end = bytes.lastIndexOf(Buffer.from("PK\u0005\u0006", "latin1"));
  for (let at = bytes.readUInt32LE(end + 16); bytes.readUInt32LE(at) === 0x02014b50;) {
    const [packing, size, name, extra, remark, from] = [bytes.readUInt16LE(at + 10), bytes.readUInt32LE(at + 20), bytes.readUInt16LE(at + 28), bytes.readUInt16LE(at + 30), bytes.readUInt16LE(at + 32), bytes.readUInt32LE(at + 42)];
    const start = from + 30 + bytes.readUInt16LE(from + 26) + bytes.readUInt16LE(from + 28);
    const data = bytes.subarray(start, start + size);
    files.set(bytes.toString("utf8", at + 46, at + 46 + name), packing === 8 ? inflateRawSync(data) : data);
    at += 46 + name + extra + remark;
  }
  return files;
}

const SITE = {
  scorm12: { global: "API", script: "scorm12.min.js", made: "Scorm12API" },
  scorm2004: { global: "API_1484_11", script: "scorm2004.min.js", made: "Scorm2004API" },
};

/** A course site in one page: what it keeps of a student outlives the page, as in a site's data base. */
const sitePage = ({ global, script, made }) => `<!doctype html><meta charset="utf-8"><title>Course site</title>
<script type="module">
import { ${made} } from "/scorm-again/${script}";
const api = new ${made}({ autocommit: false, logLevel: 5 });
const kept = JSON.parse(localStorage.getItem("site") ?? "null");
api.loadFromJSON(kept ?? window.seedOfSite);
window.${global} = api;
window.keep = () => {
  const cmi = JSON.parse(JSON.stringify(api.renderCMIToJSONObject())).cmi ?? {};
  localStorage.setItem("site", JSON.stringify({ ...cmi }));
};
const frame = document.createElement("iframe");
frame.src = "/package/index.html";
frame.style.cssText = "position:fixed;inset:0;width:100%;height:100%;border:0";
document.body.append(frame);
</script>`;

const TYPES = { html: "text/html", js: "text/javascript", css: "text/css", svg: "image/svg+xml", wasm: "application/wasm", json: "application/json" };

/** Serves the course site and the package until stop(). */
async function serveSite(standard, files) {
  const server = createServer((request, response) => {
    const name = decodeURIComponent(new URL(request.url, "http://site").pathname).slice(1);
    const give = (body, type) => response.writeHead(200, { "content-type": type }).end(body);
    if (name === "favicon.ico") return response.writeHead(204).end();
    if (name === "site") return give(sitePage(SITE[standard]), "text/html");
    if (name.startsWith("scorm-again/")) return give(readFileSync(path.join(root, "tests/browser/node_modules/scorm-again/dist/esm", path.basename(name))), "text/javascript");
    const file = files.get(name.replace(/^package\//, ""));
    if (!file) return response.writeHead(404).end();
    return give(file, TYPES[name.split(".").at(-1)] ?? "text/plain");
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  return { url: `http://127.0.0.1:${server.address().port}/site`, stop: () => new Promise((done) => { server.closeAllConnections(); server.close(done); }) };
}

/** What the site has at this moment, straight from its run-time's data. */
const siteHas = (page, standard) => page.evaluate((global) => {
  const { cmi } = window[global];
  const core = cmi.core ?? cmi;
  return {
    status: core.lesson_status ?? core.completion_status, success: core.success_status, raw: core.score.raw, min: core.score.min, max: core.score.max, scaled: core.score.scaled,
    state: cmi.suspend_data, launch: cmi.launch_data, student: core.student_id ?? core.learner_id,
  };
}, SITE[standard].global);

/** Watches what a page is told by the package: every call into the run-time with its answer. */
const spy = (global) => {
  window.calls = [];
  Object.defineProperty(window, global, {
    configurable: true,
    get: () => window.spied,
    set: (api) => {
      window.spied = new Proxy(api, { get: (it, name) => (typeof it[name] === "function" && /^(LMS)?(Initialize|SetValue|Commit|Finish|Terminate)$/.test(name) ? (...given) => {
        const answer = it[name](...given);
        window.calls.push([name.replace("LMS", ""), ...given, String(answer)]);
        return answer;
      } : it[name]) });
    },
  });
};

async function withSite(standard, body) {
  const files = unpack(await pack(`${standard}.zip`, "--standard", standard));
  const site = await serveSite(standard, files);
  try {
    await withContexts(async (newContext) => {
      const first = standard === "scorm12" ? { core: { student_id: "s-0042", entry: "ab-initio" }, launch_data: "rest-pulse" } : { learner_id: "s-0042", entry: "ab-initio", launch_data: "rest-pulse" };
      /** A device, with what the site has kept of the student so far. */
      const device = async (kept = null) => {
        const context = await newContext({ viewport, acceptDownloads: true });
        await context.addInitScript(spy, SITE[standard].global);
        // The same heart each time: of some, the ruler of these tests cannot make out every beat.
        await context.addInitScript(() => (crypto.getRandomValues = (words) => words.fill(0)));
        await context.addInitScript(([told, had]) => {
          window.seedOfSite = told;
          if (had && !localStorage.getItem("site")) localStorage.setItem("site", had);
        }, [first, kept]);
        return context;
      };
      const troubles = [];
      const open = async (kept) => {
        const page = await (await device(kept)).newPage();
        page.on("pageerror", (error) => troubles.push(error.message));
        page.on("console", (message) => message.type() === "error" && troubles.push(message.text()));
        await page.goto(site.url);
        const frame = page.frameLocator("iframe");
        await frame.locator(".plug").first().waitFor({ state: "attached" });
        return { page, lab: page.frames()[1] };
      };
      await body({ open, files });
      assert.deepEqual(troubles, []);
    });
  } finally {
    await site.stop();
  }
}

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
      await lab.getByLabel("Cursor A, s").fill("1");
      await lab.getByLabel("Cursor A, s").press("Enter");
      await lab.getByText("Kept here and by the course site").waitFor();
      await student.kept(lab);
      const before = await siteHas(page, standard);
      assert.match(before.state, /^\d+\.1\.D3\.[\x21-\x7e]+$/);
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
      const [download] = await Promise.all([page.waitForEvent("download"), student.pressButton(lab, "Save take as CSV")]);
      const peaks = student.peaksOf(await student.readTake(download));
      const [a, b, count] = student.windowBetween(peaks, 15);
      for (const [name, time] of [["A", a], ["B", b]]) {
        await lab.getByLabel(`Cursor ${name}, s`).fill(time.toFixed(2));
        await lab.getByLabel(`Cursor ${name}, s`).press("Enter");
      }
      const seconds = Number((await student.reading(lab, "Interval A to B")).replace(/ s$/, ""));
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
      await student.pressButton(lab, "Finish and hand over");
      await lab.locator("#calm").filter({ hasText: "This window can be closed" }).waitFor();
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
    assert.ok(JSON.parse(here).length > 4096, "the device kept no more than the site");
  });
});

test("where no course site is, the page says so and keeps the attempt on the device", async () => {
  const files = unpack(path.join(work, "scorm12.zip"));
  const site = await serveSite("scorm12", files);
  try {
    await withContexts(async (newContext) => {
      const page = await (await newContext({ viewport })).newPage();
      await page.goto(site.url.replace("/site", "/package/index.html"));
      await page.getByText("No course site was found").waitFor();
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
    await student.pressButton(page, "Go on with it");
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
