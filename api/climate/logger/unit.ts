/** Units of temperature and humidity as loggers write them, and what they are in °C and %. */
import type { Unit } from './file.ts';

/** Degree signs: the real one, look-alikes, one read in the wrong encoding, one lost. */
const DEGREE = '(?:â?°|\\ufffd|\\?|degrees?|deg\\.?|grad)';

const WRITTEN: readonly (readonly [Unit, RegExp])[] = [
  ['C', new RegExp(`^(?:${DEGREE}\\s*)?c$|^(?:${DEGREE}\\s*)?celsius$`)],
  ['F', new RegExp(`^(?:${DEGREE}\\s*)?f$|^(?:${DEGREE}\\s*)?fahrenheit$`)],
  ['K', new RegExp(`^(?:${DEGREE}\\s*)?k$|^kelvin$`)],
  [
    'percent',
    /^(?:%|pct|percent|prozent|pourcent)(?:\s*-?\s*(?:rh|rf|hr|ur|r\.?\s?h\.?|r\.?\s?f\.?|rel\.?(?: hum(?:idity)?)?))?$|^(?:rh|rf|hr)\s*%$/,
  ],
  ['fraction', /^(?:fraction|ratio|0\s*(?:-|–|\.\.+|to)\s*1)$/],
];

/** The unit that a text is, nothing else in it; null when it is none of these. */
export function unitOf(text: string): Unit | null {
  const plain = text.replace(/[º˚]/g, '°').normalize('NFKC').trim().toLowerCase();
  if (plain === '') return null;
  return WRITTEN.find(([, pattern]) => pattern.test(plain))?.[0] ?? null;
}

export const SYMBOLS: Record<Unit, string> = { C: '°C', F: '°F', K: 'K', percent: '%', fraction: 'fraction' };

export function isTemperatureUnit(unit: Unit): unit is 'C' | 'F' | 'K' {
  return unit === 'C' || unit === 'F' || unit === 'K';
}

/** °C or %. Exact by definition: 0 °C = 273.15 K, 32 °F (SI Brochure, 9th ed., 2.3.1; NIST SP 811, B.8). */
export function converted(value: number, unit: Unit): number {
  if (unit === 'F') return (value - 32) / 1.8;
  if (unit === 'K') return value - 273.15;
  return unit === 'fraction' ? value * 100 : value;
}

/** The same back into the file's unit. */
export function inUnit(value: number, unit: Unit): number {
  if (unit === 'F') return value * 1.8 + 32;
  if (unit === 'K') return value + 273.15;
  return unit === 'fraction' ? value / 100 : value;
}
