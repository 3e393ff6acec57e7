// A field as a continuous surface, with its tones, contour lines and hatching. No DOM here.

/**
 * Probability that a margin reaches a value, from its median and the margin to count on: normally distributed, as nearly all links are.
 * @param {number} medianDb
 * @param {number} countOnDb
 * @param {number} requiredDb
 * @param {number} deviations the normal quantile for the confidence
 */
export function probabilityOf(medianDb, countOnDb, requiredDb, deviations) {
  const spread = Math.max(1e-6, (medianDb - countOnDb) / deviations);
  return normalShare((medianDb - requiredDb) / spread);
}

/** The standard normal distribution function (Abramowitz and Stegun 26.2.17, accurate to 1e-7). @param {number} z */
export function normalShare(z) {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail = Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI)
    * t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}

/** The quantile of the standard normal distribution, by bisection. @param {number} share */
export function normalQuantile(share) {
  let low = -8, high = 8;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (normalShare(middle) < share) low = middle; else high = middle;
  }
  return (low + high) / 2;
}

/** Values at the centres of cells and in one extra ring around them, so that the surface reaches the walls. */
export class Surface {
  /**
   * @param {{columns: number, rows: number, originX: number, originY: number, cell: number}} grid
   * @param {Float32Array} values row by row, south to north; NaN where not computed
   */
  constructor(grid, values) {
    this.cell = grid.cell;
    this.columns = grid.columns + 2;
    this.rows = grid.rows + 2;
    this.x0 = grid.originX - grid.cell / 2;
    this.y0 = grid.originY - grid.cell / 2;
    this.values = ringed(grid.columns, grid.rows, values);
  }

  /** The bilinear value at a place; NaN outside the surface. @param {number} x @param {number} y */
  at(x, y) {
    const u = (x - this.x0) / this.cell, v = (y - this.y0) / this.cell;
    if (!(u >= 0 && v >= 0 && u <= this.columns - 1 && v <= this.rows - 1)) return NaN;
    const column = Math.min(Math.floor(u), this.columns - 2), row = Math.min(Math.floor(v), this.rows - 2);
    const fu = u - column, fv = v - row, i = row * this.columns + column, values = this.values;
    const south = values[i] + fu * (values[i + 1] - values[i]);
    const north = values[i + this.columns] + fu * (values[i + this.columns + 1] - values[i + this.columns]);
    return south + fv * (north - south);
  }
}

/** @param {number} columns @param {number} rows @param {Float32Array} values */
function ringed(columns, rows, values) {
  const wide = columns + 2, all = new Float32Array(wide * (rows + 2));
  const cell = (column, row) => column >= 0 && row >= 0 && column < columns && row < rows ? values[row * columns + column] : NaN;
  for (let row = 0; row < rows + 2; row++) {
    for (let column = 0; column < wide; column++) {
      let value = cell(column - 1, row - 1);
      if (Number.isNaN(value)) {
        let sum = 0, count = 0;
        for (let dy = -1; dy <= 1; dy++) {
          for (let dx = -1; dx <= 1; dx++) {
            const near = cell(column - 1 + dx, row - 1 + dy);
            if (!Number.isNaN(near)) { sum += near; count++; }
          }
        }
        value = count > 0 ? sum / count : NaN;
      }
      all[row * wide + column] = value;
    }
  }
  return all;
}

// The edges of a square that a line connects, by which corners are above the level; corners and edges from the south-west, anticlockwise.
const JOINED = [[], [[3, 0]], [[0, 1]], [[3, 1]], [[1, 2]], null, [[0, 2]], [[3, 2]], [[2, 3]], [[2, 0]], null, [[2, 1]], [[1, 3]], [[1, 0]], [[0, 3]], []];

/**
 * Contour lines (marching squares), each `[x1, y1, x2, y2, …]` in metres; a closed one ends at its start. The mean of the corners
 * decides a saddle.
 * @param {Surface} surface
 * @param {number} level
 * @returns {number[][]}
 */
export function contour(surface, level) {
  const { columns, rows, values } = surface;
  /** Crossed edges of the grid by number, each with the edges it is connected to. @type {Map<number, number[]>} */
  const joined = new Map();
  const join = (one, other) => {
    const known = joined.get(one);
    if (known) known.push(other); else joined.set(one, [other]);
  };
  for (let row = 0; row + 1 < rows; row++) {
    for (let column = 0; column + 1 < columns; column++) {
      const i = row * columns + column, a = values[i], b = values[i + 1], c = values[i + columns + 1], d = values[i + columns], mean = (a + b + c + d) / 4;
      if (mean !== mean) continue;
      const above = (a >= level ? 1 : 0) | (b >= level ? 2 : 0) | (c >= level ? 4 : 0) | (d >= level ? 8 : 0);
      if (above === 0 || above === 15) continue;
      // The edge east of point i has number 2i, the edge north of it 2i + 1.
      const edges = [2 * i, 2 * (i + 1) + 1, 2 * (i + columns), 2 * i + 1];
      for (const [from, to] of JOINED[above] ?? ((above === 5) === (mean >= level) ? [[0, 1], [2, 3]] : [[3, 0], [1, 2]])) {
        join(edges[from], edges[to]);
        join(edges[to], edges[from]);
      }
    }
  }
  const lines = [], seen = new Set();
  for (const wantsEnd of [true, false]) {
    for (const [start, next] of joined) {
      if (seen.has(start) || (wantsEnd && next.length > 1)) continue;
      const line = [];
      let edge = start;
      for (;;) {
        seen.add(edge);
        line.push(...crossing(surface, edge, level));
        const on = joined.get(edge).find(other => !seen.has(other));
        if (on === undefined) break;
        edge = on;
      }
      if (!wantsEnd) line.push(line[0], line[1]);
      lines.push(line);
    }
  }
  return lines;
}

/** Where a contour line crosses an edge of the grid. @param {Surface} surface @param {number} edge @param {number} level */
function crossing({ columns, values, cell, x0, y0 }, edge, level) {
  const i = edge >> 1, isNorth = (edge & 1) === 1, from = values[i], to = isNorth ? values[i + columns] : values[i + 1], t = (level - from) / (to - from);
  return [x0 + (i % columns + (isNorth ? 0 : t)) * cell, y0 + (Math.floor(i / columns) + (isNorth ? t : 0)) * cell];
}

/**
 * Hatching at 45 degrees where a surface is below a value; its lines have the same position on every map.
 * @param {Surface} surface
 * @param {number} value
 * @param {number} spacing metres
 * @returns {number[]} `[x1, y1, x2, y2, …]`
 */
export function hatch(surface, value, spacing) {
  const strokes = [], left = surface.x0, bottom = surface.y0;
  const right = left + (surface.columns - 1) * surface.cell, top = bottom + (surface.rows - 1) * surface.cell;
  const shift = spacing * Math.SQRT2, step = surface.cell / 3;
  for (let n = Math.ceil((bottom - right) / shift); n * shift <= top - left; n++) {
    const c = n * shift, from = Math.max(left, bottom - c), to = Math.min(right, top - c);
    let begun = NaN, lastX = from, last = NaN;
    for (let x = from; x <= to + step; x += step) {
      const at = Math.min(x, to), here = surface.at(at, at + c) - value;
      if (here < 0 && Number.isNaN(begun)) {
        begun = Number.isNaN(last) ? at : lastX + (at - lastX) * last / (last - here);
      } else if (!(here < 0) && !Number.isNaN(begun)) {
        const end = Number.isNaN(here) ? lastX : lastX + (at - lastX) * last / (last - here);
        strokes.push(begun, begun + c, end, end + c);
        begun = NaN;
      }
      lastX = at; last = here;
    }
    if (!Number.isNaN(begun)) strokes.push(begun, begun + c, lastX, lastX + c);
  }
  return strokes;
}
