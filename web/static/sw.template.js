// The service worker: keeps this exact version of the page on the device.
//
// The build fills in the two constants. A file that does not match its hash fails the whole install, so a
// version is kept complete or not at all. A new version waits until the page says that the person asked for it.
"use strict";
const VERSION = "";
const FILES = [];

// Several copies of the page may live on one host; each keeps to the caches of its own folder.
const FOLDER = `@${new URL(self.registration.scope).pathname}`;
const CACHE = `biteband-${VERSION}${FOLDER}`;

// Browsers of before 2023 cannot unpack a module; they keep it plain, of which the list has no hash.
const UNPACKS = "DecompressionStream" in self;

self.addEventListener("install", (event) => {
  const requests = FILES.map(([path, integrity]) =>
    UNPACKS || !path.endsWith(".part")
      ? new Request(path, { cache: "reload", integrity })
      : new Request(path.replace(/part$/, "wasm"), { cache: "reload" }),
  );
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(requests)));
});

self.addEventListener("activate", (event) => {
  event.waitUntil(takeOver());
});

async function takeOver() {
  const old = (await caches.keys()).filter(
    (name) => name.startsWith("biteband-") && name.endsWith(FOLDER) && name !== CACHE,
  );
  await Promise.all(old.map((name) => caches.delete(name)));
  await self.clients.claim();
}

self.addEventListener("message", (event) => {
  if (event.data?.type === "skip-waiting") event.waitUntil(self.skipWaiting());
});

// A notification of a timer brings the page to the front.
self.addEventListener("notificationclick", (event) => {
  event.notification.close();
  event.waitUntil(
    clients.matchAll({ type: "window" }).then(([page]) => (page ? page.focus() : clients.openWindow("./#timer"))),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(answer(request));
});

async function answer(request) {
  const wanted = request.mode === "navigate" ? "./" : request;
  const match = (name) => caches.match(name, { cacheName: CACHE, ignoreVary: true });
  const kept = await match(wanted);
  if (kept || !UNPACKS || !request.url.endsWith(".wasm")) return kept ?? fetch(request);
  const packed = await match(request.url.replace(/wasm$/, "part"));
  if (!packed) return fetch(request);
  const plain = packed.body.pipeThrough(new DecompressionStream("gzip"));
  return new Response(plain, { headers: { "content-type": "application/wasm" } });
}
