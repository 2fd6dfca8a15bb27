// Nothing that a student did is lost: the browser killed, no room, no storage, damage, another version, two tabs. Each is told.
import { describe, test } from "node:test";
import assert from "node:assert/strict";
import { kills } from "./kill.mjs";
import { startServer, strings, withPage, words } from "./lib.mjs";
import * as student from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const ID = "hum-on-the-trace", SEED = "41";
const KEY = `attempt:${ID}:${SEED}`;
const told = await words();

/** The message above everything says this text. */
const says = (page, key) => {
  const [most] = strings(told[key]).toSorted((a, b) => b.length - a.length);
  return page.locator("#calm", { hasText: most.trim() }).waitFor();
};
const silent = async (page) => assert.equal(await page.locator("#calm").isVisible(), false, await page.locator("#calm").innerText());
const begin = (page, url) => student.openScenario(page, url, ID, SEED);
const deed = (page, label) => student.choose(page, "Low-pass", label);
const lowPass = (page) => page.getByLabel("Low-pass", { exact: true }).evaluate((el) => el.selectedOptions[0].textContent);

/** Both copies of the attempt: their logs' lengths; null for none or one that cannot be read. */
const copies = (page) => page.evaluate(async (key) => {
  const length = (attempt) => {
    try {
      return JSON.parse(attempt.saved).log.length;
    } catch {
      return null;
    }
  };
  const database = await new Promise((done) => {
    const asked = indexedDB.open("dicrotic", 1);
    asked.onsuccess = () => done(asked.result);
  });
  const there = await new Promise((done) => {
    const asked = database.transaction("attempts").objectStore("attempts").get(key);
    asked.onsuccess = () => done(asked.result);
  });
  database.close();
  let here = null;
  try {
    here = JSON.parse(localStorage.getItem(`dicrotic:${key}`));
  } catch { /* damaged */ }
  return { here: length(here), there: length(there) };
}, KEY);

/** Puts something else into one copy, or both. */
const spoil = (page, { here, there }) => page.evaluate(async ([key, one, other]) => {
  if (one !== null) localStorage.setItem(`dicrotic:${key}`, one);
  if (other === null) return;
  const database = await new Promise((done) => {
    const asked = indexedDB.open("dicrotic", 1);
    asked.onsuccess = () => done(asked.result);
  });
  await new Promise((done) => {
    const transaction = database.transaction("attempts", "readwrite");
    transaction.objectStore("attempts").put(JSON.parse(other), key);
    transaction.oncomplete = done;
  });
  database.close();
}, [KEY, here ?? null, there === undefined ? null : JSON.stringify(there)]);

/** An attempt with one thing done, left again. */
async function leftAttempt(page, url) {
  await begin(page, url);
  await deed(page, "30 Hz");
  await student.kept(page);
  assert.deepEqual(await copies(page), { here: 1, there: 1 });
  await page.goto("about:blank");
  await page.goto(url); // the same origin, and no attempt under way
  await page.locator(".kept a").waitFor();
}

const back = async (page, url) => {
  await page.goto("about:blank");
  await page.goto(`${url}#s=${ID}&seed=${SEED}`);
};
const goOn = (page) => student.pressButton(page, "Continue it");

describe("nothing is lost", { concurrency: 1 }, () => {
  test("a browser killed at any moment: everything older than a second comes back", { timeout: 600_000 }, async () => {
    const server = await startServer();
    try {
      const sum = await kills(server.url, 8);
      assert.ok(sum.due > 20, `only ${sum.due} actions were due: the kills came too early to tell`);
    } finally {
      await server.stop();
    }
  });

  test("an action goes into both copies by itself, before another one is done", async () => {
    await withPage(wide, async ({ page, url }) => {
      await begin(page, url);
      for (const [k, label] of ["30 Hz", "off", "30 Hz"].entries()) {
        await deed(page, label);
        assert.equal(await student.kept(page), k + 1);
        assert.deepEqual(await copies(page), { here: k + 1, there: k + 1 });
      }
      await silent(page);
    });
  });

  test("no room: it says what is kept, and says so again when there is room", async () => {
    await withPage(wide, async ({ page, url }) => {
      await begin(page, url);
      await deed(page, "30 Hz");
      await student.kept(page);
      await page.evaluate(() => {
        // The database's own quota is not looked at anew for a while: what it says then is said for it.
        const put = IDBObjectStore.prototype.put;
        globalThis.room = () => (IDBObjectStore.prototype.put = put);
        IDBObjectStore.prototype.put = () => {
          throw new DOMException("no room", "QuotaExceededError");
        };
        // Halves that still fit, down to the last letter.
        for (let size = 1 << 22, k = 0; size >= 1; k += 1) {
          try {
            localStorage.setItem(`fill${k}`, "x".repeat(size));
          } catch {
            size = Math.floor(size / 2);
          }
        }
      });
      await deed(page, "off");
      await says(page, "kept-full");
      assert.equal(await lowPass(page), "off", "the page is not usable");
      assert.equal((await copies(page)).there, 1);
      await page.evaluate(() => globalThis.room());
      await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("fill")).forEach((key) => localStorage.removeItem(key)));
      await deed(page, "30 Hz");
      await says(page, "kept-again");
      assert.deepEqual(await copies(page), { here: 3, there: 3 });
    });
  });

  test("storage switched off: the page works and says that it keeps nothing", async () => {
    await withPage(wide, async ({ page, context, url }) => {
      await context.addInitScript(() => {
        const no = () => {
          throw new DOMException("switched off", "SecurityError");
        };
        Object.defineProperty(globalThis, "localStorage", { get: no });
        IDBFactory.prototype.open = no;
      });
      await begin(page, url);
      await silent(page);
      await deed(page, "30 Hz");
      await says(page, "kept-off");
      assert.match(await page.locator("#calm").innerText(), /nothing of this attempt yet/);
      assert.equal(await lowPass(page), "30 Hz");
    });
  });

  test("one copy damaged: the other one is taken up", async () => {
    for (const damage of [{ here: "{\"at\":17" }, { here: "7" }, { there: { at: 9e15, saved: "nothing" } }]) {
      await withPage(wide, async ({ page, url }) => {
        await leftAttempt(page, url);
        await spoil(page, damage);
        await back(page, url);
        await goOn(page);
        await says(page, "kept-mended");
        assert.equal(await lowPass(page), "30 Hz");
      });
    }
  });

  test("both copies damaged: they are laid aside, not thrown away", async () => {
    await withPage(wide, async ({ page, url }) => {
      await leftAttempt(page, url);
      await spoil(page, { here: "{\"at\":17", there: 5 });
      await back(page, url);
      await says(page, "kept-damaged");
      assert.equal(await lowPass(page), "off");
      assert.equal(await page.evaluate((key) => localStorage.getItem(`dicrotic:${key}`), KEY.replace("attempt", "aside")), "{\"at\":17");
    });
  });

  test("kept by an older version: it is told, and laid aside", async () => {
    await withPage(wide, async ({ page, url }) => {
      await leftAttempt(page, url);
      const old = { at: Date.now(), deeds: 1, saved: JSON.stringify({ version: 0, scenario: "", seed: SEED, samples: 0, log: [] }) };
      await spoil(page, { here: JSON.stringify(old), there: old });
      await back(page, url);
      await goOn(page);
      await says(page, "kept-unusable");
      assert.match(await page.locator("#calm").innerText(), /another version of this page \(form 0\)/);
      assert.equal(await page.evaluate((key) => localStorage.getItem(`dicrotic:${key}`), KEY.replace("attempt", "aside")), JSON.stringify(old));
    });
  });

  test("a log that cannot be done again is told, and laid aside", async () => {
    await withPage(wide, async ({ page, url }) => {
      await leftAttempt(page, url);
      const wrong = await page.evaluate((key) => {
        const attempt = JSON.parse(localStorage.getItem(`dicrotic:${key}`));
        const saved = JSON.parse(attempt.saved);
        saved.log.push({ at: saved.samples, action: { do: "stop" } });
        return { ...attempt, saved: JSON.stringify(saved) };
      }, KEY);
      await spoil(page, { here: JSON.stringify(wrong), there: wrong });
      await back(page, url);
      await goOn(page);
      await says(page, "kept-unusable");
    });
  });

  test("two tabs on one attempt: the first keeps it, the second says so and takes over when it may", async () => {
    await withPage(wide, async ({ page, context, url }) => {
      await begin(page, url);
      await deed(page, "30 Hz");
      await student.kept(page);
      const other = await context.newPage();
      await back(other, url);
      await goOn(other);
      await says(other, "kept-elsewhere");
      await silent(page);
      await deed(other, "off");
      await student.notKept(other, "elsewhere");
      assert.deepEqual(await copies(other), { here: 1, there: 1 }, "the second tab wrote over the first");
      await page.goto("about:blank");
      await says(other, "kept-again");
      await student.kept(other);
      assert.deepEqual(await copies(other), { here: 2, there: 2 });
    });
  });

  test("two tabs, and the first one went on: the second does not write over it", async () => {
    await withPage(wide, async ({ page, context, url }) => {
      await begin(page, url);
      await deed(page, "30 Hz");
      await student.kept(page);
      const other = await context.newPage();
      await back(other, url);
      await goOn(other);
      await says(other, "kept-elsewhere");
      await deed(page, "off");
      await deed(page, "30 Hz");
      await student.kept(page);
      await page.goto("about:blank");
      await says(other, "kept-overtaken");
      await deed(other, "off");
      await student.notKept(other, "overtaken");
      assert.deepEqual(await copies(other), { here: 3, there: 3 });
      await other.reload();
      await goOn(other);
      await other.locator(".plug").first().waitFor({ state: "attached" });
      assert.equal(await lowPass(other), "30 Hz");
      await silent(other);
    });
  });

  test("what is being typed stands after a reload, though nobody left the field", async () => {
    await withPage(wide, async ({ page, url }) => {
      await student.openHalf(page, url, "given-window", 11);
      await page.locator(".blank").first().click();
      await page.keyboard.type("17");
      await page.reload();
      await goOn(page);
      await page.waitForFunction(() => document.querySelector(".blank")?.value === "17");
    });
  });

  test("a page that is reloaded goes on keeping, without a word", async () => {
    await withPage(wide, async ({ page, url }) => {
      await begin(page, url);
      await deed(page, "30 Hz");
      for (let k = 2; k <= 4; k += 1) {
        await page.reload();
        await goOn(page);
        await page.locator(".plug").first().waitFor({ state: "attached" });
        await deed(page, k % 2 ? "30 Hz" : "off");
        await student.kept(page);
        assert.deepEqual(await copies(page), { here: k, there: k });
        await silent(page);
      }
    });
  });
});
