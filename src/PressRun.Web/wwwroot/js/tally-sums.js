// How the tally stands as far as this phone knows: what the server last said, with what it has not heard of yet.
export function sumUp(told, entries) {
  const now = structuredClone(told);
  for (const { kind, step, by, undone, arrived, ...entry } of entries.filter(entry => entry.state === 'waiting')) {
    const at = now.steps[step];
    // What was taken back is taken off only where it had been told of.
    const sign = undone ? -Number(Boolean(arrived)) : 1;
    if (!at || sign === 0) continue;
    const person = at.people.find(somebody => somebody.by === by) ?? at.people[at.people.push({ by, done: 0, spoiled: 0, seconds: 0 }) - 1];
    const number = sign * (kind === 'worked' ? entry.seconds : entry.copies), sum = kind === 'worked' ? 'seconds' : kind;
    at[sum] += number;
    person[sum] += number;
    if (kind !== 'worked') at.left -= number;
    // What went wrong here goes no further.
    if (kind === 'spoiled') {
      now.steps.slice(step + 1).forEach(later => { later.left -= number; });
      now.spoiled += number;
      now.spare -= number;
    }
  }
  return now;
}

// The tallying of old: four strokes and one across them, ten such gates to a row. More copies than fit get a stroke for several.
const MOST_STROKES = 200, GATES_A_ROW = 10, GATE = 26, HEIGHT = 22;

export function strokes(done) {
  const each = Math.max(1, Math.ceil(done / MOST_STROKES));
  const number = Math.floor(Math.max(0, done) / each);
  let path = '';
  for (let stroke = 0; stroke < number; stroke++) {
    const gate = Math.floor(stroke / 5), left = (gate % GATES_A_ROW) * GATE + 3, top = Math.floor(gate / GATES_A_ROW) * HEIGHT + 2, place = stroke % 5;
    path += place < 4 ? `M${left + place * 4.5} ${top}v15` : `M${left - 3} ${top + 12}l19.5 -9`;
  }
  return { path, each, rows: Math.max(1, Math.ceil(number / (5 * GATES_A_ROW))), width: GATES_A_ROW * GATE, height: HEIGHT };
}
