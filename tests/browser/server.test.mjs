// The server over a real connection: what it sends, and what it refuses. Requests are written byte by byte, because
// every client library tidies paths up before it sends them.
import { test, before, after } from "node:test";
import assert from "node:assert/strict";
import net from "node:net";
import { gunzipSync } from "node:zlib";
import { startServer } from "./lib.mjs";

let server;
before(async () => {
  server = await startServer();
});
after(() => server.stop());

/** Sends `head` lines and returns { status, headers, body } of what comes back. */
function exchange(...head) {
  const port = Number(new URL(server.url).port);
  return new Promise((resolve, reject) => {
    const chunks = [];
    const socket = net.connect(port, "127.0.0.1", () => socket.write([...head, "Connection: close", "", ""].join("\r\n")));
    socket.setTimeout(10_000, () => socket.destroy(new Error("no answer")));
    socket.on("data", (chunk) => chunks.push(chunk));
    socket.once("error", reject);
    socket.once("close", () => {
      const all = Buffer.concat(chunks);
      const end = all.indexOf("\r\n\r\n");
      if (end < 0) return reject(new Error(`not an answer: ${all}`));
      const [first, ...lines] = all.subarray(0, end).toString("latin1").split("\r\n");
      const headers = Object.fromEntries(lines.map((line) => {
        const colon = line.indexOf(":");
        return [line.slice(0, colon).toLowerCase(), line.slice(colon + 1).trim()];
      }));
      resolve({ status: Number(first.split(" ")[1]), headers, body: all.subarray(end + 4) });
    });
  });
}

const get = (target, ...more) => exchange(`GET ${target} HTTP/1.1`, "Host: 127.0.0.1", ...more);

test("files come with the type that a browser needs, and packed when asked for", async () => {
  const plain = await get("/wasm/dicrotic_bg.wasm");
  assert.equal(plain.status, 200);
  assert.equal(plain.headers["content-type"], "application/wasm");
  assert.equal(plain.headers["content-encoding"], undefined);
  assert.equal(Number(plain.headers["content-length"]), plain.body.length);
  assert.equal(plain.body.subarray(0, 4).toString("latin1"), "\0asm");
  const packed = await get("/wasm/dicrotic_bg.wasm", "Accept-Encoding: gzip");
  assert.equal(packed.headers["content-encoding"], "gzip");
  assert.ok(packed.body.length < plain.body.length);
  assert.ok(gunzipSync(packed.body).equals(plain.body));
  for (const [file, type] of [["/", "text/html"], ["/wasm/dicrotic.js", "text/javascript"], ["/scenarios/index.json", "application/json"]]) {
    const answer = await get(file);
    assert.equal(answer.status, 200, file);
    assert.ok(answer.headers["content-type"].startsWith(type), file);
  }
});

test("a file that the browser has is not sent again", async () => {
  const first = await get("/");
  assert.equal(first.headers["cache-control"], "no-cache");
  const again = await get("/", `If-None-Match: ${first.headers.etag}`);
  assert.equal(again.status, 304);
  assert.equal(again.body.length, 0);
});

test("HEAD sends the headers alone", async () => {
  const full = await get("/");
  const head = await exchange("HEAD / HTTP/1.1", "Host: 127.0.0.1");
  assert.equal(head.status, 200);
  assert.equal(head.headers["content-length"], full.headers["content-length"]);
  assert.equal(head.body.length, 0);
});

test("every answer carries the protecting headers, refusals too", async () => {
  for (const answer of [await get("/"), await get("/nowhere"), await get("/../Cargo.toml")]) {
    assert.match(answer.headers["content-security-policy"], /^default-src 'none'; script-src 'self' 'wasm-unsafe-eval';/);
    assert.match(answer.headers["permissions-policy"], /^camera=\(self\), microphone=\(\), geolocation=\(\), /);
    assert.equal(answer.headers["x-content-type-options"], "nosniff");
    assert.equal(answer.headers["referrer-policy"], "no-referrer");
  }
});

test("path tricks get nothing", async () => {
  for (const target of [
    "/../Cargo.toml",
    "/js/../../Cargo.toml",
    "/%2e%2e/Cargo.toml",
    "/%2e%2e%2fCargo.toml",
    "/..\\Cargo.toml",
    "/.git/config",
    "//etc/passwd",
    "/index.html%00.png",
    "/index.html\0",
    "http://127.0.0.1/../Cargo.toml",
    "/C:/Windows/win.ini",
  ]) {
    const answer = await get(target);
    assert.ok([400, 404].includes(answer.status), `${JSON.stringify(target)}: ${answer.status}`);
    assert.doesNotMatch(answer.body.toString(), /package|root:/);
  }
});

test("only this machine's names are answered, and only reading", async () => {
  for (const host of ["localhost", "localhost:80", "[::1]", "127.0.0.1:1"]) {
    assert.equal((await exchange("GET / HTTP/1.1", `Host: ${host}`)).status, 200, host);
  }
  for (const host of ["example.org", "127.0.0.1.example.org", "127.0.0.2", "localhost:x"]) {
    assert.equal((await exchange("GET / HTTP/1.1", `Host: ${host}`)).status, 403, host);
  }
  assert.equal((await exchange("GET / HTTP/1.1")).status, 403, "no host");
  assert.equal((await exchange("GET / HTTP/1.1", "Host: localhost", "Host: example.org")).status, 403, "two hosts");
  for (const method of ["POST", "PUT", "DELETE", "OPTIONS", "TRACE", "FROB"]) {
    const answer = await exchange(`${method} / HTTP/1.1`, "Host: localhost", "Content-Length: 0");
    assert.equal(answer.status, 405, method);
    assert.equal(answer.headers.allow, "GET, HEAD");
  }
});

test("a silent connection does not hold up the others", async () => {
  const port = Number(new URL(server.url).port);
  const silent = Array.from({ length: 50 }, () => net.connect(port, "127.0.0.1"));
  for (const socket of silent) {
    socket.on("error", () => {});
    socket.write("GET / HT");
  }
  try {
    assert.equal((await get("/")).status, 200);
  } finally {
    for (const socket of silent) socket.destroy();
  }
});

test("a server that has no file handles left waits until there are some again", async () => {
  const poor = await startServer({ own: true, handles: 24 });
  try {
    const port = Number(new URL(poor.url).port);
    const crowd = Array.from({ length: 60 }, () => net.connect(port, "127.0.0.1"));
    for (const socket of crowd) socket.on("error", () => {});
    await Promise.all(crowd.map((socket) => new Promise((resolve) => socket.once("connect", resolve))));
    // Asked while all handles are taken; answered when the others have gone.
    const late = fetch(poor.url, { signal: AbortSignal.timeout(30_000) });
    const early = await Promise.race([late.then(() => "answered"), fetch(poor.url, { signal: AbortSignal.timeout(2_000) }).catch((gone) => gone.name)]);
    assert.equal(early, "TimeoutError", "the crowd took no handles");
    for (const socket of crowd) socket.destroy();
    assert.equal((await late).status, 200);
    assert.equal((await fetch(poor.url)).status, 200);
  } finally {
    await poor.stop();
  }
});
