// Puts what stands in a field or a box into the clipboard. Where a browser lets no page do so, the button is not shown; the text is there to be
// selected.
if (navigator.clipboard?.writeText) document.documentElement.dataset.copies = '';

document.addEventListener('click', async event => {
  const button = event.target.closest?.('[data-copy]');
  if (!button) return;
  const from = document.getElementById(button.dataset.copy);
  const says = button.parentElement.querySelector('[data-copied]');
  try {
    await navigator.clipboard.writeText(from.value ?? from.textContent);
    says.textContent = 'Copied.';
  } catch {
    getSelection().selectAllChildren(from);
    from.select?.();
    says.textContent = 'It is selected: copy it with the keys.';
  }
});
