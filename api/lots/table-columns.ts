// The headings of a table of runs: what a column is, and how its cells are read.
import { DateTime } from 'luxon';
import { cellText, dayIn, numberIn, orderOf, tillNow, type DateOrder } from '../lists/service.ts';
import { isAhead } from '../stock/service.ts';
import type { RunSaid } from './said.ts';

export type Field = Exclude<keyof RunSaid, 'spots'> | 'frontMm' | 'waterPercent';

/** Headings as people write them, without marks and case. */
const headings: Readonly<Record<string, Field>> = {
  lot: 'lotNumber',
  lotnumber: 'lotNumber',
  container: 'label',
  label: 'label',
  code: 'label',
  at: 'at',
  day: 'at',
  date: 'at',
  time: 'at',
  when: 'at',
  tank: 'tank',
  plate: 'plate',
  column: 'plate',
  box: 'box',
  by: 'by',
  who: 'by',
  user: 'by',
  person: 'by',
  chamber: 'chamber',
  lined: 'isLined',
  saturationmin: 'saturationMinutes',
  saturationminutes: 'saturationMinutes',
  saturation: 'saturationMinutes',
  eluent: 'eluent',
  eluentbatch: 'eluentBatch',
  batch: 'eluentBatch',
  stabiliser: 'stabiliser',
  stabilizer: 'stabiliser',
  temperaturec: 'temperatureC',
  temperature: 'temperatureC',
  distancemm: 'distanceMm',
  distance: 'distanceMm',
  humidity: 'humidityPercent',
  humiditypercent: 'humidityPercent',
  rh: 'humidityPercent',
  room: 'room',
  regime: 'regime',
  waterpercent: 'waterPercent',
  water: 'waterPercent',
  waterfraction: 'waterFraction',
  frontmm: 'frontMm',
  front: 'frontMm',
  note: 'note',
};

/** Columns of numbers, with the units that may stand behind one. */
const units: Readonly<Partial<Record<Field, RegExp>>> = {
  saturationMinutes: /^(min|minutes)?\.?$/i,
  temperatureC: /^(°? ?c)?$/i,
  distanceMm: /^(mm)?$/i,
  frontMm: /^(mm)?$/i,
  humidityPercent: /^(%|% ?rh)?$/i,
  waterPercent: /^%?$/,
  waterFraction: /^$/,
};

const plain = (heading: string): string => heading.toLowerCase().replace(/[^\p{L}\d]/gu, '');

export interface Column {
  readonly heading: string;
  /** Null: a compound. */
  readonly field: Field | null;
  /** Of a compound: whether how far it ran is given instead of its Rf. */
  readonly isDistance: boolean;
  readonly compound: string;
}

export function columnOf(heading: string): Column {
  const field = headings[plain(heading)] ?? null;
  const distance = /^(.*?)[\s_]*\(?mm\)?$/i.exec(heading.trim());
  const rf = /^(?:Rf|k)\s+(.*)$|^(.*?)[\s_]+\(?(?:Rf|k)\)?$/i.exec(heading.trim());
  const compound = (distance?.[1] ?? rf?.[1] ?? rf?.[2] ?? heading).trim();
  return { heading, field, isDistance: distance !== null, compound };
}

/** A number with or without its unit; a lone comma or point is its decimal sign, since nothing here runs to thousands. */
function measured(cell: string, unit: RegExp): number | null {
  const read = numberIn(cell, cell.includes(',') ? ',' : '.');
  return read && unit.test(read.unit) ? read.value : null;
}

/** What was read of a compound. */
export const readingIn = (cell: string, { isDistance }: Column): number | null =>
  measured(cell, isDistance ? /^(mm)?$/i : /^$/);

const yes = /^(yes|y|true|1|x)$/i;
const no = /^(no|n|false|0|-)$/i;

/** How the cells of a table are read. */
export interface Reading {
  readonly timeZone: string;
  readonly now: Date;
  readonly order: DateOrder;
}

/** The order of days in a table: what its own days show; with one that could be read two ways, where nothing tells. */
export function daysIn(cells: readonly string[]): { order: DateOrder; unclear: string | null } {
  const { order, open, example } = orderOf(cells, null);
  return { order, unclear: open.length > 0 ? example : null };
}

/** A time on the lab's clock, or of the zone it names; a day alone is its noon, and today is now. */
function instantIn(cell: string, { timeZone, now, order }: Reading): Date | null {
  if (/T.*(Z|[+-]\d\d:?\d\d)$/i.test(cell)) {
    const read = DateTime.fromISO(cell);
    return read.isValid ? read.toJSDate() : null;
  }
  const day = dayIn(cell, order, timeZone);
  return day && tillNow(day, now, timeZone);
}

/** What a cell says, or what would be right. */
export type CellRead = { readonly value: unknown } | { readonly expected: string };

/** A cell as its field takes it. */
export function cellIn(field: Field, written: string, reading: Reading): CellRead {
  const cell = cellText(written);
  const unit = units[field];
  if (unit) {
    const value = measured(cell, unit);
    if (value === null) return { expected: 'a number' };
    if (field !== 'waterPercent') return { value };
    return value >= 0 && value <= 100 ? { value: value / 100 } : { expected: '0 to 100 % of the dry mass' };
  }
  if (field === 'at') {
    const value = instantIn(cell, reading);
    if (!value) return { expected: 'a day such as 2026-03-02, or 2026-03-02 09:30' };
    return isAhead(value, reading.now) ? { expected: 'a day that is not ahead' } : { value };
  }
  if (field === 'isLined')
    return yes.test(cell) || no.test(cell) ? { value: yes.test(cell) } : { expected: 'yes or no' };
  if (field === 'chamber' || field === 'regime') return { value: cell.toUpperCase().replace(/[\s-]+/g, '_') };
  return { value: cell };
}
