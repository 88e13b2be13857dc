// What is sold at a fair, tap by tap. js/queue.js keeps every tap until the server has it.
const part = name => import(document.querySelector(`link[rel=modulepreload][data-part=${name}]`).href);
const [{ keysOf, longAgo, openQueue, read }, { keepPage, lightTable }, { showWritten }, { wordsOf }] =
  await Promise.all(['queue', 'kept-page', 'written-list', 'words'].map(part));

const root = document.querySelector('[data-fair]');
const tell = wordsOf(root);
const HAND = `pressrun.fair-hand.${root.dataset.press}.`;
const CHOICE = `pressrun.fair-choice.${root.dataset.press}.`;

const one = name => root.querySelector(`[data-fair-${name}]`);
const channel = document.getElementById('fair-channel');
const fairName = document.getElementById('fair-name');
const digits = Number(root.dataset.digits);
const whole = new Intl.NumberFormat(root.dataset.locale || undefined);
const amount = new Intl.NumberFormat(root.dataset.locale || undefined, { minimumFractionDigits: digits, maximumFractionDigits: digits });
const clock = new Intl.DateTimeFormat(root.dataset.locale || undefined, { hour: 'numeric', minute: '2-digit' });
// A month is a word of the page, whatever the numbers look like.
const longDay = new Intl.DateTimeFormat(root.dataset.days, { dateStyle: 'long' });
const money = minor => amount.format(minor / 10 ** digits);

// How far the server's clock is ahead of this phone's, as far as it was told; less than an hour alters no day.
const AHEAD = 'pressrun.fair-clock-ahead', HOUR = 3_600_000;
const ahead = () => (Math.abs(read(AHEAD) ?? 0) < HOUR ? 0 : read(AHEAD));

const isoDay = at => {
  const day = new Date(at);
  return `${String(day.getFullYear()).padStart(4, '0')}-${String(day.getMonth() + 1).padStart(2, '0')}-${String(day.getDate()).padStart(2, '0')}`;
};

const queue = openQueue({
  prefix: `pressrun.fair.${root.dataset.press}.`,
  address: 'fair/entries',
  message: entries => ({
    press: root.dataset.press, now: Date.now(), minutesEast: -new Date().getTimezoneOffset(),
    entries: entries.map(({ id, edition, at, day, channel, fair, amount, undone }) => ({ id, edition, at, day, channel, fair, amount, takenBack: undone })),
  }),
  heard: answer => {
    localStorage.setItem(AHEAD, JSON.stringify(answer.at - Date.now()));
    answer.onHand.forEach(({ edition, copies }) => localStorage.setItem(HAND + edition, JSON.stringify({ copies, at: answer.at })));
  },
  changed: () => show(),
  tell,
});

function sell(book) {
  const minor = Math.round(Number(book.dataset.price) * 10 ** digits);
  const title = book.querySelector('.title').textContent;
  const written = queue.write({
    edition: book.dataset.edition, title, day: isoDay(Date.now()), channel: channel.value || null, fair: fairName.value.trim(), minor, amount: (minor / 10 ** digits).toFixed(digits),
  });
  if (written) say(tell('writtenDown', { title, money: money(minor) }));
}

function takeBack(entry) {
  queue.takeBack(entry);
  say(tell('takenBack', { title: entry.title, money: money(entry.minor) }));
}

const today = () => isoDay(Date.now() + ahead());
const dayOf = ({ at, day }) => (ahead() ? isoDay(at + ahead()) : day);
const lineOf = entry => ({
  when: (dayOf(entry) === today() ? clock : longDay).format(entry.at + ahead()), what: entry.title, number: money(entry.minor),
});
const stands = entry => !entry.undone && entry.state !== 'refused';

function show() {
  const all = queue.entries();
  const sold = all.filter(entry => dayOf(entry) === today() && stands(entry));
  one('copies').textContent = whole.format(sold.length);
  one('copies-word').textContent = tell('copies', { number: sold.length });
  one('takings').textContent = money(sold.reduce((sum, entry) => sum + entry.minor, 0));
  one('day').textContent = longDay.format(Date.now() + ahead());
  one('clock').textContent = ahead() ? tell('clockOff') : '';
  one('state').textContent = queue.words();
  one('state').classList.toggle('look', queue.lookHere);
  one('send').hidden = queue.sending || queue.waiting().length === 0;
  const last = sold.at(-1);
  one('undo').disabled = !last;
  one('undo').textContent = last ? tell('undoThat', { what: last.title }) : tell('undo');
  root.querySelectorAll('.fair-book').forEach(book => showBook(book, all, sold));
  showWritten({ none: one('none'), lines: one('lines'), template: one('line') }, queue, lineOf, takeBack, tell);
}

// What the server last said, less what it has not heard of.
function showBook(book, all, sold) {
  const { edition, onHand } = book.dataset;
  const told = read(HAND + edition);
  const base = told && told.at > Number(root.dataset.at) ? told.copies : Number(onHand);
  const unheard = all.filter(entry => entry.edition === edition && entry.state === 'waiting' && !entry.undone).length;
  book.querySelector('[data-fair-left]').textContent = whole.format(base - unheard);
  const here = sold.filter(entry => entry.edition === edition).length;
  book.querySelector('[data-fair-sold]').textContent = here ? tell('sold', { number: here }) : '';
}

const say = words => { one('said').textContent = words; };

function begin() {
  lightTable();
  const old = longAgo();
  keysOf(HAND).filter(key => (read(key)?.at ?? 0) < old).forEach(key => localStorage.removeItem(key));
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
    const last = queue.entries().filter(entry => dayOf(entry) === today() && stands(entry)).at(-1);
    if (last) takeBack(last);
  });
  one('send').addEventListener('click', () => queue.send(true));
  document.getElementById('fair-find')?.addEventListener('input', event => {
    const words = event.target.value.toLocaleLowerCase().split(/\s+/);
    root.querySelectorAll('.fair-books > li').forEach(item => { item.hidden = !words.every(word => item.textContent.toLocaleLowerCase().includes(word)); });
  });
  show();
  queue.send();
  document.body.dataset.interactive = '';
  keepPage('fair').then(came => { one('offline').textContent = came && tell(came); }, () => {});
}

begin();
