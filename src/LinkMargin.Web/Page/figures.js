// Places figures on contour lines, where a piece of line as long as its figure is nearly straight and free. No DOM here; all in pixels.

import { boxAround, overlaps } from './labels.js';

const STRAIGHT = 0.965;

/**
 * Places figures on a line and marks their ground as taken.
 * @param {number[]} line `[x1, y1, x2, y2, …]`
 * @param {number} width of the figure
 * @param {number} height of the figure
 * @param {number} apart least length of line between figures
 * @param {(import('./labels.js').Box)[]} taken occupied ground; new figures are added
 * @param {(x: number, y: number) => boolean} fits whether a figure may be at a place
 * @returns {{x: number, y: number, turn: number}[]} centres, and rotations in radians, never upside down
 */
export function placeFigures(line, width, height, apart, taken, fits) {
  const along = [0];
  for (let i = 2; i < line.length; i += 2) along.push(along[along.length - 1] + Math.hypot(line[i] - line[i - 2], line[i + 1] - line[i - 1]));
  const length = along[along.length - 1], found = [];
  let i = 1, next = width;
  const at = distance => {
    while (i > 1 && along[i - 1] > distance) i--;
    while (i < along.length - 1 && along[i] < distance) i++;
    const span = along[i] - along[i - 1], t = span > 0 ? (distance - along[i - 1]) / span : 0;
    return [line[2 * i - 2] + t * (line[2 * i] - line[2 * i - 2]), line[2 * i - 1] + t * (line[2 * i + 1] - line[2 * i - 1])];
  };
  for (let distance = width; distance < length - width; distance += Math.max(2, width / 4)) {
    if (distance < next) continue;
    const [ax, ay] = at(distance - width / 2), [bx, by] = at(distance + width / 2), [x, y] = at(distance);
    if (Math.hypot(bx - ax, by - ay) < STRAIGHT * width || !fits(x, y)) continue;
    let turn = Math.atan2(by - ay, bx - ax);
    if (turn > Math.PI / 2) turn -= Math.PI; else if (turn <= -Math.PI / 2) turn += Math.PI;
    const sine = Math.abs(Math.sin(turn)), cosine = Math.abs(Math.cos(turn)), box = boxAround(x, y, width * cosine + height * sine, width * sine + height * cosine);
    if (taken.some(other => overlaps(box, other))) continue;
    taken.push(box);
    found.push({ x, y, turn });
    next = distance + apart;
  }
  return found;
}
