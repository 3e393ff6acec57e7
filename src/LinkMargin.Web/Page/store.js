// What the page knows, in one place; whoever shows a part of it is told once per frame that something changed.

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
  /** What each spot asks for in cable. @type {any} */
  cables: null,
  /** Which radios there are. @type {any[]} */
  radios: [],
  /** Materials that were looked for. @type {any[]} */
  found: [],
  /** The latest fields, by level. @type {any[]} */
  fields: [],
  /** The shown spot. @type {string} */
  spot: '',
  /** One level large; -1 for all. */
  level: -1,
  /** 'countOn', 'median' or 'probability'. */
  layer: 'countOn',
  /** @type {Chosen|null} */
  chosen: null,
  /** The seat whose link is shown. @type {string|null} */
  linkSeat: null,
  /** @type {any} */
  link: null,
  /** A change that is being tried by dragging. @type {any} */
  preview: null,
  /** Results of a search. @type {any} */
  job: null,
  /** @type {any} */
  progress: null,
  /** Coarse maps that arrived and are not on the screen. */
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

/** @param {(changed: Set<string>) => void} listener */
export const onChange = listener => listeners.add(listener);

/**
 * Takes new values; what is equal changes nothing.
 * @param {Record<string, any>} values
 */
export function put(values) {
  for (const [key, value] of Object.entries(values)) {
    if (store[key] !== value) {
      store[key] = value;
      changed.add(key);
    }
  }
  if (changed.size > 0 && frame === 0) frame = requestAnimationFrame(flush);
}

function flush() {
  frame = 0;
  const now = changed;
  changed = new Set();
  for (const listener of listeners) listener(now);
}

/**
 * A spot or seat as it stands while it is dragged.
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
