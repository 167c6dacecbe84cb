// Keeps one whole version of the app on the device and answers from it.
//
// Whole or not at all: every file is fetched and checked against its digest before the version
// counts as installed; a new version then waits until the person agrees ("SKIP" from boot.js).
"use strict";

// `cargo xtask` fills both in after the build: the version, and [address, digest, has a hashed name].
const VERSION = "dev";
const FILES = [];

const PREFIX = "shimwright-app-";
const CACHE = PREFIX + VERSION;

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => {
  if (event.data === "SKIP") self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== location.origin) return;
  event.respondWith(answer(request));
});

async function install() {
  const cache = await caches.open(CACHE);
  try {
    await cache.addAll(FILES.map(request));
  } catch (thrown) {
    await caches.delete(CACHE);
    throw thrown;
  }
}

// A hashed name can only ever mean one content, so the copy the page just loaded may serve.
function request([address, digest, hashed]) {
  return new Request(address, { cache: hashed ? "default" : "reload", integrity: digest });
}

async function activate() {
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && name !== CACHE) await caches.delete(name);
  }
  await self.clients.claim();
}

async function answer(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request);
  if (kept) return kept;
  const { pathname } = new URL(request.url);
  const isScreen = request.mode === "navigate" && !pathname.split("/").pop().includes(".");
  const shell = isScreen ? await cache.match("/") : undefined;
  return shell ?? fetch(request);
}
