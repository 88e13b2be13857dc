import { wordsOf } from './words.js';

// Asks the browser for a passkey, or for a new one, and sends its answer with the form. Where a browser has no passkeys, or runs no script, the
// form stays hidden and what stands in its place is shown.
const REASONS = { NotAllowedError: 'noneChosen', InvalidStateError: 'hasOne' };

const known = window.PublicKeyCredential?.parseRequestOptionsFromJSON && window.PublicKeyCredential.parseCreationOptionsFromJSON;

async function ask(form, tell) {
  const answer = await fetch(form.dataset.asks, { method: 'POST', body: new FormData(form), headers: { Accept: 'application/json' } });
  if (answer.status === 422 || answer.status === 429) throw new Error((await answer.json()).says);
  if (!answer.ok) throw new Error(tell('tooOld'));
  const options = await answer.json();
  const credential = form.dataset.passkey === 'new'
    ? await navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
    : await navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
  return JSON.stringify(credential.toJSON());
}

for (const form of document.querySelectorAll('form[data-passkey]')) {
  if (!known) continue;
  const tell = wordsOf(form);
  form.hidden = false;
  for (const other of document.querySelectorAll('[data-no-passkeys]')) other.hidden = true;
  form.addEventListener('submit', async event => {
    event.preventDefault();
    const [button, says] = [form.querySelector('button'), form.querySelector('[data-says]')];
    button.disabled = true;
    says.textContent = '';
    try {
      form.querySelector('[data-answer]').value = await ask(form, tell);
      form.submit();
    } catch (problem) {
      says.textContent = problem.name === 'Error' ? problem.message : tell(REASONS[problem.name] ?? 'noLine');
      button.disabled = false;
    }
  });
}
