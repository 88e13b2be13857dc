// Keeps what is being typed in this browser until the server has it: [data-draft] names the field, [data-kept] what the server holds.
import { keyOf, ownPlaces, placeOf, store } from './draft-store.js';

const PAUSE = 700;

let server = null;
const pauses = new Map();

document.addEventListener('input', event => {
  const field = event.target;
  if (!field.dataset?.draft) return;
  store(s => field.value === field.dataset.kept
    ? s.removeItem(placeOf(field.dataset.draft))
    : s.setItem(placeOf(field.dataset.draft), field.value));
  tellServer(field.dataset.draft, field.value, field.dataset.kept);
});

// A list whose rows come and go is one draft: [data-draft-list] names it, and each [data-draft-row] is a line of its fields. Where it is kept as a whole, its first line
// says over what: [data-draft-over], the version that was read.
document.addEventListener('input', event => {
  const list = event.target.closest?.('[data-draft-list]');
  if (!list) return;
  const rows = [...list.querySelectorAll('[data-draft-row]')].map(row => [...row.querySelectorAll('input, select')].map(field => field.value));
  if (list.dataset.draftOver !== undefined) rows.unshift([list.dataset.draftOver]);
  const text = JSON.stringify(rows);
  store(s => s.setItem(placeOf(list.dataset.draftList), text));
  tellServer(list.dataset.draftList, text);
});

// The server hears of it when the typing pauses; while the line is down the browser's own store is enough.
function tellServer(key, text, kept) {
  clearTimeout(pauses.get(key));
  if (!server || text === kept) return;
  pauses.set(key, setTimeout(() => server.invokeMethodAsync('Paused', key, text).catch(() => {}), PAUSE));
}

// Enter saves what was recalled too: the browser takes for changed only what was typed into the page as it is now.
const typedHere = new WeakSet();
document.addEventListener('input', event => { if (event.isTrusted) typedHere.add(event.target); });
document.addEventListener('change', event => typedHere.delete(event.target));
document.addEventListener('keydown', event => {
  const field = event.target;
  if (event.key !== 'Enter' || !field.dataset?.draft || typedHere.has(field) || field.value === field.dataset.kept) return;
  field.dispatchEvent(new Event('change', { bubbles: true }));
});

// What is typed before the page answers is taken once it does, as if it had been typed then. Where one is still in the field when the page is drawn anew, the cursor stays where it was and
// leaving the field saves; where one has gone on, or pressed Enter, it is saved at once.
const early = new Map();
const goesOn = new WeakSet();
let last = null;
const isControl = element => element?.matches?.('input, select, textarea, button, a') ?? false;
const isLive = () => document.body.dataset.interactive !== undefined;

document.addEventListener('input', event => {
  const field = event.target;
  if (isLive() || !event.isTrusted || !field.dataset?.draft) return;
  early.set(field.dataset.draft, false);
  last = { key: field.dataset.draft, caret: field.selectionStart };
});
document.addEventListener('keydown', event => {
  if (event.key === 'Enter' && early.has(event.target.dataset?.draft)) early.set(event.target.dataset.draft, true);
});
document.addEventListener('focusin', event => {
  if (!isLive() && isControl(event.target) && event.target.dataset.draft !== last?.key) last = null;
});
document.addEventListener('change', event => goesOn.delete(event.target));
document.addEventListener('focusout', event => {
  const field = event.target;
  // The page puts the cursor on its heading when it is drawn; nobody left the field for that.
  if (goesOn.has(field) && event.relatedTarget && !isControl(event.relatedTarget)) { field.focus({ preventScroll: true }); return; }
  if (goesOn.delete(field) && field.value !== field.dataset.kept) field.dispatchEvent(new Event('change', { bubbles: true }));
});

// Answers how a draft came about: "earlier" on another page or visit, "left" or "typing" before this page answered.
export function origin(key) {
  if (!early.has(key)) return 'earlier';
  const entered = early.get(key);
  early.delete(key);
  const elsewhere = isControl(document.activeElement) && document.activeElement.dataset.draft !== key;
  return entered || last?.key !== key || elsewhere ? 'left' : 'typing';
}

export function goOn(key) {
  const field = document.querySelector(`[data-draft="${CSS.escape(key)}"]`);
  if (!field) return;
  field.focus({ preventScroll: true });
  field.setSelectionRange(last?.caret ?? field.value.length, last?.caret ?? field.value.length);
  goesOn.add(field);
}

// Escape gives the field back what the server holds.
document.addEventListener('keydown', event => {
  const field = event.target;
  if (event.key !== 'Escape' || !field.dataset?.draft || field.dataset.kept === undefined) return;
  field.value = field.dataset.kept;
  forget(field.dataset.draft);
  field.dispatchEvent(new Event('input', { bubbles: true }));
  field.dispatchEvent(new Event('change', { bubbles: true }));
});

export function listen(drafts) {
  server = drafts;
}

// Half a surrogate pair is no text that could be sent to the server: such a draft is let go.
const isText = text => !/\p{Surrogate}/u.test(text);

// What one message to the server holds many times over, so that no heap of drafts closes the line.
const MOST_RECALLED = 100_000;

export function recall() {
  let room = MOST_RECALLED;
  return store(s => {
    const places = ownPlaces(s);
    places.filter(place => !isText(place + s.getItem(place))).forEach(place => s.removeItem(place));
    return Object.fromEntries(
      places.filter(place => s.getItem(place) !== null && (room -= place.length + s.getItem(place).length) >= 0).map(place => [keyOf(place), s.getItem(place)]));
  }) ?? {};
}

export function keep(key, text) {
  clearTimeout(pauses.get(key));
  store(s => s.setItem(placeOf(key), text));
}

export function forget(key) {
  clearTimeout(pauses.get(key));
  store(s => s.removeItem(placeOf(key)));
}
