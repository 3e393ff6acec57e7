// What is under the pointer, the finger or the keyboard cursor: the margin there or the structure, and what a click on it does.

import { byId } from './dom.js';
import { change, choose, tryResult } from './choose.js';
import { openingsOf } from './names.js';
import { marginAt, placeAt, screenAt, sheets } from './plan.js';
import { say } from './speak.js';
import { store } from './store.js';

const STEP_METRES = 0.1, LONG_STEP_METRES = 1;

/** The place where the margin is read by keys. @type {{level: number, x: number, y: number}|null} */
let crosshairs = null;

/** Adds the listeners. */
export function listen() {
  const plans = byId('plans');
  plans.addEventListener('pointermove', event => { if (event.pointerType !== 'touch') readAt(event); });
  plans.addEventListener('pointerleave', event => { if (event.pointerType !== 'touch') hide(); });
  plans.addEventListener('click', event => {
    // A finger cannot hover, so a tap reads the margin.
    if (/** @type {PointerEvent} */ (event).pointerType === 'touch') readAt(event);
    else hide();
    clickOn(event.target.closest('[data-kind]'));
  });
  plans.addEventListener('keydown', readByKey);
  plans.addEventListener('focusout', event => { if (event.target.classList.contains('stack')) hide(); });
  window.addEventListener('scroll', hide, { passive: true });
}

/** @param {any} thing */
function clickOn(thing) {
  if (!thing) return;
  const { kind, name } = thing.dataset, level = Number(thing.dataset.level);
  if (kind === 'place') tryResult(Number(name));
  else if (!thing.classList.contains('mark')) {
    choose({ kind, name, level });
    const doors = kind === 'opening' ? openingsOf(level, name).filter(item => item.kind === 'door') : [];
    if (doors.length > 0) change({ kind: 'set-opening', name, level, open: !doors.every(door => door.open) });
  }
}

/** @param {MouseEvent} event */
function readAt(event) {
  const at = store.preview ? null : placeAt(event.clientX, event.clientY), built = at && /** @type {any} */ (event.target).closest('[data-words]')?.dataset;
  const margin = at && built?.kind !== 'opening' ? marginAt(at.level, at.x, at.y) : '';
  show([built?.words, margin].filter(words => words).join('. '), event.clientX, event.clientY);
}

/** @param {KeyboardEvent} event */
function readByKey(event) {
  const stack = /** @type {Element} */ (event.target), sheet = sheets.find(one => one.figure.contains(stack));
  const [dx, dy] = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key] ?? [0, 0];
  if (!sheet || !stack.classList.contains('stack') || (dx === 0 && dy === 0) || event.ctrlKey || event.metaKey || event.altKey) return;
  event.preventDefault();
  const [west, south, east, north] = sheet.level.bounds, step = event.shiftKey ? LONG_STEP_METRES : STEP_METRES;
  const from = crosshairs?.level === sheet.index ? crosshairs : { x: (west + east) / 2, y: (south + north) / 2 };
  crosshairs = { level: sheet.index, x: Math.max(west, Math.min(east, from.x + dx * step)), y: Math.max(south, Math.min(north, from.y + dy * step)) };
  const words = marginAt(crosshairs.level, crosshairs.x, crosshairs.y) || 'no margin is shown here', at = screenAt(crosshairs.level, crosshairs.x, crosshairs.y);
  if (at) show(words, at.x, at.y, true);
  say(words);
}

/**
 * Shows words beside a place on the screen; hides them if empty.
 * @param {string} words
 * @param {number} x
 * @param {number} y
 * @param {boolean} [isPoint] whether to mark the place itself
 */
function show(words, x, y, isPoint = false) {
  const hover = byId('hover'), point = byId('point');
  hover.hidden = !words;
  point.hidden = !words || !isPoint;
  if (!words) return;
  hover.textContent = words;
  point.style.transform = `translate(${x}px, ${y}px)`;
  const left = Math.min(x + 14, innerWidth - hover.offsetWidth - 8), top = y + 18 + hover.offsetHeight > innerHeight ? y - hover.offsetHeight - 12 : y + 18;
  hover.style.transform = `translate(${Math.max(4, left)}px, ${top}px)`;
}

function hide() {
  show('', 0, 0);
}
