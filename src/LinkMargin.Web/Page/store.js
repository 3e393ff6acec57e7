// The state of the page in one place; listeners are notified once per frame of what has changed, and of a move at once.

/**
 * @typedef {Object} Chosen
 * @property {'spot'|'seat'|'opening'|'wall'|'fixture'} kind
 * @property {string} name
 * @property {number} level
 */

/** @type {any} */
export const store = {
  /** The house, as the server draws it. @type {any} */
  house: null,
  /** Colours of margins. @type {any} */
  scale: null,
  /** Figures of the shown spot. @type {any} */
  figures: null,
  /** All spots compared. @type {any} */
  comparison: null,
  /** The cable cost of each spot. @type {any} */
  cables: null,
  /** The known radios. @type {any[]} */
  radios: [],
  /** Materials found by a search. @type {any[]} */
  found: [],
  /** The latest fields, by level. @type {any[]} */
  fields: [],
  /** The shown spot. @type {string} */
  spot: '',
  /** The level shown large; -1 for all levels. */
  level: -1,
  /** 'countOn', 'median' or 'probability'. */
  layer: 'countOn',
  /** @type {Chosen|null} */
  chosen: null,
  /** The seat whose link is shown. @type {string|null} */
  linkSeat: null,
  /** @type {any} */
  link: null,
  /** A change previewed while dragging. @type {any} */
  preview: null,
  /** Results of a search. @type {any} */
  job: null,
  /** @type {any} */
  progress: null,
  /** The share done of a report that is being made; null where nothing has been announced. @type {number|null} */
  making: null,
  /** Coarse maps that arrived but are not painted yet. */
  unpainted: 0,
  /** The scale of the plans on the screen. */
  pixelsPerMetre: 0,
  connected: false,
  ended: false,
};

/** @type {Set<(changed: Set<string>) => void>} */
const listeners = new Set();
/** @type {Set<string>} */
let changed = new Set();
let frame = 0;

/** @type {() => void} */
let follow = () => {};

/** @param {(changed: Set<string>) => void} listener */
export const onChange = listener => listeners.add(listener);

/** Sets what follows a move without waiting for the frame, so that the server's answer is there a frame sooner. @param {() => void} listener */
export const onMove = listener => { follow = listener; };

/**
 * Takes new values; equal values are not a change.
 * @param {Record<string, any>} values
 */
export function put(values) {
  for (const [key, value] of Object.entries(values)) {
    if (store[key] !== value) {
      store[key] = value;
      changed.add(key);
    }
  }
  if (store.preview && changed.has('preview')) follow();
  if (changed.size > 0 && frame === 0) frame = requestAnimationFrame(flush);
}

function flush() {
  frame = 0;
  const now = changed;
  changed = new Set();
  for (const listener of listeners) listener(now);
}

/**
 * A spot or seat at its current place while it is dragged.
 * @param {string} kind
 * @param {any} thing
 */
export function withPreview(kind, thing) {
  const preview = store.preview;
  if (!preview || preview.name !== thing.name) return thing;
  if (preview.kind === kind) {
    return { ...thing, x: preview.x, y: preview.y, level: preview.level ?? thing.level, height: preview.height ?? thing.height, hands: preview.height ?? thing.hands };
  }
  return preview.kind === 'turn-seat' && kind === 'move-seat' ? { ...thing, facing: preview.degrees, faces: null } : thing;
}
