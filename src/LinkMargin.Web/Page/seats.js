// The figures of seats: for the shown spot, beside those of the file, and for all spots.

import { button, byId, el, refill } from './dom.js';
import { choose } from './choose.js';
import { say } from './speak.js';
import { store } from './store.js';
import { signed } from './units.js';

/** Draws what has changed. @param {Set<string>} changed */
export function draw(changed) {
  const { house, figures, comparison } = store;
  if (!house) return;
  if (['house', 'comparison', 'spot', 'figures'].some(key => changed.has(key))) drawHeading();
  if (changed.has('figures') && figures && figures.seats.length > 0) say(spoken(figures));
  if (['house', 'figures', 'comparison', 'cables', 'spot', 'linkSeat'].some(key => changed.has(key))) {
    refill(byId('seats'), ...(figures ? spotTable(figures) : [el('p', { class: 'wait' }, 'Computing…')]));
  }
  if (['house', 'comparison', 'cables', 'spot'].some(key => changed.has(key))) refill(byId('spots'), ...(comparison ? allSpots(comparison) : []));
}

/** The words spoken about figures: first the seat being moved or selected, then those that do not pass. @param {any} figures */
function spoken(figures) {
  const name = store.preview?.kind.endsWith('seat') ? store.preview.name : store.chosen?.kind === 'seat' ? store.chosen.name : null;
  const first = figures.seats.filter(figure => figure.seat === name), failing = figures.seats.filter(figure => !figure.passes && figure.seat !== name);
  const words = figure => `${figure.seat} ${figure.countOn} dB, ${figure.passes ? 'passes' : 'does not pass'}`;
  return [...first.map(words), figures.words, ...failing.map(words)].join('. ');
}

function drawHeading() {
  const { house, comparison, figures } = store;
  document.title = `${house.name} – LinkMargin`;
  byId('finding').textContent = comparison ? comparison.finding : `${house.name}: computing…`;
  const before = comparison?.findingInFile && comparison.findingInFile !== comparison.finding ? `As in the file: ${comparison.findingInFile}. ` : '';
  const isOther = figures && comparison?.spots.length > 0 && comparison.spots[0].spot !== store.spot && figures.spot === store.spot;
  byId('subtitle').textContent = `${isOther ? `Shown: ${figures.words}. ` : ''}${before}${house.name}. Margin to count on: ${house.reached}. Planning estimates.`;
}

/** @param {any} figures */
function spotTable(figures) {
  const { house } = store, byName = new Map(house.seats.map(seat => [seat.name, seat]));
  const hasTried = house.steps.length > 0 || store.preview !== null;
  const heads = ['Seat', 'needs', ...(hasTried ? ['in the file', 'now', 'change'] : ['to count on']), 'median', 'likely'];
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
            ? [number(was === undefined ? '–' : (Math.floor(was * 10) / 10).toFixed(1)), verdict(figure), number(was === undefined ? '–' : signed(figure.countOnDb - was), was === undefined || Math.abs(figure.countOnDb - was) < 0.05 ? '' : figure.countOnDb > was ? 'gained' : 'lost')]
            : [verdict(figure)]),
          number(figure.median), number(figure.likely));
      })))),
    el('p', { class: 'note' }, figures.seats.length > 0
      ? 'In dB. ✓ passes, ✗ is below the required margin. Likely: the probability that the seat passes. Choose a seat to see what is in its way.'
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
  if (comparison.spots.length === 0) return [];
  const { house } = store, seats = house.seats.map(seat => seat.name);
  const figureOf = (spot, seat) => spot.seats.find(figure => figure.seat === seat);
  return [
    el('h2', {}, 'All spots, best first'),
    el('div', { class: 'scroll' }, el('table', { class: 'figures all' },
      el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'Seat'), ...comparison.spots.map(spot => el('th', { scope: 'col', class: 'number' },
        button(spot.spot, () => choose({ kind: 'spot', name: spot.spot, level: house.spots.findIndex(one => one.name === spot.spot) < 0 ? 0 : house.spots.find(one => one.name === spot.spot).level }), { class: 'link', 'aria-pressed': String(spot.spot === store.spot), 'data-key': `spot ${spot.spot}` }), el('br'), el('small', {}, spot.level))))),
      el('tbody', {},
        ...seats.map(seat => el('tr', {}, el('th', { scope: 'row' }, seat), ...comparison.spots.map(spot => {
          const figure = figureOf(spot, seat);
          return figure ? verdict(figure) : number('–');
        }))),
        el('tr', { class: 'sum' }, el('th', { scope: 'row' }, 'seats pass'), ...comparison.spots.map(spot => number(`${spot.seatsPassing} of ${spot.seatCount}`))),
        el('tr', { class: 'sum' }, el('th', { scope: 'row' }, 'likely best'), ...comparison.spots.map(spot => number(spot.likely))),
        ...cableRows(comparison)))),
    store.cables?.note && el('p', { class: 'note' }, store.cables.note),
    ...comparison.paragraphs.map(text => el('p', { class: 'note' }, text))];
}

/** The cable cost of each spot, in the columns of 'compare'. @param {any} comparison */
function cableRows(comparison) {
  const cables = store.cables?.spots ?? [];
  if (cables.length === 0) return [];
  const row = (head, text) => el('tr', {}, el('th', { scope: 'row' }, head), ...comparison.spots.map(spot => number(text(cables.find(one => one.spot === spot.spot)) ?? '–')));
  return [
    row('new cable runs', one => one && `${one.newRuns}`),
    row('cable to buy', one => one?.toBuy),
    row('holes to bore', one => one && `${one.holes}`),
    ...(cables.some(one => one.carries !== 'yes' || !one.isComplete) ? [row('picture carried', one => one && (one.isComplete ? one.carries : `${one.carries}, and cannot be pulled`))] : []),
  ];
}
