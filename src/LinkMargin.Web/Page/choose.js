// The selection: a spot to show, a seat whose link is shown, or a door, wall or fixture to change.

import { el } from './dom.js';
import { post } from './live.js';
import { put, store } from './store.js';

/**
 * Selects a thing; a spot is then shown, and for a seat its link.
 * @param {import('./store.js').Chosen|null} chosen
 */
export function choose(chosen) {
  const values = { chosen };
  // A user who has selected a spot is no longer switched to the best one.
  if (chosen?.kind === 'spot') Object.assign(values, { spot: chosen.name, isFirst: false });
  if (chosen?.kind === 'seat') values.linkSeat = chosen.name;
  put(values);
}

/** Tries one result of a search. @param {number} i */
export async function tryResult(i) {
  const result = store.job?.results[i];
  if (result) await post('/changes', { changes: result.changes });
}

/** Makes one step of several changes. @param {...any} changes */
export const change = (...changes) => post('/changes', { changes });

/**
 * Makes a change from a field, and says beside the field why it cannot be made.
 * @param {HTMLInputElement} field
 * @param {any} what
 */
export async function changeFrom(field, what) {
  const fields = field.closest('.fields');
  fields.parentElement.querySelector('.refusal')?.remove();
  const answer = await post('/changes', { changes: [what] }, words => {
    field.value = field.defaultValue;
    fields.after(el('p', { class: 'refusal', role: 'alert' }, words));
  });
  return answer;
}
