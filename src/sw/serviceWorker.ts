/**
 * The service worker: everything the app needs is precached, so that the network is never needed after the first load.
 * A new version waits until the page says that the person agreed; nothing here reloads or skips waiting by itself.
 */
import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching';

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: readonly { url: string; revision: string | null }[] };

precacheAndRoute([...self.__WB_MANIFEST]);
cleanupOutdatedCaches();

const appShell = createHandlerBoundToURL('index.html');

self.addEventListener('fetch', (event) => {
  if (event.request.mode !== 'navigate') return;
  const url = new URL(event.request.url);
  if (url.origin !== self.location.origin) return;
  event.respondWith(appShell({ event, request: event.request, url }));
});

self.addEventListener('message', (event) => {
  if (event.data === 'apply-update') void self.skipWaiting();
});

// The first version may serve the page that installed it, so that the app is ready offline after one visit.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
