// Begins a tally, where there is one to begin and whoever looks may. That takes a connection; from then on the page goes without.
const part = name => import(document.querySelector(`link[rel=modulepreload][data-part=${name}]`).href);
const [{ newId, post, Told }, { lightTable }, { wordsOf }] = await Promise.all(['queue', 'kept-page', 'words'].map(part));

const form = document.querySelector('[data-tally-begin]');
const problem = form?.querySelector('[data-tally-problem]');
const tell = form && wordsOf(form);
const typed = name => form.elements.namedItem(name).value;
const id = newId();

lightTable();
form?.addEventListener('submit', async event => {
  event.preventDefault();
  problem.textContent = '';
  const { press, edition, plan, path } = form.dataset;
  try {
    const answer = await post('tally/begin', { press, id, edition, plan, copies: typed('copies'), wanted: typed('wanted') });
    if (answer.problem) problem.textContent = answer.problem;
    else location.assign(new URL(path, document.baseURI));
  } catch (trouble) {
    problem.textContent = trouble instanceof Told ? tell(trouble.message, trouble.gaps) : tell('noAnswer');
  }
});
document.body.dataset.interactive = '';
