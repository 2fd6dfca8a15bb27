// The WebAssembly half of bits.sh, in node and in Chromium: PAGE PROGRAM SAMPLES SEED.
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { withPage } from "../browser/lib.mjs";

const [page, program, samples, seed] = process.argv.slice(2);
const glue = readFileSync(path.join(page, "wasm/dicrotic.js"));
const core = await import(`data:text/javascript;base64,${glue.toString("base64")}`);
core.initSync({ module: readFileSync(path.join(page, "wasm/dicrotic_bg.wasm")) });

const files = readdirSync("scenarios").filter((name) => name.endsWith(".toml")).sort();
let differ = 0;
const took = { native: 0, node: 0, Chromium: 0 };
const timed = async (where, body) => {
  const began = performance.now();
  const hash = await body();
  took[where] += (performance.now() - began) / 1000;
  return hash;
};
await withPage({}, async ({ page: browser, url }) => {
  await browser.goto(url);
  for (const name of files) {
    const file = path.join("scenarios", name);
    const toml = readFileSync(file, "utf8");
    const hashes = [
      await timed("native", () => execFileSync(program, ["fingerprint", file, "--seed", seed, "--samples", samples], { encoding: "utf8" }).trim()),
      await timed("node", () => core.fingerprint(toml, seed, Number(samples))),
      await timed("Chromium", () => browser.evaluate(async ([text, with_seed, n]) => {
        const { default: init, fingerprint } = await import("/wasm/dicrotic.js");
        await init();
        return fingerprint(text, with_seed, n);
      }, [toml, seed, Number(samples)])),
    ];
    if (new Set(hashes).size === 1 && /^[0-9a-f]{16,64}$/.test(hashes[0])) continue;
    differ += 1;
    console.log(`${name}: ${hashes[0]} natively, ${hashes[1]} in node, ${hashes[2]} in Chromium`);
  }
});
const seconds = Object.entries(took).map(([where, s]) => `${where} ${s.toFixed(0)} s`).join(", ");
console.log(`same bits\t${files.length} scenarios of ${samples} samples, seed ${seed}: ${files.length - differ} alike, ${differ} not (${seconds})`);
process.exitCode = differ === 0 && files.length > 0 ? 0 : 1;
