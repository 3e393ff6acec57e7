// What can be done with the chosen thing, by buttons and numbers: all that dragging does, and more.

import { button, byId, el, refill, select } from './dom.js';
import { change, choose } from './choose.js';
import { get } from './live.js';
import { put, store } from './store.js';
import { fieldMetres, fieldValue, snapped } from './units.js';

/** Draws what has changed. @param {Set<string>} changed */
export function draw(changed) {
  if (store.house && ['house', 'chosen', 'found'].some(key => changed.has(key))) refill(byId('chosen'), ...content());
}

const kinds = { spot: spotContent, seat: seatContent, opening: openingContent, wall: wallContent, fixture: fixtureContent };

function content() {
  const { chosen } = store;
  const inner = chosen ? kinds[chosen.kind](chosen) : null;
  return [el('h2', {}, inner ? `${words[chosen.kind]} ${chosen.name}` : 'Change something'), finder(), ...(inner ?? [
    el('p', { class: 'note' }, 'Drag a spot or a seat. Choose a door, window, wall or fixture on a plan, or here.')])];
}

const words = { spot: 'Spot', seat: 'Seat', opening: 'Opening', wall: 'Wall', fixture: 'Fixture' };

/** Every thing by its name, for the keyboard. */
function finder() {
  const { house } = store, options = [{ value: '', text: 'a door, wall or fixture…' }];
  const add = (kind, level, name, text) => options.push({ value: JSON.stringify({ kind, level, name }), text });
  house.levels.forEach((level, i) => {
    for (const item of level.openings) if (item.kind !== 'gap') add('opening', i, item.name, `${level.name}: ${item.name} (${item.open ? 'open' : 'shut'})`);
    for (const name of new Set(level.walls.map(item => item.name))) add('wall', i, name, `${level.name}: wall ${name}`);
    for (const item of level.fixtures) add('fixture', i, item.name, `${level.name}: ${item.name}`);
  });
  return select('Find', options, store.chosen && !['spot', 'seat'].includes(store.chosen.kind) ? JSON.stringify({ kind: store.chosen.kind, level: store.chosen.level, name: store.chosen.name }) : '',
    value => choose(value ? JSON.parse(value) : null), { 'data-key': 'find' });
}

/** Level and place, in numbers. */
function placeFields(kind, thing, height) {
  const { house } = store, { inFeet } = house, unit = inFeet ? 'ft' : 'm';
  const moved = values => change({ kind, name: thing.name, level: thing.level, x: thing.x, y: thing.y, height: thing[height], ...values });
  const field = (label, value, put) => el('label', { class: 'choice' }, el('span', {}, `${label}, ${unit}`), el('input', {
    type: 'number', step: inFeet ? '0.25' : '0.05', value: String(fieldValue(value, inFeet)), 'data-key': `${thing.name} ${label}`,
    onchange: event => { if (event.target.value !== '') put(snapped(fieldMetres(Number(event.target.value), inFeet), inFeet)); },
  }));
  return el('div', { class: 'fields' },
    select('Level', house.levels.map((level, i) => ({ value: String(i), text: level.name })), String(thing.level), level => moved({ level: Number(level) }), { 'data-key': `${thing.name} level` }),
    field('East', thing.x, x => moved({ x })), field('North', thing.y, y => moved({ y })), field(height === 'hands' ? 'Hands' : 'Height', thing[height], value => moved({ height: value })));
}

function spotContent({ name }) {
  const spot = store.house.spots.find(one => one.name === name);
  return spot && [placeFields('move-spot', spot, 'height')];
}

function seatContent({ name }) {
  const seat = store.house.seats.find(one => one.name === name), { people } = store.house;
  return seat && [
    placeFields('move-seat', seat, 'hands'),
    el('div', { class: 'fields' },
      el('label', { class: 'choice' }, el('span', {}, 'Faces, degrees from east'), el('input', {
        type: 'number', step: '15', min: '0', max: '359', value: seat.facing === undefined ? '' : String(Math.round(seat.facing)), 'data-key': `${name} facing`,
        onchange: event => { if (event.target.value !== '') change({ kind: 'turn-seat', name, degrees: Number(event.target.value) }); },
      })),
      seat.facing !== undefined && el('label', { class: 'check' }, el('input', {
        type: 'checkbox', checked: people.includes(name), 'data-key': `${name} person`,
        onchange: event => change({ kind: 'people', seats: event.target.checked ? [...people, name] : people.filter(one => one !== name) }),
      }), 'Somebody sits here')),
    el('p', { class: 'note' }, `${seat.faces ? `Faces ${seat.faces}. ` : ''}Requires ${seat.requiredDb} dB.${seat.plays ? ` Plays ${seat.plays}.` : ''}`),
    button('Explain this link', () => put({ linkSeat: name }), { 'data-key': 'explain' }),
  ];
}

function openingContent({ name, level }) {
  const item = store.house.levels[level]?.openings.find(one => one.name === name);
  return item && [
    el('p', {}, `${item.kind === 'door' ? 'Door' : 'Window'} of ${item.material}, ${item.open ? 'open' : 'shut'}.`),
    button(item.open ? 'Shut it' : 'Open it', () => change({ kind: 'set-opening', name, level, open: !item.open }), { class: 'main', 'data-key': 'toggle' }),
    el('p', { class: 'note' }, 'Fire doors stay shut: local codes decide.'),
  ];
}

let words_ = '';

function wallContent({ name, level }) {
  const wall = store.house.levels[level]?.walls.find(one => one.name === name);
  if (!wall) return null;
  const found = store.found ?? [];
  return [
    el('p', {}, `Made of ${wall.material}.`),
    el('label', { class: 'choice' }, el('span', {}, 'Another material'), el('input', {
      type: 'search', placeholder: 'brick, stud, glass…', value: words_, 'data-key': 'material', autocomplete: 'off', spellcheck: 'false',
      oninput: event => search(event.target.value),
    })),
    el('ul', { class: 'found' }, ...found.map(row => el('li', {}, button(row.name, () => {
      search('');
      change({ kind: 'wall-material', name, level, material: row.name });
    }, { 'data-key': `material ${row.name}`, title: row.what }), el('small', {}, row.what)))),
  ];
}

let asked = 0;

/** @param {string} text */
async function search(text) {
  words_ = text;
  const mine = ++asked, rows = text.trim() ? (await get(`/materials?words=${encodeURIComponent(text)}`))?.rows ?? [] : [];
  if (mine === asked) put({ found: rows });
}

function fixtureContent({ name, level }) {
  const item = store.house.levels[level]?.fixtures.find(one => one.name === name);
  return item && [
    el('p', {}, `${item.hollow ? 'Hollow, panels of' : 'Of'} ${item.material}.`),
    button('Take it away', () => change({ kind: 'remove-fixture', name }), { 'data-key': 'remove' }),
    item.hollow && el('div', { class: 'row' }, ...['north', 'east', 'south', 'west', 'top'].map(side =>
      button(`Open ${side}`, () => change({ kind: 'open-side', name, side }), { 'data-key': `open ${side}` }))),
    item.hollow && el('p', { class: 'note' }, 'A metal rack may be earthed through its panels: ask a licensed electrician before you remove one.'),
  ];
}
