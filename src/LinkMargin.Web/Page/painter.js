// Paints a level's field on its canvas: tones that end on their lines, lines, hatching; clipped to the rooms.

import { Surface, contour, hatch, normalQuantile, probabilityOf } from './surface.js';

const HATCH_PIXELS = 9;
const PROBABILITY_LINES = [0.1, 0.3, 0.5, 0.7, 0.9];

/**
 * What is shown of a field, as a surface.
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
 * Paints.
 * @param {HTMLCanvasElement} canvas
 * @param {import('./frame.js').FieldFrame} field
 * @param {{layer: string, house: any, scale: any, level: any}} what
 */
export function paint(canvas, field, { layer, house, scale, level }) {
  const context = canvas.getContext('2d');
  const [west, south, east, north] = level.bounds;
  const perMetre = canvas.width / (east - west);
  const shown = surfaceOf(field, layer, house);
  const below = layer === 'countOn' ? shown : new Surface(field, field.countOn);
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, canvas.width, canvas.height);
  context.save();
  context.setTransform(perMetre, 0, 0, -perMetre, -west * perMetre, north * perMetre);
  context.clip(clipOf(level), 'evenodd');
  context.fillStyle = '#fff';
  context.fillRect(west, south, east - west, north - south);
  drawTones(context, canvas, shown, toneOf(layer, scale), { west, north, perMetre });
  context.setTransform(perMetre, 0, 0, -perMetre, -west * perMetre, north * perMetre);
  const ratio = canvas.width / Math.max(1, canvas.clientWidth), pixel = ratio / perMetre;
  stroke(context, hatch(below, house.requiredDb, HATCH_PIXELS * pixel), 1.6 * pixel, 'rgba(255,255,255,.25)');
  stroke(context, hatch(below, house.requiredDb, HATCH_PIXELS * pixel), 0.8 * pixel, 'rgba(27,32,41,.68)');
  for (const line of layer === 'probability' ? PROBABILITY_LINES : scale.lines) {
    if (line !== house.requiredDb || layer === 'probability') stroke(context, contour(shown, line), (line % 10 === 0 ? 1 : 0.6) * pixel, 'rgba(27,32,41,.62)');
  }
  const heavy = contour(below, house.requiredDb);
  stroke(context, heavy, 4.6 * pixel, 'rgba(255,255,255,.85)');
  stroke(context, heavy, 2.4 * pixel, '#1b2029');
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

/** Every second pixel is enough for tones; the lines over them are exact. */
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

/** @param {CanvasRenderingContext2D} context @param {number[]} pieces @param {number} width @param {string} colour */
function stroke(context, pieces, width, colour) {
  context.beginPath();
  for (let i = 0; i < pieces.length; i += 4) {
    context.moveTo(pieces[i], pieces[i + 1]);
    context.lineTo(pieces[i + 2], pieces[i + 3]);
  }
  context.lineCap = 'round';
  context.lineWidth = width;
  context.strokeStyle = colour;
  context.stroke();
}
