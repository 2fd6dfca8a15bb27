// The chain as WebAssembly in node and in Chromium: PAGE [SIMD_PAGE], folders of built pages; the second with wasm's 128-bit
// vectors. Lines of name and figure parted by a tab.
import { readFileSync } from "node:fs";
import path from "node:path";
import { launch, root, startServer } from "../browser/lib.mjs";
import { chainSpeeds } from "./chain.mjs";

const SIZES = [10_000, 100_000, 1_000_000];
const [plain, simd] = process.argv.slice(2);
const builds = [["plain", plain], ["simd", simd]].filter(([, folder]) => folder);
const toml = readFileSync(path.join(root, "scenarios/02-hum-on-the-trace.toml"), "utf8");

async function inNode(folder) {
  const glue = readFileSync(path.join(folder, "wasm/dicrotic.js"));
  // The comment makes two builds two modules, even where their loaders are alike.
  const core = await import(`data:text/javascript;base64,${Buffer.concat([glue, Buffer.from(`\n// ${folder}`)]).toString("base64")}`);
  core.initSync({ module: readFileSync(path.join(folder, "wasm/dicrotic_bg.wasm")) });
  return chainSpeeds(core, toml, SIZES);
}

async function inChromium() {
  const server = await startServer();
  let browser;
  try {
    browser = await launch();
    const context = await browser.newContext({ serviceWorkers: "block" });
    const page = await context.newPage();
    const types = { ".js": "text/javascript", ".mjs": "text/javascript", ".wasm": "application/wasm" };
    const serve = (address, file) => page.route(`**/bench/${address}`, (route) => route.fulfill({ body: readFileSync(file), contentType: types[path.extname(file)] }));
    await serve("chain.mjs", path.join(root, "tests/bench/chain.mjs"));
    for (const [name, folder] of builds) for (const file of ["dicrotic.js", "dicrotic_bg.wasm"]) await serve(`${name}/${file}`, path.join(folder, "wasm", file));
    await page.goto(server.url);
    const speeds = {};
    for (const [name] of builds) {
      speeds[name] = await page.evaluate(async ([build, text, sizes]) => {
        const core = await import(`/bench/${build}/dicrotic.js`);
        await core.default();
        const { chainSpeeds: measure } = await import("/bench/chain.mjs");
        return measure(core, text, sizes);
      }, [name, toml, SIZES]);
    }
    return [speeds, browser.version()];
  } finally {
    await browser?.close();
    await server.stop();
  }
}

const [chromium, version] = await inChromium();
const node = {};
for (const [name, folder] of builds) node[name] = await inNode(folder);
for (const [engine, speeds] of [[`node ${process.versions.node}`, node], [`Chromium ${version.split(".")[0]}`, chromium]]) {
  SIZES.forEach((samples, k) => {
    const vectors = speeds.simd ? `; with simd128 ${speeds.simd[k].toFixed(1)}, ${(speeds.simd[k] / speeds.plain[k]).toFixed(2)} times as many` : "";
    console.log(`bench with live strip, ${engine}, ${samples.toLocaleString("en")} samples\t${speeds.plain[k].toFixed(1)} million samples/s${vectors}`);
  });
}
if (simd) {
  const kB = (folder) => (readFileSync(path.join(folder, "wasm/dicrotic_bg.wasm")).length / 1e3).toFixed(0);
  console.log(`the core's file, plain and with simd128\t${kB(plain)} kB, ${kB(simd)} kB`);
}
