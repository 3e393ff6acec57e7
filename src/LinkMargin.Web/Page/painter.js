// Paints a level's field on its canvas: tones that end at contour lines, lines with figures, hatching; clipped to the rooms.

import { placeFigures } from './figures.js';
import { boxesOf } from './shapes.js';
import { Surface, contour, hatch, normalQuantile, probabilityOf } from './surface.js';

const HATCH_PIXELS = 9;
const PROBABILITY_LINES = [0.1, 0.3, 0.5, 0.7, 0.9];
const FIGURE_PIXELS = 12, FIGURE_APART_PIXELS = 170;
const INK = '#1b2029', PAPER = '#fff';

/**
 * The shown layer of a field, as a surface.
 * @param {import('./frame.js').FieldFrame} field
 * @param {string} layer
 * @param {any} house
 */
export function surfaceOf(field, layer, house) {
  if (layer === 'median') return new Surface(field, field.median);
  if (layer === 'countOn') return new Surface(field, field.countOn);
  const deviations = normalQuantile(house.confidence), values = new Float32Array(field.median.length);
  for (let i = 0; i < values.length; i++) values[i] = probabilityOf(field.median[i], field.countOn[i], house.requiredDb, deviations);
  return new Surface(field, values);
}

/**
 * Paints a field.
 * @param {HTMLCanvasElement} canvas
 * @param {import('./frame.js').FieldFrame} field
 * @param {{layer: string, house: any, scale: any, level: any, taken: import('./labels.js').Box[], ratio: number}} what `taken`: ground, in pixels,
 *   without figures; `ratio`: canvas dots per pixel
 */
export function paint(canvas, field, { layer, house, scale, level, taken, ratio }) {
  const context = canvas.getContext('2d');
  const [west, south, east, north] = level.bounds;
  const perMetre = canvas.width / (east - west), pixel = ratio / perMetre;
  const shown = surfaceOf(field, layer, house);
  const below = layer === 'countOn' ? shown : new Surface(field, field.countOn);
  const toMetres = () => context.setTransform(perMetre, 0, 0, -perMetre, -west * perMetre, north * perMetre);
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, canvas.width, canvas.height);
  context.save();
  toMetres();
  context.clip(clipOf(level), 'evenodd');
  context.fillStyle = PAPER;
  context.fillRect(west, south, east - west, north - south);
  drawTones(context, canvas, shown, toneOf(layer, scale), { west, north, perMetre });
  toMetres();
  const strokes = hatch(below, house.requiredDb, HATCH_PIXELS * pixel);
  stroke(context, strokes, 1.8 * pixel, 'rgba(255,255,255,.25)');
  stroke(context, strokes, 0.8 * pixel, 'rgba(27,32,41,.68)');
  const isShare = layer === 'probability';
  const thin = (isShare ? PROBABILITY_LINES : scale.lines).filter(value => isShare || value !== house.requiredDb);
  const lines = [
    // The margin that most seats require is boldest, those of others are dashed, as in the pictures; these lines always show the margin to count on.
    { surface: below, value: house.requiredDb, width: 2.4, isHeavy: true },
    ...(layer === 'countOn' ? othersOf(house) : []).map(value => ({ surface: below, value, width: 1.5, isHeavy: true, isDashed: true })),
    ...thin.filter(value => layer !== 'countOn' || !othersOf(house).includes(value)).map(value => ({ surface: shown, value, width: value % 10 === 0 ? 1 : 0.7 })),
  ].map(line => ({ ...line, drawn: contour(line.surface, line.value) }));
  for (const line of lines.slice().reverse()) {
    context.setLineDash([]);
    if (line.isHeavy) strokeLines(context, line.drawn, (line.width + 2.2) * pixel, 'rgba(255,255,255,.85)');
    if (line.isDashed) context.setLineDash([6 * pixel, 3.5 * pixel]);
    strokeLines(context, line.drawn, line.width * pixel, line.isHeavy ? INK : 'rgba(27,32,41,.7)');
  }
  context.setLineDash([]);
  context.restore();
  if (field.isFine) drawFigures(context, lines, { ratio, taken, layer, level, perPixel: perMetre / ratio });
}

/** Required margins other than that of most seats. @param {any} house @returns {number[]} */
const othersOf = house => [...new Set(house.seats.map(seat => seat.requiredDb))].filter(value => value !== house.requiredDb);

/** Draws figures on the lines, boldest first. */
function drawFigures(context, lines, { ratio, taken, layer, level, perPixel }) {
  const [west, , , north] = level.bounds, free = taken.slice();
  const built = [...level.walls.map(item => item.shape), ...level.openings.map(item => item.shape), ...level.fixtures.filter(item => item.fills).map(item => item.outline)].flatMap(boxesOf);
  for (const one of built) free.push({ left: (one.left - west) * perPixel, right: (one.right - west) * perPixel, top: (north - one.top) * perPixel, bottom: (north - one.bottom) * perPixel });
  const floor = boxesOf(level.floor);
  const isOnFloor = (x, y) => floor.length === 0 || floor.some(one => x > (one.left - west) * perPixel && x < (one.right - west) * perPixel && y > (north - one.top) * perPixel && y < (north - one.bottom) * perPixel);
  context.save();
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.lineJoin = 'round';
  for (const line of lines) {
    const text = layer === 'probability' && !line.isHeavy ? `${Math.round(line.value * 100)} %` : layer !== 'countOn' && line.isHeavy ? `${line.value} dB` : String(line.value);
    context.font = `${line.isHeavy ? 'bold ' : ''}${FIGURE_PIXELS}px ${getComputedStyle(document.body).fontFamily}`;
    const width = context.measureText(text).width + 3;
    for (const metres of line.drawn) {
      const pixels = metres.map((value, i) => i % 2 === 0 ? (value - west) * perPixel : (north - value) * perPixel);
      for (const { x, y, turn } of placeFigures(pixels, width, FIGURE_PIXELS, FIGURE_APART_PIXELS, free, isOnFloor)) {
        context.save();
        context.translate(x, y);
        context.rotate(turn);
        context.strokeStyle = 'rgba(255,255,255,.92)';
        context.lineWidth = 4;
        context.strokeText(text, 0, 0);
        context.fillStyle = INK;
        context.fillText(text, 0, 0);
        context.restore();
      }
    }
  }
  context.restore();
}

/** @param {any} level */
function clipOf(level) {
  const path = new Path2D(level.floor);
  if (level.rooms.length === 0) path.rect(level.bounds[0], level.bounds[1], level.bounds[2] - level.bounds[0], level.bounds[3] - level.bounds[1]);
  for (const fixture of level.fixtures) if (fixture.fills) path.addPath(new Path2D(fixture.outline));
  return path;
}

/** @param {string} layer @param {any} scale @returns {(value: number) => number} colour as 0xAABBGGRR */
function toneOf(layer, scale) {
  const tones = (layer === 'probability' ? scale.probabilityTones : scale.tones).map(packed);
  const [least, step] = layer === 'probability' ? [0, 1 / tones.length] : [scale.leastDb, scale.stepDb];
  return value => tones[Math.max(0, Math.min(tones.length - 1, Math.floor((value - least) / step)))];
}

/** @param {string} hex */
const packed = hex => (0xff000000 | parseInt(hex.slice(5, 7), 16) << 16 | parseInt(hex.slice(3, 5), 16) << 8 | parseInt(hex.slice(1, 3), 16)) >>> 0;

const tones = document.createElement('canvas');

/** Tones need only every second pixel; the lines drawn over them are exact. */
function drawTones(context, canvas, surface, toneAt, { west, north, perMetre }) {
  const every = 2, width = Math.ceil(canvas.width / every), height = Math.ceil(canvas.height / every);
  const image = new ImageData(width, height), pixels = new Uint32Array(image.data.buffer);
  for (let row = 0; row < height; row++) {
    const y = north - (row + 0.5) * every / perMetre;
    for (let column = 0; column < width; column++) {
      const value = surface.at(west + (column + 0.5) * every / perMetre, y);
      if (value === value) pixels[row * width + column] = toneAt(value);
    }
  }
  tones.width = width;
  tones.height = height;
  tones.getContext('2d').putImageData(image, 0, 0);
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.imageSmoothingEnabled = false;
  context.drawImage(tones, 0, 0, width * every, height * every);
}

/** Strokes separate pieces. @param {CanvasRenderingContext2D} context @param {number[]} pieces @param {number} width @param {string} colour */
function stroke(context, pieces, width, colour) {
  context.beginPath();
  for (let i = 0; i < pieces.length; i += 4) {
    context.moveTo(pieces[i], pieces[i + 1]);
    context.lineTo(pieces[i + 2], pieces[i + 3]);
  }
  ink(context, width, colour);
}

/** Strokes lines. @param {CanvasRenderingContext2D} context @param {number[][]} lines @param {number} width @param {string} colour */
function strokeLines(context, lines, width, colour) {
  context.beginPath();
  for (const line of lines) {
    context.moveTo(line[0], line[1]);
    for (let i = 2; i < line.length; i += 2) context.lineTo(line[i], line[i + 1]);
  }
  ink(context, width, colour);
}

/** @param {CanvasRenderingContext2D} context @param {number} width @param {string} colour */
function ink(context, width, colour) {
  context.lineCap = 'round';
  context.lineJoin = 'round';
  context.lineWidth = width;
  context.strokeStyle = colour;
  context.stroke();
}
