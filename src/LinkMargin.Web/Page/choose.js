// What is chosen: a spot to show, a seat whose link is shown, a door or wall to change.

import { post } from './live.js';
import { put, store } from './store.js';

/**
 * Chooses a thing; a spot is shown too, and a seat's link.
 * @param {import('./store.js').Chosen|null} chosen
 */
export function choose(chosen) {
  const values = { chosen };
  // Who has chosen a spot is not taken to the best one any more.
  if (chosen?.kind === 'spot') Object.assign(values, { spot: chosen.name, isFirst: false });
  if (chosen?.kind === 'seat') values.linkSeat = chosen.name;
  put(values);
}

/** Tries a result of a search. @param {number} i */
export async function tryResult(i) {
  const result = store.job?.results[i];
  if (result) await post('/changes', { changes: result.changes });
}

/** Makes one step of some changes. @param {...any} changes */
export const change = (...changes) => post('/changes', { changes });
