// The seats' figures: for the shown spot with what is in the file beside them, and for all spots.

import { button, byId, el, refill } from './dom.js';
import { choose } from './choose.js';
import { say } from './speak.js';
import { put, store } from './store.js';
import { signed } from './units.js';

/** Draws what has changed. @param {Set<string>} changed */
export function draw(changed) {
  const { house, figures, comparison } = store;
  if (!house) return;
  if (changed.has('house') || changed.has('comparison')) drawHeading();
  if (changed.has('figures') && figures && figures.seats.length > 0) say(figures.words);
  if (['house', 'figures', 'comparison', 'spot', 'linkSeat'].some(key => changed.has(key))) {
    refill(byId('seats'), ...(figures ? spotTable(figures) : [el('p', { class: 'wait' }, 'Computing…')]), comparison && allSpots(comparison));
  }
}

function drawHeading() {
  const { house, comparison } = store;
  document.title = `${house.name} – LinkMargin`;
  byId('finding').textContent = comparison ? comparison.finding : `${house.name}: computing…`;
  byId('subtitle').textContent = `${house.name}. Margin to count on: ${house.often} the real margin is at least this. Hatched: below ${house.requiredDb} dB. Planning estimates.`;
}

/** @param {any} figures */
function spotTable(figures) {
  const { house } = store, byName = new Map(house.seats.map(seat => [seat.name, seat]));
  const hasTried = house.steps.length > 0 || store.preview !== null;
  const heads = ['Seat', 'required', ...(hasTried ? ['in the file', 'now', 'change'] : ['to count on']), 'median', 'likely'];
  return [
    el('h2', { id: 'spot-words' }, figures.words),
    figures.seats.length > 0 && el('div', { class: 'scroll' }, el('table', { class: 'figures' },
      el('thead', {}, el('tr', {}, ...heads.map((head, i) => el('th', { scope: 'col', class: i > 0 ? 'number' : '' }, head)))),
      el('tbody', {}, ...figures.seats.map(figure => {
        const seat = byName.get(figure.seat), was = figure.inFileDb;
        return el('tr', { class: `${figure.passes ? 'passes' : 'fails'}${store.linkSeat === figure.seat ? ' chosen' : ''}` },
          el('th', { scope: 'row' }, button(figure.seat, () => choose({ kind: 'seat', name: figure.seat, level: seat?.level ?? 0 }), { class: 'link', 'data-key': `row ${figure.seat}`, title: 'Explain this link' })),
          number(`${seat?.requiredDb ?? ''}`),
          ...(hasTried
            ? [number(was === undefined ? '–' : (Math.floor(was * 10) / 10).toFixed(1)), verdict(figure), number(was === undefined ? '–' : signed(figure.countOnDb - was), was !== undefined && Math.abs(figure.countOnDb - was) >= 0.05 ? 'moved' : '')]
            : [verdict(figure)]),
          number(figure.median), number(figure.likely));
      })))),
    el('p', { class: 'note' }, figures.seats.length > 0
      ? 'dB. ✓ passes, ✗ is below the required margin. Likely: the probability that the seat passes. Choose a seat to see why.'
      : ''),
  ];
}

/** @param {string} text @param {string} [cls] */
const number = (text, cls = '') => el('td', { class: `number ${cls}` }, text);

/** @param {any} figure */
const verdict = figure => el('td', { class: 'number verdict' }, `${figure.passes ? '✓' : '✗'} ${figure.countOn}`,
  el('span', { class: 'unseen' }, figure.passes ? ' passes' : ' does not pass'));

/** @param {any} comparison */
function allSpots(comparison) {
  if (comparison.spots.length === 0) return null;
  const seats = store.house.seats.map(seat => seat.name);
  const figureOf = (spot, seat) => spot.seats.find(figure => figure.seat === seat);
  return el('details', { open: byId('seats').querySelector('details')?.open ?? true },
    el('summary', {}, 'All spots, best first'),
    el('div', { class: 'scroll' }, el('table', { class: 'figures all' },
      el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'Seat'), ...comparison.spots.map(spot => el('th', { scope: 'col', class: 'number' },
        button(spot.spot, () => put({ spot: spot.spot }), { class: 'link', 'aria-pressed': String(spot.spot === store.spot), 'data-key': `spot ${spot.spot}` }), el('br'), el('small', {}, spot.level))))),
      el('tbody', {},
        ...seats.map(seat => el('tr', {}, el('th', { scope: 'row' }, seat), ...comparison.spots.map(spot => {
          const figure = figureOf(spot, seat);
          return figure ? verdict(figure) : number('–');
        }))),
        el('tr', { class: 'sum' }, el('th', { scope: 'row' }, 'seats'), ...comparison.spots.map(spot => number(spot.passing.replace(' seats pass', '')))),
        el('tr', { class: 'sum' }, el('th', { scope: 'row' }, 'best spot'), ...comparison.spots.map(spot => number(spot.likely)))))),
    ...comparison.paragraphs.map(text => el('p', { class: 'note' }, text)));
}
