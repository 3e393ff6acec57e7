// Spots and seats on the plans, with the shapes of the pictures: a seat is a disc (full: it passes; a ring with a bar: it does not), a spot a diamond
// (full: the one shown; dashed: the same, on another level). Each has a label; that of a seat that does not pass is inverted.

import { svg } from './dom.js';
import { boxAround, overlaps, placeLabels } from './labels.js';
import { boxesOf } from './shapes.js';
import { store, withPreview } from './store.js';
import { lengthText } from './units.js';

const LINE = 15, PAD_X = 4, PAD_Y = 2, SIGN = 12, HANDLE = 26;

/** Draws the marks of a sheet and records the ground they take. @param {import('./plan.js').Sheet} sheet */
export function drawMarks(sheet) {
  if (sheet.width === 0) return;
  const [west, south, east, north] = sheet.level.bounds, scale = sheet.width / (east - west);
  const at = thing => ({ px: (thing.x - west) * scale, py: (north - thing.y) * scale });
  const inPixels = one => ({ left: (one.left - west) * scale, right: (one.right - west) * scale, top: (north - one.top) * scale, bottom: (north - one.bottom) * scale });
  const marks = [...seats(sheet, at), ...spots(sheet, at), ...places(sheet, at), ...elsewhere(sheet, at)];
  const walls = boxesOf(sheet.level.walls.map(item => item.shape).join('')).map(inPixels), solid = boxesOf(sheet.level.fixtures.map(item => item.outline).join('')).map(inPixels);
  const ground = marks.map(mark => boxAround(mark.px, mark.py, 2 * mark.reach, 2 * mark.reach));
  const floor = boxesOf(sheet.level.floor).map(inPixels), frame = floor.length > 0
    ? { left: Math.min(...floor.map(one => one.left)) + 3, right: Math.max(...floor.map(one => one.right)) - 3, top: Math.min(...floor.map(one => one.top)) + 3, bottom: Math.max(...floor.map(one => one.bottom)) - 3 }
    : { left: 2, top: 2, right: sheet.width - 2, bottom: sheet.height - 2 };
  for (const mark of marks) Object.assign(mark, sizeOf(mark));
  // A mark without a label still takes ground, and so does the handle of a selected seat.
  const bare = marks.filter(mark => mark.handle).map(({ handle }) => ({ ...handle, reach: 9, width: 1, height: 1, isOptional: true }));
  const found = placeLabels([...marks.map(mark => ({ ...mark, isOptional: mark.isOptional || mark.lines.length === 0 })), ...bare], frame, walls);
  marks.forEach((mark, i) => { mark.place = mark.lines.length > 0 ? found[i] : null; });
  sheet.taken = [...ground, ...marks.filter(mark => mark.place).map(mark => mark.place.box)];
  drawRooms(sheet, at, scale, [...walls, ...solid]);
  // On paper the plan has another size; with a viewBox everything drawn in pixels scales with it.
  sheet.marks.setAttribute('viewBox', `0 0 ${sheet.width} ${sheet.height}`);
  const focused = document.activeElement instanceof SVGElement && sheet.marks.contains(document.activeElement) ? document.activeElement.dataset.key : null;
  sync(sheet.marks, marks);
  if (focused && document.activeElement?.dataset?.key !== focused) sheet.marks.querySelector(`[data-key="${CSS.escape(focused)}"]`)?.focus({ preventScroll: true });
}

/** Draws the names of rooms with enough space, off all marks and structures. */
function drawRooms(sheet, at, scale, built) {
  const named = sheet.level.rooms.flatMap(room => {
    const middle = at(room), width = widthOf(room.name, false), places = [0, -1.2, 1.2, -2.4, 2.4, -4, 4].map(lines => ({ x: middle.px, y: middle.py + lines * LINE }));
    if (width > room.width * scale - 8) return [];
    const free = places.map(place => ({ ...place, box: boxAround(place.x, place.y, width + 4, LINE - 2) }))
      .filter(place => Math.abs(place.y - middle.py) < room.height * scale / 2 - LINE / 2)
      .find(place => ![...sheet.taken, ...built].some(other => overlaps(place.box, other)));
    if (free) sheet.taken.push(free.box);
    return free ? [{ ...free, name: room.name }] : [];
  });
  const drawn = named.map(room => `${room.name} ${room.x.toFixed(0)} ${room.y.toFixed(0)}`).join('|');
  let layer = sheet.marks.querySelector('.rooms-named');
  if (layer?.drawn === drawn) return;
  layer?.remove();
  layer = svg('g', { class: 'rooms-named', 'aria-hidden': 'true' }, ...named.map(room => svg('text', { x: room.x, y: room.y + 4, class: 'room' }, room.name)));
  layer.drawn = drawn;
  sheet.marks.prepend(layer);
}

const ruler = document.createElement('canvas').getContext('2d');
/** @type {Map<string, number>} */
const widths = new Map();
document.fonts.addEventListener('loadingdone', () => widths.clear());

/** The width of a text on a plan, pixels. @param {string} text @param {boolean} isBold */
function widthOf(text, isBold) {
  const key = `${isBold} ${text}`;
  if (!widths.has(key)) {
    if (widths.size > 2000) widths.clear();
    ruler.font = `${isBold ? 'bold ' : ''}13px ${getComputedStyle(document.body).fontFamily}`;
    widths.set(key, ruler.measureText(text).width);
  }
  return widths.get(key);
}

/** The size of a mark's label. */
function sizeOf(mark) {
  const widest = Math.max(0, ...mark.lines.map((line, i) => widthOf(line, i > 0) + (i > 0 && mark.sign ? SIGN : 0)));
  return { width: Math.ceil(widest) + 2 * PAD_X, height: mark.lines.length * LINE + 2 * PAD_Y };
}

/** Elements are kept as long as their mark exists, so that they keep focus and pointer capture. */
function sync(layer, marks) {
  const old = new Map([...layer.querySelectorAll('.mark')].map(element => [element.dataset.key, element]));
  marks.forEach((mark, i) => {
    const element = old.get(mark.key) ?? svg('g', mark.isQuiet ? { 'aria-hidden': 'true', dataset: { key: mark.key } } : { tabindex: 0, role: 'button', dataset: { key: mark.key, kind: mark.kind, name: mark.name } });
    old.delete(mark.key);
    element.setAttribute('transform', `translate(${mark.px.toFixed(1)} ${mark.py.toFixed(1)})`);
    element.setAttribute('class', `mark ${mark.cls}`);
    if (!mark.isQuiet) element.setAttribute('aria-label', mark.spoken);
    const box = mark.place?.box, drawn = `${mark.cls} ${mark.facing} ${mark.lines.join('|')} ${box ? `${(box.left - mark.px).toFixed(0)} ${(box.top - mark.py).toFixed(0)} ${mark.width}` : ''}`;
    if (element.drawn !== drawn) {
      element.drawn = drawn;
      element.replaceChildren(...label(mark), ...mark.shape());
    }
    const place = layer.querySelectorAll('.mark')[i];
    if (place !== element) layer.insertBefore(element, place ?? null);
  });
  for (const element of old.values()) element.remove();
}

function spots(sheet, at) {
  return store.house.spots.map(spot => withPreview('move-spot', spot)).filter(spot => spot.level === sheet.index).map(spot => {
    const isShown = spot.name === store.spot, isChosen = store.chosen?.kind === 'spot' && store.chosen.name === spot.name;
    return {
      ...at(spot), reach: 9, key: `spot ${spot.name}`, kind: 'spot', name: spot.name, lines: [spot.name],
      cls: `spot${isShown ? ' shown' : ''}${isChosen ? ' chosen' : ''}`,
      spoken: `Spot ${spot.name}${isShown ? ', shown' : ''}, at ${lengthText(spot.x, store.house.inFeet)} east, ${lengthText(spot.y, store.house.inFeet)} north, ${lengthText(spot.height, store.house.inFeet)} high`,
      shape: () => [svg('circle', { r: 14, class: 'hit' }), svg('path', { d: 'M0 -8L8 0L0 8L-8 0Z', class: 'body' })],
    };
  });
}

/** The shown spot, drawn on the other levels as in the pictures. */
function elsewhere(sheet, at) {
  return store.house.spots.filter(spot => spot.name === store.spot).map(spot => withPreview('move-spot', spot)).filter(spot => spot.level !== sheet.index).map(spot => ({
    ...at(spot), reach: 8, key: `elsewhere ${spot.name}`, isQuiet: true, isOptional: true, lines: store.level >= 0 ? [`${spot.name} (on ${store.house.levels[spot.level].name})`] : [], cls: 'elsewhere',
    shape: () => [svg('path', { d: 'M0 -7L7 0L0 7L-7 0Z', class: 'body' })],
  }));
}

function seats(sheet, at) {
  const figures = new Map((store.figures?.seats ?? []).map(figure => [figure.seat, figure]));
  return store.house.seats.map(seat => withPreview('move-seat', seat)).filter(seat => seat.level === sheet.index).map(seat => {
    const figure = figures.get(seat.name), isChosen = store.chosen?.kind === 'seat' && store.chosen.name === seat.name;
    const verdict = !figure ? 'plain' : figure.passes ? 'passes' : 'fails', isOccupied = store.house.people.includes(seat.name), turns = seat.facing !== undefined && seat.facing !== null;
    const place = at(seat), angle = (seat.facing ?? 0) * Math.PI / 180, handle = isChosen && turns ? { x: HANDLE * Math.cos(angle), y: -HANDLE * Math.sin(angle) } : null;
    return {
      ...place, handle: handle && { px: place.px + handle.x, py: place.py + handle.y }, reach: turns ? 12 : 8, key: `seat ${seat.name}`, kind: 'seat', name: seat.name, facing: seat.facing, sign: Boolean(figure), passes: figure?.passes,
      lines: figure ? [seat.name, `${figure.countOn} ${figure.passes ? '≥' : '<'} ${seat.requiredDb} dB`] : [seat.name],
      cls: `seat ${verdict}${isOccupied ? ' occupied' : ''}${isChosen ? ' chosen' : ''}`,
      spoken: `Seat ${seat.name}${figure ? `: ${figure.countOn} decibels to count on, ${figure.passes ? 'passes' : 'does not pass'} the required ${seat.requiredDb}` : ''}${isOccupied ? ', somebody sits there' : ''}`,
      shape: () => [
        svg('circle', { r: 14, class: 'hit' }),
        ...(turns ? [svg('path', { d: 'M12 0L3 6L3 -6Z', class: 'facing', transform: `rotate(${-seat.facing})` })] : []),
        ...(isOccupied ? [svg('circle', { r: 10, class: 'person' })] : []),
        svg('circle', { r: 5.5, class: 'body' }),
        ...(verdict === 'fails' ? [svg('path', { d: 'M-3 3L3 -3', class: 'bar' })] : []),
        ...(handle ? [svg('circle', { r: 7, class: 'turn', cx: handle.x, cy: handle.y }, svg('title', {}, 'Drag to turn the seat'))] : []),
      ],
    };
  });
}

/** Marks for results of a search; results at the same place share one mark, that of the first. */
function places(sheet, at) {
  const here = (store.job?.results ?? []).map((result, i) => ({ ...result, i })).filter(result => result.level === sheet.index && result.x !== undefined);
  return here.filter((result, i) => here.findIndex(other => other.x === result.x && other.y === result.y) === i).map(result => ({
    ...at(result), reach: 8, key: `place ${result.i}`, kind: 'place', name: String(result.i), cls: 'place',
    lines: [here.filter(other => other.x === result.x && other.y === result.y).map(other => other.i + 1).join(', ')],
    spoken: `Result ${result.i + 1}: ${result.title}, ${result.gain}. Try it.`,
    shape: () => [svg('circle', { r: 13, class: 'hit' }), svg('path', { d: 'M0 -7L7 0L0 7L-7 0Z', class: 'body' })],
  }));
}

function label({ px, py, lines, sign, passes, place, width, height }) {
  if (!place) return [];
  const left = place.box.left - px, top = place.box.top - py, x = left + PAD_X, base = i => top + PAD_Y + (i + 0.76) * LINE;
  const nearest = (value, from, to) => Math.max(from, Math.min(to, value));
  const to = `L${nearest(0, left + PAD_X, left + width - PAD_X)} ${nearest(0, top, top + height)}`;
  return [
    ...(place.hasLeader ? [svg('path', { d: `M0 0${to}`, class: 'leader casing' }), svg('path', { d: `M0 0${to}`, class: 'leader' })] : []),
    svg('rect', { x: left, y: top, width, height, rx: 2, class: 'label' }),
    ...lines.map((line, i) => svg('text', { x: i > 0 && sign ? x + SIGN : x, y: base(i), class: i > 0 ? 'figure' : 'name' }, line)),
    ...(sign ? [svg('path', { d: passes ? 'M.5 5L3.2 8L8.5 1' : 'M1 1L8 8M8 1L1 8', class: 'sign', transform: `translate(${x} ${base(1) - 9})` })] : []),
  ];
}
