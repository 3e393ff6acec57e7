// Names that more than one thing has. Doors and windows without a name of their own are called by their place; those of one place share
// that name and change together. A level may have a name that another has too.

import { store } from './store.js';

/** The doors and windows of one name on a level. @param {number} level @param {string} name @returns {any[]} */
export const openingsOf = (level, name) => store.house.levels[level]?.openings.filter(one => one.name === name && one.kind !== 'gap') ?? [];

/** Whether doors and windows are open, in a few words. @param {any[]} openings */
export function stateOf(openings) {
  const open = openings.filter(one => one.open).length;
  return open === 0 ? 'shut' : open === openings.length ? 'open' : `${open} of ${openings.length} open`;
}

/** A name with how many share it. @param {any[]} things */
export const counted = things => things.length > 1 ? `${things[0].name} (${things.length})` : things[0].name;

/** The level of a thing, where another level has one of that name. @param {import('./store.js').Chosen} chosen */
export function levelOf({ kind, name, level }) {
  const of = { opening: one => one.openings, wall: one => one.walls }[kind];
  const isElsewhere = Boolean(of) && store.house.levels.some((one, i) => i !== level && of(one).some(item => item.name === name));
  return isElsewhere ? ` on ${store.house.levels[level].name}` : '';
}
