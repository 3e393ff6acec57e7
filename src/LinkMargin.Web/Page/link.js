// One link in detail: its budget in words and figures, its paths, and a section through spot and seat.

import { button, byId, el, refill, svg } from './dom.js';
import { get } from './live.js';
import { pointsText } from './plan.js';
import { put, store } from './store.js';

let asked = '', shown = '';

/** Draws what has changed, and requests the link to show. @param {Set<string>} changed */
export async function draw(changed) {
  if (!store.house) return;
  const wanted = store.linkSeat && store.spot && !store.preview ? `${store.house.version} ${store.spot} ${store.linkSeat}` : '';
  if (!store.linkSeat && store.link) put({ link: null });
  if (wanted && wanted !== asked) {
    asked = wanted;
    const link = await get(`/link?spot=${encodeURIComponent(store.spot)}&seat=${encodeURIComponent(store.linkSeat)}`);
    if (asked === wanted) put({ link });
    return;
  }
  if (!store.linkSeat) asked = '';
  if (changed.has('link')) show();
}

function show() {
  const { link } = store, section = byId('link');
  section.hidden = !link;
  if (!link) {
    shown = '';
    return refill(section);
  }
  const open = section.querySelector('details')?.open ?? false;
  refill(section,
    el('div', { class: 'row head' }, el('h2', {}, link.title), button('Close', () => put({ linkSeat: null }), { class: 'quiet', 'data-key': 'close link' })),
    link.between && el('p', {}, link.between),
    el('p', { class: 'note' }, link.words),
    el('div', { class: 'two' },
      el('figure', {}, drawing(link.section, link.paths), el('figcaption', {}, 'Section through spot and seat: what the paths cross.')),
      el('div', { class: 'scroll' }, el('table', { class: 'figures' },
        el('thead', {}, el('tr', {}, ...['', 'path', 'length', 'loss, dB', 'share'].map((head, i) => el('th', { scope: 'col', class: i > 1 ? 'number' : '' }, head)))),
        el('tbody', {}, ...link.paths.map(path => el('tr', {}, el('td', { class: 'number' }, String(path.number)), el('td', {}, path.words),
          el('td', { class: 'number' }, path.length), el('td', { class: 'number' }, path.loss), el('td', { class: 'number' }, path.share))))),
      link.notDrawn && el('p', { class: 'note' }, link.notDrawn))),
    el('details', { open }, el('summary', {}, 'The budget, line by line'), el('div', { class: 'scroll' }, el('pre', {}, link.text))));
  if (shown !== link.title && matchMedia('(max-width: 900px)').matches) section.scrollIntoView({ block: 'start' });
  shown = link.title;
}

/** @param {any} section @param {any[]} paths */
function drawing(section, paths) {
  const [left, bottom, right, top] = section.bounds, width = right - left, height = top - bottom;
  // Metres per pixel, roughly: a section is always drawn at about this size.
  const metres = Math.max(width / 340, height / 400), path = (shape, cls) => shape && svg('path', { d: shape, class: cls });
  return svg('svg', { class: 'section', viewBox: `${left} ${-top} ${width} ${height}`, role: 'img', 'aria-label': `Section: ${store.link.title}` },
    svg('g', { transform: 'scale(1,-1)' },
      path(section.fixtures, 'fixture'), path(section.floors, 'floor'), path(section.joists, 'joist'), path(section.walls, 'wall'), path(section.leaves, 'leaf'),
      ...paths.filter(one => one.onSection.length > 0).slice().reverse().map(one => svg('polyline', { points: pointsText(one.onSection), class: `path ${one.kind}`, 'stroke-width': one.width * 1.2 })),
      mark(section.spot, 'M0 -8L8 0L0 8L-8 0Z', 'spot'), mark(section.seat, 'M-6 0A6 6 0 1 0 6 0A6 6 0 1 0 -6 0Z', 'seat')),
    ...section.names.map(name => svg('text', { x: right - 0.1, y: -name.height, class: 'room', 'font-size': 14 * metres }, name.name)));

  function mark([x, y], shape, cls) {
    return svg('path', { d: shape, class: `mark-shape ${cls}`, transform: `translate(${x} ${y}) scale(${metres})` });
  }
}
