// Every command of the page in one place: buttons and keys both use this.

import { notice } from './speak.js';
import { post } from './live.js';
import { settle } from './drag.js';
import { put, store } from './store.js';
import { openDialog } from './dialogs.js';

/**
 * @typedef {Object} Command
 * @property {string} name the text of its button
 * @property {string} [keys] its keys as shown
 * @property {(event: KeyboardEvent) => boolean} [isKey]
 * @property {() => boolean} [isReady]
 * @property {() => void} run
 */

const control = event => (event.ctrlKey || event.metaKey) && !event.altKey;
const plain = event => !event.ctrlKey && !event.metaKey && !event.altKey;

/** @type {Record<string, Command>} */
export const commands = {
  undo: {
    name: 'Undo', keys: 'Ctrl+Z', isKey: event => control(event) && !event.shiftKey && event.key.toLowerCase() === 'z',
    isReady: () => (store.house?.steps.length ?? 0) > 0, run: () => post('/undo'),
  },
  redo: {
    name: 'Redo', keys: 'Ctrl+Y', isKey: event => control(event) && (event.key.toLowerCase() === 'y' || (event.shiftKey && event.key.toLowerCase() === 'z')),
    isReady: () => (store.house?.undone ?? 0) > 0, run: () => post('/redo'),
  },
  save: { name: 'Save…', keys: 'Ctrl+S', isKey: event => control(event) && event.key.toLowerCase() === 's', run: () => openDialog('save') },
  export: { name: 'Export…', run: () => openDialog('export') },
  place: { name: 'Best places', keys: 'P', isKey: event => plain(event) && event.key.toLowerCase() === 'p', isReady: () => Boolean(store.spot), run: () => search('place') },
  improve: { name: 'What would help', keys: 'H', isKey: event => plain(event) && event.key.toLowerCase() === 'h', isReady: () => Boolean(store.spot), run: () => search('improve') },
  nextLayer: {
    name: 'Show the next of margin to count on, median and probability', keys: 'L', isKey: event => plain(event) && event.key.toLowerCase() === 'l',
    run: () => put({ layer: { countOn: 'median', median: 'probability', probability: 'countOn' }[store.layer] }),
  },
  keys: { name: 'Keys', keys: '?', isKey: event => plain(event) && event.key === '?', run: () => openDialog('keys') },
  end: { name: 'End', run: () => openDialog('end') },
};

/** @param {string} job */
function search(job) {
  put({ progress: { job, share: 0 }, job: null });
  post('/jobs', { job, spot: store.spot });
}

/** Runs a command if it is ready; first completes a move by keys. @param {string} id */
export function run(id) {
  settle();
  const command = commands[id];
  if (command.isReady?.() ?? true) command.run();
  else notice(`There is nothing to ${command.name.toLowerCase()}.`);
}

/** Handles keys, except while the user types. */
export function listenToKeys() {
  window.addEventListener('keydown', event => {
    const target = /** @type {Element} */ (event.target), isTyping = target.closest('textarea, dialog, input:not([type=checkbox])') !== null, isList = target.closest('select') !== null;
    const found = Object.keys(commands).filter(id => commands[id].isKey?.(event));
    // In a list a plain letter picks an entry, and in a text field Ctrl+Z belongs to the text.
    if (found.length === 1 && (found[0] === 'save' || (!isTyping && (!isList || control(event))))) {
      event.preventDefault();
      run(found[0]);
    }
  });
}
