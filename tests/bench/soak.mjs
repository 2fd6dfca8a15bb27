// Whether memory stays where it is: two hours of a bench at speed, with the display drawn, without and with a recording; and the
// page itself left open: node tests/bench/soak.mjs [MINUTES]. JS heap after a collection, and the core's memory. Lines of name
// and figure parted by a tab.
import { readFileSync } from "node:fs";
import path from "node:path";
import { launch, root, startServer } from "../browser/lib.mjs";

const minutes = Number(process.argv[2] ?? 2);
if (!(minutes > 0)) throw new Error(`minutes: ${process.argv[2]}`);
const HOURS = 2;
const toml = readFileSync(path.join(root, "scenarios/02-hum-on-the-trace.toml"), "utf8");
const MB = (bytes) => (bytes / 1e6).toFixed(2);

/** JS heap after a collection, and the core's memory, bytes. */
async function sample(page, session) {
  await session.send("HeapProfiler.collectGarbage");
  const { usedSize } = await session.send("Runtime.getHeapUsage");
  const core = await page.evaluate(async () => {
    const { default: init } = await import("/wasm/dicrotic.js");
    return (await init()).memory.buffer.byteLength;
  });
  return { heap: usedSize, core };
}

const told = (name, samples) => {
  const [start, middle, end] = [samples[0], samples[samples.length >> 1], samples.at(-1)];
  const run = (key) => [start, middle, end].map((one) => MB(one[key])).join(", ");
  console.log(`${name}: start, middle, end\tJS heap ${run("heap")} MB; the core ${run("core")} MB`);
};

const server = await startServer();
let browser;
try {
  browser = await launch();
  for (const recorded of [false, true]) {
    const context = await browser.newContext({ serviceWorkers: "block" });
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await page.goto(server.url);
    await page.evaluate(async ([text, recording]) => {
      const { default: init, Lab } = await import("/wasm/dicrotic.js");
      await init();
      const lab = new Lab(text, "1");
      const canvas = Object.assign(document.createElement("canvas"), { width: 1600, height: 600 });
      const context2d = canvas.getContext("2d");
      lab.setSize(1600, 600, 1);
      if (recording) lab.act(JSON.stringify({ do: "record" }));
      // What the page asks of the core with every frame; a frame is a fifteenth of what passes at once here.
      globalThis.soak = (steps) => {
        let last = -1;
        for (let k = 0; k < steps; k += 1) {
          lab.advance(0.25);
          lab.drawTrace(context2d);
          lab.stylus();
          if (lab.revision() !== last || k % 8 === 0) {
            last = lab.revision();
            lab.view();
            lab.summary();
          }
        }
        return lab.clock();
      };
      globalThis.soak(240);
    }, [toml, recorded]);
    const samples = [await sample(page, session)];
    const began = performance.now();
    let clock = 0;
    for (let part = 0; part < 24; part += 1) {
      clock = await page.evaluate((steps) => globalThis.soak(steps), (HOURS * 3600 * 4) / 24);
      samples.push(await sample(page, session));
    }
    if (clock < HOURS * 3600) throw new Error(`only ${clock} s have passed`);
    told(`memory, ${HOURS} h of a bench at speed (${((performance.now() - began) / 1000).toFixed(0)} s), ${recorded ? "all of it recorded" : "nothing recorded"}`, samples);
    await context.close();
  }

  const context = await browser.newContext({ serviceWorkers: "block", viewport: { width: 1280, height: 900 } });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await page.goto(`${server.url}#s=hum-on-the-trace&seed=1`);
  await page.waitForFunction(() => document.documentElement.dataset.ready === "1");
  await page.waitForTimeout(5000);
  const samples = [await sample(page, session)];
  const parts = Math.max(2, Math.round(minutes * 4));
  for (let part = 0; part < parts; part += 1) {
    await page.waitForTimeout((minutes * 60_000) / parts);
    samples.push(await sample(page, session));
  }
  told(`memory, the page left open for ${minutes} min`, samples);
} finally {
  await browser?.close();
  await server.stop();
}
