// Keeps what is shown in the address after '#', so that it can be bookmarked and sent; the token is never part of it.

import { put, store } from './store.js';

const layers = ['countOn', 'median', 'probability'];

/** Reads what to show from the address. */
export function read() {
  const words = new URLSearchParams(location.hash.slice(1));
  const level = store.house?.levels.findIndex(one => one.name === words.get('level')) ?? -1;
  const values = { level, layer: layers.includes(words.get('layer') ?? '') ? words.get('layer') : 'countOn', linkSeat: words.get('seat') };
  const spot = words.get('spot');
  put(store.house?.spots.some(one => one.name === spot) ? { ...values, spot } : values);
}

/** Writes what is shown to the address. */
export function write() {
  const words = new URLSearchParams();
  if (store.spot) words.set('spot', store.spot);
  if (store.level >= 0) words.set('level', store.house.levels[store.level].name);
  if (store.layer !== 'countOn') words.set('layer', store.layer);
  if (store.linkSeat) words.set('seat', store.linkSeat);
  const hash = `#${words}`;
  if (hash !== location.hash) history.replaceState(null, '', hash);
}
