// The plans: for each level a canvas with the field, above it an SVG with the structure, and another with the marks.

import { byId, el, refill, svg } from './dom.js';
import { isWanted, painted } from './live.js';
import { drawMarks } from './marks.js';
import { paint } from './painter.js';
import { probabilityOf, normalQuantile, Surface } from './surface.js';
import { put, store } from './store.js';

/**
 * One level on the screen.
 * @typedef {Object} Sheet
 * @property {any} level
 * @property {number} index
 * @property {HTMLElement} figure
 * @property {HTMLElement} stack
 * @property {HTMLCanvasElement} canvas
 * @property {SVGSVGElement} built
 * @property {SVGGElement} paths
 * @property {SVGSVGElement} marks
 * @property {any} painted the field currently on the canvas
 * @property {number} width of the plan on the screen, pixels; 0 while unknown
 * @property {number} height
 * @property {import('./labels.js').Box[]} taken ground under marks and labels, pixels
 */

/** @type {Sheet[]} */
export let sheets = [];
let drawnHouse = null, drawnLevel = -2;

// The observer reports sizes only when they change: reading them while things move would force a layout for each plan.
const sizes = new ResizeObserver(entries => {
  for (const { target, contentRect } of entries) {
    const sheet = sheets.find(one => one.stack === target);
    if (sheet) Object.assign(sheet, { width: contentRect.width, height: contentRect.height });
  }
  redraw();
});
document.fonts.addEventListener('loadingdone', redraw);

const PAPER_RATIO = 3;
let isPrinting = false;

/** Paints at a higher resolution for printing, and as before afterwards. @param {boolean} isBegun */
export function print(isBegun) {
  isPrinting = isBegun;
  redraw();
}

/** Redraws everything, for another size or font. */
function redraw() {
  for (const sheet of sheets) sheet.painted = null;
  draw(new Set(['fields']));
}

/** Draws what has changed. @param {Set<string>} changed */
export function draw(changed) {
  if (!store.house) return;
  if (store.house !== drawnHouse || store.level !== drawnLevel) {
    build();
    changed.add('all');
  }
  for (const sheet of sheets) {
    drawMarks(sheet);
    drawField(sheet);
    // A map may be painted before what it answers is noted as changed, so this depends on nothing but the two.
    sheet.figure.dataset.fine = String(Boolean(sheet.painted?.isFine && isWanted(sheet.painted)));
    if (changed.has('link') || changed.has('all')) drawPaths(sheet);
    if (changed.has('chosen') || changed.has('all')) showChosen(sheet);
  }
  const first = sheets[0], [west, , east] = first?.level.bounds ?? [0, 0, 1];
  if (first) put({ pixelsPerMetre: Math.round(100 * first.width / (east - west)) / 100 });
  for (; store.unpainted > 0; store.unpainted--) painted();
}

function build() {
  drawnHouse = store.house;
  drawnLevel = store.level;
  const old = sheets;
  sizes.disconnect();
  sheets = store.house.levels.map((level, index) => ({ level, index })).filter(one => store.level < 0 || one.index === store.level).map(one => sheetOf(one, old));
  const figures = sheets.map(sheet => sheet.figure).reverse();
  if (figures.length !== byId('plans').children.length || figures.some((figure, i) => figure !== byId('plans').children[i])) refill(byId('plans'), ...figures);
  byId('plans').classList.toggle('single', sheets.length === 1);
  for (const sheet of sheets) sizes.observe(sheet.stack);
}

/** The sheet of a level. Canvas and marks layer are reused: the map never flickers, and a mark moved by keys keeps the focus. */
function sheetOf({ level, index }, old) {
  const was = old.find(sheet => sheet.index === index), paths = svg('g', { class: 'paths' });
  const built = builtOf(level, index, paths);
  if (was && was.level.name === level.name && String(was.level.bounds) === String(level.bounds)) {
    was.built.replaceWith(built);
    return Object.assign(was, { level, built, paths });
  }
  const canvas = el('canvas', { 'aria-hidden': 'true' });
  const marks = svg('svg', { class: 'marks', role: 'group', 'aria-label': `Spots and seats on ${level.name}` });
  const [west, south, east, north] = level.bounds;
  const stack = el('div', { class: 'stack', tabindex: 0, role: 'group', 'aria-label': `Map of ${level.name}: the arrow keys read the margin` }, canvas, built, marks);
  stack.style.aspectRatio = `${east - west} / ${north - south}`;
  stack.style.setProperty('--ratio', String((east - west) / (north - south)));
  const figure = el('figure', { class: 'level', dataset: { level: index } }, el('figcaption', {}, level.name), stack);
  return { level, index, figure, stack, canvas, built, paths, marks, painted: null, width: 0, height: 0, taken: [] };
}

/** @param {any} level @param {number} index @param {SVGGElement} paths */
function builtOf(level, index, paths) {
  const [west, south, east, north] = level.bounds;
  const path = (shape, cls, data) => svg('path', { d: shape, class: cls, ...data });
  const thing = (kind, item) => ({ dataset: { kind, name: item.name, level: String(index) } });
  const chosenBy = (kind, item, shape, cls, words) => {
    const { dataset } = thing(kind, item);
    return svg('path', { d: shape, class: cls, dataset: { ...dataset, words } });
  };
  const group = svg('g', { transform: 'scale(1,-1)' },
    path(level.floor, 'rooms'),
    path(level.joists, 'joists', { 'clip-path': `url(#floor-${index})` }),
    path(level.voids, 'voids'),
    ...store.house.zones.filter(zone => zone.level === index).map(zone => path(zone.outline, 'zone')),
    ...level.fixtures.flatMap(item => [
      chosenBy('fixture', item, item.outline, item.hollow ? 'fixture hollow' : 'fixture', item.name === item.material ? item.name : `${item.name}: ${item.material}`),
      path(item.sides, 'sides')]),
    ...level.walls.filter(item => !item.full).map(item => chosenBy('wall', item, item.shape, 'wall low', `${item.name}: ${item.material}`)),
    path(level.walls.filter(item => item.full).map(item => item.shape).join(''), 'casing'),
    ...level.walls.filter(item => item.full).map(item => chosenBy('wall', item, item.shape, 'wall', `${item.name}: ${item.material}`)),
    ...level.openings.flatMap(item => [
      path(item.shape, `hole ${item.kind}`),
      item.swing && path(item.swing, 'swing'),
      item.leaf && path(item.leaf, `leaf ${item.kind}`),
      item.kind !== 'gap' && chosenBy('opening', item, item.shape, 'grip', `${item.name}: ${item.open ? 'open' : 'shut'}, ${item.material}${item.kind !== 'door' ? '' : item.open ? '. Click to shut it' : '. Click to open it'}`)]),
    paths);
  return svg('svg', { class: 'built', viewBox: `${west} ${-north} ${east - west} ${north - south}`, 'aria-hidden': 'true' },
    svg('clipPath', { id: `floor-${index}` }, path(level.floor)), group);
}

/** @param {Sheet} sheet */
function drawField(sheet) {
  const field = store.fields[sheet.index];
  if (!field || !store.scale) return;
  // The figures on a fine map avoid the labels, so it is painted again when labels move.
  const key = `${store.layer} ${store.house.version} ${field.isFine ? sheet.taken.map(box => `${box.left.toFixed(0)},${box.top.toFixed(0)},${box.right.toFixed(0)}`).join(' ') : ''}`;
  if (sheet.painted === field && sheet.paintedKey === key) return;
  const ratio = (window.devicePixelRatio || 1) * (isPrinting ? PAPER_RATIO : 1), [west, south, east, north] = sheet.level.bounds;
  const width = Math.round(sheet.width * ratio);
  if (width === 0) return;
  sheet.canvas.width = width;
  sheet.canvas.height = Math.round(width * (north - south) / (east - west));
  paint(sheet.canvas, field, { layer: store.layer, house: store.house, scale: store.scale, level: sheet.level, taken: sheet.taken, ratio });
  sheet.painted = field;
  sheet.paintedKey = key;
}

/** @param {Sheet} sheet */
function drawPaths(sheet) {
  // A level that no path touches stays free of them.
  const all = (store.link?.paths ?? []).slice().reverse().flatMap(path => path.parts.map(part => ({ path, part })));
  const parts = all.some(({ part }) => part.level === sheet.index) ? all : [];
  sheet.paths.replaceChildren(...parts.map(({ path, part }) => svg('polyline', {
    points: pointsText(part.points),
    class: `path ${path.kind} ${part.level === sheet.index ? '' : 'elsewhere'}`,
    'stroke-width': part.level === sheet.index ? path.width * 1.2 : 0.9,
  })));
}

/** @param {number[]} points alternating x and y */
export const pointsText = points => points.map((value, i) => i % 2 === 0 ? value : `${value} `).join(' ');

/** @param {Sheet} sheet */
function showChosen(sheet) {
  for (const element of sheet.built.querySelectorAll('[data-kind]')) {
    const chosen = store.chosen;
    element.classList.toggle('chosen', Boolean(chosen) && chosen.kind === element.dataset.kind && chosen.name === element.dataset.name && chosen.level === sheet.index);
  }
}

/**
 * The place at a screen position: its level and metres on the plan; null outside all plans.
 * @param {number} clientX
 * @param {number} clientY
 */
export function placeAt(clientX, clientY) {
  for (const sheet of sheets) {
    const box = sheet.built.getBoundingClientRect();
    if (clientX >= box.left && clientX <= box.right && clientY >= box.top && clientY <= box.bottom) {
      const [west, , east, north] = sheet.level.bounds, scale = (east - west) / box.width;
      return { sheet, level: sheet.index, x: west + (clientX - box.left) * scale, y: north - (clientY - box.top) * scale };
    }
  }
  return null;
}

/** The screen position of a place on a plan; null if its level is not shown. @param {number} level @param {number} x @param {number} y */
export function screenAt(level, x, y) {
  const sheet = sheets.find(one => one.index === level);
  if (!sheet) return null;
  const box = sheet.built.getBoundingClientRect(), [west, , east, north] = sheet.level.bounds, scale = box.width / (east - west);
  return { x: box.left + (x - west) * scale, y: box.top + (north - y) * scale };
}

/**
 * The margins of the map at a place, in words; empty outside.
 * @param {number} level
 * @param {number} x
 * @param {number} y
 */
export function marginAt(level, x, y) {
  const field = store.fields[level], house = store.house;
  if (!field || !house) return '';
  const countOn = new Surface(field, field.countOn).at(x, y), median = new Surface(field, field.median).at(x, y);
  const isBuilt = house.levels[level].fixtures.some(item => item.fills && isIn(item.outline, x, y)) || !isIn(house.levels[level].floor, x, y);
  if (Number.isNaN(countOn) || isBuilt) return '';
  const likely = probabilityOf(median, countOn, house.requiredDb, normalQuantile(house.confidence));
  const tenth = db => (Math.floor(db * 10) / 10).toFixed(1);
  return `${tenth(countOn)} dB to count on, median ${tenth(median)} dB, probability of ${house.requiredDb} dB: ${Math.min(99, Math.max(1, Math.round(likely * 100)))} %`;
}

const tester = document.createElement('canvas').getContext('2d');
/** @type {Map<string, Path2D>} */
const shapes = new Map();

/** @param {string} shape @param {number} x @param {number} y */
function isIn(shape, x, y) {
  if (shapes.size > 500) shapes.clear();
  if (!shapes.has(shape)) shapes.set(shape, new Path2D(shape));
  return tester.isPointInPath(/** @type {Path2D} */ (shapes.get(shape)), x, y);
}
