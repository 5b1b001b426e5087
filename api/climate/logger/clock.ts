/** Which columns of a sheet tell the time, and in which way. */
import { lookOf } from './cell.ts';
import { numberOf } from './number.ts';
import { isTimeWord } from './quantity.ts';

export type ClockColumns =
  | { kind: 'stamp'; column: number }
  | { kind: 'two'; date: number; clock: number }
  | { kind: 'date'; column: number }
  | { kind: 'unix'; column: number; perSecond: 1 | 1000 }
  | { kind: 'serial'; column: number }
  | { kind: 'none' };

/** Unix time from 1990 to 2100 [s]. */
const UNIX_FIRST = 631_152_000;
const UNIX_LAST = 4_102_444_800;

/** Days since 1899-12-30 (Excel's count; ECMA-376 part 1, 18.17.4.1), from 1990 to 2100. */
const SERIAL_FIRST = 32_874;
const SERIAL_LAST = 73_051;

/** A column tells the time when at least this share of the rows does so in it. */
const SHARE = 0.2;

type Tally = { stamp: number; date: number; clock: number; seconds: number; milliseconds: number; serial: number };

export function clockColumnsOf(rows: readonly string[][], headings: readonly string[]): ClockColumns {
  const tallies: Tally[] = [];
  for (const row of rows) row.forEach((cell, column) => count(cell, (tallies[column] ??= none())));
  const enough = Math.max(1, rows.filter((row) => row.length > 1).length * SHARE);
  const most = (look: keyof Tally, allowed: (column: number) => boolean = () => true): number => {
    let best = -1;
    tallies.forEach((tally, column) => {
      if (allowed(column) && (tally?.[look] ?? 0) >= enough && (tally?.[look] ?? 0) > (tallies[best]?.[look] ?? 0))
        best = column;
    });
    return best;
  };
  // Where a file shows the time twice, the one that names UTC needs no further guess.
  const universal = most('stamp', (column) => /utc|gmt/i.test(headings[column] ?? ''));
  const stamp = universal >= 0 ? universal : most('stamp');
  if (stamp >= 0) return { kind: 'stamp', column: stamp };
  const [date, clock] = [most('date'), most('clock')];
  if (date >= 0 && clock >= 0) return { kind: 'two', date, clock };
  const [seconds, milliseconds] = [most('seconds'), most('milliseconds')];
  if (seconds >= 0) return { kind: 'unix', column: seconds, perSecond: 1 };
  if (milliseconds >= 0) return { kind: 'unix', column: milliseconds, perSecond: 1000 };
  if (date >= 0) return { kind: 'date', column: date };
  const serial = most('serial', (column) => isTimeWord(headings[column] ?? ''));
  return serial >= 0 ? { kind: 'serial', column: serial } : { kind: 'none' };
}

function none(): Tally {
  return { stamp: 0, date: 0, clock: 0, seconds: 0, milliseconds: 0, serial: 0 };
}

function count(cell: string, tally: Tally): void {
  const look = lookOf(cell);
  if (look === 'stamp' || look === 'date' || look === 'clock') tally[look]++;
  if (look !== 'number') return;
  const number = numberOf(cell);
  if (isUnix(number)) tally.seconds++;
  if (isUnix(number / 1000)) tally.milliseconds++;
  if (isSerial(number)) tally.serial++;
}

export function isUnix(seconds: number): boolean {
  return seconds >= UNIX_FIRST && seconds < UNIX_LAST;
}

export function isSerial(days: number): boolean {
  return days >= SERIAL_FIRST && days < SERIAL_LAST;
}

export function columnsOfClock(clock: ClockColumns): number[] {
  if (clock.kind === 'none') return [];
  return clock.kind === 'two' ? [clock.date, clock.clock] : [clock.column];
}
