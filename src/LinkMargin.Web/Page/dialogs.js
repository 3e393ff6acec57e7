// Dialogs: where to save, what to download, whether to end.

import { button, el } from './dom.js';
import { download, post } from './live.js';
import { commands } from './commands.js';
import { notice, say } from './speak.js';
import { put, store } from './store.js';

const kinds = { save: saveDialog, handOut: handOutDialog, keys: keysDialog, end: endDialog };

/** Opens a dialog. @param {'save'|'handOut'|'keys'|'end'} kind */
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
    steps.length === 0 ? el('p', {}, 'Nothing is tried, so the house file stays as it is.') : el('ul', {}, ...steps.map(step => el('li', {}, step))),
    el('p', {}, 'Only what was changed is written: comments, order and layout elsewhere stay as they are.'),
    button(`Save in ${file}`, () => save(''), { class: 'main', disabled: steps.length === 0 }),
    el('form', { class: 'row', onsubmit: event => { event.preventDefault(); save(copyName()); } },
      el('label', {}, 'A copy in the same folder: ', name), el('button', { type: 'submit' }, 'Save the copy')),
    state,
  ];
}

/** @param {() => void} close */
function handOutDialog(close) {
  const query = `?spot=${encodeURIComponent(store.spot)}&layer=${store.layer === 'median' ? 'median' : 'countOn'}`, state = el('p', { role: 'status', class: 'state' });
  const files = [
    ['map.png', `Maps of ${store.spot}`, 'all levels, as a picture'],
    ['sheet.png', 'Sheet', 'all spots on all levels, as a picture'],
    ['report.pdf', 'Report', `on ${store.spot}, to print; takes a minute`],
    ['report.html', 'Report as a page', 'the same for a browser; takes a minute'],
    ['house.yaml', 'House file', 'with what you tried'],
  ];
  const make = async (what, text) => {
    put({ making: null });
    state.replaceChildren(`${text}: being made…`, el('progress', { 'aria-label': text }));
    const { name, words } = await download(`/export/${what}${query}`);
    state.replaceChildren(words || `${text}: ${name} is in your browser’s downloads.`);
  };
  return [
    el('h2', {}, 'Hand out'),
    el('ul', { class: 'files' }, ...files.map(([what, text, note]) => el('li', {}, button(text, () => make(what, text), { 'data-key': what }), ` ${note}`))),
    el('p', {}, 'All show the house as it is tried now. The browser’s print command prints the plans as they are.'),
    state];
}

function keysDialog() {
  const rows = [
    ['Tab', 'to the next spot, seat or button'], ['Arrow keys', 'move the focused spot or seat by 10 cm; with Shift by 1 m'],
    ['Page up, Page down', 'move it to the next level'], ['[ and ]', 'turn the focused seat'], ['Enter', 'choose it: a spot is shown, a seat’s link is explained'],
    ['Escape', 'take back a move that is going on'], ['Arrow keys on a plan', 'read the margin there'],
    ...Object.values(commands).filter(command => command.keys).map(command => [command.keys, command.name]),
  ];
  return [el('h2', {}, 'Keys'), el('table', {}, el('tbody', {}, ...rows.map(([keys, what]) => el('tr', {}, el('th', { scope: 'row' }, keys), el('td', {}, what)))))];
}

/** @param {() => void} close */
function endDialog(close) {
  return [
    el('h2', {}, 'End LinkMargin'),
    el('p', {}, store.house?.steps.length > 0 ? 'What you tried is not saved yet. It is in the journal: when you start again, you can go on.' : 'Nothing is left to save.'),
    button('End', async () => {
      put({ ended: true });
      const answer = await post('/end');
      close();
      if (answer) say(answer.words);
    }, { class: 'main' }),
  ];
}
