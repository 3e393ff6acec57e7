// The margin under the pointer or the finger.

import { byId } from './dom.js';
import { choose } from './choose.js';
import { marginAt, placeAt } from './plan.js';
import { store } from './store.js';

/** Listens. */
export function listen() {
  const plans = byId('plans'), hover = byId('hover');
  plans.addEventListener('pointermove', event => {
    const at = store.preview ? null : placeAt(event.clientX, event.clientY), words = at ? marginAt(at.level, at.x, at.y) : '';
    hover.hidden = !words;
    if (!words) return;
    hover.textContent = words;
    const left = Math.min(event.clientX + 14, innerWidth - hover.offsetWidth - 8), top = event.clientY + 18 + hover.offsetHeight > innerHeight ? event.clientY - hover.offsetHeight - 12 : event.clientY + 18;
    hover.style.transform = `translate(${Math.max(4, left)}px, ${top}px)`;
  });
  plans.addEventListener('pointerleave', () => { hover.hidden = true; });
  plans.addEventListener('click', event => {
    const thing = event.target.closest('[data-kind]');
    if (thing && !thing.classList.contains('mark')) choose({ kind: thing.dataset.kind, name: thing.dataset.name, level: Number(thing.dataset.level) });
  });
}
