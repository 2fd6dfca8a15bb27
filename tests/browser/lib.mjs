// What every browser test needs: the server, a real Chromium, and a watch on everything that goes wrong in a page.
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import assert from "node:assert/strict";
import { chromium } from "playwright-core";

/** The project's folder. */
export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");

/** The `dicrotic` program that the tests run. `cargo build` makes it. */
export const host = path.resolve(root, process.env.CARGO_TARGET_DIR ?? "target", "debug/dicrotic");

export const browserPath = process.env.DICROTIC_CHROMIUM ?? "/usr/bin/chromium";
export const browserFlags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/**
 * The server's address and a function that ends it. `run.mjs` starts one server for all files and names it in
 * DICROTIC_URL; a file that is run alone gets its own. `handles` is how many files and connections it may have open.
 */
export async function startServer({ own = false, handles = 0 } = {}) {
  if (process.env.DICROTIC_URL && !own) {
    return { url: process.env.DICROTIC_URL, stop: async () => {} };
  }
  assert.ok(existsSync(host), `${host} is missing: run \`cargo build\` first`);
  const serve = handles ? ["sh", "-c", `ulimit -n ${handles}; exec "$0" serve --port 0`, host] : [host, "serve", "--port", "0"];
  const child = spawn(serve[0], serve.slice(1), { cwd: root, stdio: ["ignore", "pipe", "inherit"] });
  const end = () => child.kill();
  process.once("exit", end);
  const gone = new Promise((resolve) => child.once("close", resolve));
  const stop = async () => {
    process.off("exit", end);
    child.kill();
    await gone;
  };
  let text = "";
  const url = await new Promise((resolve, reject) => {
    child.stdout.on("data", (chunk) => {
      text += chunk;
      const found = text.match(/http:\/\/127\.0\.0\.1:\d+\//);
      if (found) resolve(found[0]);
    });
    child.once("error", reject);
    child.once("close", (code) => reject(new Error(`the server ended with code ${code} before it gave an address`)));
  });
  return { url, stop };
}

/** The page's words as it gets them: key to message, a string or an array of strings and places. */
export async function words(bundle = "") {
  const server = await startServer();
  try {
    const answer = await fetch(`${server.url}texts/en${bundle && `.${bundle}`}.json`);
    assert.equal(answer.status, 200, answer.url);
    return await answer.json();
  } finally {
    await server.stop();
  }
}

/** All the strings of a message. */
export const strings = (message) => (typeof message === "string" ? [message] : (message ?? []).flatMap((part) => (typeof part === "string" ? [part] : Object.values(part.k ?? {}).flatMap(strings))));

const how = { executablePath: browserPath, args: browserFlags };

/** A Chromium without a window of a test's own. Close it in `finally`. */
export const launch = () => chromium.launch(how);

/** One that the processes of all test files share; `run.mjs` names it in DICROTIC_BROWSER. */
export const launchForAll = () => chromium.launchServer(how);

/** Where that one cannot be had, a file has one of its own. */
const reach = () => (process.env.DICROTIC_BROWSER ? chromium.connect(process.env.DICROTIC_BROWSER).catch(launch) : launch());

let shared = null;
let users = 0;

/** One that cannot be had, or that has died, is not given to the next test. */
function launchShared() {
  const launched = reach();
  const gone = () => {
    if (shared === launched) shared = null;
  };
  launched.then((browser) => browser.once("disconnected", gone), gone);
  return launched;
}

/** A Chromium for the tests of a file; a context of its own keeps each test apart from the others. */
function enter() {
  users += 1;
  shared ??= launchShared();
  return shared;
}

/** It ends a moment after the last test that uses it: to start one takes longer than many a test. */
function leave() {
  users -= 1;
  setTimeout(async () => { // span: nothing waits for it; the next test, if there is one, begins sooner
    if (users > 0 || !shared) return;
    const last = shared;
    shared = null;
    await (await last).close();
  }, 100);
}

/** A context of the browser that all share; where a `speed` is given the world runs so many times as fast as real time. The rest of the options go to Playwright. */
async function makeContext(browser, { speed, ...options } = {}) {
  const context = await browser.newContext(options);
  context.setDefaultTimeout(90_000); // a fact comes late where the machine has other work; what does not come at all is told a minute later
  if (speed !== undefined) await context.addInitScript((told) => {
    try {
      sessionStorage.setItem("dicrotic:speed", told);
    } catch { /* a page without an origin */ }
  }, String(speed));
  return context;
}

/** Runs `body(newContext)` with the browser that all share; the contexts are closed afterwards. */
export async function withContexts(body) {
  const made = [];
  try {
    const browser = await enter();
    return await body(async (options) => {
      made.push(await makeContext(browser, options));
      return made.at(-1);
    });
  } finally {
    for (const context of made) await context.close();
    leave();
  }
}

/**
 * Runs `body({ page, context, browser, server, url })` in a new page, closes all afterwards, and fails if the page logged an
 * error or a warning, threw, or asked for something that it did not get. `expected` are patterns of complaints that
 * the test provokes; each must come. `own` gives the test a server that it may stop; with `speed` the world runs
 * so many times as fast as real time throughout. The rest of the options go to Playwright's `newContext`.
 */
export async function withPage({ expected = [], own = false, ...options }, body) {
  const server = await startServer({ own });
  let context;
  try {
    const browser = await enter();
    // By default no worker: keeping the page on the device would fetch every file again in every test; the test of that asks for it.
    context = await makeContext(browser, { serviceWorkers: "block", ...options });
    const complaints = [];
    const watch = (page) => {
      page.on("console", (message) => {
        if (message.text() === "Service Worker registration blocked by Playwright") return; // as asked for with the context
        if (["error", "warning"].includes(message.type())) complaints.push(`${message.type()}: ${message.text()}`);
      });
      page.on("pageerror", (error) => complaints.push(`uncaught: ${error.message}`));
      page.on("requestfailed", (request) => {
        // A page that is left lets go of what it was still asking for; that is no failure.
        if (request.failure()?.errorText !== "net::ERR_ABORTED") complaints.push(`failed: ${request.url()}`);
      });
      page.on("response", (response) => {
        if (response.status() >= 400) complaints.push(`${response.status()}: ${response.url()}`);
      });
    };
    context.on("page", watch);
    const page = await context.newPage();
    const result = await body({ page, context, browser, server, url: server.url });
    for (const pattern of expected) {
      assert.ok(complaints.some((text) => pattern.test(text)), `expected a complaint like ${pattern}`);
    }
    const unexpected = complaints.filter((text) => !expected.some((pattern) => pattern.test(text)));
    assert.deepEqual(unexpected, [], "the page complained");
    return result;
  } finally {
    await context?.close();
    leave();
    await server.stop();
  }
}
