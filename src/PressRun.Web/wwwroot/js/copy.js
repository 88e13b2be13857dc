// Puts a text on the clipboard; where the page is not served safely, browsers know only the older way. Answers whether it lies there.
export async function copyText(text) {
  try {
    if (navigator.clipboard) { await navigator.clipboard.writeText(text); return true; }
  } catch { /* not allowed; the older way may be */ }
  const field = Object.assign(document.createElement('textarea'), { value: text });
  field.style.position = 'fixed';
  field.style.opacity = '0';
  document.body.append(field);
  field.select();
  try { return document.execCommand('copy'); } finally { field.remove(); }
}

// The buttons for it are shown by a page that runs scripts; without one the text is there to be selected.
document.documentElement.dataset.copies = '';

document.addEventListener('click', async event => {
  const button = event.target.closest?.('[data-copy]');
  if (!button) return;
  const from = document.getElementById(button.dataset.copy);
  const says = button.parentElement.querySelector('[data-copied]');
  if (await copyText(from.value ?? from.textContent)) {
    says.textContent = says.dataset.yes;
  } else {
    getSelection().selectAllChildren(from);
    from.select?.();
    says.textContent = says.dataset.else;
  }
});
