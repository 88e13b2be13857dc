// Keeps what is written down on a page in this browser until the server has it. An entry has an id of its own, and the server writes each id once: it
// may be sent as often as need be. Each lies under a key of its own, so that two open pages never write over each other.
const MOST_AT_ONCE = 100;
const LONGEST_ANSWER = 20_000;
const LONGEST_PAUSE = 60_000;
const DAYS_KEPT = 3;
const DAY = 86_400_000;

export const read = key => {
  try { return JSON.parse(localStorage.getItem(key)); } catch { return null; }
};

export const keysOf = prefix => Object.keys(localStorage).filter(key => key.startsWith(prefix));

export const longAgo = () => Date.now() - DAYS_KEPT * DAY;

// Without https there is no randomUUID; random bytes are there.
export function newId() {
  if (crypto.randomUUID) return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  return [...bytes].map(byte => byte.toString(16).padStart(2, '0')).join('').replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
}

// What the server would not do: named after the page's words for it.
export class Told extends Error {
  constructor(name, gaps) {
    super(name);
    this.gaps = gaps;
  }
}

export async function ask(address, options = {}) {
  const answer = await fetch(new URL(address, document.baseURI), { ...options, redirect: 'manual', signal: AbortSignal.timeout(LONGEST_ANSWER) });
  if (answer.type === 'opaqueredirect' || answer.status === 401) throw new Told('signIn');
  if (answer.status === 403) throw new Told('onlyRead');
  if (answer.status >= 400 && answer.status < 500) throw new Told('noneTaken', { status: String(answer.status) });
  if (!answer.ok) throw new Error(answer.status);
  return answer.status === 204 ? null : answer.json();
}

export const post = (address, message) => ask(address, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(message) });

// prefix: of the keys that entries lie under. address: where they are sent. message: what is sent of some entries. heard: told of the answer, which
// has an entry with a problem or none for each that was sent. changed: told whenever something has moved. tell: the page's words.
export function openQueue({ prefix, address, message, heard, changed, tell }) {
  let place = 0, sending = false, anew = false, sent = 0, failures = 0, timer = 0, trouble = '';
  const keep = entry => localStorage.setItem(prefix + entry.id, JSON.stringify(entry));
  const forget = entry => localStorage.removeItem(prefix + entry.id);
  const entries = () => keysOf(prefix).map(read).filter(entry => entry?.id).sort((a, b) => a.at - b.at || a.place - b.place);
  const waiting = () => entries().filter(entry => entry.state === 'waiting');

  // Answers false where the browser keeps nothing more.
  function write(entry) {
    try {
      keep({ ...entry, id: newId(), at: Date.now(), place: place++, state: 'waiting', tried: false, undone: false });
    } catch {
      trouble = tell('full');
      changed();
      return false;
    }
    changed();
    send();
    return true;
  }

  // What never left this phone just goes; what may have arrived is taken back there, whether or not it had.
  function takeBack(entry) {
    const now = read(prefix + entry.id);
    if (!now || now.undone) return;
    if (now.tried) keep({ ...now, undone: true, arrived: now.state === 'arrived', state: 'waiting' });
    else forget(now);
    changed();
    send();
  }

  function drop(entry) {
    forget(entry);
    changed();
  }

  async function send(asked = false) {
    // Whoever asks knows that the server is back: no long pause after what went before, nor after a message that is still under way and will be lost.
    if (asked) {
      failures = 0;
      anew = sending;
    }
    const ready = waiting().slice(0, MOST_AT_ONCE);
    if (sending || ready.length === 0 || (!navigator.onLine && !asked)) return;
    sending = true;
    sent++;
    clearTimeout(timer);
    // Said before it leaves: from here on it may have arrived, whatever comes back.
    ready.forEach(entry => keep({ ...entry, tried: true }));
    trouble = '';
    changed();
    try {
      const answer = await post(address, message(ready));
      settle(ready, answer);
      heard(answer);
      failures = 0;
    } catch (problem) {
      failures = anew ? 0 : failures + 1;
      trouble = problem instanceof Told ? tell(problem.message, problem.gaps) : '';
    }
    sending = anew = false;
    changed();
    if (waiting().length > 0) timer = setTimeout(send, failures === 0 ? 0 : Math.min(LONGEST_PAUSE, 2000 * 2 ** failures));
  }

  function settle(ready, answer) {
    const problems = new Map(answer.entries.map(entry => [entry.id, entry.problem]));
    for (const { id, undone } of ready) {
      const now = read(prefix + id);
      // Taken back while it was under way: that has still to be told.
      if (!now || !problems.has(id) || now.undone !== undone) continue;
      const problem = problems.get(id);
      keep({ ...now, state: problem ? 'refused' : 'arrived', problem });
    }
  }

  // What has become of all entries, in words.
  function words() {
    if (trouble) return trouble;
    const all = entries();
    const [waits, refused] = ['waiting', 'refused'].map(state => all.filter(entry => entry.state === state).length);
    const stands = waits > 0 ? tell(sending ? 'underWay' : navigator.onLine ? 'triedAgain' : 'keptHere', { number: waits }) : tell(all.length > refused ? 'allIn' : 'nothingWaits');
    return refused ? `${stands} ${tell('someNotTaken', { number: refused })}` : stands;
  }

  function hurry() {
    changed();
    send(true);
  }

  const old = longAgo();
  entries().filter(entry => entry.state === 'arrived' && entry.at < old).forEach(forget);
  addEventListener('online', hurry);
  addEventListener('offline', changed);
  addEventListener('storage', changed);
  document.addEventListener('visibilitychange', () => { if (!document.hidden) { changed(); send(); } });

  return {
    entries, waiting, write, takeBack, drop, send, words, hurry,
    get sending() { return sending; },
    // Grows with every message: an answer to something asked before is older than what the message brings.
    get sent() { return sent; },
    get lookHere() { return Boolean(trouble) || entries().some(entry => entry.state === 'refused'); },
  };
}
