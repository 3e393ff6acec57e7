// The ground that shapes of the plan take; shapes are SVG path data of straight lines in metres.

/** @typedef {{left: number, right: number, top: number, bottom: number}} Box `top` is the north side */

/** @type {Map<string, Box[]>} */
const known = new Map();

/** Bounding boxes of the closed outlines of a shape. @param {string} shape @returns {Box[]} */
export function boxesOf(shape) {
  if (!known.has(shape)) {
    if (known.size > 100) known.clear();
    known.set(shape, shape.split('Z').filter(outline => outline).map(boxOf));
  }
  return /** @type {Box[]} */ (known.get(shape));
}

/** @param {string} outline @returns {Box} */
function boxOf(outline) {
  const figures = (outline.match(/-?[\d.]+/g) ?? []).map(Number), x = figures.filter((_, i) => i % 2 === 0), y = figures.filter((_, i) => i % 2 === 1);
  return { left: Math.min(...x), right: Math.max(...x), top: Math.max(...y), bottom: Math.min(...y) };
}
