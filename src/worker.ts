/// <reference lib="webworker" />
import { cacheNames, clientsClaim } from 'workbox-core';
import { cleanupOutdatedCaches, getCacheKeyForURL, precacheAndRoute } from 'workbox-precaching';

declare const self: ServiceWorkerGlobalScope & {
  __WB_MANIFEST: { url: string; revision: string | null }[];
};

const files = self.__WB_MANIFEST;

// Every file is kept at the first visit, so that the first visit's deck works offline from then on.
// Lessons ride behind `#` and a query is nobody's business: any address of the page is the page.
precacheAndRoute(files, { ignoreURLParametersMatching: [/./] });
cleanupOutdatedCaches();
// Without it the very first page would go on without the worker, and so without offline.
clientsClaim();

// A new version waits until the player says so; and where the browser has taken some of the files, they are fetched anew.
self.addEventListener('message', (event) => {
  const { type } = (event.data ?? {}) as { type?: string };
  if (type === 'SKIP_WAITING') void self.skipWaiting();
  if (type === 'MEND') event.waitUntil(mend());
});

async function mend(): Promise<void> {
  const cache = await caches.open(cacheNames.precache);
  for (const { url } of files) {
    const key = getCacheKeyForURL(url)!;
    if (await cache.match(key)) continue;
    const response = await fetch(url, { cache: 'no-cache' }).catch(() => null);
    // Offline again: the next start online goes on.
    if (!response) return;
    if (response.ok) await cache.put(key, response);
  }
}
