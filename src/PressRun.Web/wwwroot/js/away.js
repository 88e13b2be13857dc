// The page that says that the database is away fetches anew what was asked for, as soon as the server is ready.
const pause = 3000;

async function isReady() {
  try {
    return (await fetch(new URL('readyz', document.baseURI), { cache: 'no-store' })).ok;
  } catch {
    return false;
  }
}

async function look() {
  if (document.visibilityState === 'visible' && (await isReady())) location.reload();
  else setTimeout(look, pause);
}

setTimeout(look, pause);
