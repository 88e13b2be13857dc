// Keeps every copy sold at a fair in this phone until the server has it. An entry has an id of its own, and the server writes each id once: it may be
// sent as often as need be. Each lies under a key of its own, so that two open pages never write over each other.
const root = document.querySelector('[data-fair]');
const ENTRY = `pressrun.fair.${root.dataset.press}.`;
const HAND = `pressrun.fair-hand.${root.dataset.press}.`;
const CHOICE = `pressrun.fair-choice.${root.dataset.press}.`;
const KEPT_PAGE = 'pressrun-fair';
const MOST_AT_ONCE = 100;
const LONGEST_ANSWER = 20_000;
const DAYS_KEPT = 3;
const DAY = 86_400_000;

const one = name => root.querySelector(`[data-fair-${name}]`);
const channel = document.getElementById('fair-channel');
const fairName = document.getElementById('fair-name');
const digits = Number(root.dataset.digits);
const whole = new Intl.NumberFormat(root.dataset.locale || undefined);
const amount = new Intl.NumberFormat(root.dataset.locale || undefined, { minimumFractionDigits: digits, maximumFractionDigits: digits });
const clock = new Intl.DateTimeFormat(root.dataset.locale || undefined, { hour: 'numeric', minute: '2-digit' });
const longDay = new Intl.DateTimeFormat(root.dataset.locale || undefined, { dateStyle: 'long' });
const money = minor => amount.format(minor / 10 ** digits);
const count = (number, single, many) => `${whole.format(number)} ${number === 1 ? single : many}`;

const read = key => {
  try { return JSON.parse(localStorage.getItem(key)); } catch { return null; }
};
const keep = entry => localStorage.setItem(ENTRY + entry.id, JSON.stringify(entry));
const drop = entry => localStorage.removeItem(ENTRY + entry.id);
const keys = prefix => Object.keys(localStorage).filter(key => key.startsWith(prefix));
const entries = () => keys(ENTRY).map(read).filter(entry => entry?.id).sort((a, b) => a.at - b.at || a.place - b.place);
const isoDay = at => {
  const day = new Date(at);
  return `${String(day.getFullYear()).padStart(4, '0')}-${String(day.getMonth() + 1).padStart(2, '0')}-${String(day.getDate()).padStart(2, '0')}`;
};

// Without https there is no randomUUID; random bytes are there.
function newId() {
  if (crypto.randomUUID) return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  return [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('').replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
}

let place = 0;
let trouble = '';

function sell(book) {
  const minor = Math.round(Number(book.dataset.price) * 10 ** digits);
  const at = Date.now();
  try {
    keep({
      id: newId(), edition: book.dataset.edition, title: book.querySelector('.title').textContent, day: isoDay(at), at, place: place++,
      channel: channel.value || null, fair: fairName.value.trim(), minor, amount: (minor / 10 ** digits).toFixed(digits), state: 'waiting', tried: false, undone: false,
    });
  } catch {
    trouble = 'This browser keeps nothing more. The last copy was not written down: write it on paper.';
    show();
    return;
  }
  say(`${book.querySelector('.title').textContent}, ${money(minor)}: written down.`);
  show();
  send();
}

// What never left this phone just goes; what may have arrived is taken back there, whether or not it had.
function takeBack(entry) {
  const now = read(ENTRY + entry.id);
  if (!now || now.undone) return;
  if (now.tried) keep({ ...now, undone: true, state: 'waiting' });
  else drop(now);
  say(`${now.title}, ${money(now.minor)}: taken back.`);
  show();
  send();
}

let sending = false;
let failures = 0;
let timer = 0;

async function send(asked = false) {
  const waiting = entries().filter(entry => entry.state === 'waiting').slice(0, MOST_AT_ONCE);
  if (sending || waiting.length === 0 || (!navigator.onLine && !asked)) return;
  sending = true;
  clearTimeout(timer);
  // Said before it leaves: from here on it may have arrived, whatever comes back.
  waiting.forEach(entry => keep({ ...entry, tried: true }));
  trouble = '';
  show();
  try {
    settle(waiting, await post(waiting));
    failures = 0;
  } catch (problem) {
    failures++;
    trouble = problem instanceof Told ? problem.message : '';
  }
  sending = false;
  show();
  if (entries().some(entry => entry.state === 'waiting')) timer = setTimeout(send, failures === 0 ? 0 : Math.min(60_000, 2000 * 2 ** failures));
}

class Told extends Error {}

async function post(waiting) {
  const body = JSON.stringify({
    press: root.dataset.press,
    entries: waiting.map(({ id, edition, day, channel, fair, amount, undone }) => ({ id, edition, day, channel, fair, amount, takenBack: undone })),
  });
  const answer = await fetch(new URL('fair/entries', document.baseURI), {
    method: 'POST', headers: { 'Content-Type': 'application/json' }, body, redirect: 'manual', signal: AbortSignal.timeout(LONGEST_ANSWER),
  });
  if (answer.type === 'opaqueredirect' || answer.status === 401 || answer.status === 403) throw new Told('The server asks you to sign in again: open the shelf, sign in and come back. All is kept here.');
  if (answer.status >= 400 && answer.status < 500) throw new Told(`The server does not take them (${answer.status}). All is kept here.`);
  if (!answer.ok) throw new Error(answer.status);
  return answer.json();
}

function settle(sent, answer) {
  const problems = new Map(answer.entries.map(entry => [entry.id, entry.problem]));
  for (const { id, undone } of sent) {
    const now = read(ENTRY + id);
    // Taken back while it was under way: that has still to be told.
    if (!now || !problems.has(id) || now.undone !== undone) continue;
    const problem = problems.get(id);
    keep({ ...now, state: problem ? 'refused' : 'arrived', problem });
  }
  answer.onHand.forEach(({ edition, copies }) => localStorage.setItem(HAND + edition, JSON.stringify({ copies, at: answer.at })));
}

const STATES = { waiting: 'waits', arrived: 'in the ledger', refused: 'not taken' };
const stands = entry => !entry.undone && entry.state !== 'refused';

function show() {
  const all = entries();
  const today = all.filter(entry => entry.day === isoDay(Date.now()));
  const sold = today.filter(stands);
  const waiting = all.filter(entry => entry.state === 'waiting').length;
  const refused = all.filter(entry => entry.state === 'refused').length;
  one('copies').textContent = whole.format(sold.length);
  one('copies-word').textContent = sold.length === 1 ? 'copy' : 'copies';
  one('takings').textContent = money(sold.reduce((sum, entry) => sum + entry.minor, 0));
  one('day').textContent = longDay.format(Date.now());
  one('state').textContent = trouble || stateOf(waiting, refused, all.length);
  one('state').classList.toggle('look', Boolean(trouble || refused));
  one('send').hidden = waiting === 0 || sending;
  const last = sold.at(-1);
  one('undo').disabled = !last;
  one('undo').textContent = last ? `Undo ${last.title}` : 'Undo';
  root.querySelectorAll('.fair-book').forEach(book => showBook(book, all, sold));
  showLines(all);
}

function stateOf(waiting, refused, all) {
  const not = refused ? ` ${count(refused, 'was', 'were')} not taken: see below what was written here.` : '';
  if (waiting === 0) return (all > refused ? 'All of it is in the ledger.' : 'Nothing waits.') + not;
  const where = sending ? 'under way to the ledger' : navigator.onLine ? 'kept here, tried again by itself' : 'kept here until there is a connection';
  return `${count(waiting, 'entry is', 'entries are')} ${where}.${not}`;
}

// What the server last said, less what it has not heard of.
function showBook(book, all, sold) {
  const { edition, onHand } = book.dataset;
  const told = read(HAND + edition);
  const base = told && told.at > Number(root.dataset.at) ? told.copies : Number(onHand);
  const unheard = all.filter(entry => entry.edition === edition && entry.state === 'waiting' && !entry.undone).length;
  book.querySelector('[data-fair-left]').textContent = whole.format(base - unheard);
  const here = sold.filter(entry => entry.edition === edition).length;
  book.querySelector('[data-fair-sold]').textContent = here ? `${whole.format(here)} sold` : '';
}

function showLines(all) {
  one('none').hidden = all.length > 0;
  one('lines').replaceChildren(...all.toReversed().map(entry => {
    const line = one('line').content.firstElementChild.cloneNode(true);
    line.querySelector('.when').textContent = entry.day === isoDay(Date.now()) ? clock.format(entry.at) : longDay.format(entry.at);
    line.querySelector('.what').textContent = entry.title;
    line.querySelector('.num').textContent = money(entry.minor);
    line.querySelector('.state').textContent = (entry.undone ? 'taken back, ' : '') + STATES[entry.state] + (entry.problem ? `: ${entry.problem}` : '');
    const button = line.querySelector('button');
    button.textContent = entry.state === 'refused' ? 'Take off the list' : 'Take back';
    button.setAttribute('aria-label', `${button.textContent}: ${entry.title}, ${money(entry.minor)}`);
    button.hidden = entry.undone;
    button.addEventListener('click', () => {
      if (entry.state === 'refused') { drop(entry); show(); } else takeBack(entry);
    });
    return line;
  }));
}

const say = words => { one('said').textContent = words; };

// The page and all that it is made of, so that it opens where there is no connection: first its files, then itself.
async function keepPage() {
  if (!('serviceWorker' in navigator)) return 'Leave it open: this browser opens it again only with a connection.';
  await navigator.serviceWorker.register(new URL('fair-worker.js', document.baseURI), { scope: new URL('fair', document.baseURI).pathname });
  const page = new URL('fair', document.baseURI).href;
  const cache = await caches.open(KEPT_PAGE);
  if (navigator.onLine) {
    const named = [...document.querySelectorAll('link[href], script[src]')].map(file => file.href || file.src);
    const used = performance.getEntriesByType('resource').filter(file => ['css', 'link', 'script', 'img'].includes(file.initiatorType)).map(file => file.name);
    const files = [...new Set([...named, ...used])].filter(file => new URL(file).origin === location.origin);
    await Promise.all(files.map(async file => (await cache.match(file)) ?? cache.add(new Request(file, { cache: 'reload' }))));
    await cache.add(new Request(page, { cache: 'reload' }));
    const wanted = new Set([...files, page]);
    await Promise.all((await cache.keys()).filter(file => !wanted.has(file.url)).map(file => cache.delete(file)));
  }
  return (await cache.match(page)) ? 'This page opens on this phone without a connection.' : '';
}

function begin() {
  const chosen = document.cookie.match(/(?:^|; )(?:__Host-)?table=(light|dark)/)?.[1];
  if (chosen) document.documentElement.dataset.table = chosen;
  const old = Date.now() - DAYS_KEPT * DAY;
  entries().filter(entry => entry.state === 'arrived' && entry.at < old).forEach(drop);
  keys(HAND).filter(key => (read(key)?.at ?? 0) < old).forEach(key => localStorage.removeItem(key));
  for (const field of [channel, fairName]) {
    const kept = read(CHOICE + field.id);
    if (kept !== null && (field === fairName || [...field.options].some(option => option.value === kept))) field.value = kept;
    field.addEventListener('change', () => localStorage.setItem(CHOICE + field.id, JSON.stringify(field.value)));
  }
  root.addEventListener('click', event => {
    const book = event.target.closest('.fair-book');
    if (book) sell(book);
  });
  one('undo').addEventListener('click', () => {
    const last = entries().filter(entry => entry.day === isoDay(Date.now()) && stands(entry)).at(-1);
    if (last) takeBack(last);
  });
  one('send').addEventListener('click', () => send(true));
  document.getElementById('fair-find')?.addEventListener('input', event => {
    const words = event.target.value.toLocaleLowerCase().split(/\s+/);
    root.querySelectorAll('.fair-books > li').forEach(item => { item.hidden = !words.every(word => item.textContent.toLocaleLowerCase().includes(word)); });
  });
  addEventListener('online', () => { failures = 0; show(); send(); });
  addEventListener('offline', show);
  addEventListener('storage', show);
  document.addEventListener('visibilitychange', () => { if (!document.hidden) { show(); send(); } });
  show();
  send();
  document.body.dataset.interactive = '';
  keepPage().then(words => { one('offline').textContent = words; }, () => {});
}

begin();
