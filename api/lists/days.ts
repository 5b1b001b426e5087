// Days as people write them: read over the whole list, and asked where a date could be read both ways.
import { DateTime } from 'luxon';
import {
  dateOf,
  dateOrderOf,
  dividedStamp,
  midnightOf,
  zoneNamed,
  wallClock,
  type DateOrder,
  type WrittenDate,
} from '../climate/service.ts';
import { cellText, type Cell } from './sheet.ts';
import { days1904 } from './workbook.ts';

/** Serial days of a spreadsheet in a column of days whose cells were never told that they are days: 1990 to 2099. */
const serials = { from: 32_874, to: 73_050 };
/** 1899-12-30, day zero of a spreadsheet's serials as counted since March 1900. */
const serialZeroMs = -2_209_161_600_000;
const dayMs = 86_400_000;

const isSerial = (cell: Cell): cell is number => typeof cell === 'number' && cell >= serials.from && cell <= serials.to;

function writtenIn(cell: Cell): WrittenDate | null {
  const text = cellText(cell);
  return text === '' || text.length > 40 ? null : dateOf(dividedStamp(text).date);
}

export const looksLikeDay = (cell: Cell): boolean => writtenIn(cell) !== null;

export interface Order {
  order: DateOrder;
  /** Orders to ask between. */
  open: DateOrder[];
  /** A date that they read differently. */
  example: string | null;
}

export function orderOf(cells: readonly Cell[], answered: DateOrder | null): Order {
  const texts = [...new Set(cells.map(cellText))];
  const dates = texts.map((text) => ({ text, written: writtenIn(text) })).filter(({ written }) => written !== null);
  if (dates.length === 0) return { order: answered ?? 'day-first', open: [], example: null };
  const written = dates.flatMap((date) => date.written ?? []);
  const { order, open } = dateOrderOf({ dates: written, said: null, answered, twelveHour: false });
  const differs = (date: WrittenDate) => new Set(open.map((one) => midnightOf(date, one))).size > 1;
  return {
    order,
    open: open.length > 1 ? open : [],
    example: dates.find((date) => date.written && differs(date.written))?.text ?? null,
  };
}

const clocks = new Map<string, ReturnType<typeof wallClock>>();

/** The lab's clock, which remembers the days it was asked for. */
function clockOf(timeZone: string): ReturnType<typeof wallClock> {
  const clock = clocks.get(timeZone) ?? wallClock(zoneNamed(timeZone) ?? { name: 'UTC', fixed: 0 });
  clocks.set(timeZone, clock);
  return clock;
}

export interface Day {
  at: Date;
  /** A time of day was written beside it. */
  timed: boolean;
}

/** The instant of a day, noon of the lab unless a time is written; null where it is none. */
export function dayIn(cell: Cell, order: DateOrder, timeZone: string, is1904 = false): Day | null {
  let wall: number;
  let timed: boolean;
  const serial = typeof cell === 'number' && is1904 ? cell + days1904 : cell;
  if (isSerial(serial)) {
    wall = serialZeroMs + Math.round((serial * dayMs) / 60_000) * 60_000;
    timed = wall % dayMs !== 0;
  } else {
    const { date, clock } = dividedStamp(cellText(cell));
    const written = date.length > 40 ? null : dateOf(date);
    if (!written) return null;
    wall = midnightOf(written, order) + (clock?.dayMs ?? 0);
    timed = clock !== null;
  }
  if (Number.isNaN(wall)) return null;
  const instant = clockOf(timeZone)(timed ? wall : wall + dayMs / 2);
  const ms = 'once' in instant ? instant.once : 'twice' in instant ? instant.twice[0] : Number.NaN;
  return Number.isNaN(ms) ? null : { at: new Date(ms), timed };
}

/** A day alone that is today is now, where its noon still lies ahead. */
export function tillNow({ at, timed }: Day, now: Date, timeZone: string): Date {
  if (timed || at <= now) return at;
  const onClock = (instant: Date) => DateTime.fromJSDate(instant, { zone: timeZone });
  return onClock(at).hasSame(onClock(now), 'day') ? now : at;
}
