// How long somebody works at a step, measured on this phone. While the page is in sight it goes by the device's steady clock, which nobody sets and
// which no wrong date alters. While it is out of sight, as with a dark screen, that clock stands still on some devices: then the difference of the times of day counts.
// What passed without a tap for longer than LONGEST_QUIET is never counted by itself: whoever comes back is asked.
export const LONGEST_QUIET = 20 * 60_000;

const LEAST_WRITTEN = 60_000;

// store: { get, set } of what has to outlive the page. load: an id of this opening of the page. write: told of a stretch { step, seconds } to write down.
export function openClock({ store, load, write }) {
  const nothing = { running: false, step: 0, counted: 0, sitting: 0, quiet: 0, mark: null, asked: [] };
  const get = () => ({ ...nothing, ...store.get() });
  const mark = () => ({ load, steady: performance.now(), day: Date.now(), seen: !document.hidden });

  function since(from) {
    const sameLoad = from.load === load;
    const steady = sameLoad ? performance.now() - from.steady : 0;
    return sameLoad && from.seen ? steady : Math.max(0, steady, Date.now() - from.day);
  }

  // Time that has passed joins what passed without a tap.
  function advance() {
    const now = get();
    if (!now.running) return now;
    now.quiet += since(now.mark);
    now.mark = mark();
    store.set(now);
    return now;
  }

  // Somebody is there: what passed since the last tap is counted, or asked about.
  function tap() {
    const now = advance();
    if (!now.running) return;
    if (now.quiet > LONGEST_QUIET) {
      now.asked.push({ step: now.step, seconds: Math.round(now.quiet / 1000) });
    } else {
      now.counted += now.quiet;
      now.sitting += now.quiet;
    }
    now.quiet = 0;
    store.set(now);
    if (now.counted >= LEAST_WRITTEN) cut();
  }

  // What is counted is written down, to the whole second.
  function cut() {
    const now = get();
    const seconds = Math.floor(now.counted / 1000);
    if (seconds < 1 || write({ step: now.step, seconds }) === false) return;
    store.set({ ...get(), counted: now.counted - seconds * 1000 });
  }

  function start(step) {
    store.set({ ...get(), running: true, step, counted: 0, sitting: 0, quiet: 0, mark: mark() });
  }

  function pause() {
    tap();
    cut();
    store.set({ ...get(), running: false, counted: 0, quiet: 0, mark: null });
  }

  // The clock goes along with whoever turns to another step.
  function turnTo(step) {
    const { running } = get();
    if (running) pause();
    store.set({ ...get(), step, sitting: 0 });
    if (running) start(step);
  }

  // An answer to the first question: so many seconds were worked; 0 for none.
  function settle(seconds) {
    const open = question();
    if (!open) return;
    if (open.live) tap();
    const now = get();
    const [first, ...rest] = now.asked;
    if (first && seconds > 0 && write({ step: first.step, seconds }) === false) return;
    store.set({ ...get(), asked: rest });
  }

  // The time that is asked about; live while it still grows.
  function question() {
    const now = get();
    if (now.asked.length > 0) return { ...now.asked[0], live: false };
    return now.running && now.quiet > LONGEST_QUIET ? { step: now.step, seconds: Math.round(now.quiet / 1000), live: true } : null;
  }

  document.addEventListener('visibilitychange', advance);

  return {
    advance, tap, start, pause, turnTo, settle, question,
    get running() { return get().running; },
    get sitting() { const now = get(); return now.sitting + (now.quiet > LONGEST_QUIET ? 0 : now.quiet); },
  };
}
