// How fast the page is in Chromium: chain, frames, load. Printed, never asserted: bash tests/bench.sh
import { readFileSync } from "node:fs";
import path from "node:path";
import { launch, root, startServer } from "./lib.mjs";
import { classOfThreeHundred } from "./screens.mjs";
import { frames } from "./student.mjs";

const scenario = readFileSync(path.join(root, "scenarios/02-hum-on-the-trace.toml"), "utf8");
/** A line of the table: name and figure parted by a tab. */
const told = (name, figure) => console.log(`${name}\t${figure}`);
/** The browser's clock steps by a tenth of a millisecond. */
const clocked = (ms) => (ms < 0.1 ? "under 0.1 ms" : `${ms.toFixed(1)} ms`);
const quantile = (sorted, q) => sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))];

const server = await startServer();
let browser;
try {
  browser = await launch();
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });

  /** A visit to `hash` with an empty cache where `fresh`, on a processor `slow` times slower: what a visitor waits for. */
  const visit = async (label, hash, { fresh = false, slow = 1 } = {}) => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, serviceWorkers: "block" });
    const visited = await context.newPage();
    const session = await context.newCDPSession(visited);
    if (!fresh) {
      await visited.goto(`${server.url}${hash}`, { waitUntil: "networkidle" });
      await visited.goto("about:blank");
    }
    await session.send("Emulation.setCPUThrottlingRate", { rate: slow });
    await visited.addInitScript(() => {
      globalThis.seen = { shift: 0, largest: 0, blocked: 0 };
      const watch = (type, take) => new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({ type, buffered: true });
      watch("layout-shift", (entry) => { if (!entry.hadRecentInput) globalThis.seen.shift += entry.value; });
      watch("largest-contentful-paint", (entry) => { globalThis.seen.largest = entry.startTime; });
      watch("longtask", (entry) => { globalThis.seen.blocked += Math.max(0, entry.duration - 50); });
    });
    await visited.goto(`${server.url}${hash}`);
    if (hash) await visited.waitForFunction(() => document.documentElement.dataset.ready === "1", null, { timeout: 60_000 });
    await visited.waitForTimeout(3000); // span: what moves and what blocks in the three seconds after is part of the figure
    const times = await visited.evaluate(() => ({
      paint: performance.getEntriesByName("first-contentful-paint")[0]?.startTime,
      trace: performance.getEntriesByName("first-trace")[0]?.startTime,
      ...globalThis.seen,
    }));
    const ms = (value) => `${value?.toFixed(0)} ms`;
    told(label, `first paint ${ms(times.paint)}, largest ${ms(times.largest)}${hash ? `, moving trace ${ms(times.trace)}` : ""}, layout shift ${times.shift.toFixed(3)}, blocked ${ms(times.blocked)}`);
    const sent = await visited.evaluate(() => [performance.getEntriesByType("navigation")[0], ...performance.getEntriesByType("resource")].map((e) => ({ name: e.name, packed: e.encodedBodySize, plain: e.decodedBodySize })));
    await context.close();
    return sent;
  };
  const bench = "#s=hum-on-the-trace&seed=1";
  const sent = await visit("first visit, a bench", bench, { fresh: true });
  const kB = (key, list) => (list.reduce((n, r) => n + r[key], 0) / 1e3).toFixed(0);
  const core = sent.filter((r) => r.name.endsWith(".wasm"));
  told("first visit, bytes (gzip or brotli, as the server sends them)", `${sent.length} files, ${kB("plain", sent)} kB, ${kB("packed", sent)} kB as sent, the core ${kB("packed", core)} kB of them`);
  await visit("second visit, a bench", bench);
  await visit("first visit, start page", "", { fresh: true });
  await visit("first visit, a bench, processor 4 x slower", bench, { fresh: true, slow: 4 });
  await visit("second visit, a bench, processor 4 x slower", bench, { slow: 4 });
  await visit("first visit, start page, processor 4 x slower", "", { fresh: true, slow: 4 });
  await page.goto(`${server.url}${bench}`);
  await page.waitForFunction(() => document.documentElement.dataset.ready === "1");

  // A hand that drags the charger to and fro for four seconds: from each event to the next paint, as the browser times it.
  for (const slow of [1, 4]) {
    const hand = await browser.newPage({ viewport: { width: 1280, height: 900 } });
    await hand.goto(`${server.url}?drag#s=hum-on-the-trace&seed=1`);
    await hand.waitForFunction(() => document.documentElement.dataset.ready === "1");
    await (await hand.context().newCDPSession(hand)).send("Emulation.setCPUThrottlingRate", { rate: slow });
    await hand.evaluate(() => {
      globalThis.turns = { events: [], frames: [] };
      new PerformanceObserver((list) => list.getEntries().forEach((entry) => globalThis.turns.events.push(entry.duration))).observe({ type: "event", durationThreshold: 16 });
      let last = performance.now();
      const frame = (now) => {
        globalThis.turns.frames.push(now - last);
        last = now;
        requestAnimationFrame(frame);
      };
      requestAnimationFrame(frame);
    });
    const { x, y } = await hand.locator('[data-drag="part:charger"]').evaluate((el) => {
      const box = el.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 3 };
    });
    await hand.mouse.move(x, y);
    await hand.mouse.down();
    let moves = 0;
    for (const until = Date.now() + 4000; Date.now() < until; moves += 1) await hand.mouse.move(x - 60 + 60 * Math.cos(moves / 9), y + 40 * Math.sin(moves / 7));
    await hand.mouse.up();
    await frames(hand, 20);
    const { events, frames: lengths } = await hand.evaluate(() => globalThis.turns);
    // Events that took less than 16 ms are not reported: they are the rest.
    const all = [...Array(Math.max(0, moves - events.length)).fill(8), ...events].sort((a, b) => a - b);
    const steps = lengths.slice(5).sort((a, b) => a - b);
    told(`dragging the charger${slow > 1 ? `, processor ${slow} x slower` : ""}`, `${moves} moves: event to paint median ${quantile(all, 0.5) <= 8 ? "under 16" : quantile(all, 0.5)} ms, p98 ${quantile(all, 0.98)} ms; frames ${quantile(steps, 0.5).toFixed(1)} ms, p98 ${quantile(steps, 0.98).toFixed(1)} ms`);
    await hand.close();
  }

  // From a deed, which takes the mark of what is kept away, until both copies on the device hold it.
  const keeps = [];
  for (let k = 0; k < 5; k += 1) {
    keeps.push(await page.evaluate(() => new Promise((done) => {
      let since = null;
      const watch = new MutationObserver(() => {
        if (document.documentElement.dataset.kept === undefined) since = performance.now();
        else if (since !== null) {
          watch.disconnect();
          done(performance.now() - since);
        }
      });
      watch.observe(document.documentElement, { attributeFilter: ["data-kept"] });
      document.querySelector(".range-at .btn").click();
    })));
  }
  told("a deed until it is in both copies", `median ${clocked(quantile(keeps.toSorted((a, b) => a - b), 0.5))}, longest ${clocked(Math.max(...keeps))}`);

  // A whole class: from the choice of the files to the last line; then the answer key of everybody on the list.
  const made = classOfThreeHundred();
  const desk = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await desk.goto(`${server.url}#class`);
  await desk.locator(".intake").waitFor();
  const give = async (name, files) => {
    const [chooser] = await Promise.all([desk.waitForEvent("filechooser"), desk.getByRole("button", { name, exact: true }).click()]);
    await chooser.setFiles(files);
  };
  await give("Open the assignment", [made.assignment]);
  await give("Open the list", [made.roster]);
  await desk.locator(".class-results").waitFor();
  let began = performance.now();
  await give("Choose files", made.files);
  await desk.waitForFunction(() => document.querySelector("#class .report")?.dataset.students === "300" && document.querySelector("#class .intake")?.dataset.busy === ""
    && /^\d+ results;/.test(document.querySelector("#class .intake-wide [role=status]").textContent), null, { timeout: 300_000 });
  told("class of 300 results in the page, to all graded", `${((performance.now() - began) / 1000).toFixed(1)} s, ${made.files.length} files`);
  await desk.getByText("Answer key", { exact: true }).click();
  began = performance.now();
  await Promise.all([desk.waitForEvent("download", { timeout: 300_000 }), desk.getByRole("button", { name: "Save the answer key", exact: true }).click()]);
  told("answer key of 300 students in the page, three tries each", `${((performance.now() - began) / 1000).toFixed(1)} s`);
  await desk.close();

  // What a frame of the page costs in script, with everything that it does: world, view, trace, stylus.
  const own = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  await own.addInitScript(() => {
    globalThis.spent = [];
    const ask = globalThis.requestAnimationFrame.bind(globalThis);
    globalThis.requestAnimationFrame = (call) => ask((now) => {
      const begun = performance.now();
      call(now);
      globalThis.spent.push(performance.now() - begun);
    });
  });
  await own.goto(`${server.url}#s=hum-on-the-trace&seed=1`);
  await frames(own, 350);
  const pageFrames = (await own.evaluate(() => globalThis.spent)).slice(30).sort((a, b) => a - b);
  await own.close();

  const figures = await page.evaluate(async (toml) => {
    const { Lab } = await import("./wasm/dicrotic.js");
    const lab = new Lab(toml, "1");
    lab.setSize(1600, 600, 1);
    const canvas = document.createElement("canvas");
    canvas.width = 1600;
    canvas.height = 600;
    const context = canvas.getContext("2d", { willReadFrequently: false });
    const base = document.createElement("canvas");
    base.width = 1600;
    base.height = 600;

    for (let k = 0; k < 200; k += 1) lab.advance(0.25);
    let start = performance.now();
    for (let k = 0; k < 8000; k += 1) lab.advance(0.25);
    const chain = (8000 * 250) / (performance.now() - start) / 1e3;

    // A frame is drawing and raster: reading one pixel back waits for it.
    const timed = (body) => {
      const begun = performance.now();
      body();
      context.getImageData(0, 0, 1, 1);
      return performance.now() - begun;
    };
    const frames = [];
    for (let k = 0; k < 1500; k += 1) {
      lab.advance(1 / 60);
      frames.push(timed(() => lab.drawTrace(context)));
    }
    const axes = [];
    for (let k = 0; k < 60; k += 1) {
      const begun = performance.now();
      lab.drawBase(base);
      axes.push(performance.now() - begun);
    }
    // Ten minutes in a recording, drawn whole.
    lab.act(JSON.stringify({ do: "record" }));
    for (let k = 0; k < 2400; k += 1) lab.advance(0.25);
    lab.act(JSON.stringify({ do: "stop" }));
    lab.act(JSON.stringify({ do: "time_base", s: 60 }));
    const full = [];
    for (let k = 0; k < 120; k += 1) {
      lab.act(JSON.stringify({ do: "scroll", start_s: k * 4 }));
      full.push(timed(() => lab.drawTrace(context)));
    }
    const sort = (list) => list.sort((a, b) => a - b);
    return { chain, frames: sort(frames), axes: sort(axes), full: sort(full) };
  }, scenario);

  const line = (name, list) =>
    told(name, `median ${clocked(quantile(list, 0.5))}, p99 ${clocked(quantile(list, 0.99))}`);
  told("chain with live display, Chromium", `${figures.chain.toFixed(1)} million samples/s`);
  line(`a frame of the page, script (${pageFrames.length} frames)`, pageFrames);
  line("live frame, 1600 x 600, draw and raster", figures.frames);
  line("axes and grid", figures.axes);
  line("a minute of a take at 1 kHz, whole redraw", figures.full);
} finally {
  await browser?.close();
  await server.stop();
}
