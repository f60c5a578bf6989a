// Keeps one whole version of the page for use with no network, and never mixes two.
//
// The next two lines are filled by src/bin/stamp_worker.rs after a release build. Unfilled, as in a
// debug build, this worker takes away whatever an earlier one kept here, and itself.
const VERSION = "";
const ASSETS = {}; // path relative to this file -> SHA-256 of its bytes, in hex

const SCOPE = self.registration.scope;
// Other programs, and other copies of this one, may share the origin.
const OURS = `fermentside-${new URL(SCOPE).pathname}-`;
const CACHE = OURS + VERSION;
const HOME = new URL("index.html", SCOPE).href;

const TYPES = {
  html: "text/html; charset=utf-8",
  js: "text/javascript",
  css: "text/css",
  wasm: "application/wasm",
  svg: "image/svg+xml",
  png: "image/png",
  webmanifest: "application/manifest+json",
};

// A café's sign-in page also answers "200 OK": only the very bytes that were built are kept.
async function fetchVerified(path, hash) {
  const answer = await fetch(new URL(path, SCOPE), { cache: "reload" });
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  const bytes = await answer.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  const found = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
  if (found !== hash) throw new Error(`${path}: not the file that was built`);
  // Made anew: browsers refuse a kept answer that had been redirected, and hosts mislabel wasm.
  const type = TYPES[path.split(".").pop()] ?? answer.headers.get("content-type");
  return new Response(bytes, { headers: type ? { "content-type": type } : {} });
}

async function install() {
  const fetched = await Promise.all(
    Object.entries(ASSETS).map(async ([path, hash]) => [new URL(path, SCOPE), await fetchVerified(path, hash)]),
  );
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(fetched.map(([url, response]) => cache.put(url, response)));
  } catch (error) {
    await caches.delete(CACHE); // a full disk: no half version is left behind
    throw error;
  }
}

async function activate() {
  const kept = await caches.keys();
  const old = kept.filter((name) => name.startsWith(OURS) && (name !== CACHE || !VERSION));
  await Promise.all(old.map((name) => caches.delete(name)));
  if (!VERSION) await self.registration.unregister();
}

async function answer(request) {
  const url = new URL(request.url);
  const path = url.href.split(/[?#]/)[0];
  const cache = await caches.open(CACHE);
  const found = await cache.match(path === SCOPE ? HOME : path);
  if (found) return found;
  try {
    return await fetch(request);
  } catch (error) {
    if (request.mode === "navigate") return Response.redirect(SCOPE); // an address that never was a page
    throw error;
  }
}

self.addEventListener("install", (event) => event.waitUntil(VERSION ? install() : self.skipWaiting()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
// A version takes over only when it is asked to, or when no page of the old one is open.
self.addEventListener("message", (event) => event.data === "SKIP" && self.skipWaiting());
self.addEventListener("fetch", (event) => {
  const ours = event.request.method === "GET" && event.request.url.startsWith(SCOPE);
  if (VERSION && ours) event.respondWith(answer(event.request));
});
