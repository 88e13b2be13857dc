// Keyboard, clipboard and the one field of an editable table. The server holds the text and says what is right; this moves the cursor, keeps what is
// typed in the browser until the server has it, and carries blocks of cells to and from the clipboard.
import { placeOf, store } from './draft-store.js';

const CHUNK = 12000; // below the largest message that a circuit takes

export const keep = (key, text) => store(s => (text ? s.setItem(placeOf(key), text) : s.removeItem(placeOf(key))));

export function attach(root, page, draftKey) {
  const place = root.querySelector('[data-editor]');
  let active = null; // the cell with the cursor
  let anchor = null; // where a selection began
  let field = null;
  let leaving = false; // after Escape, Tab leaves the table

  const rows = () => [...root.querySelectorAll('tr[data-row]')];
  const cells = row => [...row.querySelectorAll('[data-col]')];
  const rowOf = cell => cell.closest('tr[data-row]');
  const at = (row, col) => { const list = rows(); return list[row] && cells(list[row])[col]; };
  const where = cell => { const list = rows(); const row = rowOf(cell); return [list.indexOf(row), cells(row).indexOf(cell)]; };
  const textOf = cell => cell.dataset.text ?? '';

  function show(cell, extend = false) {
    if (!cell) return;
    if (active?.isConnected) active.tabIndex = -1;
    active = cell;
    active.tabIndex = 0;
    if (!extend || !anchor?.isConnected) anchor = cell;
    mark();
    if (!field) active.focus({ preventScroll: true });
    active.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  function range() {
    if (!active?.isConnected) return null;
    const [r1, c1] = where(anchor?.isConnected ? anchor : active);
    const [r2, c2] = where(active);
    return { top: Math.min(r1, r2), bottom: Math.max(r1, r2), left: Math.min(c1, c2), right: Math.max(c1, c2) };
  }

  function mark() {
    root.querySelectorAll('[aria-selected="true"]').forEach(cell => cell.removeAttribute('aria-selected'));
    const box = range();
    if (!box || (box.top === box.bottom && box.left === box.right)) return;
    rows().slice(box.top, box.bottom + 1).forEach(row => cells(row).slice(box.left, box.right + 1).forEach(cell => cell.setAttribute('aria-selected', 'true')));
  }

  function move(down, right, extend = false) {
    if (!active?.isConnected) return show(at(0, 0));
    const [row, col] = where(active);
    const list = rows();
    const toRow = Math.min(Math.max(row + down, 0), list.length - 1);
    const toCol = Math.min(Math.max(col + right, 0), cells(list[toRow]).length - 1);
    show(at(toRow, toCol), extend);
  }

  // The next cell in reading order; false past either end.
  function step(by) {
    const all = rows().flatMap(cells);
    const next = all[all.indexOf(active) + by];
    if (next) show(next);
    return !!next;
  }

  function open(text, select) {
    if (!active?.isConnected || active.getAttribute('aria-readonly') === 'true') return;
    const cell = active;
    field = document.createElement('input');
    field.type = 'text';
    field.value = text;
    field.autocomplete = 'off';
    field.setAttribute('aria-label', cell.dataset.label);
    if (cell.dataset.choices) field.setAttribute('list', cell.dataset.choices);
    if (cell.getAttribute('aria-invalid')) field.setAttribute('aria-invalid', 'true');
    if (cell.getAttribute('aria-describedby')) field.setAttribute('aria-describedby', cell.getAttribute('aria-describedby'));
    if (cell.classList.contains('num')) field.className = 'num';
    else field.dir = 'auto';
    if (cell.classList.contains('num') && matchMedia('(pointer: coarse)').matches) field.inputMode = 'text';
    const box = cell.getBoundingClientRect();
    const base = place.getBoundingClientRect();
    Object.assign(field.style, {
      left: `${box.left - base.left}px`, top: `${box.top - base.top}px`, width: `${Math.max(box.width, 96)}px`, height: `${box.height}px`,
    });
    field.addEventListener('input', () => keep(draftKey + '.typing', JSON.stringify(typing(cell))));
    field.addEventListener('blur', () => { if (field) close(true); });
    place.append(field);
    field.focus({ preventScroll: true });
    if (select) field.select();
    keep(draftKey + '.typing', text === textOf(cell) ? '' : JSON.stringify(typing(cell)));
  }

  const typing = cell => ({ row: rowOf(cell).dataset.row, column: Number(cell.dataset.col), text: field?.value ?? '' });

  // Resolves when the server has the text; until then the browser keeps it.
  async function close(commit) {
    const cell = active;
    const text = field.value;
    const edit = typing(cell);
    const gone = field;
    field = null;
    gone.remove();
    if (cell.isConnected && (document.activeElement === document.body || place.contains(document.activeElement))) cell.focus({ preventScroll: true });
    if (!commit || text.trim() === textOf(cell)) {
      keep(draftKey + '.typing', '');
      return;
    }

    cell.dataset.pending = text;
    try {
      await page.invokeMethodAsync('Commit', edit.row, edit.column, text);
      keep(draftKey + '.typing', '');
    } finally {
      delete cell.dataset.pending;
    }
  }

  async function send(method, text, ...rest) {
    for (let start = 0; start < text.length; start += CHUNK) await page.invokeMethodAsync('Receive', text.slice(start, start + CHUNK));
    await page.invokeMethodAsync(method, ...rest);
  }

  const quoted = text => (/[\t\n"]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);

  function block() {
    const box = range();
    return rows().slice(box.top, box.bottom + 1)
      .map(row => cells(row).slice(box.left, box.right + 1).map(cell => quoted(textOf(cell))).join('\t')).join('\n');
  }

  // A table on a web page; spreadsheets put the same cells into the plain text.
  function tableText(html) {
    const table = new DOMParser().parseFromString(html, 'text/html').querySelector('table');
    return table && [...table.rows].map(row => [...row.cells].map(cell => quoted(cell.textContent.replace(/\s+/g, ' ').trim())).join('\t')).join('\n');
  }

  function clear() {
    const box = range();
    const keys = rows().slice(box.top, box.bottom + 1).map(row => row.dataset.row);
    return page.invokeMethodAsync('ClearCells', keys, box.left, box.right);
  }

  const keys = {
    ArrowDown: event => move(1, 0, event.shiftKey),
    ArrowUp: event => move(-1, 0, event.shiftKey),
    ArrowRight: event => move(0, 1, event.shiftKey),
    ArrowLeft: event => move(0, -1, event.shiftKey),
    PageDown: event => move(15, 0, event.shiftKey),
    PageUp: event => move(-15, 0, event.shiftKey),
    Home: event => (event.ctrlKey ? show(at(0, 0), event.shiftKey) : move(0, -1000, event.shiftKey)),
    End: event => (event.ctrlKey ? move(100000, 1000, event.shiftKey) : move(0, 1000, event.shiftKey)),
    Enter: event => (event.shiftKey ? move(-1, 0) : open(textOf(active), true)),
    F2: () => open(textOf(active), false),
    Delete: clear,
    Backspace: () => open('', false),
  };

  function onGridKey(event) {
    const command = event.ctrlKey || event.metaKey;
    if (event.key === 'Tab') {
      if (leaving || !step(event.shiftKey ? -1 : 1)) { leaving = false; return; }
      event.preventDefault();
      return;
    }

    leaving = event.key === 'Escape';
    if (command && event.key.toLowerCase() === 'z') {
      event.preventDefault();
      page.invokeMethodAsync(event.shiftKey ? 'RedoFromKey' : 'UndoFromKey');
    } else if (command && event.key.toLowerCase() === 'y') {
      event.preventDefault();
      page.invokeMethodAsync('RedoFromKey');
    } else if (command && event.key.toLowerCase() === 'a') {
      event.preventDefault();
      anchor = at(0, 0);
      const all = rows();
      show(at(all.length - 1, cells(all[0]).length - 1), true);
    } else if (command && event.key === 'Delete') {
      event.preventDefault();
      takeOut();
    } else if (keys[event.key] && !event.altKey) {
      event.preventDefault();
      keys[event.key](event);
    } else if (event.key.length === 1 && !command && !event.altKey) {
      event.preventDefault();
      open(event.key, false);
    }
  }

  function onFieldKey(event) {
    event.stopPropagation();
    const listOpen = field.hasAttribute('list') && (event.key === 'ArrowDown' || event.key === 'ArrowUp');
    const turns = { Enter: [event.shiftKey ? -1 : 1, 0], ArrowDown: [1, 0], ArrowUp: [-1, 0] };
    if (event.key === 'Escape') {
      event.preventDefault();
      close(false);
    } else if (event.key === 'Tab') {
      event.preventDefault();
      close(true);
      step(event.shiftKey ? -1 : 1);
    } else if (turns[event.key] && !listOpen) {
      event.preventDefault();
      close(true);
      move(...turns[event.key]);
    }
  }

  function chosen() {
    const box = range();
    return box ? rows().slice(box.top, box.bottom + 1).map(row => row.dataset.row) : [];
  }

  const takeOut = () => page.invokeMethodAsync('TakeOut', chosen());

  const listeners = {
    keydown: event => (event.target === field ? onFieldKey(event) : event.target.matches?.('[data-col]') && onGridKey(event)),
    focusin: event => { if (event.target.matches?.('[data-col]') && event.target !== active) show(event.target); },
    mousedown: event => {
      const cell = event.target.closest?.('[data-col]');
      if (!cell || event.button !== 0) return;
      event.preventDefault();
      if (field) close(true);
      show(cell, event.shiftKey);
    },
    mouseover: event => {
      const cell = event.target.closest?.('[data-col]');
      if (cell && event.buttons === 1 && !field && active) show(cell, true);
    },
    dblclick: event => { if (event.target.closest?.('[data-col]')) open(textOf(active), false); },
    click: event => {
      if (event.target.closest?.('[data-take-out]')) takeOut();
      const action = event.target.closest?.('[data-row-action]');
      if (action) page.invokeMethodAsync('Act', Number(action.dataset.rowAction), chosen());
      const cell = event.target.closest?.('[data-col]');
      if (cell && matchMedia('(pointer: coarse)').matches && !field) open(textOf(active), false);
      if (event.target.closest?.('[data-add]')) { const list = rows(); show(at(list.length - 1, 0)); }
    },
    copy: event => {
      if (field || !active?.isConnected) return;
      event.preventDefault();
      event.clipboardData.setData('text/plain', block());
    },
    cut: event => {
      if (field || !active?.isConnected) return;
      event.preventDefault();
      event.clipboardData.setData('text/plain', block());
      clear();
    },
    paste: event => {
      if (field || !active?.isConnected) return;
      event.preventDefault();
      const plain = event.clipboardData.getData('text/plain');
      const html = event.clipboardData.getData('text/html');
      const text = plain.includes('\t') ? plain : (html && tableText(html)) || plain;
      const box = range();
      if (text) send('Paste', text, rows()[box.top].dataset.row, box.left, box.bottom - box.top + 1, box.right - box.left + 1);
    },
  };
  for (const [name, listener] of Object.entries(listeners)) root.addEventListener(name, listener);
  const first = at(0, 0);
  if (first) { active = first; anchor = first; first.tabIndex = 0; }

  return {
    // After the server drew the table anew the cursor stays where it was, or goes to a cell that was asked for.
    settle(row, column) {
      const cell = row ? root.querySelector(`tr[data-row="${CSS.escape(row)}"] [data-col="${column}"]`) : null;
      if (cell) { root.focus?.(); show(cell); }
      else if (!active?.isConnected) { active = at(0, 0) ?? null; anchor = active; if (active) active.tabIndex = 0; }
    },
    detach() { for (const [name, listener] of Object.entries(listeners)) root.removeEventListener(name, listener); },
  };
}
