// Spots and seats on the plans, in the shapes of the pictures: a seat is a disc (full: it passes; a ring with a bar: it does not), a spot a diamond
// (full: the one that is shown).

import { svg } from './dom.js';
import { store, withPreview } from './store.js';
import { lengthText } from './units.js';

const LINE = 14, GAP = 11;

/** Draws the marks of a sheet. @param {import('./plan.js').Sheet} sheet */
export function drawMarks(sheet) {
  const box = sheet.marks.getBoundingClientRect();
  if (box.width === 0) return;
  const [west, south, east, north] = sheet.level.bounds, scale = box.width / (east - west);
  const at = thing => ({ px: (thing.x - west) * scale, py: (north - thing.y) * scale });
  const marks = [...spots(sheet, at), ...seats(sheet, at), ...places(sheet, at)];
  const taken = marks.map(mark => ({ left: mark.px - 9, right: mark.px + 9, top: mark.py - 9, bottom: mark.py + 9 }));
  for (const mark of marks) placeLabel(mark, taken, box);
  drawRooms(sheet, at, scale, taken);
  const focused = document.activeElement instanceof SVGElement && sheet.marks.contains(document.activeElement) ? document.activeElement.dataset.key : null;
  sync(sheet.marks, marks);
  if (focused && document.activeElement?.dataset?.key !== focused) sheet.marks.querySelector(`[data-key="${CSS.escape(focused)}"]`)?.focus({ preventScroll: true });
}

/** Names of rooms that have room for them, under all marks. */
function drawRooms(sheet, at, scale, taken) {
  const fitting = sheet.level.rooms.map(room => ({ ...room, ...at(room) })).filter(room => {
    const width = widthOf(room.name, false), box = { left: room.px - width / 2, right: room.px + width / 2, top: room.py - 9, bottom: room.py + 5 };
    const fits = width < room.width * scale - 4 && !taken.some(other => overlap(box, other));
    if (fits) taken.push(box);
    return fits;
  });
  const drawn = fitting.map(room => `${room.name} ${room.px.toFixed(0)} ${room.py.toFixed(0)}`).join('|');
  let layer = sheet.marks.querySelector('.rooms-named');
  if (layer?.drawn === drawn) return;
  layer?.remove();
  layer = svg('g', { class: 'rooms-named', 'aria-hidden': 'true' }, ...fitting.map(room => svg('text', { x: room.px, y: room.py, class: 'room' }, room.name)));
  layer.drawn = drawn;
  sheet.marks.prepend(layer);
}

const ruler = document.createElement('canvas').getContext('2d');
/** @type {Map<string, number>} */
const widths = new Map();

/** How wide a text is on a plan, pixels. @param {string} text @param {boolean} isBold */
function widthOf(text, isBold) {
  const key = `${isBold} ${text}`;
  if (!widths.has(key)) {
    if (widths.size > 2000) widths.clear();
    ruler.font = `${isBold ? 'bold 13px' : '12px'} ${getComputedStyle(document.body).fontFamily}`;
    widths.set(key, ruler.measureText(text).width);
  }
  return widths.get(key);
}

const overlap = (one, other) => other.left < one.right && other.right > one.left && other.top < one.bottom && other.bottom > one.top;

/** Elements stay as long as their mark does, so that focus and pointer stay with them. */
function sync(layer, marks) {
  const old = new Map([...layer.querySelectorAll('.mark')].map(element => [element.dataset.key, element]));
  marks.forEach((mark, i) => {
    const element = old.get(mark.key) ?? svg('g', { tabindex: 0, role: 'button', dataset: { key: mark.key, kind: mark.kind, name: mark.name } });
    old.delete(mark.key);
    element.setAttribute('transform', `translate(${mark.px.toFixed(1)} ${mark.py.toFixed(1)})`);
    element.setAttribute('class', `mark ${mark.cls}`);
    element.setAttribute('aria-label', mark.spoken);
    const drawn = `${mark.cls} ${mark.facing} ${mark.lines.join('|')} ${mark.lx?.toFixed(0)} ${mark.ly?.toFixed(0)} ${mark.anchor}`;
    if (element.drawn !== drawn) {
      element.drawn = drawn;
      element.replaceChildren(...mark.shape(), ...label(mark));
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
      ...at(spot), key: `spot ${spot.name}`, kind: 'spot', name: spot.name, lines: [spot.name],
      cls: `spot${isShown ? ' shown' : ''}${isChosen ? ' chosen' : ''}`,
      spoken: `Spot ${spot.name}${isShown ? ', shown' : ''}, at ${lengthText(spot.x, store.house.inFeet)} east, ${lengthText(spot.y, store.house.inFeet)} north, ${lengthText(spot.height, store.house.inFeet)} high`,
      shape: () => [svg('circle', { r: 14, class: 'hit' }), svg('path', { d: 'M0 -8L8 0L0 8L-8 0Z', class: 'body' })],
    };
  });
}

function seats(sheet, at) {
  const figures = new Map((store.figures?.seats ?? []).map(figure => [figure.seat, figure]));
  return store.house.seats.map(seat => withPreview('move-seat', seat)).filter(seat => seat.level === sheet.index).map(seat => {
    const figure = figures.get(seat.name), isChosen = store.chosen?.kind === 'seat' && store.chosen.name === seat.name;
    const verdict = !figure ? 'plain' : figure.passes ? 'passes' : 'fails', isOccupied = store.house.people.includes(seat.name);
    return {
      ...at(seat), key: `seat ${seat.name}`, kind: 'seat', name: seat.name, facing: seat.facing,
      lines: figure ? [seat.name, `${figure.countOn} dB`] : [seat.name],
      cls: `seat ${verdict}${isOccupied ? ' occupied' : ''}${isChosen ? ' chosen' : ''}`,
      spoken: `Seat ${seat.name}${figure ? `: ${figure.countOn} decibels to count on, ${figure.passes ? 'passes' : 'does not pass'} the required ${seat.requiredDb}` : ''}${isOccupied ? ', somebody sits there' : ''}`,
      shape: () => [
        svg('circle', { r: 14, class: 'hit' }),
        ...(seat.facing === undefined || seat.facing === null ? [] : [svg('path', { d: 'M12 0L3 6L3 -6Z', class: 'facing', transform: `rotate(${-seat.facing})` })]),
        ...(isOccupied ? [svg('circle', { r: 10, class: 'person' })] : []),
        svg('circle', { r: 5.5, class: 'body' }),
        ...(verdict === 'fails' ? [svg('path', { d: 'M-3 3L3 -3', class: 'bar' })] : []),
        ...(isChosen && seat.facing !== undefined && seat.facing !== null
          ? [svg('circle', { r: 6, class: 'turn', cx: 26 * Math.cos(seat.facing * Math.PI / 180), cy: -26 * Math.sin(seat.facing * Math.PI / 180) }, svg('title', {}, 'Drag to turn the seat'))]
          : []),
      ],
    };
  });
}

/** Results of a search. */
function places(sheet, at) {
  return (store.job?.results ?? []).map((result, i) => ({ ...result, i })).filter(result => result.level === sheet.index && result.x !== undefined).map(result => ({
    ...at(result), key: `place ${result.i}`, kind: 'place', name: String(result.i), lines: [String(result.i + 1)], cls: 'place',
    spoken: `Result ${result.i + 1}: ${result.title}, ${result.gain}. Try it.`,
    shape: () => [svg('circle', { r: 12, class: 'hit' }), svg('path', { d: 'M0 -7L7 0L0 7L-7 0Z', class: 'body' })],
  }));
}

function label(mark) {
  return mark.lx === undefined ? [] : [svg('text', { x: mark.lx, y: mark.ly, 'text-anchor': mark.anchor },
    ...mark.lines.map((line, i) => svg('tspan', { x: mark.lx, dy: i === 0 ? 0 : LINE, class: i === 0 ? 'name' : 'figure' }, line)))];
}

/** The first of some places beside the mark that is free; the one beside it where none is. */
function placeLabel(mark, taken, box) {
  const width = Math.max(...mark.lines.map((line, i) => widthOf(line, i > 0 || mark.kind === 'spot'))) + 4, height = mark.lines.length * LINE;
  const middle = -height / 2 + LINE * 0.78;
  const candidates = [
    { lx: GAP, ly: middle, anchor: 'start', left: GAP }, { lx: -GAP, ly: middle, anchor: 'end', left: -GAP - width },
    { lx: 0, ly: GAP + LINE * 0.8, anchor: 'middle', left: -width / 2 }, { lx: 0, ly: -GAP - height + LINE * 0.8, anchor: 'middle', left: -width / 2 },
    { lx: GAP, ly: middle + 14, anchor: 'start', left: GAP }, { lx: GAP, ly: middle - 14, anchor: 'start', left: GAP },
    ...[-0.25, -0.75].flatMap(share => [GAP + LINE * 0.8, -GAP - height + LINE * 0.8].map(ly => ({ lx: share * width, ly, anchor: 'start', left: share * width }))),
    { lx: -GAP, ly: middle + 14, anchor: 'end', left: -GAP - width }, { lx: -GAP, ly: middle - 14, anchor: 'end', left: -GAP - width },
  ].map(one => ({ ...one, box: { left: mark.px + one.left, right: mark.px + one.left + width, top: mark.py + one.ly - LINE * 0.8, bottom: mark.py + one.ly - LINE * 0.8 + height } }));
  const isFree = one => one.box.left >= 0 && one.box.right <= box.width && one.box.top >= 0 && one.box.bottom <= box.height
    && !taken.some(other => overlap(one.box, other));
  const found = candidates.find(isFree) ?? candidates[0];
  Object.assign(mark, { lx: found.lx, ly: found.ly, anchor: found.anchor });
  taken.push(found.box);
}
