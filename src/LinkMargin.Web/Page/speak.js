// Speaks to screen readers through two fixed elements, and to everybody in a notice that stays until it is closed.

import { byId, button, el } from './dom.js';

const QUIET_MS = 700;
let timer = 0;

/** Says something after a pause: while the user drags, only the last text is said. @param {string} words */
export function say(words) {
  clearTimeout(timer);
  timer = setTimeout(() => { byId('polite').textContent = words; }, QUIET_MS);
}

/**
 * Shows a notice.
 * @param {string} words
 * @param {string[]} lines
 */
export function notice(words, lines = []) {
  const old = byId('banners').querySelector('.notice');
  const box = el('div', { class: 'banner notice' },
    el('p', {}, words),
    lines.length > 0 && el('ul', {}, ...lines.map(line => el('li', {}, line))),
    button('Close', () => box.remove()));
  old ? old.replaceWith(box) : byId('banners').append(box);
  byId('urgent').textContent = words;
}
