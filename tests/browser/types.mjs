// Checks the types of the page's scripts: `tsc` reads them with their JSDoc, the declarations of www/js/types, and those that the
// core's build wrote for what it offers. After `dicrotic build` or any browser test: node tests/browser/types.mjs
import { spawnSync } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";

const here = path.dirname(fileURLToPath(import.meta.url));
const built = path.resolve(here, "../..", process.env.CARGO_TARGET_DIR ?? "target", "page");
const offered = path.join(here, "node_modules/.page/wasm"); // tsconfig.json lays this beside www
mkdirSync(offered, { recursive: true });
for (const name of ["dicrotic.d.ts", "dicrotic_desk.d.ts"]) {
  if (!existsSync(path.join(built, name))) throw new Error(`${path.join(built, name)} is missing: run \`dicrotic build --out FOLDER\` first`);
  copyFileSync(path.join(built, name), path.join(offered, name));
}
const tsc = createRequire(import.meta.url).resolve("typescript/bin/tsc");
// The worker lives in another world than the page: it has a project of its own.
const passed = ["tsconfig.json", "tsconfig.worker.json"].filter((project) => spawnSync(process.execPath, [tsc, "-p", path.join(here, project)], { stdio: "inherit" }).status === 0).length;
console.log(`types: ${passed} passed, ${2 - passed} failed`);
process.exitCode = passed === 2 ? 0 : 1;
