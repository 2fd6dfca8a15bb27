// A course site for the tests of packages: serves a package, with scorm-again as the site's run-time.
import { execFile } from "node:child_process";
import { createServer } from "node:http";
import { mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { promisify } from "node:util";
import { crc32, inflateRawSync } from "node:zlib";
import assert from "node:assert/strict";
import { host, root, withContexts } from "./lib.mjs";

export const work = path.join(root, process.env.CARGO_TARGET_DIR ?? "target", "pack-test");
mkdirSync(work, { recursive: true });
export const viewport = { width: 1280, height: 900 };

/** Packs the plain scenario, or a text of one's own. */
export async function pack(to, ...more) {
  return packFile(path.join(root, "scenarios/04-rest-pulse.toml"), to, ...more);
}
export async function packFile(toml, to, ...more) {
  const file = path.join(work, to);
  const { stdout } = await promisify(execFile)(host, ["pack", toml, "--to", file, ...more], { cwd: root });
  assert.match(stdout, /files in \d+ kB/);
  return file;
}

/** The files of an archive, by its central list. */
export function unpack(file) {
  const bytes = readFileSync(file);
  const files = new Map();
  const end = bytes.lastIndexOf(Buffer.from("PK\u0005\u0006", "latin1"));
  for (let at = bytes.readUInt32LE(end + 16); bytes.readUInt32LE(at) === 0x02014b50;) {
    const [packing, size, name, extra, remark, from] = [bytes.readUInt16LE(at + 10), bytes.readUInt32LE(at + 20), bytes.readUInt16LE(at + 28), bytes.readUInt16LE(at + 30), bytes.readUInt16LE(at + 32), bytes.readUInt32LE(at + 42)];
    const start = from + 30 + bytes.readUInt16LE(from + 26) + bytes.readUInt16LE(from + 28);
    const data = bytes.subarray(start, start + size);
    const held = packing === 8 ? inflateRawSync(data) : data;
    assert.equal(crc32(held), bytes.readUInt32LE(at + 16), "a sum of the archive");
    files.set(bytes.toString("utf8", at + 46, at + 46 + name), held);
    at += 46 + name + extra + remark;
  }
  return files;
}

export const SITE = {
  scorm12: { global: "API", script: "scorm12.min.js", made: "Scorm12API" },
  scorm2004: { global: "API_1484_11", script: "scorm2004.min.js", made: "Scorm2004API" },
};

/** A course site in one page: what it keeps of a student outlives the page, as in a site's data base. */
const sitePage = ({ global, script, made }) => `<!doctype html><meta charset="utf-8"><title>Course site</title>
<script type="module">
import { ${made} } from "/scorm-again/${script}";
const api = new ${made}({ autocommit: false, logLevel: 5 });
// Each item of the course has data of its own; what the site has of it is what was committed.
const asked = new URLSearchParams(location.search);
const item = "site" + (asked.get("item") ?? "") + (asked.get("student") ? "/" + asked.get("student") : "");
if (asked.has("student")) Object.assign(window.seedOfSite.core ?? window.seedOfSite, { [window.seedOfSite.core ? "student_id" : "learner_id"]: asked.get("student") });
const kept = JSON.parse(localStorage.getItem(item) ?? "null");
api.loadFromJSON(kept ?? window.seedOfSite);
window.${global} = api;
window.keep = () => {
  const cmi = JSON.parse(JSON.stringify(api.renderCMIToJSONObject())).cmi ?? {};
  localStorage.setItem(item, JSON.stringify({ ...cmi }));
};
for (const name of ["LMSCommit", "Commit", "LMSFinish", "Terminate"].filter((one) => api[one])) {
  const does = api[name];
  api[name] = (...given) => {
    if (window.refuses) return "false";
    const answer = does.apply(api, given);
    window.keep();
    return answer;
  };
}
const frame = document.createElement("iframe");
frame.src = "/" + (asked.get("package") ?? "package") + "/index.html";
frame.style.cssText = "position:fixed;inset:0;width:100%;height:100%;border:0";
document.body.append(frame);
</script>`;

const TYPES = { html: "text/html", js: "text/javascript", css: "text/css", svg: "image/svg+xml", wasm: "application/wasm", json: "application/json" };

/** Serves the course site and the package, or several by their folders' names, until stop(). */
export async function serveSite(standard, files, more = {}) {
  const server = createServer((request, response) => {
    const name = decodeURIComponent(new URL(request.url, "http://site").pathname).slice(1);
    const give = (body, type) => response.writeHead(200, { "content-type": type }).end(body);
    if (name === "favicon.ico") return response.writeHead(204).end();
    if (name === "blank") return give("<!doctype html><title>Nothing</title>", "text/html");
    if (name === "site") return give(sitePage(SITE[standard]), "text/html");
    if (name.startsWith("scorm-again/")) return give(readFileSync(path.join(root, "tests/browser/node_modules/scorm-again/dist/esm", path.basename(name))), "text/javascript");
    const [folder] = name.split("/");
    const file = (folder === "package" ? files : more[folder])?.get(name.slice(folder.length + 1));
    if (!file) return response.writeHead(404).end();
    return give(file, TYPES[name.split(".").at(-1)] ?? "text/plain");
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  return { url: `http://127.0.0.1:${server.address().port}/site`, stop: () => new Promise((done) => { server.closeAllConnections(); server.close(done); }) };
}

/** What the site has at this moment, straight from its run-time's data. */
export const siteHas = (page, standard) => page.evaluate((global) => {
  const { cmi } = window[global];
  const core = cmi.core ?? cmi;
  return {
    status: core.lesson_status ?? core.completion_status, success: core.success_status, raw: core.score.raw, min: core.score.min, max: core.score.max, scaled: core.score.scaled,
    state: cmi.suspend_data, launch: cmi.launch_data, student: core.student_id ?? core.learner_id,
  };
}, SITE[standard].global);

/** Watches what a page is told by the package: every call into the run-time with its answer. */
export const spy = (global) => {
  window.calls = [];
  Object.defineProperty(window, global, {
    configurable: true,
    get: () => window.spied,
    set: (api) => {
      window.spied = new Proxy(api, { get: (it, name) => (typeof it[name] === "function" && /^(LMS)?(Initialize|SetValue|Commit|Finish|Terminate)$/.test(name) ? (...given) => {
        const answer = it[name](...given);
        window.calls.push([name.replace("LMS", ""), ...given, String(answer)]);
        return answer;
      } : it[name]) });
    },
  });
};

export async function withSite(standard, body, { files, more = {}, random = false } = {}) {
  files ??= unpack(await pack(`${standard}.zip`, "--standard", standard));
  const site = await serveSite(standard, files, more);
  try {
    await withContexts(async (newContext) => {
      const first = standard === "scorm12" ? { core: { student_id: "s-0042", entry: "ab-initio" }, launch_data: "rest-pulse" } : { learner_id: "s-0042", entry: "ab-initio", launch_data: "rest-pulse" };
      /** A device, with what the site has kept of the student so far. */
      const device = async (kept = null) => {
        const context = await newContext({ viewport, acceptDownloads: true });
        await context.addInitScript(spy, SITE[standard].global);
        // The same heart each time: of some, the ruler of these tests cannot make out every beat.
        if (!random) await context.addInitScript(() => (crypto.getRandomValues = (words) => words.fill(0)));
        await context.addInitScript(([told, had]) => {
          window.seedOfSite = told;
          if (had && !localStorage.getItem("site")) localStorage.setItem("site", had);
        }, [first, kept]);
        return context;
      };
      const troubles = [];
      const open = async (kept) => {
        const page = await (await device(kept)).newPage();
        page.on("pageerror", (error) => troubles.push(error.message));
        page.on("console", (message) => message.type() === "error" && troubles.push(message.text()));
        await page.goto(site.url);
        const frame = page.frameLocator("iframe");
        await frame.locator(".plug").first().waitFor({ state: "attached" });
        return { page, lab: page.frames()[1] };
      };
      await body({ open, files, device, url: site.url, troubles });
      assert.deepEqual(troubles, []);
    });
  } finally {
    await site.stop();
  }
}

