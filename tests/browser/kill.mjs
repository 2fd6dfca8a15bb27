// Kills a real Chromium in the midst of an attempt and looks at what a new one finds on the disk: node tests/browser/kill.mjs 100
// What was done more than a second before the kill must be there, in order, and the attempt goes on from it.
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import assert from "node:assert/strict";
import { chromium } from "playwright-core";
import { browserFlags, browserPath, startServer } from "./lib.mjs";
import { pressButton } from "./student.mjs";

const SCENARIO = "hum-on-the-trace";
const GRACE_MS = 1000;

/** A Chromium of our own on a profile that outlives it: {browser, page, kill()}. */
async function open(profile) {
  // A group of its own, so that the kill takes its helpers with it, as a battery that runs out does.
  const child = spawn(browserPath, [...browserFlags, "--headless", "--window-size=1280,1000", "--remote-debugging-port=0", `--user-data-dir=${profile}`, "about:blank"], { stdio: ["ignore", "ignore", "pipe"], detached: true });
  const gone = new Promise((done) => child.once("close", done));
  const kill = async () => {
    try {
      process.kill(-child.pid, "SIGKILL");
    } catch { /* gone already */ }
    await gone;
  };
  try {
    const address = await new Promise((found, fail) => {
      let told = "";
      child.stderr.on("data", (chunk) => {
        const [, one] = (told += chunk).match(/DevTools listening on (ws:\S+)\s/) ?? [];
        if (one) found(one);
      });
      child.once("close", () => fail(new Error(`Chromium does not come up: ${told}`)));
    });
    const browser = await chromium.connectOverCDP(address);
    const context = browser.contexts()[0];
    const page = context.pages()[0] ?? (await context.newPage());
    return { browser, page, kill };
  } catch (error) {
    await kill();
    throw error;
  }
}

const hzOf = (label) => (Number.isNaN(parseFloat(label)) ? null : parseFloat(label));
const lowPass = (page) => page.getByLabel("Low-pass", { exact: true });

/** The log of the attempt as it is kept. */
const keptLog = (page, seed) => page.evaluate((key) => JSON.parse(JSON.parse(localStorage.getItem(key)).saved).log, `dicrotic:attempt:${SCENARIO}:${seed}`);

/** One attempt that is cut off after some ms: {done, due, found}, numbers of actions. Throws when one is lost. */
export async function killOnce(url, seed, ms) {
  const profile = mkdtempSync(path.join(tmpdir(), "dicrotic-kill-"));
  let open_ = null;
  try {
    open_ = await open(profile);
    const { page } = open_;
    await page.goto(`${url}#s=${SCENARIO}&seed=${seed}`);
    await page.locator(".plug").first().waitFor({ state: "attached" });
    await page.locator('.stage[data-stage="filters"]').click();
    const labels = await lowPass(page).locator("option").allTextContents();
    const deeds = [];
    let killed = 0;
    const end = new Promise((done) => setTimeout(() => { // span: the kill comes at a moment that nobody knows of
      killed = Date.now();
      open_.kill().then(done);
    }, ms));
    for (let k = 1; !killed; k += 1) {
      const label = labels[k % labels.length];
      try {
        await lowPass(page).selectOption({ label }, { timeout: 20_000 });
      } catch (error) {
        if (!killed) throw new Error("the page does not take an action", { cause: error });
        break;
      }
      deeds.push({ at: Date.now(), hz: hzOf(label) });
    }
    await end;
    const due = deeds.filter(({ at }) => at <= killed - GRACE_MS).length;

    open_ = await open(profile);
    const again = open_.page;
    await again.goto(`${url}#s=${SCENARIO}&seed=${seed}`);
    const goOn = again.getByRole("button", { name: "Continue it" });
    await goOn.or(again.locator(".plug").first()).first().waitFor({ state: "attached" });
    if (due === 0 && !(await goOn.isVisible())) return { done: deeds.length, due, found: 0 };
    await goOn.click();
    await again.locator(".plug").first().waitFor({ state: "attached" });
    // One thing more, so that what is kept next is the log as it was taken up.
    await pressButton(again, "Tap the sensor");
    await again.waitForFunction(([key]) => JSON.parse(JSON.parse(localStorage.getItem(key) ?? "{}").saved ?? "{}").log?.at(-1)?.action.do === "tap_sensor", [`dicrotic:attempt:${SCENARIO}:${seed}`]);
    const found = (await keptLog(again, seed)).map(({ action }) => action).filter((action) => action.do === "low_pass").map(({ hz }) => hz ?? null);
    assert.ok(found.length >= due, `${found.length} of ${due} actions came back after a kill at ${ms} ms (${deeds.length} were done)`);
    const common = Math.min(found.length, deeds.length);
    assert.deepEqual(found.slice(0, common), deeds.slice(0, common).map(({ hz }) => hz), "other actions came back");
    return { done: deeds.length, due, found: found.length };
  } finally {
    await open_?.kill();
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Kills at so many random moments; the sums. */
export async function kills(url, times, tell = () => {}) {
  const sum = { kills: 0, done: 0, due: 0, found: 0 };
  for (let k = 0; k < times; k += 1) {
    const one = await killOnce(url, 1000 + k, 900 + Math.floor(Math.random() * 2500));
    sum.kills += 1;
    for (const name of ["done", "due", "found"]) sum[name] += one[name];
    tell(sum);
  }
  return sum;
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  const server = await startServer();
  try {
    const sum = await kills(server.url, Number(process.argv[2] ?? 100), ({ kills: k, due, found }) => console.log(`${k} kills: ${due} actions due, ${found} found`));
    console.log(`Chromium killed in mid-attempt, ${sum.kills} times\t${sum.done} actions done, ${sum.due} of them older than a second at the kill, ${sum.found} came back, none of those due is missing`);
  } finally {
    await server.stop();
  }
}
