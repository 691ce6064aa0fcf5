/// <reference lib="webworker" />
import { clientsClaim } from 'workbox-core';
import { cleanupOutdatedCaches, precacheAndRoute } from 'workbox-precaching';

declare const self: ServiceWorkerGlobalScope & {
  __WB_MANIFEST: { url: string; revision: string | null }[];
};

// Every file is kept at the first visit, so that the first visit's deck works offline from then on.
// Lessons ride behind `#` and a query is nobody's business: any address of the page is the page.
precacheAndRoute(self.__WB_MANIFEST, { ignoreURLParametersMatching: [/./] });
cleanupOutdatedCaches();
// Without it the very first page would go on without the worker, and so without offline.
clientsClaim();

// A new version waits until the player says so.
self.addEventListener('message', (event) => {
  if ((event.data as { type?: string } | null)?.type === 'SKIP_WAITING') void self.skipWaiting();
});
