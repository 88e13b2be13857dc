// Tells the server, every few minutes at most, that somebody is at this page: typing and pointing go over the open line, which does not say
// whether a person or the page itself is speaking. A page that nobody touches ends with its sign-in.
const PAUSE = 4 * 60 * 1000;
let told = -Infinity;

async function tell(event) {
  if (!event.isTrusted || performance.now() - told < PAUSE) return;
  told = performance.now();
  try {
    const answer = await fetch(new URL('account/here', document.baseURI), { redirect: 'manual', cache: 'no-store' });
    if (answer.type === 'opaqueredirect') location.assign(new URL('sign-in?ended=true', document.baseURI));
  } catch {
    // No line: what is typed waits in the browser, and so does this.
    told = -Infinity;
  }
}

for (const kind of ['keydown', 'pointerdown']) document.addEventListener(kind, tell, { capture: true, passive: true });
