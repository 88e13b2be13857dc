// Which table is lit and which language is spoken (cookies, so that the server renders the same), and whether the page answers yet.
import { keepChoice } from './cookies.js';

document.addEventListener('click', event => {
  const button = event.target.closest?.('[data-table-switch]');
  if (!button) return;
  const root = document.documentElement;
  const deviceIsDark = matchMedia('(prefers-color-scheme: dark)').matches;
  const isDark = root.dataset.table ? root.dataset.table === 'dark' : deviceIsDark;
  root.dataset.table = isDark ? 'light' : 'dark';
  keepChoice('table', root.dataset.table);
});

document.addEventListener('click', event => {
  const button = event.target.closest?.('[data-language]');
  if (!button) return;
  keepChoice('language', button.dataset.language);
  location.reload();
});

export function markInteractive() {
  document.body.dataset.interactive = '';
}

// Ctrl+Z (or Cmd+Z) outside a field that is being typed in asks the page to take back its last saved edit.
export function listenForUndo(page) {
  const onKey = event => {
    if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.key.toLowerCase() !== 'z') return;
    const field = event.target.closest?.('input, textarea');
    if (field && field.value !== field.defaultValue) return;
    event.preventDefault();
    page.invokeMethodAsync('UndoFromKey');
  };
  document.addEventListener('keydown', onKey);
  return { stop: () => document.removeEventListener('keydown', onKey) };
}

// Remembers which press this browser is about, and opens its shelf.
export function choosePress(cookie, id, page) {
  keepChoice(cookie, id);
  location.assign(new URL(page, document.baseURI));
}
