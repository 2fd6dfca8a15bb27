// What a student does at the page, with real clicks, drags, choices and keys; how the page is read, by what it shows; and what there is
// to wait for: facts that the page tells, never a time.
import assert from "node:assert/strict";
import { inflateRawSync } from "node:zlib";

/** Opens a scenario with a seed and waits for its bench. */
export async function openScenario(page, url, id, seed) {
  await page.goto(`${url}#s=${id}&seed=${seed}`);
  await page.locator("#lab").waitFor();
  await page.locator(".plug").first().waitFor({ state: "attached" });
}

/** Shows one of the things that stand at the left of the workspace: brief, bench, list, name, result. */
export async function side(page, name) {
  const way = page.locator(`.views .seg[data-view="${name}"]`);
  if ((await way.getAttribute("aria-pressed")) !== "true") await way.click();
}

/**
 * Brings what is asked for into sight as one who looks for it does: shows the side it stands on, opens the stage of the signal's path
 * or what stands under "More". Of several the one that can be seen already, else the first. Gives it back as a locator.
 */
export async function reach(page, locator) {
  await locator.first().waitFor({ state: "attached" });
  const found = await locator.evaluateAll((all) => {
    const seen = all.findIndex((el) => el.checkVisibility({ visibilityProperty: true }));
    const el = all[Math.max(0, seen)];
    const place = el.closest(".view"), stage = el.closest(".stage-panel"), more = el.closest(".measure-more");
    return { at: Math.max(0, seen), seen: seen >= 0, view: place?.id, stage: stage && [...stage.classList].find((name) => name !== "stage-panel").slice(6), more: Boolean(more) };
  });
  const one = locator.nth(found.at);
  if (found.seen) return one;
  if (found.view) await side(page, found.view);
  if (found.stage) await page.locator(`.stage[data-stage="${found.stage}"]`).click();
  if (found.more) await page.locator(".measure-more > summary").click();
  return one;
}

/** A control of the workspace by its label, in sight. */
export const control = (page, label) => reach(page, page.locator("#lab").getByLabel(label, { exact: true }));

/** A point of the table in cm as a point of the window. The drawn edge of the table is .4 cm inside its 160 x 90 cm. */
async function tablePoint(page, x, y) {
  const box = await page.locator(".table-top").boundingBox();
  return [box.x + ((x - 0.4) / 159.2) * box.width, box.y + ((y - 0.4) / 89.2) * box.height];
}

/** Where an element of the drawing has its own origin, in the window. */
const origin = (page, selector) => page.locator(selector).evaluate((el) => {
  const m = el.getScreenCTM();
  return [m.e, m.f];
});

async function drag(page, [fromX, fromY], [toX, toY]) {
  await page.mouse.move(fromX, fromY);
  await page.mouse.down();
  await page.mouse.move((fromX + toX) / 2, (fromY + toY) / 2, { steps: 6 });
  await page.mouse.move(toX, toY, { steps: 6 });
  await page.mouse.up();
}

/** Where a hand can take hold of something drawn: its middle, if nothing lies over it. */
async function holdOf(page, selector) {
  const spot = await page.locator(selector).evaluate((el) => {
    const box = (el.querySelector(".hit") ?? el).getBoundingClientRect();
    const at = [box.x + box.width / 2, box.y + box.height / 2];
    return { at, free: el.contains(document.elementFromPoint(...at)) };
  });
  assert.ok(spot.free, `${selector} cannot be taken hold of: something lies over it`);
  return spot.at;
}

/** Drags a plug on the drawing to a socket. */
export async function dragPlug(page, end, socket) {
  await side(page, "bench");
  await page.locator(".table").scrollIntoViewIfNeeded();
  const hold = await holdOf(page, `.plug[data-end="${end}"]`);
  const plug = await origin(page, `.plug[data-end="${end}"]`);
  const target = await origin(page, `.socket[data-socket="${socket}"]`);
  await drag(page, hold, [target[0] + hold[0] - plug[0], target[1] + hold[1] - plug[1]]);
}

/** Drags a part, or a ring of the sensor's cable, to a place on the table in cm. */
export async function dragPart(page, part, x, y) {
  await side(page, "bench");
  await page.locator(".table").scrollIntoViewIfNeeded();
  await drag(page, await holdOf(page, `[data-drag="part:${part}"]`), await tablePoint(page, x, y));
}

/** Presses something on the drawing. */
export async function press(page, selector) {
  await side(page, "bench");
  await page.locator(".table").scrollIntoViewIfNeeded();
  await page.mouse.click(...(await holdOf(page, selector)));
}

/** Unplugs the charger on the drawing: touches it, and turns it off in its card. */
export async function unplugCharger(page) {
  await press(page, '[data-drag="part:charger"]');
  await page.locator(".touch-card").getByLabel("Plugged in", { exact: true }).uncheck();
  await page.locator(".touch-card").getByRole("button", { name: "Close", exact: true }).click();
}

/** Moves a slider to a share of its way, by pressing it there. */
export async function slideTo(page, label, share) {
  const slider = await control(page, label);
  await slider.scrollIntoViewIfNeeded();
  const box = await slider.boundingBox();
  const thumb = 26;
  await page.mouse.click(box.x + thumb / 2 + share * (box.width - thumb), box.y + box.height / 2);
}

export const choose = async (page, label, option) => (await control(page, label)).selectOption({ label: option });
/** The check, whichever it is of how many. */
export const pressCheck = (page) => page.locator("#worksheet").getByRole("button", { name: /^Check (my reading|what I named) / }).click();

export async function pressButton(page, name) {
  const seen = page.getByRole("button", { name, exact: true });
  if ((await seen.count()) > 0) return seen.click();
  const folded = page.locator("#lab:not([hidden])").getByRole("button", { name, exact: true, includeHidden: true });
  await seen.or(folded).first().waitFor({ state: "attached" });
  return (await seen.count()) > 0 ? seen.click() : (await reach(page, folded)).click();
}

/** The trace in words, as the page tells it. */
export async function inWords(page) {
  await pressButton(page, "Trace in words");
  return page.locator(".strip-note").innerText();
}

const FUZZ = ["The trace is clean.", "There is clear noise on it.", "Strong noise hides its shape."];

/** How much fuzz the words tell of, 0 (none) to 2 (heavy). */
export async function fuzz(page) {
  const words = await inWords(page);
  const step = FUZZ.findIndex((part) => words.includes(part));
  assert.ok(step >= 0, `the strip in words says nothing of fuzz: "${words}"`);
  return step;
}

// facts

/** Waits until everything that was done is kept in both copies on the device (data-kept, www/js/session.js); how many deeds that are. */
export async function kept(page) {
  const told = await page.waitForFunction(() => /^\d+$/.test(document.documentElement.dataset.kept ?? "") && document.documentElement.dataset.kept);
  return Number(await told.jsonValue());
}

/** Waits until what was done is told not to be kept, for a reason ("full", "off", "elsewhere", "overtaken", "once"). */
export const notKept = (page, why) => page.locator(`html[data-kept="${why}"]`).waitFor({ state: "attached" });

/** Where the live trace is, s since the bench was opened: what the page writes under it. */
export const pen = async (page) => Number(await (await page.waitForFunction(() => document.querySelector(".pen-at")?.textContent.replace(",", ".").match(/[\d.]+/)?.[0])).jsonValue());

/**
 * How many times as fast as real time the world runs while a test waits for it. Only then: a bench that ran ahead of the hand would
 * be found somewhere else each time, in a movement as likely as in a calm stretch.
 */
const FAST = 8;

/** How fast the world runs from now on, in times of real time (data-speed, www/js/loop.js); how fast it ran before. */
export const setSpeed = (page, speed) => page.evaluate((times) => {
  const { dataset } = document.documentElement;
  const before = dataset.speed;
  dataset.speed = String(times);
  return before;
}, speed);

/** Waits until the world of a live bench has run on for so many seconds of its own, at a speed. */
export async function worldRuns(page, seconds, speed = FAST) {
  const until = (await pen(page)) + seconds;
  const before = await setSpeed(page, speed);
  await page.waitForFunction(([time, then]) => {
    if (!(Number(document.querySelector(".pen-at").textContent.replace(",", ".").match(/[\d.]+/)?.[0]) >= time)) return false;
    document.documentElement.dataset.speed = then;
    return true;
  }, [until, before], { timeout: 90_000 + seconds * 3000 });
}

/** Waits for so many frames of the page: for what must not happen in them. A frame is a sixtieth of a second or more. */
export const frames = (page, count) => page.evaluate((n) => new Promise((done) => {
  let left = n;
  const frame = () => (left-- > 0 ? requestAnimationFrame(frame) : done());
  frame();
}), count);

/** Waits until nothing that ends by itself moves any more: colours pass over, parts slide, the page scrolls to its place. */
export const settled = (page) => page.evaluate(async () => {
  const frame = () => new Promise((done) => requestAnimationFrame(done));
  const place = () => [scrollX, scrollY, document.documentElement.scrollHeight].join();
  for (let calm = 0, last = "", turn = 0; calm < 3; last = place(), turn += 1) {
    if (turn > 1000) throw new Error("the page does not come to rest");
    await frame();
    const moving = document.getAnimations().filter((one) => one.playState === "running" && Number.isFinite(Number(one.effect?.getComputedTiming().endTime))
      && one.effect.target?.checkVisibility() !== false); // in a part that was closed over it a change of colour never ends
    await Promise.all(moving.map((one) => one.finished.catch(() => {})));
    calm = moving.length === 0 && place() === last ? calm + 1 : 0;
  }
});

/** The link of the bench that is being set, once it holds some words of it. A function that waits is asked for each time anew:
 * `waitForFunction` takes its promise for a yes. */
export async function linkWith(page, words) {
  for (let turn = 0; turn < 600; turn += 1) {
    const link = await page.locator(".out .address").innerText();
    const packed = link.split("#a=")[1] ?? "";
    if (packed && inflateRawSync(Buffer.from(packed, "base64url")).toString("utf8").includes(words)) return link;
    await frames(page, 6);
  }
  return assert.fail(`the link never held "${words}"`);
}

/** Waits until the recording that is under way is so many seconds long; the world then runs as before, so that it is stopped soon after. */
export async function recorded(page, seconds) {
  const before = await setSpeed(page, FAST);
  await page.waitForFunction(([n, then]) => {
    const [minutes, rest] = document.querySelector(".elapsed").textContent.split(":").map(Number);
    if (!(minutes * 60 + rest >= n)) return false; // nothing stands there before the first frame
    document.documentElement.dataset.speed = then;
    return true;
  }, [seconds, before], { timeout: 90_000 + seconds * 3000 });
}

/** Records for so many seconds and stops; the recording then lies open. `record` and `stop` are the names of the buttons. */
export async function take(page, seconds, { record: start = "Record", stop = "Stop recording" } = {}) {
  await pressButton(page, start);
  await page.locator(".btn-record.is-on").waitFor();
  await recorded(page, seconds);
  await pressButton(page, stop);
  await page.locator(".strip.is-measuring").waitFor();
}

/** Records for so many seconds; the recording then lies open, drawn whole on a screen of 20 s. */
export async function record(page, seconds) {
  await take(page, seconds);
  await choose(page, "Time base, per screen", "20 s");
}

/** What a download holds. */
export async function bytesOf(download) {
  const parts = [];
  for await (const part of await download.createReadStream()) parts.push(part);
  return Buffer.concat(parts);
}

/** Presses a button that saves a file; the file's name and bytes. */
export async function saved(page, name) {
  const [download] = await Promise.all([page.waitForEvent("download"), pressButton(page, name)]);
  return { name: download.suggestedFilename(), bytes: await bytesOf(download) };
}

/** The open recording as the page saves it: [[t, value]…]. */
export async function savedRecording(page) {
  const [download] = await Promise.all([page.waitForEvent("download"), pressButton(page, "Save recording as CSV")]);
  return readRecording(download);
}

/**
 * Lays A and B about even beats of the open recording: what one writes of it, and wrongly turned over. `frame` is where the bench stands, if not
 * the page itself.
 */
export async function readWindow(page, frame = page, seconds = 15) {
  const [download] = await Promise.all([page.waitForEvent("download"), pressButton(frame, "Save recording as CSV")]);
  const [a, b, count] = windowBetween(peaksOf(await readRecording(download)), seconds);
  await putCursors(frame, a, b);
  const between = Number((await reading(frame, "A to B")).replace(/ s$/, ""));
  const blanks = (multiplier) => ({ count, seconds: between, multiplier, rate: (count * multiplier).toFixed(1) });
  return { right: blanks((60 / between).toFixed(4)), turned: blanks((between / 60).toFixed(4)) };
}

/** A downloaded take: [[t, value]…]. Its notes are comments under the table. */
export async function readRecording(download) {
  const [head, ...lines] = (await bytesOf(download)).toString("utf8").trim().split("\n");
  assert.equal(head, "t_s,value");
  return lines.filter((line) => !line.startsWith("#")).map((line) => line.split(",").map(Number));
}

/**
 * Times of the tall peaks of a recording, as a reader with a ruler would find them: on the curve smoothed over 60 ms, each
 * point that is the highest within `apart` seconds and stands in the upper half of what the second before and after spans.
 * A fast pulse wants less than the usual .45 s. With `early`, small beats out of turn count too, if they rise by more than a
 * fifth of that height within a quarter of a second: lower ones may be taken for a notch. Nobody is held to either.
 */
export function peaksOf(samples, apart = 0.45, early = false) {
  const rate = (samples.length - 1) / (samples.at(-1)[0] - samples[0][0]);
  const reach = (seconds) => Math.round(seconds * rate);
  const around = (values, i, n) => values.slice(Math.max(0, i - n), i + n + 1);
  const raw = samples.map(([, value]) => value);
  const curve = raw.map((_, i) => around(raw, i, reach(0.03)).reduce((sum, value, _k, all) => sum + value / all.length, 0));
  const tall = (i) => {
    const near = around(curve, i, reach(1));
    return curve[i] >= Math.max(...around(curve, i, reach(apart))) && curve[i] > (Math.max(...near) + Math.min(...near)) / 2;
  };
  const rises = (i) => {
    const near = around(curve, i, reach(1));
    const rise = curve[i] - Math.min(...curve.slice(Math.max(0, i - reach(0.25)), i + 1));
    return curve[i] >= Math.max(...around(curve, i, reach(0.1))) && rise > 0.2 * (Math.max(...near) - Math.min(...near));
  };
  const peaks = [];
  for (let i = 1; i < curve.length - 1; i += 1) {
    const top = curve[i] > curve[i - 1] && curve[i] >= curve[i + 1];
    if (top && (tall(i) || (early && rises(i)))) peaks.push(samples[i][0]);
  }
  return peaks;
}

/**
 * Do beats follow one another evenly from the last before `a` to the first after `b`? Where a movement, or a second wave as
 * tall as the first, has led the ruler astray, an interval is longer or shorter than the one before it by half. Breathing
 * and the slow waves of the heart's rate change it from beat to beat by far less.
 */
export function even(peaks, a, b) {
  const first = Math.max(0, peaks.findIndex((time) => time > a) - 1);
  const after = peaks.findIndex((time) => time >= b);
  const gaps = peaks.slice(first, after < 0 ? peaks.length : after + 1).map((time, i, all) => time - all[i - 1]).slice(1);
  return gaps.slice(1).every((gap, k) => Math.max(gap, gaps[k]) < 1.5 * Math.min(gap, gaps[k]));
}

/**
 * The longest run of peaks whose tops stand level, to a third of the usual height of a beat: a movement lifts the line, and whoever looks
 * at the recording puts no window over it.
 */
export function levelPeaks(samples, peaks) {
  const rate = (samples.length - 1) / (samples.at(-1)[0] - samples[0][0]);
  const at = (time) => Math.round((time - samples[0][0]) * rate);
  const middle = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
  const tops = peaks.map((time) => samples[at(time)][1]);
  const heights = peaks.map((time, k) => tops[k] - Math.min(...samples.slice(Math.max(0, at(time - 0.4)), at(time) + 1).map(([, value]) => value)));
  const usual = middle(tops), most = middle(heights) / 3;
  let best = [], run = [];
  peaks.forEach((time, k) => {
    run = Math.abs(tops[k] - usual) <= most ? [...run, time] : [];
    if (run.length > best.length) best = run;
  });
  return best;
}

/**
 * Cursor places a little before a peak, where no beat is near, at least `seconds` apart, with even beats between them:
 * [a, b, beats between]. `before` is the share of the beat's own length by which a cursor stands ahead of the peak. Where there is no
 * such place it fails, or gives null if there `may` be none.
 */
export function windowBetween(peaks, seconds, before = 0.4, { may = false } = {}) {
  const ahead = (i) => peaks[i] - before * (peaks[i] - peaks[i - 1]);
  for (let first = 1; first < peaks.length; first += 1) {
    const a = ahead(first);
    const last = peaks.findIndex((_, i) => i > first && ahead(i) - a >= seconds);
    if (last > 0 && even(peaks, a, ahead(last))) return [a, ahead(last), last - first];
  }
  return may ? null : assert.fail(`no ${seconds} s of even beats between the peaks ${peaks.map((p) => p.toFixed(2))}`);
}

/**
 * A window of a length that begins a little before a peak and ends before `end`, with no beat near either end and even beats
 * between them, unless the pulse is `uneven`. Where there is none it fails, or gives null if there `may` be none.
 */
export function windowOf(peaks, seconds, end, { may = false, uneven = false } = {}) {
  const free = (time) => peaks.every((peak) => Math.abs(peak - time) > 0.1);
  for (let first = 1; first < peaks.length; first += 1) {
    const a = peaks[first] - 0.4 * (peaks[first] - peaks[first - 1]);
    const b = a + seconds;
    if (b < end && free(a) && free(b) && (uneven || even(peaks, a, b))) return [a, b];
  }
  return may ? null : assert.fail(`no window of ${seconds} s between the peaks ${peaks.map((p) => p.toFixed(2))}`);
}

/** How times of the open recording lie on the window, from where the cursors stand: x(t) and the height's middle. */
export async function ruler(page) {
  const [[ta, xa], [tb, xb]] = await Promise.all(["a", "b"].map((which) => page.locator(`.cursor-${which}`).evaluate((el) => [Number(el.getAttribute("aria-valuenow")), el.getBoundingClientRect().x])));
  const field = await page.locator(".field").boundingBox();
  return { x: (time) => xa + ((time - ta) / (tb - ta)) * (xb - xa), y: field.y + field.height / 2 };
}

/** Drags a cursor by its flag to a time. */
export async function dragCursor(page, which, time) {
  await page.locator(".field").scrollIntoViewIfNeeded();
  const { x } = await ruler(page);
  const box = await page.locator(`.cursor-${which} .cursor-flag`).boundingBox();
  const line = (await page.locator(`.cursor-${which}`).boundingBox()).x;
  const hold = [box.x + box.width / 2, box.y + box.height / 2];
  const to = [x(time) + hold[0] - line, hold[1]];
  await page.mouse.move(...hold);
  await page.mouse.down();
  await page.mouse.move(to[0] + 30, to[1], { steps: 6 }); // past it and back: a short way would be taken for a tap
  await page.mouse.move(...to, { steps: 6 });
  await page.mouse.up();
  const stands = Number(await page.locator(`.cursor-${which}`).getAttribute("aria-valuenow"));
  assert.ok(Math.abs(stands - time) < 0.05, `cursor ${which} stands at ${stands} s, not ${time} s`);
}

/** Marks each time with a click on the trace. */
export async function clickMarks(page, times) {
  await page.locator(".field").scrollIntoViewIfNeeded();
  const { x, y } = await ruler(page);
  for (const time of times) await page.mouse.click(x(time), y);
}

/** A reading of the measuring panel by its label. */
export const reading = (page, label) => page.locator(".reading", { has: page.locator(".lbl").getByText(label, { exact: true }) }).locator("output").innerText();

/** Types the worksheet's four blanks. */
export async function fillSheet(page, { count, seconds, multiplier, rate }) {
  await page.getByLabel("Between A and B I count N =").fill(String(count));
  await page.getByLabel("time T =").fill(String(seconds));
  await page.getByLabel("60/T =").fill(String(multiplier));
  await page.locator("#worksheet").getByLabel("heart rate =").fill(String(rate));
}

/** What closes an attempt, the last check or the answer on demand, is asked about first: yes. */
export async function sayYes(page) {
  const yes = page.locator("dialog[open] .btn-strong");
  if (await yes.isVisible()) await yes.click();
}

/** Checks the worksheet and reads the debrief: the steps with their verdicts, the first open one, what truth is shown. */
export async function check(page) {
  await pressCheck(page);
  await sayYes(page);
  return readDebrief(page);
}

export async function readDebrief(page) {
  await page.locator(".debrief").waitFor();
  const steps = await page.locator(".debrief .step").evaluateAll((all) => all.map((el) => ({
    name: el.querySelector(".step-name").firstChild.textContent,
    verdict: el.querySelector(".verdict").textContent,
    first: el.classList.contains("is-first"),
    text: el.innerText,
  })));
  const told = Object.fromEntries(await page.locator(".debrief .truth dd[data-truth]").evaluateAll((all) => all.map((el) => [el.dataset.truth, el.innerText])));
  const truth = Object.keys(told).length > 0 ? ["beats", "window", "record"].map((name) => told[name]) : null;
  return {
    steps,
    verdictOf: (name) => steps.find((step) => step.name === name)?.verdict,
    firstOpen: steps.find((step) => step.first)?.name ?? null,
    truth,
    trueBeats: await page.locator(".beat-truth path").count(),
    // What was found and asked; not the band, which repeats the student's own numbers, nor the points of the rubric.
    text: (await page.locator(".debrief :is(.debrief-head, .hints-place, .truths-place, .how-place)").allInnerTexts()).join("\n"),
  };
}

/** Nothing of the truth is on the page: no true rates, no true beats, and not the right count among the debrief's words. */
export function assertNoTruth(debrief, rightCount) {
  assert.equal(debrief.truth, null, "the truth is shown");
  assert.equal(debrief.trueBeats, 0, "the true beats are shown");
  const told = debrief.text.match(new RegExp(`.{0,60}(?:^|[^\\d.,])${rightCount}(?:[^\\d.,]|[.,]\\s|$).{0,40}`));
  assert.equal(told?.[0], undefined, "the right count is told");
}

/** A file with 24 s of a plain pulse, 75 beats/min, 100 Hz. */
export function syntheticRecording() {
  const value = (time) => {
    const u = time % 0.8;
    return 40 * Math.exp(-(((u - 0.2) / 0.07) ** 2)) + 12 * Math.exp(-(((u - 0.45) / 0.08) ** 2));
  };
  const lines = Array.from({ length: 2400 }, (_, k) => `${(k / 100).toFixed(2)},${value(k / 100).toFixed(3)}`);
  return { name: "synthetic.csv", mimeType: "text/csv", buffer: Buffer.from(`t_s,value\n${lines.join("\n")}\n`) };
}

/** Opens a file (a path, or {name, mimeType, buffer}) through the page's own button. */
export async function openFile(page, what) {
  const menu = page.getByRole("button", { name: "Menu", exact: true }); // on a small screen the head's ways stand in it
  if (await menu.isVisible()) await menu.click();
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.getByRole("button", { name: "Open a file" }).first().click()]);
  await chooser.setFiles(what);
}

/** Takes a bench half done: opens it, lets the example do the set-up, and waits for the open recording. */
export async function openHalf(page, url, id, seed) {
  await openScenario(page, url, id, seed);
  await pressButton(page, "Half done, I finish it");
  await page.locator(".strip.is-measuring").waitFor();
}

/** Puts both cursors by their numbers. */
export async function putCursors(page, a, b) {
  await page.getByLabel("A (s)", { exact: true }).fill(a.toFixed(3));
  await page.getByLabel("B (s)", { exact: true }).fill(b.toFixed(3));
  await page.getByLabel("B (s)", { exact: true }).press("Tab");
}

/** Types blanks by their fields. */
export async function fillBlanks(page, answers) {
  for (const [field, value] of Object.entries(answers)) await page.locator(`.blank[data-field="${field}"]`).fill(String(value));
}

/** Presses the check, whatever it is called for this question, and reads the debrief when its later parts are there. */
export async function checkAll(page) {
  await page.locator("#worksheet").getByRole("button", { name: /^Check / }).click();
  await sayYes(page);
  await page.locator(".rubric:not([hidden])").waitFor();
  return readDebrief(page);
}

/** Beats that a window holds, and its right answers as one would write them. */
export function rightAnswers(peaks, a, b) {
  const count = peaks.filter((time) => time > a && time < b).length;
  const seconds = Number((b - a).toPrecision(3));
  return { count, seconds, multiplier: (60 / seconds).toFixed(2), rate: Math.round((60 * count) / seconds) };
}
