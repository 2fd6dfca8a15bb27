// What a whole correct attempt costs whoever does it: presses, drags, keys, fields, scrolling and the way of the pointer, by mouse, by touch and
// by keys alone. Printed, never asserted: node tests/browser/deeds.mjs [--only ID,...] [--means mouse,touch,keys] [--marks] [--why] [--out FILE]
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

/** Shows one of the things that stand at the left of the workspace. */
async function side(h, name) {
  const way = h.page.locator(`.views .seg[data-view="${name}"]`);
  if ((await way.getAttribute("aria-pressed")) !== "true") await h.press(way);
}

/** Closes the card of a part where it lies over what is wanted next. */
async function bare(h, target) {
  const card = h.page.locator(".touch-card");
  if (!(await card.isVisible())) return;
  const [{ x, y, width, height }, { at: [u, v] }] = [await card.boundingBox(), await h.state(target)];
  if (u > x && u < x + width && v > y && v < y + height) await h.press(card.getByRole("button", { name: t("card-close"), exact: true }));
}

/** The card of something on the table, by its name: as it lies open, or opened by a press on the thing. */
async function card(h, name, thing) {
  await side(h, "bench");
  const open = h.page.locator(".touch-card");
  if ((await open.isVisible()) && (await open.getAttribute("aria-label")) === name) return open;
  const target = h.page.locator(thing);
  await bare(h, target);
  await h.press(target);
  await open.and(h.page.getByLabel(name, { exact: true })).waitFor();
  return open;
}

const sensorCard = (h) => card(h, t("card-sensor"), ".sensor.press");
const partCard = (h, id) => card(h, t(`part-${id}`), `[data-drag="part:${id}"]`);

/** The plain list of all parts, which the keys use. */
async function list(h) {
  await side(h, "list");
  return h.page.locator("#list");
}

/** The list at an axis, to a value: by its buttons where that is near, else from the list. */
async function set(h, axis, value) {
  const stepper = h.page.locator(axis);
  const choice = stepper.locator("select");
  const by = await choice.evaluate((el, key) => [...el.options].findIndex((one) => one.value === key) - el.selectedIndex, String(value));
  if (h.means === "keys" || Math.abs(by) > 2) return h.choose(choice, value);
  for (let k = 0; k < Math.abs(by); k += 1) await h.press(stepper.locator(".btn").nth(by > 0 ? 1 : 0));
  return assert.equal(await choice.inputValue(), String(value));
}

/** The values that an axis can be set to, ascending, and the one it stands at. */
const axisOf = (page, axis) => page.locator(`${axis} select`).evaluate((el) => ({ all: [...el.options].map((one) => Number(one.value)), at: el.selectedIndex }));

/** Where a picture tells what is done with something that can be looked at. */
const LOOKS = { sensor: sensorCard, around: (h) => partCard(h, "phone"), recorder: (h) => partCard(h, "recorder"), power_strip: (h) => partCard(h, "power_strip"), subject: (h) => partCard(h, "hand") };

/**
 * The way to each control. `h` is the hand: with mouse and finger it uses the drawing and the cards of its parts, with keys the list.
 * What only reads or waits (`asked`, `samples`, `height`, `wait`, `kept`, `found`) costs nothing.
 */
const way = {
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
    if (h.means === "keys") return h.choose((await list(h)).getByLabel(t(`end-${end}`), { exact: true }), socket);
    await side(h, "bench");
    const plug = h.page.locator(`.plug[data-end="${end}"]`);
    await bare(h, plug);
    const to = async () => {
      const [hold, from, at] = [(await h.state(plug)).at, await originOf(h.page, `.plug[data-end="${end}"]`), await originOf(h.page, `.socket[data-socket="${socket}"]`)];
      return [at[0] + hold[0] - from[0], at[1] + hold[1] - from[1]];
    };
    await h.drag(plug, to);
    return h.page.locator(`.socket[data-socket="${socket}"].is-taken`).waitFor({ state: "attached" });
  },
  switch: async (h, { id, on }) => {
    if (h.means === "keys") return h.turn((await list(h)).getByRole("switch", { name: t(`switch-${id}`), exact: true }), on);
    await side(h, "bench");
    const rocker = h.page.locator(`[data-press="switch:${id}"]`);
    await bare(h, rocker);
    return h.press(rocker);
  },
  charger: async (h, { plugged }) => {
    const [place, name] = h.means === "keys" ? [await list(h), t("switch-charger")] : [await partCard(h, "charger"), t("switch-plugged")];
    return h.turn(place.getByRole("switch", { name, exact: true }), plugged);
  },
  move: async (h, { part, x, y }) => {
    if (h.means === "keys") {
      const place = (await list(h)).locator(".list-move");
      await h.choose(place.locator("select"), part);
      await h.type(place.locator("input").nth(0), x);
      return h.type(place.locator("input").nth(1), y, { enter: true });
    }
    await side(h, "bench");
    const thing = h.page.locator(`[data-drag="part:${part}"]`);
    await bare(h, thing);
    return h.drag(thing, onTable(h.page, x, y));
  },
  strap_on: async (h) => {
    const place = h.means === "keys" ? await list(h) : await sensorCard(h);
    await h.turn(place.getByRole("switch", { name: t("strap-on"), exact: true }), true);
    return h.page.locator(".sensor.press.is-on").waitFor({ state: "attached" });
  },
  strap: async (h, { tightness }) => {
    const place = h.means === "keys" ? await list(h) : await sensorCard(h);
    return h.slide(place.getByLabel(t("strap-tightness"), { exact: true }), Math.round(100 * tightness));
  },
  tap_sensor: async (h) => h.press((h.means === "keys" ? await list(h) : await sensorCard(h)).getByRole("button", { name: t("list-tap_sensor"), exact: true })),
  press_finger: async (h) => h.press((h.means === "keys" ? await list(h) : await sensorCard(h)).getByRole("button", { name: t("list-press_finger"), exact: true })),
  look: async (h, { at }) => {
    if (h.means === "keys") return h.press((await list(h)).getByRole("button", { name: t(`look-${at}`), exact: true }));
    return h.press((await LOOKS[at](h)).getByRole("button", { name: t("card-look"), exact: true }));
  },
  name: async (h, { fault }) => {
    await side(h, "name");
    const button = h.page.locator(`.fault-name[data-fault="${fault}"]`);
    await button.waitFor({ state: "attached" });
    await h.open(h.page.locator(".impression", { has: button }));
    return h.press(button);
  },
  range: async (h, { v }) => {
    await bare(h, h.page.locator(".range-at"));
    return set(h, ".range-at", v);
  },
  time_base: async (h, { s }) => {
    await bare(h, h.page.locator(".time-at"));
    return set(h, ".time-at", s);
  },
  /**
   * The range, once more, as long as the page says that the pulse is too small or too tall in it; once what is not of this range, or was
   * a knock on the sensor, has left the screen. Nobody goes to and fro between two ranges.
   */
  fit: async (h) => {
    const by = { small: -1, tall: 1, clipped: 1 };
    const told = async () => {
      const says = await h.page.locator(".steps-next").innerText();
      return by[Object.keys(by).find((name) => t(`next-adjust_${name}`) === says)] ?? 0;
    };
    for (let before = 0, k = 0; k < 3; k += 1) {
      if (!(await told())) return;
      const { all, at } = await axisOf(h.page, ".time-at");
      await way.wait(h.page, all[at]);
      const now = await told();
      if (!now || now === -before || !(await way.coarser(h, now))) return;
      before = now;
    }
  },
  /** The next larger range, or the next smaller one. */
  coarser: async (h, by = 1) => {
    const { all, at } = await axisOf(h.page, ".range-at");
    if (all[at + by] === undefined) return false;
    await way.range(h, { v: all[at + by] });
    return true;
  },
  /** Records as long as the task needs: that stops by itself, and the recording lies open. */
  record: async (h) => {
    const button = h.page.locator(".btn-record-for");
    await bare(h, button);
    await h.press(button);
    await h.page.locator(".strip.is-recording").waitFor();
    const before = await student.setSpeed(h.page, 8);
    await h.page.locator(".strip.is-measuring:not(.is-recording)").waitFor({ timeout: 240_000 });
    await student.setSpeed(h.page, before);
  },
  /** Shows the first `seconds` of the open recording on one screen, if they are not there already. */
  whole: async (h, seconds) => {
    const { all, at } = await axisOf(h.page, ".time-at");
    if (all[at] < seconds) await way.time_base(h, { s: all.find((one) => one >= seconds) });
  },
  cursor: async (h, { which, t: time }) => {
    if (h.means === "keys") return h.type(h.page.getByLabel(t(`measure-${which}`), { exact: true }), time.toFixed(2), { enter: true });
    await way.less(h);
    const flag = h.page.locator(`.cursor-${which} .cursor-flag`);
    const to = async () => {
      const [{ x }, { at }] = [await student.ruler(h.page), await h.state(flag)];
      return [x(time) + at[0] - (await h.page.locator(`.cursor-${which}`).boundingBox()).x, at[1]];
    };
    return h.drag(flag, to);
  },
  /** A beat: pressed where it stands, or marked where cursor A was walked to. */
  mark: async (h, time) => {
    if (h.means !== "keys") {
      await way.less(h);
      const where = async () => {
        const { x, y } = await student.ruler(h.page);
        return [x(time), y];
      };
      return h.pressAt(h.page.locator(".field"), where);
    }
    const { x } = await student.ruler(h.page);
    const { all, at } = await axisOf(h.page, ".time-at");
    await h.walk(h.page.locator(".cursor-a"), time, { coarse: all[at] / 20, fine: 1 / (x(1) - x(0)) });
    return h.key("m");
  },
  /** What stands under "More" is closed again: it lies over the trace. */
  less: async (h) => {
    const more = h.page.locator(".measure-more");
    if (await more.evaluate((el) => el.open)) await h.press(more.locator("summary").first());
  },
  label: async (h, { text }) => {
    await h.open(h.page.locator(".measure-more"));
    return h.type(h.page.getByLabel(t("take-label"), { exact: true }), text);
  },
  /** Whoever types at a mouse's side stays on the keys from one blank to the next: Enter leads there. */
  answer: (h, { field, text, more }) => h.type(h.page.locator(`.blank[data-field="${field}"]`), text, { enter: more && h.means === "mouse" }),
  check: async (h) => {
    await h.press(h.page.locator(".page-do .btn-strong"));
    const yes = h.page.locator("dialog[open] .btn-strong");
    if (await yes.isVisible()) await h.press(yes);
  },

  open: (page, url, id, seed) => student.openScenario(page, url, id, seed),
  asked: async (page) => Number((await page.locator(".task-line").innerText()).match(/(\d+(?:\.\d+)?) s/)?.[1]),
  samples: async (page) => {
    const [download] = await Promise.all([page.waitForEvent("download"), page.locator(".saves .btn").first().evaluate((el) => el.click())]);
    return student.readRecording(download);
  },
  height: (page) => page.locator(".measure .reading output").nth(1).innerText(),
  wait: (page, seconds) => student.worldRuns(page, seconds),
  kept: (page) => student.kept(page),
  /** The first step that is not right, or null. */
  found: async (page) => (await student.readDebrief(page)).steps.find((step) => step.first)?.text.replaceAll(/\s+/g, " ") ?? null,
};

const SCENARIOS = ["first-wiring", "rest-pulse", "hum-on-the-trace", "flat-line-b", "small-pulse-a", "thick-trace-a", "two-at-once-c", "given-window", "read-the-range", "after-exercise"];
/** The script's range leaves the pulse at the edge of what is asked for; a hand that looks takes the next finer one. */
const FINER = { "first-wiring": 0.05 };
/** Where the subject moved in the midst of a recording, or lay badly in it, the page has no part in that: the attempt is done anew, a little later. */
const MOST_TURNS = 4;
/** Recordings that a hand makes until one has a window as it is asked for; each is counted. */
const MOST_RECORDINGS = 3;
/** So many like samples on end at the edge of what is there are no top of a beat. */
const FLAT_RUN = 8;
/** From a beat's foot to its top, s. */
const RISE_S = 0.15;

/** The first scripted attempt of a scenario that passes: its seed, and its steps as actions. */
function scriptOf(id) {
  const file = readdirSync(path.join(root, "scenarios")).find((name) => name.replace(/^\d+[a-z]?-/, "") === `${id}.toml`);
  const text = readFileSync(path.join(root, "scenarios", file), "utf8");
  const attempt = text.split("[[attempt]]").slice(1).find((one) => /passed = true/.test(one));
  const steps = attempt.slice(attempt.indexOf("steps = [")).split("\n").filter((line) => line.trim().startsWith("{"))
    .map((line) => JSON.parse(line.trim().replace(/,$/, "").replaceAll(/(\w+) = /g, '"$1": ')));
  return { id, seed: Number(attempt.match(/seed = (\d+)/)[1]), steps };
}

/** Foot and peak of a beat in the midst of a recording, s. */
function footAndTop(samples, peaks) {
  const top = peaks[Math.floor(peaks.length / 3)];
  const within = (from, to) => samples.filter(([time]) => time >= from && time <= to);
  const foot = within(top - 0.35, top).reduce((low, one) => (one[1] < low[1] ? one : low));
  const high = within(top - 0.08, top + 0.08).reduce((most, one) => (one[1] > most[1] ? one : most));
  return [foot[0], high[0]];
}

/** Is the recording cut flat somewhere in a stretch: does it stand at its very top or bottom for several samples on end? */
function cutFlat(samples, from, to) {
  const values = samples.map(([, value]) => value);
  const edges = [Math.min(...values), Math.max(...values)];
  let run = 0;
  return samples.some(([time, value], k) => {
    run = edges.includes(value) && value === values[k - 1] ? run + 1 : 0;
    return run >= FLAT_RUN && time >= from && time <= to;
  });
}

/** Beats by their feet: where the second wave is as tall as the first, the tops follow one another unevenly. */
const fromFeet = (samples, apart) => student.peaksOf(samples.map(([time, value]) => [time, -value]), apart).map((time) => time + RISE_S);

/** What a reader of the recording finds for the script: where the cursors go; null where this recording has no such place, "cut" where that is cut flat. */
async function reading(page, steps) {
  const samples = await way.samples(page);
  const times = Object.fromEntries(steps.filter((one) => one.do === "cursor").map((one) => [one.which, one.t]));
  const length = (text) => Number(text.match(/\+([\d.]+)/)?.[1] ?? 0);
  const may = { may: true };
  let cut = false;
  for (const apart of [0.45, 0.3]) { // a fast pulse wants less
    const peaks = student.peaksOf(samples, apart);
    if (times.a === "@foot") {
      const [a, b] = footAndTop(samples, peaks);
      return { a, b, peaks };
    }
    for (const some of [student.levelPeaks(samples, peaks), peaks, fromFeet(samples, apart)]) { // where the tops stand level, if they do so for long enough
      const window = times.b === "@end"
        ? student.windowOf(some, await way.asked(page), samples.at(-1)[0], may)
        : student.windowBetween(some, Math.floor(length(times.b) - length(times.a)), 0.4, may);
      if (window && !cutFlat(samples, window[0], window[1])) return { a: window[0], b: window[1], peaks: some };
      cut ||= Boolean(window);
    }
  }
  return cut ? "cut" : null;
}

/** What is written into a field. */
async function written(field, page, { a, b, peaks }) {
  const right = student.rightAnswers(peaks, a, b);
  if (field === "range") {
    const { all, at } = await axisOf(page, ".range-at");
    return String(Math.round(all[at] * 1000));
  }
  if (field === "amplitude") return (await way.height(page)).match(/[\d.]+/)[0];
  if (field === "uncertainty") return (60 / right.seconds).toFixed(0);
  return String(right[field]);
}

/** Records until a recording has a window as it is asked for; what is found in it, and how many recordings there are. */
async function recordUntilGood(h, steps) {
  for (let takes = 1; ; takes += 1) {
    if (takes === 1) await way.fit(h); // later on a recording lies open, and nothing runs
    await way.record(h);
    const found = await reading(h.page, steps);
    if (found && found !== "cut") return { found, takes };
    if (takes >= MOST_RECORDINGS) return { found: null, takes };
    if (found === "cut") await way.coarser(h);
  }
}

/** Plays a script on a page in hand; what it cost, and the first step that was not right. */
async function play(h, { id, steps }, { marks }) {
  const { page } = h;
  let found = null, takes = 0;
  await way.begin(h);
  for (const [k, step] of steps.entries()) {
    if (step.wait !== undefined) {
      if (steps[k - 1]?.do !== "record") await way.wait(page, step.wait);
    } else if (step.do === "record") {
      ({ found, takes } = await recordUntilGood(h, steps));
      if (!found) return { ...h.count, deeds: await way.kept(page), takes, open: "no window" };
      await way.whole(h, found.b);
      if (marks) for (const peak of found.peaks.filter((time) => time > found.a && time < found.b)) await way.mark(h, peak);
    } else if (step.do === "cursor") {
      await way.cursor(h, { which: step.which, t: found[step.which] });
    } else if (step.do === "answer") {
      await way.answer(h, { field: step.field, text: await written(step.field, page, found), more: steps[k + 1]?.do === "answer" });
    } else if (step.do !== "stop") {
      await way[step.do](h, step.do === "range" && id in FINER ? { ...step, v: FINER[id] } : step);
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
  return { only: of("only")?.split(",") ?? SCENARIOS, means: of("means")?.split(",") ?? Object.keys(MEANS), out: of("out"), marks: args.includes("--marks"), why: args.includes("--why") };
}

const { only, means, out, marks, why } = asked(process.argv.slice(2));
const COLUMNS = ["deeds", "presses", "drags", "keys", "fields", "scrolls", "scrolled", "travel"];
const line = (cells) => console.log(cells.map((cell, k) => (k < 2 ? String(cell).padEnd(k ? 7 : 18) : String(cell).padStart(9))).join(""));
const server = await startServer({ own: true });
process.env.DICROTIC_URL = server.url;
const rows = [];
const failed = [];
try {
  line(["scenario", "by", ...COLUMNS]);
  for (const id of only) {
    const script = scriptOf(id);
    for (const by of means) {
      let row;
      try {
        for (let turn = 0; turn < MOST_TURNS && (!row || row.open || row.takes > 1); turn += 1) {
          row = await withPage(MEANS[by].options, async ({ page, context, url }) => {
            await context.addInitScript(calmer);
            await way.open(page, url, id, script.seed);
            if (turn > 0) await way.wait(page, 4 * turn);
            const hand = takeInHand(page, by);
            return { ...(await play(hand, script, { marks })), told: hand.told };
          });
        }
      } catch (error) {
        failed.push(`${id} ${by}`); // the others are counted all the same
        console.log(`${id} ${by} could not be done: ${error.message}`);
        continue;
      }
      const { told, ...counted } = row;
      for (const name of ["scrolled", "travel"]) counted[name] = Math.round(counted[name]);
      rows.push({ scenario: id, by, ...counted });
      line([id, by, ...COLUMNS.map((name) => counted[name]), ...(row.open ? [`  not right: ${row.open}`] : []), ...(row.takes > 1 ? [`  ${row.takes} recordings`] : [])]);
      if (why) for (const one of told) console.log(`    ${one}`);
      if (out) writeFileSync(out, `${JSON.stringify({ marks, windows: Object.fromEntries(Object.entries(MEANS).map(([name, { options }]) => [name, options.viewport])), rows }, null, 1)}\n`);
    }
  }
  for (const by of means) {
    const of = rows.filter((row) => row.by === by);
    line(["sum", by, ...COLUMNS.map((name) => of.reduce((sum, row) => sum + row[name], 0))]);
  }
} finally {
  await server.stop();
}
if (failed.length > 0) console.log(`could not be done: ${failed.join(", ")}`);
process.exitCode = failed.length > 0 ? 1 : 0;
