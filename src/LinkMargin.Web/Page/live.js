// The connection to the server: sends what the page wants to see, receives figures and fields.

import { isSame, readFrame } from './frame.js';
import { put, store } from './store.js';
import { notice, say } from './speak.js';

const RETRY_MS = 1000;

/** @type {WebSocket|null} */
let socket = null;
let generation = 0;
let sent = '';

/** Connects, and reconnects whenever the connection is lost. */
export function connect() {
  socket = new WebSocket(`ws://${location.host}/live`);
  socket.binaryType = 'arraybuffer';
  socket.onopen = () => {
    sent = '';
    put({ connected: true });
    watch();
  };
  socket.onmessage = event => typeof event.data === 'string' ? take(JSON.parse(event.data)) : takeFrame(event.data);
  socket.onclose = () => {
    put({ connected: false });
    if (!store.ended) setTimeout(connect, RETRY_MS);
  };
}

/** Tells the server what to show, if that has changed. The server answers only the latest request. */
export function watch() {
  const wish = JSON.stringify({ spot: store.spot, preview: store.preview, version: store.house?.version });
  if (socket?.readyState !== WebSocket.OPEN || !store.spot || wish === sent) return;
  sent = wish;
  socket.send(JSON.stringify({ type: 'watch', generation: ++generation, spot: store.spot, preview: store.preview }));
}

/** Whether a field answers what is wanted now. @param {{generation: number}} field */
export const isWanted = field => field.generation === generation;

/** Tells the server that the last map is painted. */
export function painted() {
  if (socket?.readyState === WebSocket.OPEN) socket.send('{"type":"painted"}');
}

/** @param {any} message */
function take(message) {
  switch (message.type) {
    case 'house': return put({ house: message });
    case 'scale': return put({ scale: message });
    case 'figures':
      // An answer to an older request does not match what is on the screen.
      if (message.generation === generation) put({ figures: message });
      return;
    case 'comparison': return put({ comparison: message });
    case 'cables': return put({ cables: message });
    case 'progress': return put(message.job === 'report' ? { making: message.share } : { progress: message });
    case 'job':
      put({ job: message, progress: null });
      return say(message.words);
    case 'notice': return notice(message.words, message.lines);
  }
}

/** @type {any[]} coarse levels of an incomplete set */
let arriving = [];

/** @param {ArrayBuffer} buffer */
function takeFrame(buffer) {
  const frame = readFrame(buffer);
  if (frame.generation !== generation) {
    if (frame.isLast) painted();
    return;
  }
  if (frame.isFine) {
    const fields = store.fields.slice();
    fields[frame.level] = frame;
    return put({ fields });
  }
  // Where a console is let go its coarse map is sent again; what is painted already is not painted again.
  const shown = store.fields[frame.level];
  arriving[frame.level] = shown && isSame(shown, frame) ? shown : frame;
  if (frame.isLast) {
    // Two sets may arrive before either is painted; each is confirmed, otherwise the server would wait forever.
    put({ fields: arriving, unpainted: store.unpainted + 1 });
    arriving = [];
  }
}

/**
 * Asks the server to do something; an error is shown.
 * @param {string} path
 * @param {any} [body]
 * @param {(words: string, lines: string[]) => void} [refused] shows the error
 * @returns {Promise<any>} the answer; null if refused
 */
export async function post(path, body = {}, refused = notice) {
  try {
    const response = await fetch(path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });
    const answer = await response.json();
    if (answer.ok) return answer;
    refused(answer.words, answer.lines ?? []);
  } catch {
    notice('LinkMargin does not respond. Your changes are in the journal; start linkmargin again to continue.', []);
  }
  return null;
}

/**
 * Asks the server for something.
 * @param {string} path
 * @returns {Promise<any>} null if refused
 */
export async function get(path) {
  try {
    const response = await fetch(path);
    const answer = await response.json();
    if (response.ok) return answer;
    notice(answer.words, []);
  } catch {
    // The banner about the lost connection already says it.
  }
  return null;
}

/**
 * Has the server make a file, and downloads it.
 * @param {string} path
 * @returns {Promise<{name: string, words: string}>} the name of the file, or the reason for a failure
 */
export async function download(path) {
  try {
    const response = await fetch(path);
    if (!response.ok) return { name: '', words: (await response.json()).words };
    const name = response.headers.get('Content-Disposition')?.match(/filename="([^"]+)"/)?.[1] ?? 'file', address = URL.createObjectURL(await response.blob());
    const link = document.createElement('a');
    link.href = address;
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 60000);
    return { name, words: '' };
  } catch {
    return { name: '', words: 'LinkMargin does not respond.' };
  }
}
