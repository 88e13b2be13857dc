// Counting at the binding table. js/queue.js keeps every count until the server has it, js/tally-clock.js the time. What others count is asked for every
// second and a half while the page is in sight: a question that gets no answer is simply asked again.
const part = name => import(document.querySelector(`link[rel=modulepreload][data-part=${name}]`).href);
const [{ ask, newId, openQueue, read }, { keepPage, letPageGo, lightTable }, { showWritten }, { openClock }, { strokes, sumUp }, { wordsOf }] =
  await Promise.all(['queue', 'kept-page', 'written-list', 'tally-clock', 'tally-sums', 'words'].map(part));

const EVERY = 1500;
const LEAST_SHOWN = 30; // seconds: less is no minute
const LONGEST_PAUSE = 15_000;
const NAME = 'pressrun.tally-name';

const root = document.querySelector('[data-tally]');
const tell = wordsOf(root);
const { press, tally, path, locale } = root.dataset;
const TOLD = `pressrun.tally-told.${tally}`;
const CLOCK = `pressrun.tally-clock.${tally}`;
const STEP = `pressrun.tally-step.${tally}`;

const one = name => root.querySelector(`[data-tally-${name}]`);
const say = words => { one('said').textContent = words; };
const whole = new Intl.NumberFormat(locale || undefined);
const time = new Intl.DateTimeFormat(locale || undefined, { hour: 'numeric', minute: '2-digit' });
const minutes = seconds => {
  const all = Math.round(seconds / 60), hours = Math.floor(all / 60);
  return hours > 0 ? tell('hours', { hours, minutes: all % 60 }) : tell('minutes', { minutes: all });
};

const nameField = document.getElementById('tally-by');
const steps = [...root.querySelectorAll('[data-tally-go]')];
const names = steps.map(button => button.querySelector('.name').textContent);
let step = Math.min(read(STEP) ?? 0, steps.length - 1);
let told = newer(JSON.parse(root.dataset.told), read(TOLD));

const listed = (...parts) => parts.filter(Boolean).join(', ');

function newer(first, second) {
  return second && (second.lines > first.lines || (second.lines === first.lines && second.at > first.at)) ? second : first;
}

const queue = openQueue({
  prefix: `pressrun.tally.${tally}.`,
  address: 'tally/entries',
  message: entries => ({
    press, tally,
    entries: entries.map(({ id, step, kind, copies, seconds, by, at, undone }) =>
      ({ id, step, kind, copies, seconds, by, ago: Math.max(0, Math.round((Date.now() - at) / 1000)), takenBack: undone })),
  }),
  heard: answer => hear(answer.now),
  changed: () => show(),
  tell,
});

let name = read(NAME) ?? '';
const write = entry => queue.write({ copies: 0, seconds: 0, by: name, ...entry });

const clock = openClock({
  store: { get: () => read(CLOCK), set: state => localStorage.setItem(CLOCK, JSON.stringify(state)) },
  load: newId(),
  write: stretch => write({ kind: 'worked', ...stretch }),
});

function hear(now) {
  const before = told;
  told = newer(told, now);
  localStorage.setItem(TOLD, JSON.stringify(told));
  // Written into the ledger, or out of it again: the page is another one then.
  if (told === now && before.written !== now.written && queue.waiting().length === 0) location.reload();
}

let listening = 0, lost = 0;

async function listen() {
  clearTimeout(listening);
  if (document.hidden) return;
  if (!queue.sending) {
    const sent = queue.sent;
    try {
      const now = await ask(`tally/now?press=${press}&tally=${tally}&since=${encodeURIComponent(told.mark)}`);
      const back = lost > 0;
      lost = 0;
      // What was asked before a message left is older than what the message brings.
      if (now && sent === queue.sent && !queue.sending) hear(now);
      if (queue.waiting().length > 0 && (now || back)) queue.hurry();
      else if (now || back) show();
    } catch {
      lost++;
    }
  }
  listening = setTimeout(listen, Math.min(LONGEST_PAUSE, EVERY * 2 ** lost));
}

const counts = entry => entry.kind !== 'worked';
const amountOf = ({ kind, copies, seconds }) => (kind === 'worked' ? minutes(seconds) : tell(kind, { number: copies }));
const lastCount = () => queue.entries().filter(entry => counts(entry) && !entry.undone && entry.state !== 'refused').at(-1);

// A handful counts no more than is left; one by one, more may be counted than there were, because somebody may have found them.
function tap(kind, handful) {
  const { left } = sumUp(told, queue.entries()).steps[step];
  const copies = handful === 1 ? 1 : Math.min(handful, left);
  if (copies < 1) return;
  clock.tap();
  if (write({ kind, step, copies })) say(tell('counted', { step: names[step], what: amountOf({ kind, copies }) }));
}

function takeBack(entry) {
  queue.takeBack(entry);
  say(tell('takenBack', { step: names[entry.step], what: amountOf(entry) }));
}

function turnTo(place) {
  clock.turnTo(place);
  step = place;
  localStorage.setItem(STEP, JSON.stringify(step));
  show();
  one('name').focus();
}

function show() {
  const now = sumUp(told, queue.entries());
  showStep(now.steps[step]);
  showClock();
  one('enough').textContent = enough(now);
  one('enough').classList.toggle('look', now.spare < 0 || now.further > now.spare);
  steps.forEach((button, place) => showLine(button, now.steps[place], place));
  one('state').textContent = queue.words();
  one('state').classList.toggle('look', queue.lookHere);
  one('send')?.toggleAttribute('hidden', queue.sending || queue.waiting().length === 0);
  const last = lastCount();
  if (one('undo')) {
    one('undo').disabled = !last;
    one('undo').textContent = last ? tell('undoThat', { what: last.step === step ? amountOf(last) : `${names[last.step]}, ${amountOf(last)}` }) : tell('undo');
  }
  showEnd(now);
  if (one('lines')) {
    showWritten({ none: one('none'), lines: one('lines'), template: one('line') }, queue, entry => (
      { when: time.format(entry.at), what: names[entry.step], number: amountOf(entry) }), takeBack, tell);
  }
}

function showStep(at) {
  one('place').textContent = tell('place', { step: step + 1, steps: steps.length });
  one('name').textContent = names[step];
  one('left').textContent = whole.format(Math.max(0, at.left));
  root.querySelectorAll('[data-tally-count][data-copies]').forEach(button => { button.disabled = Number(button.dataset.copies) > 1 && at.left < 1; });
  one('over').textContent = at.left < 0 ? tell('over', { number: -at.left }) : '';
  one('done').textContent = listed(
    tell('done', { number: at.done }), at.spoiled && tell('spoiled', { number: at.spoiled }), at.seconds >= LEAST_SHOWN && tell('ofWork', { time: minutes(at.seconds) }));
  const people = at.people.filter(person => person.done || person.spoiled || person.seconds);
  one('people').textContent = people.length < 2 ? '' : listed(...people.map(({ by, done, seconds }) => tell(
    seconds >= LEAST_SHOWN ? 'personIn' : 'person', { by: `\u2068${by || tell('somebody')}\u2069`, done, time: minutes(seconds) })));
  const { path, each, rows, width, height } = strokes(at.done);
  const drawing = one('strokes');
  drawing.setAttribute('viewBox', `0 0 ${width} ${rows * height}`);
  drawing.firstElementChild.setAttribute('d', path);
  one('stroke-is').textContent = each > 1 ? tell('stroke', { number: each }) : '';
}

function showClock() {
  const { running } = clock, seconds = Math.floor(clock.sitting / 1000), asked = clock.question();
  const two = number => String(number).padStart(2, '0');
  one('time').textContent = `${seconds >= 3600 ? `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}` : Math.floor(seconds / 60)}:${two(seconds % 60)}`;
  one('clock').dataset.running = running;
  if (one('start')) one('start').textContent = tell(running ? 'pause' : 'start');
  one('stands').textContent = tell(running ? 'runs' : 'clockStands');
  one('asked').hidden = !asked;
  if (asked) one('asked-words').textContent = tell('asked', { time: minutes(asked.seconds), step: names[asked.step] });
}

function enough({ spare, further, wanted }) {
  if (spare < 0) return tell('tooFew', { number: wanted + spare });
  if (further > spare) return tell(spare === 0 ? 'noneMore' : 'close', { number: spare, further });
  return tell('spare', { number: spare });
}

function showLine(button, at, place) {
  button.toggleAttribute('aria-current', place === step);
  if (place === step) button.setAttribute('aria-current', 'step');
  button.querySelector('.left').textContent = at.left > 0 ? tell('left', { number: at.left }) : tell(at.done > 0 ? 'allDone' : 'noneLeft');
  button.querySelector('.sums').textContent = listed(
    at.done && tell('done', { number: at.done }), at.spoiled && tell('spoiled', { number: at.spoiled }), at.seconds >= LEAST_SHOWN && minutes(at.seconds));
}

// Only what has arrived can be written into the ledger.
function showEnd(now) {
  const waits = queue.waiting().length > 0;
  const why = waits ? 'hasToArrive' : clock.running ? 'pauseFirst' : clock.question() ? 'answerFirst' : '';
  const total = now.steps.reduce((sum, at) => sum + at.seconds, 0);
  one('sum').textContent = tell('soFar', { number: now.spoiled, time: minutes(total) });
  one('why').textContent = why && tell(why);
  one('end')?.toggleAttribute('hidden', why !== '');
}

function answer(seconds) {
  clock.settle(seconds);
  show();
}

function begin() {
  lightTable();
  nameField.value = name;
  nameField.addEventListener('change', () => {
    // What was worked so far was worked under the name before.
    clock.turnTo(step);
    name = nameField.value.trim();
    localStorage.setItem(NAME, JSON.stringify(name));
    show();
  });
  root.addEventListener('click', event => {
    const button = event.target.closest('[data-tally-count], [data-tally-go]');
    if (button?.dataset.tallyCount) tap(button.dataset.tallyCount, Number(button.dataset.copies));
    else if (button) turnTo(steps.indexOf(button));
  });
  one('start')?.addEventListener('click', () => {
    if (clock.running) clock.pause();
    else clock.start(step);
    show();
  });
  one('undo')?.addEventListener('click', () => {
    const last = lastCount();
    if (last) takeBack(last);
  });
  one('send')?.addEventListener('click', () => queue.send(true));
  one('all')?.addEventListener('click', () => answer(clock.question()?.seconds ?? 0));
  one('none-of-it')?.addEventListener('click', () => answer(0));
  one('some')?.addEventListener('submit', event => {
    event.preventDefault();
    const typed = Number(event.target.elements.namedItem('minutes').value);
    if (typed > 0) answer(Math.round(typed * 60));
  });
  document.addEventListener('visibilitychange', listen);
  addEventListener('online', listen);
  setInterval(() => { clock.advance(); showClock(); }, 1000);
  show();
  queue.send();
  listen();
  document.body.dataset.interactive = '';
  (told.written ? letPageGo(path).then(() => '') : keepPage(path)).then(came => { one('offline').textContent = came && tell(came); }, () => {});
}

begin();
