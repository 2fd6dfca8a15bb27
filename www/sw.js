// Keeps the page on the device, so that it opens without a network after one visit. The build puts one line before this
// file: `const BUILD = {version, files: {path: hash}}`. Files are kept under path and hash: a new version fetches only what
// has changed, and an attempt in an open page goes on with the files that it began with.

const STORE = "dicrotic-files";
const scope = new URL(self.registration.scope);
const keyOf = (path) => new URL(`${path}?${BUILD.files[path]}`, scope).href;
const pathOf = (url) => (url.origin === scope.origin && url.pathname.startsWith(scope.pathname) ? decodeURIComponent(url.pathname.slice(scope.pathname.length)) || "index.html" : null);

self.addEventListener("install", (event) => event.waitUntil(bringAll()));

async function bringAll() {
  const store = await caches.open(STORE);
  const missing = [];
  for (const path of Object.keys(BUILD.files)) if (!(await store.match(keyOf(path)))) missing.push(path);
  // A few at a time: the page that is open comes first.
  const next = async () => {
    for (let path = missing.pop(); path !== undefined; path = missing.pop()) await bring(store, path);
  };
  await Promise.all([next(), next(), next()]);
}

async function bring(store, path) {
  const answer = await fetch(new Request(new URL(path, scope), { cache: "no-cache" }));
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  await store.put(keyOf(path), answer.clone());
  return answer;
}

self.addEventListener("activate", (event) => event.waitUntil(tidy().then(() => self.clients.claim())));

/** Forgets what this version does not have. */
async function tidy() {
  const store = await caches.open(STORE);
  const mine = new Set(Object.keys(BUILD.files).map(keyOf));
  for (const request of await store.keys()) if (!mine.has(request.url)) await store.delete(request);
}

// The page asks for this when nothing is under way, or when its reader has asked for the new version.
self.addEventListener("message", (event) => {
  if (event.data === "take-over") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  if (event.request.method !== "GET") return;
  const path = pathOf(new URL(event.request.url));
  if (path !== null && Object.hasOwn(BUILD.files, path)) event.respondWith(answer(path, event.request));
});

async function answer(path, request) {
  const store = await caches.open(STORE);
  const kept = await store.match(keyOf(path));
  if (kept) return kept;
  // The device may have thrown files away to make room.
  return bring(store, path).catch(() => fetch(request));
}
