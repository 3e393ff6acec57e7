// Background searches and their results, and the steps tried.

import { button, byId, el, refill } from './dom.js';
import { tryResult } from './choose.js';
import { run } from './commands.js';
import { post } from './live.js';
import { put, store } from './store.js';

const titles = { place: 'Best places', improve: 'What would help' };

/** Draws what has changed. @param {Set<string>} changed */
export function draw(changed) {
  // The latest request is on top.
  if (changed.has('progress') && store.progress && byId('chosen').nextElementSibling === byId('jobs')) byId('chosen').before(byId('jobs'));
  if (changed.has('chosen') && store.chosen && byId('jobs').nextElementSibling === byId('chosen')) byId('chosen').after(byId('jobs'));
  if (changed.has('progress') || changed.has('job') || changed.has('house')) refill(byId('jobs'), ...jobs());
  if (changed.has('house')) refill(byId('steps'), ...steps());
}

function jobs() {
  const { progress, job, house } = store;
  if (progress) {
    return [el('h2', {}, titles[progress.job]),
      el('progress', { max: 1, value: progress.share, 'aria-label': `${titles[progress.job]}: ${Math.round(progress.share * 100)} %` }),
      button('Stop', () => post('/jobs/stop'), { 'data-key': 'stop' })];
  }
  if (!job) return [];
  return [
    el('h2', {}, titles[job.job]),
    el('p', {}, job.words),
    house && job.version !== house.version && job.results.length > 0 && el('p', { class: 'note' }, 'The figures are for the house before your latest change. Search again for new ones.'),
    el('ol', { class: 'results' }, ...job.results.map((result, i) => el('li', {},
      button(`${result.title}: ${result.gain}`, () => tryResult(i), { 'data-key': `result ${i}`, title: 'Try it' }), el('small', {}, result.words)))),
    ...job.notes.map(text => el('p', { class: 'note' }, text)),
    button('Close', () => put({ job: null }), { class: 'quiet', 'data-key': 'close' }),
  ];
}

function steps() {
  const { steps, undone } = store.house;
  return steps.length === 0 && undone === 0 ? [] : [
    el('h2', {}, 'What you tried'),
    el('ol', {}, ...steps.map(step => el('li', {}, step))),
    el('div', { class: 'row' },
      button('Undo', () => run('undo'), { 'data-key': 'undo', disabled: steps.length === 0 }),
      button('As in the file', () => back(steps.length), { 'data-key': 'back', disabled: steps.length === 0, title: 'Undo everything; redo brings it back' }),
      undone > 0 && button(`Redo (${undone})`, () => run('redo'), { 'data-key': 'redo' })),
  ];
}

/** Undoes steps one by one, so that each can be redone. @param {number} count */
async function back(count) {
  for (let i = 0; i < count; i++) if (!await post('/undo')) return;
}
