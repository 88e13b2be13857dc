// The list of what was written down on a page, the latest first, from a template of the page's own.
// words: of an entry { when, what, number }. tell: the page's words.
export function showWritten({ none, lines, template }, queue, words, takeBack, tell) {
  const all = queue.entries();
  none.hidden = all.length > 0;
  lines.replaceChildren(...all.toReversed().map(entry => {
    const { when, what, number } = words(entry);
    const stands = tell({ waiting: 'waits', arrived: 'arrived', refused: 'refused' }[entry.state]);
    const state = entry.undone ? tell('takenBackAnd', { state: stands }) : stands;
    const line = template.content.firstElementChild.cloneNode(true);
    line.querySelector('.when').textContent = when;
    line.querySelector('.what').textContent = what;
    line.querySelector('.num').textContent = number;
    line.querySelector('.state').textContent = entry.problem ? `${state}: ${entry.problem}` : state;
    const button = line.querySelector('button');
    button.textContent = tell(entry.state === 'refused' ? 'takeOff' : 'takeBack');
    button.setAttribute('aria-label', `${button.textContent}: ${what}, ${number}`);
    button.hidden = entry.undone;
    button.addEventListener('click', () => {
      if (entry.state === 'refused') queue.drop(entry); else takeBack(entry);
    });
    return line;
  }));
}
