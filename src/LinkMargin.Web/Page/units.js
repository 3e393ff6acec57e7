// Lengths in the units of the house file. All values in the code are metres.

const INCH = 0.0254;

/** @param {boolean} inFeet */
export const stepMetres = inFeet => inFeet ? INCH / 2 : 0.01;

/** Rounds to the precision of placing by hand. @param {number} metres @param {boolean} inFeet */
export function snapped(metres, inFeet) {
  const step = stepMetres(inFeet);
  return Math.round(Math.round(metres / step) * step * 1e4) / 1e4;
}

/** @param {number} metres @param {boolean} inFeet */
export function lengthText(metres, inFeet) {
  if (!inFeet) return `${metres.toFixed(2)} m`;
  const halves = Math.round(Math.abs(metres) / INCH * 2), feet = Math.floor(halves / 24), inches = (halves % 24) / 2;
  return `${metres < 0 ? '-' : ''}${feet}ft ${inches}in`;
}

/** The value shown in a length field: metres, or decimal feet. @param {number} metres @param {boolean} inFeet */
export const fieldValue = (metres, inFeet) => inFeet ? Math.round(metres / (12 * INCH) * 1000) / 1000 : Math.round(metres * 1000) / 1000;

/** @param {number} value @param {boolean} inFeet */
export const fieldMetres = (value, inFeet) => inFeet ? value * 12 * INCH : value;

/** A difference in dB with its sign. @param {number} db */
export function signed(db) {
  const tenths = Math.round(db * 10) / 10;
  return `${tenths > 0 ? '+' : tenths < 0 ? '−' : '±'}${Math.abs(tenths).toFixed(1)}`;
}
