// How fast the page is in Chromium: chain, frames, load. Printed, never asserted: bash tests/bench.sh
import { readFileSync } from "node:fs";
import path from "node:path";
import { launch, root, startServer } from "./lib.mjs";

const scenario = readFileSync(path.join(root, "scenarios/02-hum-on-the-strip.toml"), "utf8");
/** A line of the table: name and figure parted by a tab. */
const told = (name, figure) => console.log(`${name}\t${figure}`);
const quantile = (sorted, q) => sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))];

const server = await startServer();
let browser;
try {
  browser = await launch();
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });

  const load = async (label) => {
    await page.goto("about:blank");
    await page.goto(`${server.url}#s=hum-on-the-strip&seed=1`);
    await page.waitForFunction(() => document.documentElement.dataset.ready === "1");
    const times = await page.evaluate(() => ({
      paint: performance.getEntriesByName("first-contentful-paint")[0]?.startTime,
      trace: performance.getEntriesByName("first-trace")[0]?.startTime,
    }));
    told(label, `first paint ${times.paint?.toFixed(0)} ms, moving trace ${times.trace?.toFixed(0)} ms after the start`);
  };
  await load("first visit");
  const sent = await page.evaluate(() =>
    [performance.getEntriesByType("navigation")[0], ...performance.getEntriesByType("resource")].map((e) => ({
      name: e.name,
      packed: e.encodedBodySize,
      plain: e.decodedBodySize,
    })),
  );
  const kB = (key, list) => (list.reduce((n, r) => n + r[key], 0) / 1e3).toFixed(0);
  const core = sent.filter((r) => r.name.endsWith(".wasm"));
  told("transfer (gzip)", `${sent.length} files, ${kB("plain", sent)} kB, ${kB("packed", sent)} kB as sent, the core ${kB("packed", core)} kB of them`);
  await load("second visit");

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
  await own.goto(`${server.url}#s=hum-on-the-strip&seed=1`);
  await own.waitForTimeout(6000);
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
    // Ten minutes in a take, drawn whole.
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
    told(name, `median ${quantile(list, 0.5).toFixed(2)} ms, p99 ${quantile(list, 0.99).toFixed(2)} ms`);
  told("chain with live display, Chromium", `${figures.chain.toFixed(1)} million samples/s`);
  line(`a frame of the page, script (${pageFrames.length} frames)`, pageFrames);
  line("live frame, 1600 x 600, draw and raster", figures.frames);
  line("axes and grid", figures.axes);
  line("a minute of a take at 1 kHz, whole redraw", figures.full);
} finally {
  await browser?.close();
  await server.stop();
}
