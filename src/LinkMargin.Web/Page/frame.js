// Reads fields from bytes, in the format of Protocol/FieldFrame.

const HEADER_BYTES = 52;
const IS_FINE = 1, IS_LAST = 2;

/**
 * @typedef {Object} FieldFrame
 * @property {number} generation
 * @property {number} version
 * @property {number} level
 * @property {boolean} isFine
 * @property {boolean} isLast
 * @property {number} columns
 * @property {number} rows
 * @property {number} originX metres
 * @property {number} originY metres
 * @property {number} cell metres
 * @property {Float32Array} median
 * @property {Float32Array} countOn
 */

/**
 * Reads a frame.
 * @param {ArrayBuffer} buffer
 * @returns {FieldFrame}
 */
export function readFrame(buffer) {
  const view = new DataView(buffer);
  const magic = String.fromCharCode(view.getUint8(0), view.getUint8(1), view.getUint8(2), view.getUint8(3));
  const [generation, version, level, flags, columns, rows] = [4, 8, 12, 16, 20, 24].map(at => view.getInt32(at, true));
  const count = columns * rows;
  if (magic !== 'LMF1' || buffer.byteLength !== HEADER_BYTES + 8 * count) throw new Error('This is no field of this version.');
  return {
    generation, version, level,
    isFine: (flags & IS_FINE) !== 0,
    isLast: (flags & IS_LAST) !== 0,
    columns, rows,
    originX: view.getFloat64(28, true),
    originY: view.getFloat64(36, true),
    cell: view.getFloat64(44, true),
    median: new Float32Array(buffer, HEADER_BYTES, count),
    countOn: new Float32Array(buffer, HEADER_BYTES + 4 * count, count),
  };
}

/**
 * Whether two frames show the same.
 * @param {FieldFrame} one
 * @param {FieldFrame} other
 */
export const isSame = (one, other) =>
  ['isFine', 'columns', 'rows', 'originX', 'originY', 'cell'].every(key => one[key] === other[key])
  && ['median', 'countOn'].every(key => one[key].every((value, i) => Object.is(value, other[key][i])));
