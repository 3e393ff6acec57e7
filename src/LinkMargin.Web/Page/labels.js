// Places for the labels of marks: free ground near the mark, off other marks and labels, off walls where that can be. No DOM here; all is in pixels.

/**
 * @typedef {{left: number, right: number, top: number, bottom: number}} Box
 * @typedef {{px: number, py: number, reach: number, width: number, height: number, isOptional: boolean}} Request a mark, how far it reaches, and its label
 * @typedef {{box: Box, hasLeader: boolean}} Place
 */

const DIRECTIONS = 16;
const RINGS = [0.15, 0.9, 1.8, 3, 4.4]; // in heights of the label
const SLIDES = [0.18, 0.36, -0.18, -0.36]; // in widths
const FROM_LEADER = 1; // the ring from which a line joins label and mark
const ROOM = 2;
const CLOSE = 12, TO_ANOTHER = 0.8;

/** @param {Request} request @param {Box} mark */
const isOf = (request, mark) => Math.abs((mark.left + mark.right) / 2 - request.px) < 0.5 && Math.abs((mark.top + mark.bottom) / 2 - request.py) < 0.5;

/** @param {Box} one @param {Box} other */
export const overlaps = (one, other) => other.left < one.right && other.right > one.left && other.top < one.bottom && other.bottom > one.top;

/** @param {number} x @param {number} y @param {number} width @param {number} height @returns {Box} */
export const boxAround = (x, y, width, height) => ({ left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 });

/** @param {Box} box @param {number} by @returns {Box} */
const grown = (box, by) => ({ left: box.left - by, right: box.right + by, top: box.top - by, bottom: box.bottom + by });

/** @param {Box} one @param {Box} other */
const shared = (one, other) =>
  Math.max(0, Math.min(one.right, other.right) - Math.max(one.left, other.left)) * Math.max(0, Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top));

/**
 * Finds a place for each label, in turn; null for one that may be left out and finds none.
 * @param {Request[]} requests
 * @param {Box} frame labels stay in it
 * @param {Box[]} marks ground that no label may cover
 * @param {Box[]} soft ground that labels had better not cover
 * @returns {(Place|null)[]}
 */
export function placeLabels(requests, frame, marks, soft) {
  const taken = marks.slice();
  return requests.map(request => {
    const place = bestOf(request, frame, taken, soft, marks);
    if (place) taken.push(place.box);
    return place;
  });
}

/** @param {Request} request @param {Box} frame @param {Box[]} taken @param {Box[]} soft @param {Box[]} marks @returns {Place|null} */
function bestOf(request, frame, taken, soft, marks) {
  let best = null, least = Infinity;
  const area = request.width * request.height;
  for (const { x, y, ring } of around(request)) {
    // What a label costs: how far it is away, how much of a wall it hides, and whether it could be read as another mark's.
    const away = 0.35 * ring;
    if (away >= least) break;
    const box = inside(boxAround(x, y, request.width, request.height), frame);
    if (taken.some(other => overlaps(grown(box, ROOM), other))) continue;
    const cost = away + soft.reduce((sum, wall) => sum + shared(box, wall), 0) / area + (marks.some(mark => overlaps(grown(box, CLOSE), mark) && !isOf(request, mark)) ? TO_ANOTHER : 0);
    if (cost < least) [best, least] = [{ box, hasLeader: ring >= FROM_LEADER && !request.isOptional }, cost];
  }
  if (best || request.isOptional) return best;
  return { box: inside(boxAround(request.px, request.py + request.reach + request.height / 2, request.width, request.height), frame), hasLeader: false };
}

/** Places about a mark, nearest first; those beside it before those askew. @param {Request} request */
function* around({ px, py, reach, width, height, isOptional }) {
  for (let ring = 0; ring < (isOptional ? 2 : RINGS.length); ring++) {
    const away = reach + RINGS[ring] * height;
    for (const turn of TURNS) {
      const cosine = Math.cos(turn), sine = Math.sin(turn);
      const beside = Math.abs(cosine) < 1e-6 ? 0 : Math.sign(cosine) / 2;
      yield { x: px + cosine * away + beside * width, y: py + sine * away + Math.max(-1, Math.min(1, 1.5 * sine)) / 2 * height, ring };
    }
    for (const slide of SLIDES) for (const side of [1, -1]) yield { x: px + slide * width, y: py + side * (away + height / 2), ring };
  }
}

// East, west, south, north first.
const TURNS = Array.from({ length: DIRECTIONS }, (_, i) => 2 * Math.PI * i / DIRECTIONS)
  .sort((one, other) => askew(one) - askew(other));

/** @param {number} turn */
function askew(turn) {
  return Math.abs(Math.sin(2 * turn)) > 1e-6 ? 1 : 0;
}

/** @param {Box} box @param {Box} frame @returns {Box} */
function inside(box, frame) {
  const dx = Math.max(0, frame.left - box.left) || Math.min(0, frame.right - box.right), dy = Math.max(0, frame.top - box.top) || Math.min(0, frame.bottom - box.bottom);
  return { left: box.left + dx, right: box.right + dx, top: box.top + dy, bottom: box.bottom + dy };
}
