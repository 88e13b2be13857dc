// Whether the page is in sight: a page behind others is open, but nobody looks at it.
const isInSight = () => document.visibilityState === 'visible';

export function watch(page) {
  const tell = () => page.invokeMethodAsync('Sight', isInSight()).catch(() => {});
  document.addEventListener('visibilitychange', tell);
  tell();
  return { stop: () => document.removeEventListener('visibilitychange', tell) };
}
