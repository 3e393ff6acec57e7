// Places labels of marks: on free ground near the mark, off other marks and labels, off walls where possible, and never where a label would seem
// to belong to another mark. No DOM here; all in pixels.

/**
 * @typedef {{left: number, right: number, top: number, bottom: number}} Box
 * @typedef {{px: number, py: number, reach: number, width: number, height: number, isOptional?: boolean}} Request a mark, its radius, and its label
 * @typedef {{box: Box, hasLeader: boolean, cost: number}} Place
 */

const DIRECTIONS = 16;
const RINGS = [0.15, 0.9, 1.8, 3, 4.4]; // in label heights
const SLIDES = [0.18, 0.36, -0.18, -0.36]; // in label widths
const FROM_LEADER = 1; // from this ring on, a line joins label and mark
const ROOM = 2, NEARER = 9, CLOSE = 24;
const COST_OF_RING = 0.35, COST_OF_ANOTHERS = 1.2, COST_OF_NEARER_TO_ANOTHER = 3, COST_OF_CROSSING = 1.5, COST_OF_NO_PLACE = 8;

/** @param {Box} one @param {Box} other */
export const overlaps = (one, other) => other.left < one.right && other.right > one.left && other.top < one.bottom && other.bottom > one.top;

/** @param {number} x @param {number} y @param {number} width @param {number} height @returns {Box} */
export const boxAround = (x, y, width, height) => ({ left: x - width / 2, right: x + width / 2, top: y - height / 2, bottom: y + height / 2 });

/** @param {Box} box @param {number} by @returns {Box} */
const grown = (box, by) => ({ left: box.left - by, right: box.right + by, top: box.top - by, bottom: box.bottom + by });

/** @param {Box} one @param {Box} other */
const shared = (one, other) =>
  Math.max(0, Math.min(one.right, other.right) - Math.max(one.left, other.left)) * Math.max(0, Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top));

/** @param {Box} box @param {{px: number, py: number}} mark */
const distance = (box, { px, py }) => Math.hypot(Math.max(box.left - px, 0, px - box.right), Math.max(box.top - py, 0, py - box.bottom));

/**
 * Finds a place for each label; null for an optional one without a place.
 * @param {Request[]} requests
 * @param {Box} frame labels stay inside it
 * @param {Box[]} soft ground that labels should avoid
 * @returns {(Place|null)[]}
 */
export function placeLabels(requests, frame, soft) {
  const ground = requests.map(one => boxAround(one.px, one.py, 2 * one.reach, 2 * one.reach)), given = requests.map((_, i) => i);
  // The first label in an order gets the best place; several orders are tried, and the one with the lowest total cost is used.
  const orders = [given, given.slice().reverse(), given.slice().sort((a, b) => requests[a].py - requests[b].py), given.slice().sort((a, b) => requests[a].px - requests[b].px)];
  let best = null, least = Infinity;
  for (const order of orders) {
    const taken = ground.slice(), places = requests.map(() => null), labels = [];
    let cost = 0;
    for (const i of order) {
      const place = bestOf(requests[i], requests, frame, taken, labels, soft);
      if (place) {
        taken.push(place.box);
        labels.push(place.box);
      }
      places[i] = place;
      cost += place?.cost ?? 0;
    }
    if (cost < least - 0.01) [best, least] = [places, cost];
  }
  return best ?? [];
}

/** @param {Request} request @param {Request[]} all @param {Box} frame @param {Box[]} taken @param {Box[]} labels @param {Box[]} soft @returns {Place|null} */
function bestOf(request, all, frame, taken, labels, soft) {
  let best = null, least = Infinity;
  const area = request.width * request.height;
  for (const { x, y, ring } of around(request)) {
    const away = COST_OF_RING * ring;
    if (away >= least) break;
    const box = inside(boxAround(x, y, request.width, request.height), frame);
    if (taken.some(other => overlaps(grown(box, ROOM), other))) continue;
    const own = distance(box, request), others = Math.min(...all.filter(other => other !== request).map(other => distance(box, other)));
    const hasLeader = !request.isOptional && (ring >= FROM_LEADER || others < CLOSE);
    const cost = away + soft.reduce((sum, wall) => sum + shared(box, wall), 0) / area
      + (others < own ? COST_OF_NEARER_TO_ANOTHER : others < own + NEARER ? COST_OF_ANOTHERS : 0)
      + (hasLeader && labels.some(other => crosses(request, box, grown(other, 1))) ? COST_OF_CROSSING : 0);
    if (cost < least) [best, least] = [{ box, hasLeader, cost }, cost];
  }
  if (best || request.isOptional) return best;
  return { box: inside(boxAround(request.px, request.py + request.reach + request.height / 2, request.width, request.height), frame), hasLeader: false, cost: COST_OF_NO_PLACE };
}

/** Whether the line from a mark to its label crosses another label. @param {Request} from @param {Box} to @param {Box} other */
function crosses({ px, py }, to, other) {
  const x = Math.max(to.left, Math.min(to.right, px)), y = Math.max(to.top, Math.min(to.bottom, py));
  for (let t = 0.05; t < 1; t += 0.05) {
    const atX = px + t * (x - px), atY = py + t * (y - py);
    if (atX > other.left && atX < other.right && atY > other.top && atY < other.bottom) return true;
  }
  return false;
}

/** Candidate places around a mark, nearest ring first; in each ring, straight and diagonal ones before the rest. @param {Request} request */
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

/** @param {number} turn */
const isAskew = turn => Math.abs(Math.sin(2 * turn)) > 1e-6;

const TURNS = Array.from({ length: DIRECTIONS }, (_, i) => 2 * Math.PI * i / DIRECTIONS).sort((one, other) => Number(isAskew(one)) - Number(isAskew(other)));

/** @param {Box} box @param {Box} frame @returns {Box} */
function inside(box, frame) {
  const dx = Math.max(0, frame.left - box.left) || Math.min(0, frame.right - box.right), dy = Math.max(0, frame.top - box.top) || Math.min(0, frame.bottom - box.bottom);
  return { left: box.left + dx, right: box.right + dx, top: box.top + dy, bottom: box.bottom + dy };
}
