// Starts the page: each part redraws itself when something it shows has changed.

import * as chosen from './chosen.js';
import { listenToKeys } from './commands.js';
import * as dialogs from './dialogs.js';
import * as drag from './drag.js';
import * as fragment from './fragment.js';
import * as jobs from './jobs.js';
import * as legend from './legend.js';
import * as link from './link.js';
import { connect, watch } from './live.js';
import * as plan from './plan.js';
import * as pointing from './pointing.js';
import * as seats from './seats.js';
import { onChange, onMove, put, store } from './store.js';
import * as toolbar from './toolbar.js';

let hasStarted = false;

onChange(changed => {
  if (!store.house) return;
  start(changed);
  drag.clearPreview(changed);
  watch();
  plan.draw(changed);
  toolbar.draw(changed);
  seats.draw(changed);
  chosen.draw(changed);
  jobs.draw(changed);
  legend.draw(changed);
  link.draw(changed);
  dialogs.draw(changed);
  if (['spot', 'level', 'layer', 'linkSeat'].some(key => changed.has(key))) fragment.write();
});

/** On the first house: shows what the address says, or else the best spot once it is known. @param {Set<string>} changed */
function start(changed) {
  const { house } = store;
  if (!hasStarted) {
    hasStarted = true;
    fragment.read();
    if (!store.spot) put({ spot: house.spots[0]?.name ?? '', isFirst: true });
    chosen.loadRadios();
  }
  if (!house.spots.some(spot => spot.name === store.spot)) put({ spot: house.spots[0]?.name ?? '' });
  if (store.linkSeat && !house.seats.some(seat => seat.name === store.linkSeat)) put({ linkSeat: null });
  if (changed.has('comparison') && store.isFirst) {
    store.isFirst = false;
    if (store.comparison.spots.length > 0) put({ spot: store.comparison.spots[0].spot });
  }
}

window.addEventListener('hashchange', fragment.read);
drag.listen();
pointing.listen();
window.addEventListener('beforeprint', () => plan.print(true));
window.addEventListener('afterprint', () => plan.print(false));
listenToKeys();
onMove(watch);
connect();
