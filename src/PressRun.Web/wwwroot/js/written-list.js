// The list of what was written down on a page, the latest first, from a template of the page's own.
// words: of an entry { when, what, number, arrived }.
export function showWritten({ none, lines, template }, queue, words, takeBack) {
  const all = queue.entries();
  none.hidden = all.length > 0;
  lines.replaceChildren(...all.toReversed().map(entry => {
    const { when, what, number, arrived } = words(entry);
    const states = { waiting: 'waits', arrived, refused: 'not taken' };
    const line = template.content.firstElementChild.cloneNode(true);
    line.querySelector('.when').textContent = when;
    line.querySelector('.what').textContent = what;
    line.querySelector('.num').textContent = number;
    line.querySelector('.state').textContent = (entry.undone ? 'taken back, ' : '') + states[entry.state] + (entry.problem ? `: ${entry.problem}` : '');
    const button = line.querySelector('button');
    button.textContent = entry.state === 'refused' ? 'Take off the list' : 'Take back';
    button.setAttribute('aria-label', `${button.textContent}: ${what}, ${number}`);
    button.hidden = entry.undone;
    button.addEventListener('click', () => {
      if (entry.state === 'refused') queue.drop(entry); else takeBack(entry);
    });
    return line;
  }));
}
