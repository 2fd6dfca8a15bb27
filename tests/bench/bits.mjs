// The node half of bits.sh: PAGE PROGRAM SAMPLES SEED.
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";

const [page, program, samples, seed] = process.argv.slice(2);
const glue = readFileSync(path.join(page, "wasm/dicrotic.js"));
const core = await import(`data:text/javascript;base64,${glue.toString("base64")}`);
core.initSync({ module: readFileSync(path.join(page, "wasm/dicrotic_bg.wasm")) });

const files = readdirSync("scenarios").filter((name) => name.endsWith(".toml")).sort();
let differ = 0, native_s = 0, wasm_s = 0;
for (const name of files) {
  const file = path.join("scenarios", name);
  let began = performance.now();
  const native = execFileSync(program, ["fingerprint", file, "--seed", seed, "--samples", samples], { encoding: "utf8" }).trim();
  native_s += (performance.now() - began) / 1000;
  began = performance.now();
  const wasm = core.fingerprint(readFileSync(file, "utf8"), seed, Number(samples));
  wasm_s += (performance.now() - began) / 1000;
  if (native === wasm) continue;
  differ += 1;
  console.log(`${name}: ${native} natively, ${wasm} in node`);
}
console.log(`${files.length} scenarios of ${samples} samples, seed ${seed}: ${files.length - differ} alike, ${differ} not (native ${native_s.toFixed(0)} s, node ${wasm_s.toFixed(0)} s)`);
process.exitCode = differ === 0 && files.length > 0 ? 0 : 1;
