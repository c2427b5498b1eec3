// Holds the app on the device, so that it opens without network. It never holds answers of the API: those are the
// shop's, and what is entered waits in the page's own outbox.
const SHELF = 'dentwright-__VERSION__';
const FILES = __FILES__;
/** A page that has not come by then is taken from the device, ms. */
const PATIENCE_MS = 3000;

self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(SHELF).then((shelf) => shelf.addAll(FILES)).then(() => self.skipWaiting()));
});

self.addEventListener('activate', (event) => {
  const old = caches.keys().then((names) => Promise.all(names.filter((name) => name.startsWith('dentwright-') && name !== SHELF).map((name) => caches.delete(name))));
  event.waitUntil(old.then(() => self.clients.claim()));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== location.origin || url.pathname.startsWith('/api/')) return;
  if (request.mode === 'navigate') {
    if (url.pathname === '/') event.respondWith(page(request));
  } else event.respondWith(caches.match(request, { ignoreSearch: true }).then((held) => held ?? fetch(request)));
});

/** The page as the server has it now; where it does not answer, as it was. */
async function page(request) {
  const held = await caches.match('./');
  const late = new Promise((_, reject) => setTimeout(reject, held ? PATIENCE_MS : 60_000));
  try {
    return await Promise.race([fetch(request), late]);
  } catch {
    return held ?? Response.error();
  }
}
