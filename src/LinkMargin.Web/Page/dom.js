// Makes elements without HTML markup: text from a house file can only ever be text.

const SVG = 'http://www.w3.org/2000/svg';

/**
 * Makes an HTML element.
 * @param {string} name
 * @param {Record<string, any>} [with_] attributes; `on…` are listeners, `class`, `text` and `dataset` are set as such
 * @param {...(Node|string|null|undefined|false)} children
 * @returns {any}
 */
export function el(name, with_ = {}, ...children) {
  return fill(document.createElement(name), with_, children);
}

/**
 * Makes an SVG element.
 * @param {string} name
 * @param {Record<string, any>} [with_]
 * @param {...(Node|string|null|undefined|false)} children
 * @returns {any}
 */
export function svg(name, with_ = {}, ...children) {
  return fill(document.createElementNS(SVG, name), with_, children);
}

/**
 * @param {any} element
 * @param {Record<string, any>} with_
 * @param {(Node|string|null|undefined|false)[]} children
 */
function fill(element, with_, children) {
  for (const [key, value] of Object.entries(with_)) {
    if (value === null || value === undefined || value === false) continue;
    if (key.startsWith('on')) element.addEventListener(key.slice(2), value);
    else if (key === 'text') element.textContent = value;
    else if (key === 'dataset') Object.assign(element.dataset, value);
    else if (key === 'value') {
      element.value = value;
      if (element instanceof HTMLInputElement) element.defaultValue = value;
    }
    else element.setAttribute(key, value === true ? '' : String(value));
  }
  element.append(...children.filter(child => child !== null && child !== undefined && child !== false));
  return element;
}

/**
 * The element with an id.
 * @param {string} id
 * @returns {any}
 */
export const byId = id => document.getElementById(id);

/**
 * A button.
 * @param {string} text
 * @param {() => void} onclick
 * @param {Record<string, any>} [with_]
 */
export const button = (text, onclick, with_ = {}) => el('button', { type: 'button', onclick, ...with_ }, text);

/**
 * A choice from a list.
 * @param {string} label
 * @param {{value: string, text: string}[]} options
 * @param {string} value
 * @param {(value: string) => void} onchange
 * @param {Record<string, any>} [with_]
 */
export function select(label, options, value, onchange, with_ = {}) {
  const box = el('select', { ...with_, onchange: event => onchange(event.target.value) },
    ...options.map(option => el('option', { value: option.value }, option.text)));
  box.value = value;
  return el('label', { class: 'choice' }, el('span', {}, label), box);
}

/**
 * Replaces the content of an element and keeps the focus on the child with the same data-key.
 * @param {any} parent
 * @param {...(Node|null|undefined|false)} children
 */
export function refill(parent, ...children) {
  const active = document.activeElement;
  const key = active && parent.contains(active) ? active.closest('[data-key]')?.getAttribute('data-key') : null;
  parent.replaceChildren(...children.filter(child => child));
  if (key) parent.querySelector(`[data-key="${CSS.escape(key)}"]`)?.focus({ preventScroll: true });
}
