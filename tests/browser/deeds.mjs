// What a whole correct attempt costs whoever does it: presses, drags, keys, fields, scrolling and the way of the pointer, by mouse, by touch and
// by keys alone. Printed, never asserted: node tests/browser/deeds.mjs [--page NAME] [--only ID,...] [--means mouse,touch,keys] [--marks] [--out FILE]
import assert from "node:assert/strict";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { MEANS, takeInHand } from "./deeds_hand.mjs";
import { root, startServer, strings, withPage, words } from "./lib.mjs";
import * as student from "./student.mjs";

const said = await words();
/** The page's words for a key, so that a control is found by what is written on it, however that is put. */
const t = (key) => {
  assert.ok(key in said, `the page has no words ${key}`);
  return strings(said[key]).join("");
};

/** A place in the window of a point of the drawn table, cm. */
const onTable = (page, x, y) => () => page.locator(".table-top").evaluate((el, [u, v]) => {
  const m = el.getScreenCTM();
  return [m.a * u + m.c * v + m.e, m.b * u + m.d * v + m.f];
}, [x, y]);

/** Where something drawn has its own origin, in the window. */
const originOf = (page, selector) => page.locator(selector).first().evaluate((el) => {
  const m = el.getScreenCTM();
  return [m.e, m.f];
});

/** Where the middle of something lies in the window. */
const middleOf = (page, selector) => () => page.locator(selector).first().evaluate((el) => {
  const box = el.getBoundingClientRect();
  return [box.x + box.width / 2, box.y + box.height / 2];
});

/**
 * The way to each control, one table for each make of the page. `h` is the hand; drawings are for mouse and finger, lists for keys.
 * What only reads or waits (`asked`, `samples`, `height`, `wait`, `recorded`, `kept`, `found`) costs nothing.
 */
const PAGES = {
  before: {
    /** On a small screen one part of the page is there at a time. */
    pane: async (h, name) => {
      const tab = h.page.locator(`.pane-tab[data-pane="${name}"]`);
      // Pressed again where the first press only took the focus out of a field.
      for (let k = 0; k < 3 && (await tab.isVisible()) && (await tab.getAttribute("aria-current")) !== "true"; k += 1) await h.press(tab);
    },
    begin: async (h) => {
      const alone = h.page.getByRole("button", { name: t("offer-alone"), exact: true });
      if (await alone.isVisible()) await h.press(alone);
    },
    agree: async (h) => {
      const open = h.page.locator(".agree-open");
      if (!(await open.isVisible())) return;
      await h.press(open);
      await h.press(h.page.locator("dialog[open] .btn-strong"));
    },
    plug: async (h, { end, socket }) => {
      await PAGES.before.pane(h, "bench");
      if (h.means === "keys") return h.choose(h.page.getByLabel(t(`end-${end}`), { exact: true }), socket);
      const plug = h.page.locator(`.plug[data-end="${end}"]`);
      const to = async () => {
        const [hold, from, at] = [(await h.state(plug)).at, await originOf(h.page, `.plug[data-end="${end}"]`), await originOf(h.page, `.socket[data-socket="${socket}"]`)];
        return [at[0] + hold[0] - from[0], at[1] + hold[1] - from[1]];
      };
      await h.drag(plug, to);
      return h.page.locator(`.socket[data-socket="${socket}"].is-taken`).waitFor({ state: "attached" });
    },
    switch: async (h, { id, on }) => {
      await PAGES.before.pane(h, "bench");
      if (h.means === "keys") return h.turn(h.page.getByRole("switch", { name: t(`switch-${id}`), exact: true }), on);
      return h.press(h.page.locator(`[data-press="switch:${id}"]`));
    },
    charger: async (h, { plugged }) => {
      await PAGES.before.pane(h, "bench");
      if (h.means === "keys") return h.turn(h.page.getByRole("switch", { name: t("switch-charger"), exact: true }), plugged);
      return h.press(h.page.locator('[data-drag="part:charger"]'));
    },
    move: async (h, { part, x, y }) => {
      await PAGES.before.pane(h, "bench");
      if (h.means !== "keys") return h.drag(h.page.locator(`[data-drag="part:${part}"]`), onTable(h.page, x, y));
      await h.open(h.page.locator(".list-move"));
      await h.choose(h.page.locator(".list-move select"), part);
      await h.type(h.page.locator(".list-move input").nth(0), x);
      return h.type(h.page.locator(".list-move input").nth(1), y, { enter: true });
    },
    strap_on: async (h) => {
      await PAGES.before.pane(h, "bench");
      if (h.means === "keys") return h.turn(h.page.getByRole("switch", { name: t("strap-on"), exact: true }), true);
      await h.drag(h.page.locator(".pad.press"), middleOf(h.page, ".part-hand .dusk-fill"));
      return h.page.locator(".pad.press.is-on").waitFor({ state: "attached" });
    },
    strap: async (h, { tightness }) => {
      await PAGES.before.pane(h, "bench");
      return h.slide(h.page.getByLabel(t("strap-tightness"), { exact: true }), Math.round(100 * tightness));
    },
    tap_pad: async (h) => {
      await PAGES.before.pane(h, "bench");
      return h.press(h.means === "keys" ? h.page.getByRole("button", { name: t("list-tap_pad"), exact: true }) : h.page.locator(".pad.press"));
    },
    press_finger: async (h) => {
      await PAGES.before.pane(h, "bench");
      return h.press(h.page.getByRole("button", { name: t("list-press_finger"), exact: true }));
    },
    look: async (h, { at }) => {
      await PAGES.before.pane(h, "bench");
      return h.press(h.page.locator(".trials").getByRole("button", { name: t(`look-${at}`), exact: true }));
    },
    name: async (h, { fault }) => {
      await PAGES.before.pane(h, "sheet");
      const button = h.page.locator(`.fault-name[data-fault="${fault}"]`);
      await button.waitFor({ state: "attached" });
      await h.open(h.page.locator(".impression", { has: button }));
      return h.press(button);
    },
    range: async (h, { v }) => {
      await PAGES.before.pane(h, "strip");
      return h.choose(h.page.getByLabel(t("set-range"), { exact: true }), v);
    },
    time_base: async (h, { s }) => {
      await PAGES.before.pane(h, "strip");
      return h.choose(h.page.getByLabel(t("set-time_base"), { exact: true }), s);
    },
    record: async (h) => {
      await PAGES.before.pane(h, "strip");
      await h.press(h.page.locator(".btn-record"));
      return h.page.locator(".btn-record.is-on").waitFor();
    },
    stop: async (h) => {
      await h.press(h.page.locator(".btn-record.is-on"));
      return h.page.locator(".strip.is-measuring").waitFor();
    },
    /** Shows the first `seconds` of the open take on one screen. */
    whole: async (h, seconds) => {
      const base = h.page.getByLabel(t("set-time_base"), { exact: true });
      const all = await base.locator("option").evaluateAll((options) => options.map((one) => Number(one.value)));
      const now = Number(await base.inputValue());
      if (now < seconds) await PAGES.before.time_base(h, { s: all.sort((a, b) => a - b).find((one) => one >= seconds) });
    },
    cursor: async (h, { which, t: time }) => {
      await PAGES.before.pane(h, "strip");
      if (h.means === "keys") return h.type(h.page.getByLabel(t(`cursor-${which}_s`), { exact: true }), time.toFixed(2), { enter: true });
      const flag = h.page.locator(`.cursor-${which} .cursor-flag`);
      const to = async () => {
        const span = Number(await h.page.getByLabel(t("set-time_base"), { exact: true }).inputValue());
        const { x } = await student.ruler(h.page, span);
        const { at } = await h.state(flag);
        return [x(time) + at[0] - (await h.page.locator(`.cursor-${which}`).boundingBox()).x, at[1]];
      };
      return h.drag(flag, to);
    },
    mark: async (h, time) => {
      await PAGES.before.pane(h, "strip");
      if (h.means === "keys") {
        await h.type(h.page.getByLabel(t("cursor-a_s"), { exact: true }), time.toFixed(2), { enter: true });
        return h.press(h.page.getByRole("button", { name: t("marks-at_a"), exact: true }));
      }
      const where = async () => {
        const { x, y } = await student.ruler(h.page, Number(await h.page.getByLabel(t("set-time_base"), { exact: true }).inputValue()));
        return [x(time), y];
      };
      return h.pressAt(h.page.locator(".field"), where);
    },
    label: async (h, { text }) => {
      await PAGES.before.pane(h, "strip");
      return h.type(h.page.getByLabel(t("take-label"), { exact: true }), text);
    },
    answer: async (h, { field, text }) => {
      await PAGES.before.pane(h, "sheet");
      return h.type(h.page.locator(`.blank[data-field="${field}"]`), text);
    },
    check: async (h) => {
      await PAGES.before.pane(h, "sheet");
      await h.press(h.page.locator(".page .row .btn-strong").first());
      const yes = h.page.locator("dialog[open] .btn-strong");
      if (await yes.isVisible()) await h.press(yes);
    },

    open: (page, url, id, seed) => student.openScenario(page, url, id, seed),
    asked: async (page) => Number((await page.locator(".task-line").innerText()).match(/(\d+(?:\.\d+)?) s/)?.[1]),
    samples: async (page) => {
      const [download] = await Promise.all([page.waitForEvent("download"), page.locator(".saves .btn").first().evaluate((el) => el.click())]);
      return student.readTake(download);
    },
    height: (page) => page.locator(".measure .reading output").nth(1).innerText(),
    wait: (page, seconds) => student.worldRuns(page, seconds),
    recorded: (page, seconds) => student.recorded(page, seconds),
    kept: (page) => student.kept(page),
    /** The first step that is not right, or null. */
    found: async (page) => (await student.readDebrief(page)).steps.find((step) => step.first)?.text.replaceAll(/\s+/g, " ") ?? null,
  },
};

const SCENARIOS = ["first-wiring", "rest-pulse", "hum-on-the-strip", "flat-line-b", "small-pulse-a", "thick-trace-a", "two-at-once-c", "given-window", "read-the-range", "after-exercise"];
/** The script's range leaves the pulse at the edge of what is asked for; a hand that looks takes the next finer one. */
const FINER = { "first-wiring": 0.05 };
/** Where the subject moved in the midst of a recording, or lay badly in it, the page has no part in that: the attempt is done anew, a little later. */
const MOST_TURNS = 4;
/** Recordings that a hand makes until one has a window as it is asked for; each is counted. */
const MOST_TAKES = 3;

/** The first scripted attempt of a scenario that passes: its seed, and its steps as actions. */
function scriptOf(id) {
  const file = readdirSync(path.join(root, "scenarios")).find((name) => name.replace(/^\d+-/, "") === `${id}.toml`);
  const text = readFileSync(path.join(root, "scenarios", file), "utf8");
  const attempt = text.split("[[attempt]]").slice(1).find((one) => /passed = true/.test(one));
  const steps = attempt.slice(attempt.indexOf("steps = [")).split("\n").filter((line) => line.trim().startsWith("{"))
    .map((line) => JSON.parse(line.trim().replace(/,$/, "").replaceAll(/(\w+) = /g, '"$1": ')));
  return { id, seed: Number(attempt.match(/seed = (\d+)/)[1]), steps };
}

/** Foot and peak of a beat in the midst of a take, s. */
function footAndTop(samples, peaks) {
  const top = peaks[Math.floor(peaks.length / 3)];
  const within = (from, to) => samples.filter(([time]) => time >= from && time <= to);
  const foot = within(top - 0.35, top).reduce((low, one) => (one[1] < low[1] ? one : low));
  const high = within(top - 0.08, top + 0.08).reduce((most, one) => (one[1] > most[1] ? one : most));
  return [foot[0], high[0]];
}

/** What a reader of the take finds for the script: where the cursors go; null where this take has no such place. */
async function reading(way, page, steps) {
  const samples = await way.samples(page);
  const times = Object.fromEntries(steps.filter((one) => one.do === "cursor").map((one) => [one.which, one.t]));
  const length = (text) => Number(text.match(/\+([\d.]+)/)?.[1] ?? 0);
  const may = { may: true };
  for (const apart of [0.45, 0.3]) { // a fast pulse wants less
    const peaks = student.peaksOf(samples, apart);
    if (times.a === "@foot") {
      const [a, b] = footAndTop(samples, peaks);
      return { a, b, peaks };
    }
    for (const some of [student.levelPeaks(samples, peaks), peaks]) { // where the tops stand level, if they do so for long enough
      const window = times.b === "@end"
        ? student.windowOf(some, await way.asked(page), samples.at(-1)[0], may)
        : student.windowBetween(some, Math.floor(length(times.b) - length(times.a)), 0.4, may);
      if (window) return { a: window[0], b: window[1], peaks };
    }
  }
  return null;
}

/** What is written into a field. */
async function written(field, way, page, { a, b, peaks }, range) {
  const right = student.rightAnswers(peaks, a, b);
  if (field === "range") return String(Math.round(range * 1000));
  if (field === "amplitude") return (await way.height(page)).match(/[\d.]+/)[0];
  if (field === "uncertainty") return (60 / right.seconds).toFixed(0);
  return String(right[field]);
}

/** Plays a script on a page in hand; what it cost, and the first step that was not right. */
async function play(way, h, { id, steps }, { marks }) {
  const { page } = h;
  let range = null, found = null, takes = 0;
  await way.begin(h);
  for (const [k, step] of steps.entries()) {
    if (step.wait !== undefined) {
      if (steps[k - 1]?.do !== "record") await way.wait(page, step.wait);
    } else if (step.do === "record") {
      // Until a take has a window as it is asked for.
      for (; !found && takes < MOST_TAKES; takes += 1) {
        await way.record(h);
        await way.recorded(page, steps[k + 1].wait);
        await way.stop(h);
        found = await reading(way, page, steps);
      }
      if (!found) return { ...h.count, deeds: await way.kept(page), takes, open: "no window" };
      await way.whole(h, found.b);
      if (marks) for (const peak of found.peaks.filter((time) => time > found.a && time < found.b)) await way.mark(h, peak);
    } else if (step.do === "cursor") {
      await way.cursor(h, { which: step.which, t: found[step.which] });
    } else if (step.do === "answer") {
      await way.answer(h, { field: step.field, text: await written(step.field, way, page, found, range) });
    } else if (step.do !== "stop") {
      const done = step.do === "range" && id in FINER ? { ...step, v: FINER[id] } : step;
      if (step.do === "range") range = done.v;
      await way[step.do](h, done);
    }
  }
  const open = await way.found(page);
  return { ...h.count, deeds: await way.kept(page), takes, open };
}

/** Fewer pictures a second: nothing here is a matter of time, and a machine with other work gets through the sooner. */
const calmer = () => {
  globalThis.requestAnimationFrame = (frame) => setTimeout(() => frame(performance.now()), 100); // span: ten frames a second
  globalThis.cancelAnimationFrame = (id) => clearTimeout(id);
};

/** The options of the command line. */
function asked(args) {
  const of = (name) => (args.includes(`--${name}`) ? args[args.indexOf(`--${name}`) + 1] : null);
  return { make: of("page") ?? "before", only: of("only")?.split(",") ?? SCENARIOS, means: of("means")?.split(",") ?? Object.keys(MEANS), out: of("out"), marks: args.includes("--marks") };
}

const { make, only, means, out, marks } = asked(process.argv.slice(2));
const way = PAGES[make];
if (!way) throw new Error(`there is no page ${make}: ${Object.keys(PAGES).join(", ")}`);
const COLUMNS = ["deeds", "presses", "drags", "keys", "fields", "scrolls", "scrolled", "travel"];
const line = (cells) => console.log(cells.map((cell, k) => (k < 2 ? String(cell).padEnd(k ? 7 : 18) : String(cell).padStart(9))).join(""));
const server = await startServer({ own: true });
process.env.DICROTIC_URL = server.url;
const rows = [];
try {
  line(["scenario", "by", ...COLUMNS]);
  for (const id of only) {
    const script = scriptOf(id);
    for (const by of means) {
      let row;
      for (let turn = 0; turn < MOST_TURNS && (!row || row.open || row.takes > 1); turn += 1) {
        row = await withPage(MEANS[by].options, async ({ page, context, url }) => {
          await context.addInitScript(calmer);
          await way.open(page, url, id, script.seed);
          if (turn > 0) await way.wait(page, 4 * turn);
          return play(way, takeInHand(page, by), script, { marks });
        });
      }
      for (const name of ["scrolled", "travel"]) row[name] = Math.round(row[name]);
      rows.push({ scenario: id, by, ...row });
      line([id, by, ...COLUMNS.map((name) => row[name]), ...(row.open ? [`  not right: ${row.open}`] : []), ...(row.takes > 1 ? [`  ${row.takes} recordings`] : [])]);
      if (out) writeFileSync(out, `${JSON.stringify({ page: make, marks, windows: Object.fromEntries(Object.entries(MEANS).map(([name, { options }]) => [name, options.viewport])), rows }, null, 1)}\n`);
    }
  }
  for (const by of means) {
    const of = rows.filter((row) => row.by === by);
    line(["sum", by, ...COLUMNS.map((name) => of.reduce((sum, row) => sum + row[name], 0))]);
  }
} finally {
  await server.stop();
}
