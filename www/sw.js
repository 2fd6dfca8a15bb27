// @ts-check
// Keeps the page on the device, so that it opens without a network after one visit. The build puts one line before this
// file: `const BUILD = {version, files: {path: hash}}`. Files are kept under path and hash: a new version fetches only what
// has changed, and an attempt in an open page goes on with the files that it began with.

const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const scope = new URL(worker.registration.scope);
// Each copy of the page has a store of its own: another copy on the same server is none of its business.
const OLD = "dicrotic-files"; // an earlier version's, which all copies shared
const STORE = `${OLD} ${scope.pathname}`;
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
  const old = await caches.has(OLD) ? await caches.open(OLD) : null;
  // A few at a time: the page that is open comes first.
  const next = async () => {
    for (let path = missing.pop(); path !== undefined; path = missing.pop()) {
      const there = await old?.match(keyOf(path));
      await (there ? store.put(keyOf(path), there) : bring(store, path));
    }
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
  if (!(await caches.has(OLD))) return;
  const old = await caches.open(OLD);
  for (const request of await old.keys()) {
    const path = pathOf(new URL(request.url));
    if (path !== null && Object.hasOwn(BUILD.files, path)) await old.delete(request); // this copy's: it has its own now
  }
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
