// Opens a page from what js/kept-page.js kept, where there is no connection or no answer soon. It sends and stores nothing.
const LONGEST_WAIT = 4000;

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', event => event.waitUntil(self.clients.claim()));

self.addEventListener('fetch', event => {
  const { request } = event;
  if (request.method !== 'GET' || request.cache === 'reload' || new URL(request.url).origin !== location.origin) return;
  event.respondWith(request.mode === 'navigate' ? freshOrKept(request) : keptOrFresh(request));
});

const kept = request => caches.match(request, { ignoreSearch: request.mode === 'navigate', ignoreVary: true });

async function freshOrKept(request) {
  const fresh = fetch(request);
  fresh.catch(() => {});
  const page = await kept(request);
  if (!page) return fresh;
  const soon = new Promise(resolve => setTimeout(resolve, LONGEST_WAIT));
  const answer = await Promise.race([fresh, soon]).catch(() => null);
  return answer && answer.status < 500 ? answer : page;
}

// Its files are named after what they hold, so that a kept one is never an old one.
async function keptOrFresh(request) {
  return (await kept(request)) ?? fetch(request);
}
