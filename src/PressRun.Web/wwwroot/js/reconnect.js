// The lost line: the style sheet shows the words; this tries again and fetches the page anew when the server has forgotten it.
const notice = document.getElementById('components-reconnect-modal');

notice?.addEventListener('components-reconnect-state-changed', event => {
  const state = event.detail.state;
  if (state === 'hide') document.body.dataset.interactive = '';
  else delete document.body.dataset.interactive;
  if (state === 'rejected' || state === 'resume-failed') setTimeout(() => location.reload(), 1500);
  if (state === 'failed') document.addEventListener('visibilitychange', onVisible, { once: true });
});

// Somebody has so many pages open that this one got no line: Blazor's script leaves the refusal to whoever listens.
addEventListener('unhandledrejection', event => {
  const { errorType, message } = event.reason ?? {};
  if (errorType === 'FailedToNegotiateWithServerError' && message.includes("'429'")) notice?.classList.add('too-many-pages');
});

async function tryAgain() {
  try {
    if (!(await Blazor.reconnect())) location.reload();
  } catch {
    // The server is still away; the notice stays and the button can be pressed again.
  }
}

function onVisible() {
  if (document.visibilityState === 'visible') tryAgain();
}

notice?.querySelector('[data-try-again]')?.addEventListener('click', tryAgain);
notice?.querySelector('[data-fetch-again]')?.addEventListener('click', () => location.reload());
