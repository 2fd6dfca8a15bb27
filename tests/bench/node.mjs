// The chain in this JavaScript engine: the folder of a built page. One line, name and figure parted by a tab.
import { readFileSync } from "node:fs";

const [page] = process.argv.slice(2);
const glue = readFileSync(`${page}/wasm/dicrotic.js`);
const core = await import(`data:text/javascript;base64,${glue.toString("base64")}`);
core.initSync({ module: readFileSync(`${page}/wasm/dicrotic_bg.wasm`) });
const toml = readFileSync("scenarios/02-hum-on-the-strip.toml", "utf8");
core.fingerprint(toml, "1", 200_000);
const took = [];
for (let k = 0; k < 5; k += 1) {
  const began = performance.now();
  core.fingerprint(toml, "1", 2_000_000);
  took.push(performance.now() - began);
}
took.sort((a, b) => a - b);
console.log(`chain and SHA-256, node ${process.versions.node}\t${(2_000 / took[2]).toFixed(1)} million samples/s`);
