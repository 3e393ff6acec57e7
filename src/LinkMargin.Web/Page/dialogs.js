// Dialogs: where to save, what to download, whether to end.

import { button, el } from './dom.js';
import { download, post } from './live.js';
import { commands } from './commands.js';
import { notice, say } from './speak.js';
import { put, store } from './store.js';

const kinds = { save: saveDialog, export: exportDialog, keys: keysDialog, end: endDialog };

/** Opens a dialog. @param {'save'|'export'|'keys'|'end'} kind */
export function openDialog(kind) {
  document.querySelector('dialog')?.remove();
  const dialog = el('dialog', { onclose: () => dialog.remove() });
  dialog.append(...kinds[kind](() => dialog.close()), button('Close', () => dialog.close(), { class: 'quiet' }));
  dialog.setAttribute('aria-label', dialog.querySelector('h2').textContent);
  document.body.append(dialog);
  dialog.showModal();
}

/** Draws what has changed. @param {Set<string>} changed */
export function draw(changed) {
  const bar = document.querySelector('dialog progress');
  if (bar && changed.has('making') && store.making !== null) bar.value = store.making;
}

/** @param {() => void} close */
function saveDialog(close) {
  const file = store.house.file.split(/[\\/]/).pop(), steps = store.house.steps;
  const name = el('input', { type: 'text', value: file.replace(/(\.ya?ml)?$/, '-tried$1'), spellcheck: 'false', autocomplete: 'off', 'aria-label': 'Name of the copy' });
  const state = el('p', { role: 'alert', class: 'state' });
  const save = async to => {
    const answer = await post('/save', { name: to }, (words, lines) => lines.length > 0 ? (close(), notice(words, lines)) : state.replaceChildren(words));
    if (!answer) return;
    close();
    notice(answer.words);
  };
  const copyName = () => /\.ya?ml$/i.test(name.value) ? name.value : `${name.value.trim()}.yaml`;
  return [
    el('h2', {}, 'Save what you tried'),
    steps.length === 0 ? el('p', {}, 'You have not changed anything, so there is nothing to save.') : el('ul', {}, ...steps.map(step => el('li', {}, step))),
    el('p', {}, 'Only your changes are written; comments, order and layout of the file stay the same.'),
    button(`Save in ${file}`, () => save(''), { class: 'main', disabled: steps.length === 0 }),
    el('form', { class: 'row', onsubmit: event => { event.preventDefault(); save(copyName()); } },
      el('label', {}, 'A copy in the same folder: ', name), el('button', { type: 'submit' }, 'Save the copy')),
    state,
  ];
}

/** @param {() => void} close */
function exportDialog(close) {
  const query = `?spot=${encodeURIComponent(store.spot)}&layer=${store.layer === 'median' ? 'median' : 'countOn'}`, state = el('p', { role: 'status', class: 'state' });
  const files = [
    ['map.png', `Maps of ${store.spot}`, 'all levels, as a picture'],
    ['sheet.png', 'Sheet', 'all spots on all levels, as a picture'],
    ['report.pdf', 'Report', `on ${store.spot}, to print; takes a minute`],
    ['report.html', 'Report as a web page', 'the same for a browser; takes a minute'],
    ['house.yaml', 'House file', 'with your changes'],
  ];
  const make = async (what, text) => {
    put({ making: null });
    state.replaceChildren(`${text}: in preparation…`, el('progress', { 'aria-label': text }));
    const { name, words } = await download(`/export/${what}${query}`);
    state.replaceChildren(words || `${text}: ${name} is in your browser’s downloads.`);
  };
  return [
    el('h2', {}, 'Export'),
    el('ul', { class: 'files' }, ...files.map(([what, text, note]) => el('li', {}, button(text, () => make(what, text), { 'data-key': what }), ` ${note}`))),
    el('p', {}, 'Each file shows the house with your changes. To print the plans as you see them, use the browser’s print command.'),
    state];
}

function keysDialog() {
  const rows = [
    ['Tab', 'to the next spot, seat or button'], ['Arrow keys', 'move the focused spot or seat by 10 cm; with Shift by 1 m'],
    ['Page up, Page down', 'move it to the next level'], ['[ and ]', 'turn the focused seat'], ['Enter', 'select it: shows the map of a spot, explains the link of a seat'],
    ['Escape', 'cancel the current move'], ['Arrow keys on a plan', 'read the margin there'],
    ...Object.values(commands).filter(command => command.keys).map(command => [command.keys, command.name]),
  ];
  return [el('h2', {}, 'Keys'), el('table', {}, el('tbody', {}, ...rows.map(([keys, what]) => el('tr', {}, el('th', { scope: 'row' }, keys), el('td', {}, what)))))];
}

/** @param {() => void} close */
function endDialog(close) {
  return [
    el('h2', {}, 'End LinkMargin'),
    el('p', {}, store.house?.steps.length > 0 ? 'Your changes are not saved in the house file yet. They are in the journal: when you start LinkMargin again, you can continue with them.' : 'There is nothing to save.'),
    button('End', async () => {
      put({ ended: true });
      const answer = await post('/end');
      close();
      if (answer) say(answer.words);
    }, { class: 'main' }),
  ];
}
