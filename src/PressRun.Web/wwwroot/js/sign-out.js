// Who signs out leaves nothing half typed in this browser; the server keeps what belongs to a title or a list for them.
import { ownPlaces, store } from './draft-store.js';

document.querySelector('form[action$="account/sign-out"]')?.addEventListener('submit', () => store(s => ownPlaces(s).forEach(place => s.removeItem(place))));
