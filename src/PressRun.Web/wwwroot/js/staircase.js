// Pointing at the staircase: says what the server told of each quantity, and tells it where the marker is looked at (while dragging) and put down.
export function attach(root, page, told) {
  let known = null, dragging = null, asking = false, wanted = null, keyed = null;

  const allReadings = () => known ??= told.split('|').filter(Boolean).map(row => {
    const [quantity, cost, words] = row.split(';');
    return { quantity: +quantity, cost: +cost, words };
  });

  const plotOf = svg => {
    const [left, right, top, bottom, most, from, to] = svg.dataset.plot.split(' ').map(Number);
    return { left, right, top, bottom, most, from, to };
  };

  const nearest = (svg, event) => {
    const plot = plotOf(svg), box = svg.getBoundingClientRect();
    const x = (event.clientX - box.left) * svg.viewBox.baseVal.width / box.width;
    const part = Math.min(1, Math.max(0, (x - plot.left) / (plot.right - plot.left)));
    const quantity = Math.round(plot.from + part * (plot.to - plot.from));
    const all = allReadings();
    const stride = all.length > 1 ? all[1].quantity - all[0].quantity : 1;
    return all[Math.min(all.length - 1, Math.round((quantity - plot.from) / stride))];
  };

  const show = (svg, reading) => {
    const plot = plotOf(svg), group = svg.querySelector('.reading');
    const [line, circle, rect, text] = group.children;
    const x = plot.from === plot.to ? (plot.left + plot.right) / 2 : plot.left + (plot.right - plot.left) * (reading.quantity - plot.from) / (plot.to - plot.from);
    line.setAttribute('x1', x); line.setAttribute('x2', x);
    circle.setAttribute('cx', x);
    circle.setAttribute('cy', plot.bottom - (plot.bottom - plot.top) * reading.cost / plot.most);
    text.textContent = reading.words;
    const half = text.getComputedTextLength() / 2 + 8, width = svg.viewBox.baseVal.width;
    const middle = Math.min(width - half, Math.max(half, x));
    text.setAttribute('x', middle);
    rect.setAttribute('x', middle - half); rect.setAttribute('width', 2 * half);
    svg.classList.add('pointed');
  };

  const hide = () => root.querySelectorAll('svg.pointed').forEach(svg => svg.classList.remove('pointed', 'dragging'));

  // One question at a time; of those that pile up only the last is asked.
  const look = async quantity => {
    wanted = quantity;
    if (asking) return;
    asking = true;
    try {
      while (wanted !== null) {
        const next = wanted; wanted = null;
        await page.invokeMethodAsync('LookAt', next);
      }
    } finally { asking = false; }
  };

  const settle = async quantity => {
    wanted = null;
    try {
      await page.invokeMethodAsync('MoveTo', quantity);
    } finally {
      if (keyed === quantity) keyed = null;
      if (!dragging) hide();
    }
  };

  const onDown = event => {
    const svg = event.target.closest('svg[data-plot]');
    if (!svg || event.button !== 0) return;
    dragging = { svg, reading: nearest(svg, event) };
    svg.setPointerCapture(event.pointerId);
    svg.classList.add('dragging');
    show(svg, dragging.reading);
    look(dragging.reading.quantity);
    svg.querySelector('.marker')?.focus({ preventScroll: true });
    event.preventDefault();
  };

  const onMove = event => {
    if (dragging) {
      const reading = nearest(dragging.svg, event);
      if (reading.quantity !== dragging.reading.quantity) {
        dragging.reading = reading;
        show(dragging.svg, reading);
        look(reading.quantity);
      }
    } else if (event.pointerType === 'mouse') {
      const svg = event.target.closest('svg[data-plot]');
      if (svg) show(svg, nearest(svg, event));
    }
  };

  const onUp = () => {
    if (!dragging) return;
    const { reading } = dragging;
    dragging = null;
    settle(reading.quantity);
  };

  const onKey = event => {
    const marker = event.target.closest('.marker');
    if (!marker || event.altKey || event.ctrlKey || event.metaKey) return;
    const [shown, least, most] = ['valuenow', 'valuemin', 'valuemax'].map(name => +marker.getAttribute('aria-' + name));
    const now = keyed ?? shown; // keys may come faster than the server's answers
    const stride = Math.max(1, Math.round((most - least) / 20));
    const to = {
      ArrowRight: now + 1, ArrowUp: now + 1, ArrowLeft: now - 1, ArrowDown: now - 1,
      PageUp: now + stride, PageDown: now - stride, Home: least, End: most,
    }[event.key];
    if (to === undefined) return;
    event.preventDefault();
    const clamped = Math.min(most, Math.max(least, to));
    if (clamped === now) return;
    keyed = clamped;
    settle(clamped);
  };

  const onLeave = () => { if (!dragging) hide(); };
  const listeners = [['pointerdown', onDown], ['pointermove', onMove], ['pointerup', onUp], ['pointercancel', onUp], ['keydown', onKey], ['pointerleave', onLeave]];
  listeners.forEach(([name, listener]) => root.addEventListener(name, listener));
  root.dataset.pointed = ''; // says that the marker can be dragged
  return { know: anew => { [told, known] = [anew, null]; }, stop: () => listeners.forEach(([name, listener]) => root.removeEventListener(name, listener)) };
}
