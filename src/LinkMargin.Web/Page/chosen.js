// What can be done with the selected thing by buttons and numbers: everything that dragging does, and more.

import { button, byId, el, refill, select } from './dom.js';
import { change, changeFrom, choose } from './choose.js';
import { get } from './live.js';
import { counted, levelOf, openingsOf, stateOf } from './names.js';
import { put, store, withPreview } from './store.js';
import { fieldMetres, fieldValue, snapped } from './units.js';

/** Draws what has changed. @param {Set<string>} changed */
export function draw(changed) {
  if (!store.house) return;
  if (['house', 'chosen', 'found', 'radios', 'cables', 'linkSeat'].some(key => changed.has(key))) refill(byId('chosen'), ...content());
  else if (changed.has('preview')) follow();
  if (['house', 'chosen', 'figures'].some(key => changed.has(key))) refill(byId('brief'), ...brief());
}

/** Updates level and place of the thing being moved in the existing fields. */
function follow() {
  const { chosen, house } = store;
  if (chosen?.kind !== 'spot' && chosen?.kind !== 'seat') return;
  const thing = placed(`move-${chosen.kind}`, chosen.kind === 'spot' ? house.spots : house.seats, chosen.name);
  const values = thing ? { level: thing.level, East: fieldValue(thing.x, house.inFeet), North: fieldValue(thing.y, house.inFeet), facing: Math.round(thing.facing ?? 0) } : {};
  for (const [key, value] of Object.entries(values)) {
    const field = byId('chosen').querySelector(`[data-key="${CSS.escape(`${chosen.name} ${key}`)}"]`);
    if (field && field !== document.activeElement) field.value = String(value);
  }
}

/** In a narrow window: one line about the selected thing, because its panel is far below the plan. */
function brief() {
  const { chosen, figures } = store, things = chosen && kinds[chosen.kind](chosen);
  return things ? [
    el('span', {}, `${titleOf(chosen)}${opennessOf(chosen)}. ${figures?.words ?? ''}`),
    button('More', () => byId('chosen').scrollIntoView({ block: 'start' }), { 'data-key': 'more' })] : [];
}

/** Whether a door or window is open, in words. */
function opennessOf({ kind, name, level }) {
  const items = kind === 'opening' ? openingsOf(level, name) : [];
  return items.length > 0 ? ` is ${stateOf(items)}` : '';
}

const kinds = { spot: spotContent, seat: seatContent, opening: openingContent, wall: wallContent, fixture: fixtureContent };

function content() {
  const { chosen } = store, inner = chosen ? kinds[chosen.kind](chosen) : null;
  return [
    el('h2', {}, inner ? titleOf(chosen) : 'Try something'),
    ...(inner ?? [el('p', {}, 'Drag a spot or a seat, even to another level. Click a door to open or shut it, a wall or a fixture to change it.')]),
    el('div', { class: 'fields' }, finder(Boolean(inner)), ...forAll())];
}

/** The choices for the whole house. */
function forAll() {
  const { house } = store, radios = store.radios ?? [], seated = house.seats.filter(seat => seat.facing !== undefined && seat.facing !== null).map(seat => seat.name);
  const textOf = name => [name, radios.find(one => one.name === name)?.what].filter(text => text).join(': ');
  const radio = (label, kind) => select(label,
    [...new Set([house[kind], ...radios.map(one => one.name).sort((a, b) => Number(b.startsWith(kind)) - Number(a.startsWith(kind)))])].map(name => ({ value: name, text: textOf(name) })),
    house[kind], name => change({ kind, name }), { 'data-key': kind });
  return [radio('Console', 'console'), radio('Controllers', 'controller'),
    el('label', { class: 'check' }, el('input', {
      type: 'checkbox', 'data-key': 'people', checked: seated.length > 0 && seated.every(name => house.people.includes(name)), disabled: seated.length === 0,
      onchange: event => change({ kind: 'people', seats: event.target.checked ? seated : [] }),
    }), 'People on all seats')];
}

/** Loads the list of radios once. */
export async function loadRadios() {
  put({ radios: (await get('/radios'))?.rows ?? [] });
}

/** The heading for a thing; a door's name already says that it is a door. */
const titleOf = chosen => `${chosen.kind === 'opening' ? chosen.name[0].toUpperCase() + chosen.name.slice(1) : `${{ spot: 'Spot', seat: 'Seat', wall: 'Wall', fixture: 'Fixture' }[chosen.kind]} ${chosen.name}`}${levelOf(chosen)}`;

/** A list of all things by name, for keyboard users. */
function finder(isFound) {
  const { house } = store, options = [{ value: '', text: 'a door, wall or fixture…' }];
  const add = (kind, level, name, text) => options.push({ value: JSON.stringify({ kind, level, name }), text });
  house.levels.forEach((level, i) => {
    for (const name of new Set(level.openings.filter(item => item.kind !== 'gap').map(item => item.name))) {
      const items = openingsOf(i, name);
      add('opening', i, name, `${level.name}: ${counted(items)}, ${stateOf(items)}`);
    }
    for (const name of new Set(level.walls.map(item => item.name))) add('wall', i, name, `${level.name}: wall ${name}`);
    for (const item of level.fixtures) add('fixture', i, item.name, `${level.name}: ${item.name}`);
  });
  return select('Change', options, isFound && !['spot', 'seat'].includes(store.chosen.kind) ? JSON.stringify({ kind: store.chosen.kind, level: store.chosen.level, name: store.chosen.name }) : '',
    value => choose(value ? JSON.parse(value) : null), { 'data-key': 'find' });
}

/** Fields for level and place. */
function placeFields(kind, thing, height, ...more) {
  const { house } = store, { inFeet } = house, unit = inFeet ? 'ft' : 'm';
  const moved = values => ({ kind, name: thing.name, level: thing.level, x: thing.x, y: thing.y, height: thing[height], ...values });
  const field = (label, value, put) => el('label', { class: 'choice' }, el('span', {}, `${label}, ${unit}`), el('input', {
    type: 'number', step: inFeet ? '0.25' : '0.05', value: String(fieldValue(value, inFeet)), 'data-key': `${thing.name} ${label}`,
    onchange: event => { if (event.target.value !== '') changeFrom(event.target, moved(put(snapped(fieldMetres(Number(event.target.value), inFeet), inFeet)))); },
  }));
  return el('div', { class: 'fields' },
    select('Level', house.levels.map((level, i) => ({ value: String(i), text: level.name })), String(thing.level), level => change(moved({ level: Number(level) })), { 'data-key': `${thing.name} level` }),
    field('East', thing.x, x => ({ x })), field('North', thing.y, y => ({ y })), field(height === 'hands' ? 'Hands' : 'Height', thing[height], value => ({ height: value })),
    ...more);
}

/** A spot or seat at its current place, even while it is being moved. */
function placed(kind, things, name) {
  const thing = things.find(one => one.name === name);
  return thing && withPreview(kind, thing);
}

function spotContent({ name }) {
  const spot = placed('move-spot', store.house.spots, name);
  const cables = store.cables?.spots.find(one => one.spot === name);
  return spot && [
    placeFields('move-spot', spot, 'height'),
    spot.console && el('p', {}, `Its console, from the house file: ${spot.console}. The console chosen below is that of the other spots.`),
    cables && el('p', {}, cables.words),
    cables && cables.runs.length > 0 && el('details', { open: byId('chosen').querySelector('details')?.open ?? false }, el('summary', {}, 'Its cable runs'), el('ul', {}, ...cables.runs.map(text => el('li', {}, text)))),
  ];
}

function seatContent({ name }) {
  const seat = placed('move-seat', store.house.seats, name), { people } = store.house;
  return seat && [
    placeFields('move-seat', seat, 'hands',
      el('label', { class: 'choice', title: '0 is east, 90 north, 180 west, 270 south' }, el('span', {}, 'Facing, ° anticlockwise from east'), el('input', {
        type: 'number', step: '15', min: '0', max: '359', value: seat.facing === undefined ? '' : String(Math.round(seat.facing)), 'data-key': `${name} facing`,
        onchange: event => { if (event.target.value !== '') changeFrom(event.target, { kind: 'turn-seat', name, degrees: Number(event.target.value) }); },
      })),
      seat.facing !== undefined && el('label', { class: 'check' }, el('input', {
        type: 'checkbox', checked: people.includes(name), 'data-key': `${name} person`,
        onchange: event => change({ kind: 'people', seats: event.target.checked ? [...people, name] : people.filter(one => one !== name) }),
      }), 'Person here, also while others play')),
    el('p', { class: 'note' }, `${seat.faces ? `Faces ${seat.faces}. ` : ''}Requires ${seat.requiredDb} dB.${seat.plays ? ` Plays ${seat.plays}.` : ''}`),
    store.linkSeat !== name && button('Explain this link', () => put({ linkSeat: name }), { 'data-key': 'explain' }),
  ];
}

function openingContent({ name, level }) {
  const items = openingsOf(level, name), [item] = items, isOpen = items.every(one => one.open), state = stateOf(items), it = items.length > 1 ? 'them' : 'it';
  return item && [
    el('p', {}, `${state[0].toUpperCase()}${state.slice(1)}. Material: ${[...new Set(items.map(one => one.material))].join(', ')}.`),
    button(isOpen ? `Shut ${it}` : `Open ${it}`, () => change({ kind: 'set-opening', name, level, open: !isOpen }), { class: 'main', 'data-key': 'toggle' }),
    items.length > 1 && el('p', { class: 'note' }, `${items.length} ${item.kind}s have no name of their own and share this place, so they change together. To change one alone, give it a name in the house file.`),
    item.kind === 'door' && el('p', { class: 'note' }, 'Keep fire doors shut; local codes decide which doors are fire doors.'),
  ];
}

/** The text typed to search for a material. */
let typed = '';

function wallContent({ name, level }) {
  const wall = store.house.levels[level]?.walls.find(one => one.name === name);
  if (!wall) return null;
  const found = store.found ?? [];
  return [
    el('p', {}, `Material: ${wall.material}.`),
    el('label', { class: 'choice' }, el('span', {}, 'Another material'), el('input', {
      type: 'search', placeholder: 'brick, stud, glass…', value: typed, 'data-key': 'material', autocomplete: 'off', spellcheck: 'false',
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
  typed = text;
  const mine = ++asked, rows = text.trim() ? (await get(`/materials?words=${encodeURIComponent(text)}`))?.rows ?? [] : [];
  if (mine === asked) put({ found: rows });
}

function fixtureContent({ name, level }) {
  const item = store.house.levels[level]?.fixtures.find(one => one.name === name);
  return item && [
    el('p', {}, item.hollow ? `Hollow; its panels: ${item.material}.` : `Material: ${item.material}.`),
    button('Remove it', () => change({ kind: 'remove-fixture', name }), { 'data-key': 'remove' }),
    item.hollow && el('div', { class: 'row' }, ...['north', 'east', 'south', 'west', 'top'].map(side =>
      button(`Open ${side}`, () => change({ kind: 'open-side', name, side }), { 'data-key': `open ${side}` }))),
    item.hollow && el('p', { class: 'note' }, 'A metal rack may be earthed through its panels: ask a licensed electrician before you remove one.'),
  ];
}
