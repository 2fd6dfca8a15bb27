// Kills the tab of a course site in the midst of an attempt, again and again, on one device that two students use for two items of one
// package: node tests/browser/kill_course.mjs 100. What was told to be kept must be there, and nothing of another's.
import { readFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import assert from "node:assert/strict";
import { root } from "./lib.mjs";
import { siteHas, withSite } from "./site.mjs";

const LABELS = ["±50 mV", "±500 mV", "±1 V", "±200 mV", "±100 mV"];
const built = path.resolve(root, process.env.CARGO_TARGET_DIR ?? "target", "page");

/** How many actions a state of the course site holds. */
async function counter() {
  const core = await import(pathToFileURL(path.join(built, "dicrotic_desk.js")).href);
  core.initSync({ module: readFileSync(path.join(built, "dicrotic_desk_bg.wasm")) });
  return (state) => JSON.parse(core.readCode(state.split(".").slice(5).join("."))).actions;
}

/** Kills a tab at so many moments; the sums. */
export async function killsInCourse(times, tell = () => {}) {
  const actions = await counter();
  const sum = { kills: 0, done: 0, due: 0, found: 0 };
  await withSite("scorm12", async ({ device, url }) => {
    const context = await device();
    const all = ["ann", "ben"].flatMap((who) => ["a", "b"].map((item) => ({ who, item, due: 0, seed: null, last: null })));
    const open = async (one) => {
      const page = await context.newPage();
      await page.goto(`${url}?item=${one.item}&student=${one.who}`);
      const lab = await (await page.locator("iframe").elementHandle()).contentFrame();
      await lab.locator(".plug").first().waitFor({ state: "attached" });
      await lab.getByText("The course site has everything up to now").waitFor();
      const has = await siteHas(page, "scorm12");
      const seed = await lab.locator(".where .seed").innerText();
      assert.equal(has.student, one.who);
      one.seed ??= seed;
      assert.equal(seed, one.seed, `${one.who}, ${one.item}: another's bench, or a new one`);
      const found = actions(has.state);
      assert.ok(found >= one.due, `${one.who}, ${one.item}: ${found} of ${one.due} actions came back`);
      assert.ok(found <= one.most, `${one.who}, ${one.item}: ${found} actions, of which only ${one.most} were done`);
      return { page, lab, found };
    };
    for (let k = 0; k < times; k += 1) {
      const one = all[(k * 7 + Math.floor(k / 4)) % all.length];
      one.most ??= 0;
      const { page, lab, found } = await open(one);
      sum.found += found - (one.base ?? 0);
      one.base = found;
      let done = 0, killed = false;
      one.due = found;
      const cdp = await context.newCDPSession(page);
      const crashed = page.waitForEvent("crash");
      setTimeout(() => { // span: the kill comes at a moment that nobody knows of
        killed = true;
        cdp.send("Page.crash").catch(() => {});
      }, 200 + Math.floor(Math.random() * 2300));
      while (!killed) {
        try {
          await lab.getByLabel("Full-scale range", { exact: true }).selectOption({ label: LABELS[(found + done) % LABELS.length] }, { timeout: 5000 });
          done += 1;
          one.most = found + done + 1;
          // Every other time it waits until the page tells that all is kept; else it goes on at once.
          if (done % 2 === 0) await lab.waitForFunction(() => /^\d+$/.test(document.documentElement.dataset.kept ?? ""), null, { timeout: 5000 });
          const kept = await lab.evaluate(() => document.documentElement.dataset.kept);
          if (/^\d+$/.test(kept ?? "")) one.due = found + done;
        } catch (error) {
          if (!killed) throw error;
        }
      }
      await crashed;
      one.most = found + done + 1;
      sum.due += one.due - found;
      sum.done += done;
      sum.kills += 1;
      await page.close();
      tell(sum);
    }
    for (const one of all.filter(({ seed }) => seed)) await (await open(one)).page.close();
    assert.equal(new Set(all.filter(({ seed }) => seed).map(({ seed }) => seed)).size, all.filter(({ seed }) => seed).length, "two have one bench");
  }, { random: true });
  return sum;
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  const sum = await killsInCourse(Number(process.argv[2] ?? 100), ({ kills, due }) => console.log(`${kills} kills: ${due} actions due`));
  console.log(`a course site's tab killed in mid-attempt, ${sum.kills} times, four attempts of two students on one device\t${sum.done} actions done, ${sum.due} of them told as kept before the kill, none of those is missing, nothing of another's shown`);
}
