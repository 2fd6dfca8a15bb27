// Going about in the page faster than it can follow: whatever arrives late, the page shows what the address says.
import { describe, test } from "node:test";
import { readFileSync } from "node:fs";
import path from "node:path";
import { deflateRawSync } from "node:zlib";
import assert from "node:assert/strict";
import { root, withPage } from "./lib.mjs";
import { pressButton } from "./student.mjs";

const wide = { viewport: { width: 1280, height: 900 } };
const tomlOf = (file) => readFileSync(path.join(root, "scenarios", file), "utf8");
const linked = (toml) => `#a=${deflateRawSync(Buffer.from(toml)).toString("base64url")}`;
const ASSIGNED = `${tomlOf("02-hum-on-the-trace.toml")}\n[assignment]\nkey = "going about"\nseeds = "each"\nattempts = 2\n`;

/** The places of the page: their address, and what stands there. `where` is what the head tells, `asks` the heading of a question. */
const PLACES = {
  start: { hash: "", view: "start", h1: "Practice the finger pulse" },
  bench: { hash: "#s=first-wiring&seed=11", view: "lab", kind: "bench", where: "seed 11" },
  other: { hash: "#s=hum-on-the-trace&seed=7", view: "lab", kind: "bench", where: "seed 7" },
  watch: { hash: "#watch=hum-on-the-trace", view: "lab", kind: "worked" },
  link: { hash: linked(ASSIGNED), view: "loading", asks: /A thick, noisy trace/ },
  open: { hash: linked(tomlOf("20-thick-trace-a.toml")), view: "lab", kind: "bench", where: "thick" },
  faults: { hash: "#faults", view: "faults" },
  skills: { hash: "#skills", view: "skills" },
  notebook: { hash: "#notebook", view: "notebook" },
  words: { hash: "#words", view: "read" },
  teach: { hash: "#teach", view: "read" },
  assign: { hash: "#assign", view: "assign" },
  class: { hash: "#class", view: "class" },
};

const TITLES = { faults: /^Faults, and the tests .* · /, skills: /^Skill map · /, notebook: /^Notebook · /, words: /Words of the lab · /, teach: /^For instructors · /, assign: /^Assign a scenario to a class · /, class: /^Class results · / };

/** Wraps what a page must not do twice, before any of its scripts runs: frames that are asked for, and sections that stand together. */
function watchPage() {
  const raf = window.requestAnimationFrame.bind(window);
  const seen = (window.seen = { asked: 0, together: [], told: [] });
  window.frame = () => new Promise((done) => raf(done));
  window.requestAnimationFrame = (step) => {
    seen.asked += 1;
    return raf(step);
  };
  const stands = (el) => !el.hidden && el.getClientRects().length > 0;
  window.standing = () => [...document.querySelectorAll("#main > *")].filter((el) => el.id !== "calm" && stands(el)).map((el) => el.id);
  new MutationObserver(() => {
    if (!document.getElementById("main")) return;
    const now = window.standing();
    if (now.length > 1) seen.together.push(now.join(" + "));
    const calm = document.getElementById("calm");
    if (!calm.hidden && calm.textContent && seen.told.at(-1) !== calm.textContent) seen.told.push(calm.textContent);
  }).observe(document, { subtree: true, childList: true, attributes: true, attributeFilter: ["hidden", "data-view"] });
}

/** What stands on the page, and how many loops run: frames asked for in each frame. */
const look = (page) => page.evaluate(async () => {
  await window.frame();
  const before = window.seen.asked;
  for (let k = 0; k < 10; k += 1) await window.frame();
  const open = [...document.querySelectorAll("dialog[open]")];
  return {
    loops: (window.seen.asked - before) / 10,
    view: document.body.dataset.view, kind: document.body.dataset.kind, standing: window.standing(), hash: location.hash,
    where: document.getElementById("where").textContent, title: document.title,
    h1: document.querySelector(`#${window.standing()[0]} h1`)?.textContent ?? null,
    asks: open.map((dialog) => dialog.querySelector("h2")?.textContent ?? ""),
    together: window.seen.together, told: window.seen.told,
  };
});

/** Holds answers back: `late(pattern, ms)`; `quiet()` resolves when nothing has been on its way for a while. */
async function slowly(page, delayOf) {
  let under = 0;
  let last = Date.now();
  await page.route(/\/(js|texts|scenarios|wasm)\//, async (route) => {
    under += 1;
    await new Promise((done) => setTimeout(done, delayOf(new URL(route.request().url()).pathname))); // span: a slow network is what is tried
    await route.continue().catch(() => {});
    under -= 1;
    last = Date.now();
  });
  return async () => {
    for (const end = Date.now() + 60_000; under > 0 || Date.now() - last < 700;) {
      assert.ok(Date.now() < end, "the page never came to rest");
      await page.waitForTimeout(50); // span: rest is a time without answers
    }
  };
}

/** Moves in the page's history, and waits until the address has changed, not until the page has followed. */
const moves = {
  to: (page, hash) => page.evaluate((wanted) => (location.hash = wanted), hash),
  back: (page) => page.evaluate(() => new Promise((done) => { addEventListener("popstate", done, { once: true }); history.back(); })),
  forward: (page) => page.evaluate(() => new Promise((done) => { addEventListener("popstate", done, { once: true }); history.forward(); })),
};

/** That the page shows a place and nothing else, that it told no error on the way, and that as many loops run as that place has. */
function assertPlace(found, name, trail) {
  const { view, kind, where, asks, h1 } = PLACES[name];
  const told = `${trail}: ${JSON.stringify(found)}`;
  assert.equal(found.hash, PLACES[name].hash, `the address after ${told}`);
  assert.equal(found.view, view, `the view after ${told}`);
  assert.deepEqual(found.standing, [view === "loading" ? "skeleton" : view], `what stands after ${told}`);
  assert.equal(found.asks.length, asks ? 1 : 0, `the questions after ${told}`);
  if (asks) assert.match(found.asks[0], asks, told);
  if (kind) assert.equal(found.kind, kind, told);
  if (where) assert.match(found.where, new RegExp(where, "i"), told);
  if (view === "lab") assert.equal(found.title, `${found.h1} · Dicrotic`, told);
  else if (view === "start") assert.equal(found.title, "Dicrotic: a practice bench for the finger pulse", told);
  else if (view !== "loading") assert.match(found.title, TITLES[name], told);
  if (["start", "loading", "assign", "class"].includes(view)) assert.equal(found.where, "", `the head still names a bench after ${told}`);
  if (h1) assert.equal(found.h1, h1, told);
  if (view !== "lab" && view !== "loading") assert.ok(found.h1, `no heading after ${told}`);
  if (name === "words") assert.match(found.h1, /words/i, told);
  if (name === "teach") assert.match(found.h1, /instructor/i, told);
  assert.deepEqual(found.together, [], `stood together on the way: ${trail}`);
  assert.deepEqual(found.told, [], `told on the way: ${trail}`);
  // A bench that waits under a side keeps its loop and lets no time pass.
  const most = { lab: 1, assign: 1, class: 0, start: 0, loading: 0 }[view];
  if (most === undefined) assert.ok(found.loops <= 1.05, `loops after ${told}`);
  else assert.ok(Math.abs(found.loops - most) < 0.15, `${found.loops} loops instead of ${most} after ${told}`);
}

/** Waits until the page shows a place, and holds it to that: what came late must not take it away again. */
async function settlesOn(page, name, trail) {
  for (const end = Date.now() + 20_000; ; await page.waitForTimeout(200)) { // span: looked at again and again until a limit
    const found = await look(page);
    try {
      assertPlace(found, name, trail);
      break;
    } catch (error) {
      if (Date.now() > end) throw error;
    }
  }
  await page.waitForTimeout(500); // span: what comes late has half a second to spoil it
  assertPlace(await look(page), name, `${trail}, and half a second`);
}

/** Numbers that look random and are the same in each run. */
function dice(seed) {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

const begin = async (page, url, hash = "") => {
  await page.addInitScript(watchPage);
  await page.goto(`${url}${hash}`);
};

describe("going about", { concurrency: 2 }, () => {
  for (const round of [1, 2, 3, 4, 5, 6]) {
    test(`back, forward and new addresses, faster than answers come (round ${round})`, async () => {
      await withPage(wide, async ({ page, url }) => {
        const roll = dice(1000 * round);
        let slow = false;
        const quiet = await slowly(page, () => (slow ? 900 * roll() ** 2 : 0));
        await begin(page, url);
        await page.locator("#start .card").first().waitFor();
        slow = true;
        const names = Object.keys(PLACES);
        let entries = ["start"], at = 0;
        const trail = ["start"];
        for (let stop = 0; stop < 3; stop += 1) {
          for (let k = 0; k < 7; k += 1) {
            const way = roll();
            if (way < 0.35 && at > 0) {
              await moves.back(page);
              at -= 1;
            } else if (way < 0.5 && at < entries.length - 1) {
              await moves.forward(page);
              at += 1;
            } else {
              const others = names.filter((one) => one !== entries[at]);
              const next = others[Math.floor(roll() * others.length)];
              await moves.to(page, PLACES[next].hash);
              entries = [...entries.slice(0, at + 1), next];
              at = entries.length - 1;
            }
            trail.push(entries[at]);
            await page.waitForTimeout(350 * roll() ** 2); // span: a hand that is now quick, now slow
          }
          await quiet();
          await settlesOn(page, entries[at], trail.join(" > "));
        }
      });
    });
  }

  /** From the start screen or a place, `first` is asked for with slow answers, and before they come `then` happens. */
  const race = (title, { from = "start", first, then, ends, slow = /./ }) => test(title, async () => {
    await withPage(wide, async ({ page, url }) => {
      let late = null;
      const quiet = await slowly(page, (file) => (late?.test(file) ? 1000 : 0));
      await begin(page, url, PLACES[from].hash);
      await page.waitForFunction((view) => document.body.dataset.view === view, PLACES[from].view);
      await quiet();
      late = slow;
      await moves.to(page, PLACES[first].hash);
      await page.waitForTimeout(300); // span: a hand that turns away before the answer
      if (then === "back") await moves.back(page);
      else await moves.to(page, PLACES[then].hash);
      await quiet();
      await settlesOn(page, ends ?? then, `${from} > ${first} > ${then}`);
    });
  });
  race("a scenario that comes late does not take the first screen's place", { first: "bench", then: "back", ends: "start" });
  race("a scenario that comes late does not take the place of a bench that was gone back to", { from: "bench", first: "other", then: "back", ends: "bench" });
  race("a worked example that comes late gives way", { from: "bench", first: "watch", then: "back", ends: "bench" });
  race("of two pages in one place, the one asked for last stands there", { first: "words", then: "teach", slow: /texts\/en\.words/ });
  race("a screen for instructors that comes late gives way to a bench", { from: "bench", first: "assign", then: "other" });
  race("a link's question is gone when the student goes back", { from: "bench", first: "link", then: "back", ends: "bench" });

  test("a kept attempt's question is gone when the student goes elsewhere, and is asked anew", async () => {
    await withPage(wide, async ({ page, url }) => {
      await begin(page, url, PLACES.bench.hash);
      await page.locator(".plug").first().waitFor({ state: "attached" });
      await pressButton(page, "On my own");
      await page.waitForFunction(() => Object.keys(localStorage).some((key) => key.includes("attempt:")));
      await moves.to(page, PLACES.start.hash);
      await page.locator("#start .card").first().waitFor();
      await moves.to(page, PLACES.bench.hash);
      await page.locator("#ask[open]").waitFor();
      await moves.back(page);
      await page.locator("#start .card").first().waitFor();
      await settlesOn(page, "start", "bench > start > bench? > start");
      await moves.forward(page);
      await page.locator("#ask[open]").waitFor();
      await page.locator("#ask button").first().click();
      await page.locator("#lab .plug").first().waitFor({ state: "attached" });
      await settlesOn(page, "bench", "forward > resumed");
    });
  });

  test("a recording that is read slowly does not come over a place that was gone to meanwhile", async () => {
    await withPage(wide, async ({ page, url }) => {
      let late = false;
      const quiet = await slowly(page, (file) => (late && /desk|files/.test(file) ? 1200 : 0));
      await begin(page, url, PLACES.bench.hash);
      await page.locator(".plug").first().waitFor({ state: "attached" });
      await quiet();
      late = true;
      const lines = ["t_s,value", ...Array.from({ length: 2000 }, (_, k) => `${k / 100},${Math.sin(k / 12)}`)];
      const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Open a file")]);
      await chooser.setFiles({ name: "slow.csv", mimeType: "text/csv", buffer: Buffer.from(lines.join("\n")) });
      await page.waitForTimeout(200); // span: a hand that turns away before the answer
      await moves.to(page, PLACES.other.hash);
      await quiet();
      await settlesOn(page, "other", "bench > file > other");
    });
  });

  for (const [title, text, told] of [
    ["that is given up", "1\n2\n3\n4\n5\n6\n7\n8\n9\n8\n7\n6\n5\n4\n3\n2\n1\n2\n3\n4", null],
    ["that cannot be read", "this is\nno table\n", /odd\.csv has no line with numbers/],
  ]) {
    test(`a recording ${title} does not cost what was on its way`, async () => {
      await withPage(wide, async ({ page, url }) => {
        await slowly(page, (file) => (/\.toml$/.test(file) ? 4000 : 0));
        await begin(page, url);
        const [chooser] = await Promise.all([page.waitForEvent("filechooser"), pressButton(page, "Open a file")]);
        await chooser.setFiles({ name: "odd.csv", mimeType: "text/csv", buffer: Buffer.from(text) });
        if (told) await page.locator("#calm").filter({ hasText: told }).waitFor();
        else {
          await page.locator("#ask[open]").waitFor();
          assert.equal(await page.locator("#start").isVisible(), false, "nothing was on its way: the test looks too late");
          await page.keyboard.press("Escape");
        }
        await page.locator("#start .card").first().waitFor({ timeout: 15_000 });
        if (told) assert.match(await page.locator("#calm").innerText(), told);
        assert.equal((await look(page)).asks.length, 0);
      });
    });
  }

  test("what fails to come for a screen that was left is not told", async () => {
    await withPage({ ...wide, expected: [/Failed to load resource/, /404/] }, async ({ page, url }) => {
      await begin(page, url);
      await page.locator("#start .card").first().waitFor();
      await page.route("**/js/class/index.js", async (route) => {
        await new Promise((done) => setTimeout(done, 700)); // span: an answer that comes late
        await route.fulfill({ status: 404, body: "gone" });
      });
      await moves.to(page, "#class");
      await page.waitForTimeout(200); // span: a hand that turns away before the answer
      await moves.back(page);
      await page.waitForTimeout(1200); // span: the late answer has come by then
      await settlesOn(page, "start", "start > class > start");
    });
  });

  test("what fails to come for a screen is told, and the page can be gone on with", async () => {
    await withPage({ ...wide, expected: [/Failed to load resource/, /404/] }, async ({ page, url }) => {
      await page.route("**/js/class/index.js", (route) => route.fulfill({ status: 404, body: "gone" }));
      await begin(page, url, "#class");
      await page.locator("#calm:not([hidden])").waitFor();
      assert.equal(await page.locator("#skeleton").isVisible(), false, "the page still looks as if something were coming");
      await moves.to(page, PLACES.bench.hash);
      await page.locator(".plug").first().waitFor({ state: "attached" });
      assert.equal(await page.locator("#calm").isVisible(), false, "what was told stays");
    });
  });

  test("a bench waits under a page beside it, is the same one afterwards, and back from a kept attempt leads to the first screen", async () => {
    await withPage(wide, async ({ page, url }) => {
      await begin(page, url, PLACES.bench.hash);
      await page.locator(".plug").first().waitFor({ state: "attached" });
      await pressButton(page, "On my own");
      const title = await page.title();
      for (const side of ["faults", "words", "skills"]) {
        await moves.to(page, PLACES[side].hash);
        await page.waitForFunction((view) => document.body.dataset.view === view, PLACES[side].view);
        assert.notEqual(await page.title(), title);
      }
      const clock = () => page.locator(".pen-at").first().innerText();
      for (let k = 0; k < 3; k += 1) await moves.back(page);
      await page.waitForFunction(() => document.body.dataset.view === "lab");
      assert.equal(await page.title(), title);
      const before = await clock();
      await page.waitForFunction((then) => document.querySelector(".pen-at").innerText !== then, before);
      await page.waitForFunction(() => Object.keys(localStorage).some((key) => key.includes("attempt:")));
      await moves.to(page, "");
      await page.locator(".way-kept a").first().click();
      await page.waitForFunction(() => document.body.dataset.view === "lab");
      await moves.back(page);
      await page.waitForFunction(() => document.body.dataset.view === "start");
      await settlesOn(page, "start", "kept attempt > back");
    });
  });
});
