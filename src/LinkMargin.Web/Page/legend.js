// The colours of the map with their margins, and the meaning of its lines and marks.

import { byId, el, refill, svg } from './dom.js';
import { store } from './store.js';
import { lengthText } from './units.js';

const STEP = 40, TONE = 14, LEFT = 14;

/** Draws what has changed. @param {Set<string>} changed */
export function draw(changed) {
  const { scale, house, layer } = store;
  if (!scale || !house || !['scale', 'layer', 'house', 'pixelsPerMetre'].some(key => changed.has(key))) return;
  const what = { countOn: 'Margin to count on, dB', median: 'Median margin, dB', probability: `Probability of ${house.requiredDb} dB or more` }[layer];
  const others = [...new Set(house.seats.map(seat => seat.requiredDb))].filter(db => db !== house.requiredDb).sort((a, b) => a - b);
  refill(byId('legend'),
    el('span', { class: 'what' }, what),
    layer === 'probability' ? bar(scale.probabilityTones, i => `${i * 10} %`, NaN) : bar(scale.tones, i => String(scale.leastDb + i * scale.stepDb), (house.requiredDb - scale.leastDb) / scale.stepDb),
    scaleBar(house.inFeet),
    el('ul', { class: 'keys' },
      key(svg('path', { d: 'M2 7H30', class: 'heavy' }), `${house.requiredDb} dB to count on, required by ${others.length > 0 ? 'most seats' : 'the seats'}`),
      layer === 'countOn' && others.length > 0 && key(svg('path', { d: 'M2 7H30', class: 'heavy dashed' }), `${others.join(', ')} dB: required by other seats`),
      key(svg('rect', { x: 2, y: 1, width: 28, height: 12, class: 'hatched' }), 'below the required margin', true),
      key(svg('path', { d: 'M16 0L23 7L16 14L9 7Z', class: 'mark-shape spot' }), 'spot shown'),
      key(svg('path', { d: 'M16 1L22 7L16 13L10 7Z', class: 'spot-elsewhere' }), 'spot on another level'),
      key(svg('circle', { cx: 16, cy: 7, r: 5.5, class: 'mark-shape seat' }), 'seat passes'),
      key(svg('g', {}, svg('circle', { cx: 16, cy: 7, r: 4.8, class: 'seat-fails' }), svg('path', { d: 'M13 10L19 4', class: 'seat-fails' })), 'does not')),
    el('p', { class: 'note' }, `The map is for hands ${lengthText(house.handsMetres, house.inFeet)} above the floor, averaged over all directions. `
      + 'A seat counts with its own height and facing, so it may differ from the map around it.'));
  refill(byId('footer'), el('p', {}, `All figures are planning estimates for ${house.controller} with ${house.console}${house.spots.filter(spot => spot.console).map(spot => `, at ${spot.name} with ${spot.console}`).join('')}. Test the spot with the real console before you pull cable or make holes.`));
}

/** @param {SVGElement} shape @param {string} text @param {boolean} [isHatched] */
const key = (shape, text, isHatched = false) => el('li', {}, svg('svg', { width: 32, height: 14, 'aria-hidden': 'true' }, isHatched && hatching('key-hatch'), shape), text);

/** Hatching for ground below the required margin. @param {string} id */
const hatching = id => svg('pattern', { id, width: 7, height: 7, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' }, svg('path', { d: 'M0 0V7', class: 'hatch' }));

/**
 * @param {string[]} tones
 * @param {(i: number) => string} label for the lower end of a tone
 * @param {number} required the required margin, in steps; NaN for none
 */
function bar(tones, label, required) {
  const width = tones.length * STEP;
  const isRequired = i => Math.abs(i - required) < 1e-9;
  return svg('svg', { class: 'tones', viewBox: `0 0 ${width + 2 * LEFT} 32`, width: width + 2 * LEFT, role: 'img', 'aria-label': `Colours from ${label(0)} to ${label(tones.length - 1)} or more` },
    hatching('bar-hatch'),
    ...tones.map((tone, i) => svg('rect', { x: LEFT + i * STEP, y: 1, width: STEP, height: TONE, fill: tone })),
    required > 0 && svg('rect', { x: LEFT, y: 1, width: Math.min(required, tones.length) * STEP, height: TONE, fill: 'url(#bar-hatch)' }),
    svg('rect', { x: LEFT, y: 1, width, height: TONE, class: 'frame' }),
    ...tones.map((_, i) => i > 0 && svg('g', {},
      svg('path', { d: `M${LEFT + i * STEP} 1V${TONE + (isRequired(i) ? 5 : 3)}`, class: isRequired(i) ? 'heavy' : 'tick' }),
      svg('text', { x: LEFT + i * STEP, y: 31, class: isRequired(i) ? 'required' : '' }, label(i)))));
}

const FOOT = 0.3048;

/** A north arrow and a scale bar that suits the plans. @param {boolean} inFeet */
function scaleBar(inFeet) {
  const [long, short] = inFeet ? [6 * FOOT, 3 * FOOT] : [2, 1], metres = long * store.pixelsPerMetre > 160 ? short : long, width = metres * store.pixelsPerMetre;
  const text = inFeet ? `${metres / FOOT} ft` : `${metres} m`;
  return svg('svg', { class: 'scale', width: width + 62, height: 20, role: 'img', 'aria-label': `North is up; the bar is ${text} long` },
    svg('path', { d: 'M8 2L13 17L8 13L3 17Z', class: 'north' }),
    svg('rect', { x: 24, y: 7, width, height: 5, class: 'frame' }), svg('rect', { x: 24, y: 7, width: width / 2, height: 5, class: 'half' }),
    svg('text', { x: 30 + width, y: 14 }, text));
}
