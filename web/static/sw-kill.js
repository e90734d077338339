// The way back from a bad release: a worker that removes everything the service worker kept, and itself.
//
// To use it, put this file in place of `sw.js` on the host. Every device fetches it at the next visit with a
// network, drops its copy of the page and from then on loads the page from the host. A page in use is left
// alone, records are not touched, and a later good `sw.js` sets up offline use again.
"use strict";
self.addEventListener("install", (event) => {
  // The waiting that protects a person from surprise would here protect the bad release.
  event.waitUntil(self.skipWaiting());
});

self.addEventListener("activate", (event) => {
  event.waitUntil(clearUp());
});

async function clearUp() {
  const folder = `@${new URL(self.registration.scope).pathname}`;
  const kept = (await caches.keys()).filter(
    (name) => name.startsWith("biteband-") && name.endsWith(folder),
  );
  await Promise.all(kept.map((name) => caches.delete(name)));
  await self.registration.unregister();
}
