// Where this browser keeps what is typed and not saved: under the person and the press that the page is for, so that whoever signs in next finds nothing of theirs.
const PREFIX = `pressrun.draft.${document.body.dataset.draftsOf ?? ''}.`;

export const placeOf = key => PREFIX + key;
export const keyOf = place => place.slice(PREFIX.length);
export const ownPlaces = storage => Object.keys(storage).filter(place => place.startsWith(PREFIX));

export const store = action => {
  try { return action(localStorage); } catch { return null; } // storage may be full or switched off; typing goes on
};
