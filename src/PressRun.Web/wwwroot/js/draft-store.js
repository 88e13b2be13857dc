// Where this browser keeps what is typed and not saved: under the person and the press that the page is for, so that whoever signs in next finds nothing of theirs.
const prefix = () => `pressrun.draft.${document.querySelector('[data-drafts-of]')?.dataset.draftsOf ?? ''}.`;

export const placeOf = key => prefix() + key;
export const keyOf = place => place.slice(prefix().length);
export const ownPlaces = storage => {
  const own = prefix();
  return Object.keys(storage).filter(place => place.startsWith(own));
};

export const store = action => {
  try { return action(localStorage); } catch { return null; } // storage may be full or switched off; typing goes on
};
