// @ts-check
// Keeps the page on the device, so that it opens without a network after one visit. The build puts one line before this
// file: `const BUILD = {version, files: {path: hash}}`. Files are kept under path and hash: a new version fetches only what
// has changed, and an attempt in an open page goes on with the files that it began with.

const STORE = "dicrotic-files";
const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const scope = new URL(worker.registration.scope);
/** @param {string} path */
const keyOf = (path) => new URL(`${path}?${BUILD.files[path]}`, scope).href;
/** @param {URL} url */
const pathOf = (url) => (url.origin === scope.origin && url.pathname.startsWith(scope.pathname) ? decodeURIComponent(url.pathname.slice(scope.pathname.length)) || "index.html" : null);

worker.addEventListener("install", (event) => event.waitUntil(bringAll()));

async function bringAll() {
  const store = await caches.open(STORE);
  /** @type {string[]} */
  const missing = [];
  for (const path of Object.keys(BUILD.files)) if (!(await store.match(keyOf(path)))) missing.push(path);
  // A few at a time: the page that is open comes first.
  const next = async () => {
    for (let path = missing.pop(); path !== undefined; path = missing.pop()) await bring(store, path);
  };
  await Promise.all([next(), next(), next()]);
}

/** @param {Cache} store @param {string} path */
async function bring(store, path) {
  const answer = await fetch(new Request(new URL(path, scope), { cache: "no-cache" }));
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  await store.put(keyOf(path), answer.clone());
  return answer;
}

worker.addEventListener("activate", (event) => event.waitUntil(tidy().then(() => worker.clients.claim())));

/** Forgets what this version does not have. */
async function tidy() {
  const store = await caches.open(STORE);
  const mine = new Set(Object.keys(BUILD.files).map(keyOf));
  for (const request of await store.keys()) if (!mine.has(request.url)) await store.delete(request);
}

// The page asks for this when nothing is under way, or when its reader has asked for the new version.
worker.addEventListener("message", (event) => {
  if (event.data === "take-over") worker.skipWaiting();
});

worker.addEventListener("fetch", (event) => {
  if (event.request.method !== "GET") return;
  const path = pathOf(new URL(event.request.url));
  if (path !== null && Object.hasOwn(BUILD.files, path)) event.respondWith(answer(path, event.request));
});

/** @param {string} path @param {Request} request */
async function answer(path, request) {
  const store = await caches.open(STORE);
  const kept = await store.match(keyOf(path));
  if (kept) return kept;
  // The device may have thrown files away to make room.
  return bring(store, path).catch(() => fetch(request));
}
