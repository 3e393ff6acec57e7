// The colours of the map, with their margins.

import { byId, el, refill } from './dom.js';
import { store } from './store.js';

/** Draws what has changed. @param {Set<string>} changed */
export function draw(changed) {
  const { scale, house, layer } = store;
  if (!scale || !house || !['scale', 'layer', 'house'].some(key => changed.has(key))) return;
  const isShare = layer === 'probability', tones = isShare ? scale.probabilityTones : scale.tones;
  const label = i => isShare ? `${i * 10} %` : String(scale.leastDb + i * scale.stepDb);
  const bar = el('div', { class: 'tones', 'aria-hidden': 'true' }, ...tones.map((tone, i) => {
    const box = el('span', { class: 'tone' });
    box.style.setProperty('--tone', tone);
    return el('span', { class: 'step' }, box, el('span', { class: 'from' }, label(i)));
  }));
  const what = { countOn: 'margin to count on, dB', median: 'median margin, dB', probability: `probability of ${house.requiredDb} dB or more` }[layer];
  refill(byId('footer'),
    el('div', { class: 'legend' }, el('span', {}, `Colour: ${what}`), bar),
    el('p', {}, `Heavy line and hatching: ${house.requiredDb} dB to count on, which most seats require. Map with the hands ${house.inFeet ? '2ft 4in' : `${house.handsMetres.toFixed(1)} m`} above the floor, averaged over facing. `
      + '◆ spot shown, ◇ other spots, ● seat passes, ⊘ seat does not pass. These are planning estimates: test the spot with the real console before you pull cable or make holes.'));
}
