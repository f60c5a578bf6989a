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
const HOME = "index.html";

const TYPES = {
  html: "text/html; charset=utf-8",
  js: "text/javascript",
  css: "text/css",
  wasm: "application/wasm",
  svg: "image/svg+xml",
  png: "image/png",
  webmanifest: "application/manifest+json",
};

const NOT_HERE = `<!doctype html><html lang="en"><meta charset="utf-8"><title>Fermentside</title>
<meta name="viewport" content="width=device-width"><h1>Fermentside</h1>
<p>This browser has cleared the page away, and there is no network to fetch it again. What you saved is not part of the page. Load it once with a network.</p>`;

// Only the very bytes that were built: a café's sign-in page also answers "200 OK", and a neighbour on the
// same origin can write to this cache.
async function built(path, answer) {
  const bytes = await answer.arrayBuffer();
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  const found = Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
  if (found !== ASSETS[path]) throw new Error(`${path}: not the file that was built`);
  // Made anew: browsers refuse a kept answer that had been redirected, and hosts mislabel wasm.
  const type = TYPES[path.split(".").pop()] ?? answer.headers.get("content-type");
  return new Response(bytes, { headers: type ? { "content-type": type } : {} });
}

async function fetched(path) {
  const answer = await fetch(new URL(path, SCOPE), { cache: "reload" });
  if (!answer.ok) throw new Error(`${path}: ${answer.status}`);
  return built(path, answer);
}

async function install() {
  const all = await Promise.all(
    Object.keys(ASSETS).map(async (path) => [new URL(path, SCOPE), await fetched(path)]),
  );
  const cache = await caches.open(CACHE);
  try {
    await Promise.all(all.map(([url, response]) => cache.put(url, response)));
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

// What is kept of a file of this build; nothing when it is not there or was changed.
async function kept(path) {
  const found = await (await caches.open(CACHE)).match(new URL(path, SCOPE));
  return found && built(path, found).catch(() => undefined);
}

// A file of this build, fetched and kept anew when the browser has cleared it away.
async function file(path) {
  const found = await kept(path);
  if (found) return found;
  const fresh = await fetched(path);
  await (await caches.open(CACHE)).put(new URL(path, SCOPE), fresh.clone());
  return fresh;
}

// Whether every file of this build is kept, after trying to make it so.
const isWhole = () => Promise.all(Object.keys(ASSETS).map(file)).then(() => VERSION !== "", () => false);

async function answer(request) {
  const path = request.url.split(/[?#]/)[0].slice(SCOPE.length) || HOME;
  if (Object.hasOwn(ASSETS, path)) {
    try {
      return await file(path);
    } catch {
      // Cleared away, and the host has another build or none: what it has is whole in itself.
    }
  }
  try {
    return await fetch(request);
  } catch (error) {
    if (request.mode !== "navigate") throw error;
    // An address that never was a page; unless the page itself is there no more.
    if (path !== HOME && (await kept(HOME))) return Response.redirect(SCOPE);
    return new Response(NOT_HERE, { status: 503, headers: { "content-type": TYPES.html } });
  }
}

self.addEventListener("install", (event) => event.waitUntil(VERSION ? install() : self.skipWaiting()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => {
  // A version takes over only when it is asked to, or when no page of the old one is open.
  if (event.data === "SKIP") self.skipWaiting();
  if (event.data === "WHOLE") event.waitUntil(isWhole().then((whole) => event.ports[0].postMessage(whole)));
});
self.addEventListener("fetch", (event) => {
  const ours = event.request.method === "GET" && event.request.url.startsWith(SCOPE);
  if (VERSION && ours) event.respondWith(answer(event.request));
});
