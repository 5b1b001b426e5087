/** The time of one row, before the order of dates and the zone are known. */
import { dividedStamp } from './cell.ts';
import type { ClockColumns } from './clock.ts';
import { isSerial, isUnix } from './clock.ts';
import { numberOf } from './number.ts';
import { clockOf, dateOf } from './stamp.ts';
import type { WrittenDate } from './stamp.ts';

/** Every different date of a file once, in order of appearance; a row keeps its place in this list. */
export type Dates = { written: WrittenDate[]; places: Map<string, number>; twelveHour: boolean };

export function noDates(): Dates {
  return { written: [], places: new Map(), twelveHour: false };
}

/** `date` is a place in `Dates`, or -1 when `ms` is complete: UTC if `absolute`, else a wall clock. One is written over for each row. */
export type Moment = { date: number; ms: number; offsetMinutes: number | null; absolute: boolean };

export function blankMoment(): Moment {
  return { date: -1, ms: NaN, offsetMinutes: null, absolute: false };
}

const DAY_MS = 86_400_000;
/** 1899-12-30 in milliseconds of Unix time. */
const SERIAL_ZERO_MS = -2_209_161_600_000;

/** Fills `moment` from a row; says why not when the row tells no time. */
export function readMoment(cells: readonly string[], clock: ClockColumns, dates: Dates, moment: Moment): string | null {
  moment.date = -1;
  moment.ms = NaN;
  moment.offsetMinutes = null;
  moment.absolute = false;
  if (clock.kind === 'none') return null;
  if (clock.kind === 'unix') return readUnix(cells[clock.column] ?? '', clock.perSecond, moment);
  if (clock.kind === 'serial') return readSerial(cells[clock.column] ?? '', moment);
  const first = cells[clock.kind === 'two' ? clock.date : clock.column] ?? '';
  const { date, clock: time } =
    clock.kind === 'two' ? { date: first, clock: clockOf(cells[clock.clock] ?? '') } : dividedStamp(first);
  if (!time && clock.kind !== 'date')
    return noTime(clock.kind === 'two' ? `${first} ${cells[clock.clock] ?? ''}` : first);
  const place = placeOf(date, dates);
  if (place < 0) return noTime(first);
  moment.date = place;
  moment.ms = time?.dayMs ?? 0;
  moment.offsetMinutes = time?.offsetMinutes ?? null;
  if (time?.twelveHour) dates.twelveHour = true;
  return null;
}

function readUnix(cell: string, perSecond: number, moment: Moment): string | null {
  const seconds = numberOf(cell) / perSecond;
  if (Number.isNaN(seconds)) return noTime(cell);
  if (!isUnix(seconds)) return `${shown(cell)} is no time from 1990 to 2099`;
  moment.ms = Math.round(seconds * 1000);
  moment.absolute = true;
  return null;
}

function readSerial(cell: string, moment: Moment): string | null {
  const days = numberOf(cell);
  if (Number.isNaN(days)) return noTime(cell);
  if (!isSerial(days)) return `${shown(cell)} is no time from 1990 to 2099`;
  // A day's fraction holds seconds only to about a millisecond.
  moment.ms = SERIAL_ZERO_MS + Math.round((days * DAY_MS) / 1000) * 1000;
  return null;
}

function placeOf(date: string, dates: Dates): number {
  const known = dates.places.get(date);
  if (known !== undefined) return known;
  const written = dateOf(date);
  if (written === null) return -1;
  dates.places.set(date, dates.written.length);
  return dates.written.push(written) - 1;
}

function noTime(cell: string): string {
  return cell.trim() === '' ? 'no time' : `${shown(cell)} is no time`;
}

/** A cell quoted for a message, shortened, without control characters. */
export function shown(cell: string): string {
  const plain = cell.replace(/\p{Cc}+/gu, ' ').trim();
  return `"${plain.length > 40 ? `${plain.slice(0, 40)}…` : plain}"`;
}
