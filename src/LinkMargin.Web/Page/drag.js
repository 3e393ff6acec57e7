// Moves things by pointer or keys. While something moves it is a preview; at the end it becomes one step.

import { byId } from './dom.js';
import { post } from './live.js';
import { placeAt, sheets } from './plan.js';
import { put, store, withPreview } from './store.js';
import { choose, tryResult } from './choose.js';
import { snapped } from './units.js';

const START_PIXELS = 4;
const QUIET_MS = 700;
const STEP_METRES = 0.1, LONG_STEP_METRES = 1, TURN_DEGREES = 15;
const INCHES_4 = 0.1016, FEET_3 = 0.9144;

/** The current pointer drag. @type {any} */
let drag = null;

/** Listens on the element that holds all plans, because it stays when they are redrawn. */
export function listen() {
  const plans = byId('plans');
  plans.addEventListener('pointerdown', begin);
  // A finger on a mark moves the mark instead of scrolling; browsers differ in whether CSS alone does that inside an SVG.
  plans.addEventListener('touchstart', event => { if (event.target.closest('.mark:not(.place)')) event.preventDefault(); }, { passive: false });
  plans.addEventListener('keydown', onKey);
  plans.addEventListener('dragstart', event => event.preventDefault());
  plans.addEventListener('focusout', settle);
}

/** @param {PointerEvent} event */
function begin(event) {
  const mark = /** @type {Element} */ (event.target).closest('.mark');
  if (!mark || event.button !== 0 || drag) return;
  const { kind, name } = /** @type {SVGElement} */ (mark).dataset;
  if (kind === 'place') return;
  settle();
  event.preventDefault();
  /** @type {SVGElement} */ (mark).focus({ preventScroll: true });
  const isTurn = /** @type {Element} */ (event.target).classList.contains('turn');
  const thing = thingOf(kind, name), start = placeAt(event.clientX, event.clientY);
  const ends = new AbortController(), { signal } = ends;
  drag = { kind, name, isTurn, thing, fromX: event.clientX, fromY: event.clientY, dx: start ? thing.x - start.x : 0, dy: start ? thing.y - start.y : 0, hasMoved: false, ends, pointer: event.pointerId };
  byId('plans').setPointerCapture(event.pointerId);
  byId('plans').addEventListener('pointermove', move, { signal });
  byId('plans').addEventListener('pointerup', () => finish(true), { signal });
  byId('plans').addEventListener('pointercancel', () => finish(false), { signal });
  // A touch is captured by the element under the finger first; losing that capture to the plans is not the end of the drag.
  byId('plans').addEventListener('lostpointercapture', event => { if (event.target === byId('plans')) finish(false); }, { signal });
  window.addEventListener('blur', () => finish(false), { signal });
  window.addEventListener('keydown', event => { if (event.key === 'Escape') { event.stopPropagation(); finish(false); } }, { signal, capture: true });
}

/** @param {PointerEvent} event */
function move(event) {
  if (!drag.hasMoved && Math.hypot(event.clientX - drag.fromX, event.clientY - drag.fromY) < START_PIXELS) return;
  if (!drag.hasMoved && drag.kind === 'spot') choose({ kind: 'spot', name: drag.name, level: drag.thing.level });
  drag.hasMoved = true;
  byId('plans').classList.add('dragging');
  const at = placeAt(event.clientX, event.clientY);
  if (!at) return;
  if (drag.isTurn) {
    const degrees = Math.round(Math.atan2(at.y - drag.thing.y, at.x - drag.thing.x) * 180 / Math.PI);
    put({ preview: { kind: 'turn-seat', name: drag.name, degrees: (degrees + 360) % 360 } });
  } else {
    put({ preview: moved(drag.kind, drag.thing, at.level, at.x + drag.dx, at.y + drag.dy) });
  }
}

/** Ends a drag; does nothing if it has already ended. @param {boolean} isKept */
function finish(isKept) {
  if (!drag) return;
  const done = drag;
  drag = null;
  done.ends.abort();
  byId('plans').classList.remove('dragging');
  if (byId('plans').hasPointerCapture(done.pointer)) byId('plans').releasePointerCapture(done.pointer);
  if (!done.hasMoved) {
    if (isKept) choose({ kind: done.kind, name: done.name, level: done.thing.level });
  } else if (isKept) {
    keep();
  } else {
    put({ preview: null });
  }
}

/** Turns the preview of a move into a step. */
async function keep() {
  clearTimeout(timer);
  const preview = store.preview;
  if (!preview) return;
  const answer = await post('/changes', { changes: [preview] });
  // The new house arrives over the WebSocket, before or after this answer. Until then the preview stays, unless something else moves.
  if (store.preview === preview) {
    if (!answer || store.house.version >= answer.version) put({ preview: null });
    else put({ previewUntil: answer.version });
  }
}

/** Removes the preview once it is part of the house. @param {Set<string>} changed */
export function clearPreview(changed) {
  if (changed.has('house') && store.previewUntil && store.house.version >= store.previewUntil) put({ preview: null, previewUntil: 0 });
}

let timer = 0;

/** Turns a move by keys into a step at once. */
export function settle() {
  if (!timer) return;
  clearTimeout(timer);
  timer = 0;
  keep();
}

/** @param {KeyboardEvent} event */
function onKey(event) {
  const mark = /** @type {Element} */ (event.target).closest('.mark');
  if (!mark) return;
  const { kind, name } = /** @type {SVGElement} */ (mark).dataset;
  if (kind === 'place') {
    if (event.key === 'Enter' || event.key === ' ') { event.preventDefault(); tryResult(Number(name)); }
    return;
  }
  const thing = withPreview(kind === 'spot' ? 'move-spot' : 'move-seat', thingOf(kind, name)), change = changeOf(event, kind, thing);
  if (change) {
    event.preventDefault();
    event.stopPropagation();
    if (kind === 'spot' && store.spot !== name) choose({ kind, name, level: thing.level });
    put({ preview: change });
    clearTimeout(timer);
    timer = setTimeout(settle, QUIET_MS);
  } else if (event.key === 'Escape' && timer) {
    clearTimeout(timer);
    timer = 0;
    put({ preview: null });
  } else if (event.key === 'Enter' || event.key === ' ') {
    event.preventDefault();
    settle();
    choose({ kind, name, level: thing.level });
  }
}

/** The change that a key makes to a thing; null for none. */
function changeOf(event, kind, thing) {
  if (event.ctrlKey || event.metaKey || event.altKey) return null;
  const inFeet = store.house.inFeet, step = event.shiftKey ? (inFeet ? FEET_3 : LONG_STEP_METRES) : (inFeet ? INCHES_4 : STEP_METRES);
  const to = (dx, dy, dl) => moved(kind, thing, Math.max(0, Math.min(store.house.levels.length - 1, thing.level + dl)), thing.x + dx, thing.y + dy);
  const turn = degrees => kind === 'seat' ? { kind: 'turn-seat', name: thing.name, degrees: ((thing.facing ?? 0) + degrees + 360) % 360 } : null;
  switch (event.key) {
    case 'ArrowLeft': return to(-step, 0, 0);
    case 'ArrowRight': return to(step, 0, 0);
    case 'ArrowUp': return to(0, step, 0);
    case 'ArrowDown': return to(0, -step, 0);
    case 'PageUp': return to(0, 0, 1);
    case 'PageDown': return to(0, 0, -1);
    case '[': case ',': return turn(TURN_DEGREES);
    case ']': case '.': return turn(-TURN_DEGREES);
    default: return null;
  }
}

/** The change that moves a spot or seat, limited to the extent of the level's plan. */
function moved(kind, thing, level, x, y) {
  const inFeet = store.house.inFeet, reach = reachOf(level);
  return {
    kind: kind === 'spot' ? 'move-spot' : 'move-seat', name: thing.name, level,
    x: snapped(Math.max(reach[0], Math.min(reach[2], x)), inFeet),
    y: snapped(Math.max(reach[1], Math.min(reach[3], y)), inFeet),
    height: Math.min(kind === 'spot' ? thing.height : thing.hands, store.house.levels[level].heightMetres),
  };
}

// The plan's bounds extend a little beyond the house (PlanDrawing).
const ABOUT_METRES = 0.36;
const reachOf = level => store.house.levels[level].bounds.map((bound, i) => i < 2 ? bound + ABOUT_METRES : bound - ABOUT_METRES);

const thingOf = (kind, name) => (kind === 'spot' ? store.house.spots : store.house.seats).find(one => one.name === name);
