// Our trace against uPlot (MIT) in the same Chromium page, on the same samples: whole redraws with raster, axes and grid
// included on both sides. Lines of name and figure parted by a tab.
import { readFileSync } from "node:fs";
import path from "node:path";
import { launch, root, startServer } from "../browser/lib.mjs";

const folder = path.join(root, "tests/browser/node_modules/uplot");
const { version } = JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8"));
const toml = readFileSync(path.join(root, "scenarios/02-hum-on-the-trace.toml"), "utf8");
const quantile = (list, q) => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(q * list.length))];
const both = (list) => `median ${quantile(list, 0.5).toFixed(2)} ms, p99 ${quantile(list, 0.99).toFixed(2)} ms`;

const server = await startServer();
let browser;
try {
  browser = await launch();
  // The page's policy lets no foreign script in; here it has to.
  const context = await browser.newContext({ bypassCSP: true, serviceWorkers: "block", viewport: { width: 1700, height: 900 } });
  const page = await context.newPage();
  await page.goto(server.url);
  await page.addScriptTag({ path: path.join(folder, "dist/uPlot.iife.min.js") });
  await page.addStyleTag({ path: path.join(folder, "dist/uPlot.min.css") });

  for (const [what, seconds, runs] of [["10 min", 600, 200], ["2 h", 7200, 60]]) {
    const took = await page.evaluate(async ([text, length, times]) => {
      const { default: init, Lab } = await import("/wasm/dicrotic_desk.js");
      await init();
      const lab = new Lab(text, "1");
      const act = (action) => {
        const answer = JSON.parse(lab.act(JSON.stringify(action)));
        if (!answer.ok) throw new Error(`${action.do}: ${JSON.stringify(answer)}`);
      };
      const canvas = () => Object.assign(document.createElement("canvas"), { width: 1600, height: 600 });
      const [base, layer] = [canvas(), canvas()];
      const [under, over] = [base, layer].map((one) => one.getContext("2d"));
      lab.setSize(1600, 600, 1);
      act({ do: "record" });
      for (let k = 0; k < 4 * length - 2; k += 1) lab.advance(0.25);
      act({ do: "stop" });
      act({ do: "time_base", s: 60 });

      const timed = (body) => {
        const began = performance.now();
        body();
        return performance.now() - began;
      };
      // Reading a pixel waits for the raster.
      const redraw = () => {
        lab.setSize(1600, 600, 1);
        lab.drawBase(base);
        lab.drawTrace(over);
        under.getImageData(0, 0, 1, 1);
        over.getImageData(0, 0, 1, 1);
      };
      const scrolls = [...Array(times).keys()].map((k) => (k * (length - 60)) / times);
      const out = { ours: {}, theirs: {}, decimation: [] };
      redraw();
      out.ours.minute = scrolls.map((start_s) => {
        act({ do: "scroll", start_s });
        return timed(redraw);
      });
      // Ours has the trace on a layer of its own, scratched twice side by side like a slanted stylus does.
      out.ours.trace = scrolls.map((start_s) => {
        act({ do: "scroll", start_s });
        return timed(() => {
          lab.drawTrace(over);
          over.getImageData(0, 0, 1, 1);
        });
      });
      const end = length - 1;
      act({ do: "scroll", start_s: 0 });
      act({ do: "zoom", from_s: 0, to_s: end });
      redraw();
      out.ours.whole = scrolls.map(() => timed(redraw));
      // The trace's path without waiting for the raster: lowest and highest value of each column, and the strokes.
      out.decimation = scrolls.map(() => {
        lab.setSize(1600, 600, 1);
        const spent = timed(() => lab.drawTrace(over));
        over.getImageData(0, 0, 1, 1);
        return spent;
      });

      // The same samples for uPlot, out of the recording's EDF file.
      const file = lab.exportRecording(0, "edf", "take");
      const ascii = (from, n) => new TextDecoder().decode(file.subarray(from, from + n)).trim();
      const [headed, records, signals] = [Number(ascii(184, 8)), Number(ascii(236, 8)), Number(ascii(252, 4))];
      const field = (before, width, k) => ascii(256 + before * signals + width * k, width);
      const [low, high, dLow, dHigh] = [104, 112, 120, 128].map((before) => Number(field(before, 8, 0)));
      const sizes = [...Array(signals).keys()].map((k) => Number(field(216, 8, k)));
      const whole = sizes.reduce((n, size) => n + size, 0);
      const view = new DataView(file.buffer, file.byteOffset + headed);
      const ys = new Float64Array(records * sizes[0]);
      for (let r = 0; r < records; r += 1) {
        for (let k = 0; k < sizes[0]; k += 1) ys[r * sizes[0] + k] = low + ((view.getInt16(2 * (r * whole + k), true) - dLow) * (high - low)) / (dHigh - dLow);
      }
      const xs = Float64Array.from(ys, (_, k) => k / 1000);
      if (Math.abs(ys.length / 1000 - length) > 2) throw new Error(`${ys.length} samples of ${length} s`);
      const [v0, v1] = lab.geometry().slice(6);
      const div = document.body.appendChild(document.createElement("div"));
      const unit = Math.abs(high) > 10 * v1 ? 1000 : 1; // the file may be in mV
      const plot = new globalThis.uPlot({ width: 1600, height: 600, pxAlign: 1, legend: { show: false }, cursor: { show: false }, scales: { x: { time: false, auto: false, range: (_, min, max) => [min, max] }, y: { auto: false, range: [v0 * unit, v1 * unit] } }, series: [{}, { stroke: "#223", width: 1, points: { show: false } }] }, [xs, ys], div);
      await new Promise((done) => setTimeout(done, 500));
      const look = (min, max) => {
        plot.batch(() => plot.setScale("x", { min, max }));
        plot.ctx.getImageData(0, 0, 1, 1);
      };
      const inked = () => plot.ctx.getImageData(0, 0, 1600, 600).data.some((v) => v > 0);
      look(0, 60);
      if (!inked()) throw new Error("uPlot drew nothing");
      out.theirs.minute = scrolls.map((from) => timed(() => look(from + 0.001, from + 60.001)));
      look(0, end);
      out.theirs.whole = scrolls.map((_, k) => timed(() => look(0.001 * (1 + (k % 2)), end)));
      out.samples = ys.length;
      plot.destroy();
      div.remove();
      lab.free();
      return out;
    }, [toml, seconds, runs]);
    const line = (label, ours, theirs) =>
      console.log(`${label}, 1600 x 600\tours ${both(ours)}; uPlot ${version} ${both(theirs)}; ${(quantile(theirs, 0.5) / quantile(ours, 0.5)).toFixed(1)} times ours`);
    console.log(`decimation of ${what} at 1 kHz to columns and path, Chromium\t${both(took.decimation)}`);
    console.log(`trace layer alone with raster, 60 s of ${what}, 1600 x 600\t${both(took.ours.trace)}`);
    line(`whole redraw with raster, 60 s of ${what}`, took.ours.minute, took.theirs.minute);
    line(`whole redraw with raster, all of ${what} (${took.samples.toLocaleString("en")} samples)`, took.ours.whole, took.theirs.whole);
  }
} finally {
  await browser?.close();
  await server.stop();
}
