// The row of controls above the plans, and the banners.

import { button, byId, el, refill, select } from './dom.js';
import { commands, run } from './commands.js';
import { choose } from './choose.js';
import { post } from './live.js';
import { notice } from './speak.js';
import { put, store } from './store.js';

/** Draws what has changed. @param {Set<string>} changed */
export function draw(changed) {
  if (!store.house) return;
  if (['house', 'spot', 'level', 'layer'].some(key => changed.has(key))) drawToolbar();
  if (['house', 'connected', 'ended'].some(key => changed.has(key))) drawBanners();
}

function drawToolbar() {
  const { house } = store, words = list => list.map(text => ({ value: text, text }));
  const command = id => button(commands[id].name, () => run(id), {
    'data-key': `command ${id}`, disabled: !(commands[id].isReady?.() ?? true), title: commands[id].keys ? `${commands[id].name} (${commands[id].keys})` : null,
  });
  refill(byId('toolbar'),
    el('div', { class: 'group' },
      select('Spot', words(house.spots.map(spot => spot.name)), store.spot, name => choose({ kind: 'spot', name, level: house.spots.find(spot => spot.name === name).level }), { 'data-key': 'spot' }),
      select('Show', [{ value: 'countOn', text: 'margin to count on' }, { value: 'median', text: 'median' }, { value: 'probability', text: `probability of ${house.requiredDb} dB` }], store.layer, layer => put({ layer }), { 'data-key': 'layer' }),
      select('Level', [{ value: '-1', text: 'all levels' }, ...house.levels.map((level, i) => ({ value: String(i), text: level.name }))], String(store.level), level => put({ level: Number(level) }), { 'data-key': 'level' })),
    el('div', { class: 'group' }, command('undo'), command('redo')),
    el('div', { class: 'group' }, command('place'), command('improve')),
    el('div', { class: 'group end' }, command('save'), command('export'), command('keys'), command('end')));
}

function drawBanners() {
  const { house } = store, open = byId('banners').querySelector('.notice');
  refill(byId('banners'),
    store.ended ? el('div', { class: 'banner' }, el('p', {}, 'LinkMargin has ended. You can close this page.'))
      : !store.connected && el('div', { class: 'banner bad' }, el('p', {}, 'The connection to LinkMargin is lost. Your changes are in the journal. This page is trying to reconnect; if you ended LinkMargin, start it again and open the new address.')),
    house.problems.some(problem => problem.isError) && el('div', { class: 'banner bad', id: 'problems' },
      el('p', {}, `${house.file} now has errors. The page shows the last version without errors and updates when they are fixed.`),
      el('ul', {}, ...house.problems.filter(problem => problem.isError).map(problem => el('li', {}, el('b', {}, `line ${problem.line}, column ${problem.column}: `), problem.words)))),
    house.recoverable > 0 && el('div', { class: 'banner', id: 'recovery' },
      el('p', {}, `${house.recoverable} ${house.recoverable === 1 ? 'change was' : 'changes were'} tried before and not saved. ${house.recoveryNote}`),
      button('Continue with them', () => recover(true), { class: 'main', 'data-key': 'recover' }), button('Discard them', () => recover(false), { 'data-key': 'discard' })),
    house.journalNote && el('div', { class: 'banner' }, el('p', {}, house.journalNote)),
    open);
}

/** @param {boolean} goOn */
async function recover(goOn) {
  const answer = await post('/recover', { goOn });
  if (answer?.words) notice(answer.words, answer.lines);
}
