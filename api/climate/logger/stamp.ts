/** One written time to its parts. Which of its numbers is the day is decided elsewhere, over the whole file. */
import { monthNamed } from './month.ts';

/** A written date: its three numbers as they stand. `month` is the place (0 to 2) of a month given by name. */
export type WrittenDate = {
  parts: readonly [number, number, number];
  digits: readonly [number, number, number];
  mark: string;
  named: boolean;
};

/** `offsetMinutes` is null where the time carries no offset. */
export type WrittenClock = { dayMs: number; offsetMinutes: number | null; twelveHour: boolean };

const NUMERIC = /^(\d{1,4})([-/. ]{1,2}|\. )(\d{1,2})\2(\d{1,4})\.?$/;
const NAME_SECOND = /^(\d{1,4})[-/. ]{0,2}(\p{L}{3,10})\.?[-/., ]{0,2}(\d{2,4})$/u;
const NAME_FIRST = /^(\p{L}{3,10})\.?[-/ ]{1,2}(\d{1,2}),?[-/ ]{1,2}(\d{4})$/u;
const COMPACT = /^((?:19|20|21)\d\d)(\d\d)(\d\d)$/;
const WEEKDAY = /^\p{L}{2,10}\.?,? (?=\d|\p{L}{3,10}\.? \d)/u;

/** Null when the text is no date. */
export function dateOf(text: string): WrittenDate | null {
  const numeric = NUMERIC.exec(text);
  if (numeric) return written(numeric[1], numeric[3], numeric[4], numeric[2] ?? '', false);
  const compact = COMPACT.exec(text);
  if (compact) return written(compact[1], compact[2], compact[3], '', false);
  const plain = text.replace(WEEKDAY, '');
  const second = NAME_SECOND.exec(plain);
  if (second) return spelled(second[1], second[2], second[3]);
  const first = NAME_FIRST.exec(plain);
  if (first) return spelled(first[2], first[1], first[3]);
  return plain === text ? null : dateOf(plain);
}

/** With the month by name there is one reading only: the longer number is the year. */
function spelled(one = '', name = '', other = ''): WrittenDate | null {
  const month = monthNamed(name);
  if (month === null) return null;
  const [day, year] = one.length === 4 ? [other, one] : [one, other];
  return day.length > 2 ? null : written(day, String(month), year, ' ', true);
}

function written(first = '', second = '', third = '', mark: string, named: boolean): WrittenDate {
  return {
    parts: [+first, +second, +third],
    digits: [first.length, second.length, third.length],
    mark: mark.trim() || ' ',
    named,
  };
}

const CLOCK = /^(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?\s*(?:([ap])\.?\s?m\.?)?\s*(.*)$/i;
const COMPACT_CLOCK = /^(\d{2})(\d{2})(\d{2})?()()(.*)$/;

/** Zone abbreviations with one meaning: RFC 5322, 4.3 (North America) and the tz database (Europe). Minutes east of UTC. */
const ABBREVIATIONS: Record<string, number> = {
  z: 0,
  ut: 0,
  utc: 0,
  gmt: 0,
  est: -300,
  edt: -240,
  cst: -360,
  cdt: -300,
  mst: -420,
  mdt: -360,
  pst: -480,
  pdt: -420,
  wet: 0,
  west: 60,
  cet: 60,
  cest: 120,
  mez: 60,
  mesz: 120,
  eet: 120,
  eest: 180,
};

/** Null when the text is no time of day. 24:00 is the end of the day (ISO 8601:2004, 4.2.3). */
export function clockOf(text: string): WrittenClock | null {
  const parts = CLOCK.exec(text);
  return parts ? clockFrom(parts) : null;
}

/** `103000` or `1030`, as it stands behind a compact date and a T. */
export function compactClockOf(text: string): WrittenClock | null {
  const parts = COMPACT_CLOCK.exec(text);
  return parts ? clockFrom(parts) : null;
}

function clockFrom(parts: RegExpExecArray): WrittenClock | null {
  const half = parts[5]?.toLowerCase();
  let hour = +(parts[1] ?? '');
  const minute = +(parts[2] ?? '');
  const second = +(parts[3] ?? 0);
  const fraction = parts[4] ? +`0.${parts[4]}` : 0;
  if (half && (hour < 1 || hour > 12)) return null;
  if (half) hour = (hour % 12) + (half === 'p' ? 12 : 0);
  if (hour > 24 || minute > 59 || second > 59 || (hour === 24 && minute + second + fraction > 0)) return null;
  const offsetMinutes = parts[6] ? offsetOf(parts[6]) : null;
  if (parts[6] && offsetMinutes === null) return null;
  return {
    dayMs: ((hour * 60 + minute) * 60 + second) * 1000 + Math.round(fraction * 1000),
    offsetMinutes,
    twelveHour: half !== undefined,
  };
}

/** Minutes east of UTC of `Z`, `+02:00`, `-0530`, `UTC+2`, `CET`; null for anything else. */
export function offsetOf(text: string): number | null {
  const plain = text
    .trim()
    .replace(/^\((.*)\)$/, '$1')
    .toLowerCase()
    .replace('\u2212', '-');
  const named = ABBREVIATIONS[plain];
  if (named !== undefined) return named;
  const parts = /^(?:utc|gmt)?\s*([+-])\s*(\d{1,2})(?::?([0-5]\d))?$/.exec(plain);
  if (!parts) return null;
  const minutes = +(parts[2] ?? '') * 60 + +(parts[3] ?? 0);
  // From -12:00 to +14:00 (tz database).
  if (minutes > 14 * 60) return null;
  return parts[1] === '-' ? -minutes : minutes;
}
