// A sheet of pictures: each fault of the catalogue, mild and at its worst, on three subjects at three kinds of sensor, beside what the
// texts say of it. To be looked at one by one: `node tests/bench/fault_sheet.mjs FOLDER [WORD]`, where WORD chooses faults by their name.
// Needs the program and the page that it builds.
import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { host, root } from "../browser/lib.mjs";

const page = path.join(root, process.env.CARGO_TARGET_DIR ?? "target", "all/page");
const [folder, word = ""] = process.argv.slice(2);
if (!folder) throw new Error("Where to? node tests/bench/fault_sheet.mjs FOLDER [WORD]");
const SECONDS = 15; // as long as a student looks
const SUBJECTS = [
  { seed: 3, sensor: "ceramic", about: "student", subject: "" },
  { seed: 5, sensor: "film", about: "student", subject: "" },
  { seed: 8, sensor: "optical", about: "62 years", subject: 'people = "everyone"\nage_years = 62.0\n' },
];

const glue = readFileSync(path.join(page, "wasm/dicrotic.js"));
const core = await import(`data:text/javascript;base64,${glue.toString("base64")}`);
core.initSync({ module: readFileSync(path.join(page, "wasm/dicrotic_bg.wasm")) });
const faults = JSON.parse(core.faultCatalogue()).filter(({ id }) => id.includes(word));

const words = readFileSync(path.join(root, "www/texts/en/later/faults.ftl"), "utf8");
const escaped = (text) => text.replace(/[&<>]/g, (sign) => `&#${sign.charCodeAt(0)};`);
/** A fault's own lines among the texts. */
function told(id) {
  const entry = words.match(new RegExp(`^entry-${id} = (.*)\\n((?:    .*\\n)+)`, "m"));
  if (!entry) throw new Error(`no text of ${id}`);
  return { name: entry[1], lines: [...entry[2].matchAll(/^ {4}\.(seen|test|remedy) = (.*)$/gm)].map(([, field, text]) => `<p><b>${field}</b> ${escaped(text)}</p>`).join("") };
}

mkdirSync(folder, { recursive: true });
const bench = ({ sensor, subject }, fault, much) => `id = "sheet"\nlevel = 1\ntitle = "${fault}, ${much}"\naim = "a"\nbrief = "b"\n
[sensor]\nkind = "${sensor}"\n\n[subject]\n${subject}pulse_mv = 40.0\n\n[recorder]\nrange_v = ${sensor === "optical" ? 0.5 : 0.05}\n\n[[fault]]\nname = "${fault}"\nseverity = ${much}\n`;

let drawn = 0;
const blank = []; // where the computer sees no recorder there is nothing to draw
const sections = faults.map(({ id, severity }) => {
  const { name, lines } = told(id);
  const pictures = SUBJECTS.flatMap((one) => [...new Set(severity)].map((much) => {
    const file = `${id}-${one.sensor}-${much}`;
    const toml = path.join(folder, `${file}.toml`);
    writeFileSync(toml, bench(one, id, much));
    try {
      execFileSync(host, ["render", toml, "--seed", one.seed, "--seconds", SECONDS, "--plot", "trace", "--theme", "light", "--size", "900x260", "--out", path.join(folder, `${file}.svg`)], { stdio: ["ignore", "ignore", "pipe"] });
      drawn += 1;
      return `<figure><img src="${file}.svg" alt=""><figcaption>${one.sensor}, ${one.about}, severity ${much}</figcaption></figure>`;
    } catch (error) {
      const why = String(error.stderr ?? error).trim().split("\n").at(-1);
      blank.push(`${file}: ${why}`);
      return `<figure class="none">${escaped(why)}<figcaption>${one.sensor}, severity ${much}</figcaption></figure>`;
    }
  }));
  return `<section><h2>${escaped(name)} <code>${id}</code></h2>${lines}<div>${pictures.join("")}</div></section>`;
});
writeFileSync(path.join(folder, "index.html"), `<!doctype html><meta charset="utf-8"><title>Faults</title>
<style>body{font:15px/1.35 serif;margin:1.5em;max-width:1320px}div{display:grid;grid-template-columns:1fr 1fr;gap:.4em}figure{margin:0}img{width:100%}figcaption{color:#555}.none{border:1px dashed #999;padding:2em}p{margin:.2em 0}section{break-inside:avoid;margin-bottom:2em}</style>
${sections.join("\n")}\n`);
for (const line of blank) console.log(`nothing to draw: ${line}`);
console.log(`${drawn} pictures of ${faults.length} faults in ${path.join(folder, "index.html")}`);
