/** What a logger writes where it has no value. */

/** Words, lower case. From memory: what instruments, spreadsheets and numeric libraries print for "none". */
const WORDS = new Set([
  '',
  '-',
  '--',
  '---',
  '----',
  '–',
  '—',
  '.',
  '*',
  '**',
  '***',
  '?',
  '??',
  'nan',
  'na',
  'n/a',
  '#n/a',
  '#na',
  '#num!',
  '#value!',
  'null',
  'none',
  'nil',
  'inf',
  '-inf',
  '+inf',
  'infinity',
  '-infinity',
  '1.#qnan',
  '-1.#ind',
  '1.#inf',
  'ol',
  'err',
  'error',
  'off',
  'open',
  'fault',
  'fail',
  'lost',
  'missing',
  'no data',
  'nodata',
  'no value',
  'invalid',
  'unavailable',
  'unknown',
  'over',
  'under',
  'overrange',
  'underrange',
  'disconnected',
]);

/** Numbers that stand for "none"; no room is at any of them in °C, °F, K or %. */
const SENTINELS = new Set([
  // Observation archives: 9999 and, scaled by ten, 999.9 (NOAA, Integrated Surface Database, format document);
  // -9999 (NOAA, Climate Reference Network, hourly02 readme). Their shorter and finer forms: common practice.
  9999, -9999, 999.9, -999.9, 999, -999, 99999, -99999, 9999.9, -9999.9, 999.99, -999.99, -9999.99, 9999.99, -99999.9,
  // The ends of a 16-bit register, whole and scaled by 10 and 100 (arithmetic).
  32767, -32768, 65535, 3276.7, -3276.8, 6553.5, 327.67, -327.68, 655.35, 32768, -32767, 3276.8, -3276.7,
  // One-wire digital thermometers not answering (their common drivers; from memory).
  -127,
  // Largest single-precision float (IEEE 754), as some loggers print it.
  3.4028235e38, -3.4028235e38, 3.402823e38, -3.402823e38,
]);

/** One-wire digital thermometers hold exactly +85 °C from power-on to the first conversion (their data sheets; from memory). */
export const POWER_ON_C = 85;

export function isMissingWord(cell: string): boolean {
  return cell === '' || (cell.length <= 12 && WORDS.has(cell.toLowerCase()));
}

export function isSentinel(value: number): boolean {
  return (value > 300 || value < -90) && SENTINELS.has(value);
}
