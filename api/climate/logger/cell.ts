/** What one cell looks like by itself, before anybody knows its column. */
import { isMissingWord, isSentinel } from './missing.ts';
import { measuredOf, numberOf } from './number.ts';
import { clockOf, compactClockOf, dateOf } from './stamp.ts';
import type { WrittenClock } from './stamp.ts';

export type Look = 'blank' | 'none' | 'number' | 'measured' | 'stamp' | 'date' | 'clock' | 'text';

/** `none` is a word for a missing value. A compact date such as 20260105 looks like a date, though it is a number too. */
export function lookOf(cell: string): Look {
  if (cell === '') return 'blank';
  if (isMissingWord(cell)) return 'none';
  const number = numberOf(cell);
  if (!Number.isNaN(number)) {
    if (isSentinel(number)) return 'none';
    return /^\d{8,14}$/.test(cell) ? compactLook(cell) : dottedLook(cell);
  }
  if (measuredOf(cell)) return 'measured';
  const { date, clock } = dividedStamp(cell);
  if (clock) return date === '' ? 'clock' : dateOf(date) ? 'stamp' : 'text';
  return dateOf(cell) ? 'date' : 'text';
}

function compactLook(cell: string): Look {
  const { date, clock } = dividedStamp(cell);
  if (clock && dateOf(date)) return 'stamp';
  return cell.length === 8 && dateOf(cell) ? 'date' : 'number';
}

/** 05.01.2026 is no number, but 01.01.26 with thousands would not be one either; only dates have two dots and short groups. */
function dottedLook(cell: string): Look {
  return /^\d{1,2}\.\d{1,2}\.\d{2,4}$/.test(cell) && dateOf(cell) ? 'date' : 'number';
}

export type Divided = { date: string; clock: WrittenClock | null };

const COMPACT_STAMP = /^(\d{8})[T _]?(\d{4}(?:\d\d)?(?:Z|[+-]\d{2}:?\d{2})?)$/;
const JOINT = /[\s,;_T-]+$/;

/** A cell to its date, as text, and its time of day; without a time of day the whole cell is the date. */
export function dividedStamp(cell: string): Divided {
  const colon = cell.indexOf(':');
  if (colon < 1) {
    const compact = COMPACT_STAMP.exec(cell);
    return compact ? { date: compact[1] ?? '', clock: compactClockOf(compact[2] ?? '') } : { date: cell, clock: null };
  }
  const start = isDigit(cell, colon - 2) ? colon - 2 : colon - 1;
  if (cell.charCodeAt(start - 1) === 32)
    return { date: trimmedJoint(cell.slice(0, start - 1)), clock: clockOf(cell.slice(start)) };
  const compact = cell.charCodeAt(start - 1) === 84 ? null : COMPACT_STAMP.exec(cell);
  if (compact) return { date: compact[1] ?? '', clock: compactClockOf(compact[2] ?? '') };
  return { date: trimmedJoint(cell.slice(0, start)), clock: clockOf(cell.slice(start)) };
}

function trimmedJoint(date: string): string {
  return date === '' || isDigit(date, date.length - 1) ? date : date.replace(JOINT, '');
}

function isDigit(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 48 && code <= 57;
}
