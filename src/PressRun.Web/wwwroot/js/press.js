// A press of the mouse counts for the button that it began on, though what stands above it grew meanwhile and pushed it away: leaving a field says what is wrong
// with it, and that may come between the press and the release. Who moves the mouse away takes the press back, as everywhere.
const still = 4;
let begun = null;

document.addEventListener('pointerdown', event => {
  const button = event.pointerType === 'mouse' && event.button === 0 ? event.target.closest?.('button') : null;
  begun = button && { button, x: event.clientX, y: event.clientY };
}, true);

document.addEventListener('pointerup', event => {
  const press = begun;
  begun = null;
  if (press && !press.button.contains(event.target) && Math.hypot(event.clientX - press.x, event.clientY - press.y) <= still) press.button.click();
}, true);
