// Keeps a page and all that it is made of in this browser, so that it opens where there is no connection: first its files, then itself.
// Answers the name of the page's words for what came of it; none where that is nothing to speak of.
const nameOf = path => `pressrun-${path}`;

export async function keepPage(path) {
  if (!('serviceWorker' in navigator)) return 'leaveOpen';
  const page = new URL(path, document.baseURI);
  await navigator.serviceWorker.register(new URL('kept-worker.js', document.baseURI), { scope: page.pathname });
  const cache = await caches.open(nameOf(path));
  if (navigator.onLine) {
    const named = [...document.querySelectorAll('link[href], script[src]')].map(file => file.href || file.src);
    const used = performance.getEntriesByType('resource').filter(file => ['css', 'link', 'script', 'img'].includes(file.initiatorType)).map(file => file.name);
    const files = [...new Set([...named, ...used])].filter(file => new URL(file).origin === location.origin);
    await Promise.all(files.map(async file => (await cache.match(file)) ?? cache.add(new Request(file, { cache: 'reload' }))));
    // An answer that leads elsewhere, to the sign-in, is not the page.
    const fresh = await fetch(page, { cache: 'reload', redirect: 'error' });
    if (!fresh.ok) return '';
    await cache.put(page, fresh);
    const wanted = new Set([...files, page.href]);
    await Promise.all((await cache.keys()).filter(file => !wanted.has(file.url)).map(file => cache.delete(file)));
  }
  if (!(await cache.match(page))) return '';
  // Registered is not yet at work: only an active worker answers in the server's place.
  await navigator.serviceWorker.ready;
  return 'opensHere';
}

export const letPageGo = path => ('caches' in window ? caches.delete(nameOf(path)) : Promise.resolve());

// A page from the browser's store knows nothing of a choice made since.
export function lightTable() {
  const chosen = document.cookie.match(/(?:^|; )(?:__Host-)?table=(light|dark)/)?.[1];
  if (chosen) document.documentElement.dataset.table = chosen;
}
