// Weighings pasted from a table or typed as lines: label, what the balance showed with the vessel, and when.
import { instantOf, labClock } from '../say/time.ts';
import { typedNumber } from '../say/water.ts';

export interface Pasted {
  label: string;
  grossGrams: number;
  /** Left out: now. */
  at?: string;
}

export interface ReadLines {
  weighings: Pasted[];
  /** In which line of the text each stands, from 1. */
  lines: number[];
  /** What is wrong, by line, said as what would be right. */
  wrong: { line: number; words: string }[];
}

/** Tabs and semicolons part columns; a comma only where it stands right behind the label, for it may be a decimal one. */
function cellsOf(line: string): string[] {
  const by = line.includes('\t') ? '\t' : line.includes(';') ? ';' : /^[^\s,]+\s*,/.test(line) ? ',' : /\s+/;
  return line.split(by).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1'));
}

/** A clock on the wall may be so far ahead of the server's, ms: a time within it is now, not yesterday's. */
const slackMs = 5 * 60_000;

/** On the lab's clock: a day and a time, or a time alone, which is the last such time. */
function whenRead(text: string, now: Date, zone: string): string | null {
  if (/^\d{4}-\d{2}-\d{2}T.*(Z|[+-]\d{2}:?\d{2})$/.test(text)) {
    const at = new Date(text);
    return Number.isNaN(at.getTime()) ? null : at.toISOString();
  }
  const [, hour = '', minute = ''] = /^(\d{1,2}):(\d{2})$/.exec(text) ?? [];
  const clock = (h: string, m: string): string => `${h.padStart(2, '0')}:${m}`;
  if (hour) {
    for (const daysAgo of [0, 1]) {
      const day = labClock(new Date(now.getTime() - daysAgo * 86_400_000), zone).slice(0, 10);
      const at = instantOf(`${day}T${clock(hour, minute)}`, zone);
      if (at && at.getTime() <= now.getTime() + slackMs)
        return new Date(Math.min(at.getTime(), now.getTime())).toISOString();
    }
    return null;
  }
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})[ T]+(\d{1,2}):(\d{2})/.exec(text);
  const dotted = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4}),?\s+(\d{1,2}):(\d{2})/.exec(text);
  const [year = '', month = '', day = '', h = '', m = ''] = iso
    ? iso.slice(1)
    : dotted
      ? [dotted[3], dotted[2], dotted[1], dotted[4], dotted[5]]
      : [];
  if (!year) return null;
  return (
    instantOf(`${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}T${clock(h, m)}`, zone)?.toISOString() ?? null
  );
}

const gramsRead = (text: string): number | null => typedNumber(text.replace(/\s*g$/i, ''));

export function weighingsRead(text: string, now: Date, zone: string): ReadLines {
  const read: ReadLines = { weighings: [], lines: [], wrong: [] };
  let isFirst = true;
  for (const [index, raw] of text.split(/\r?\n/).entries()) {
    if (raw.trim() === '') continue;
    const [label = '', gross = '', ...rest] = cellsOf(raw.trim());
    const when = rest.join(' ').trim();
    const grossGrams = gramsRead(gross);
    // Words alone; a code holds a number in nearly every case, and a line with one is never passed over.
    const isHeading = isFirst && gross !== '' && !/\d/.test(`${label}${gross}`);
    isFirst = false;
    if (isHeading) continue;
    const line = index + 1;
    const at = when === '' ? undefined : whenRead(when, now, zone);
    if (gross === '') read.wrong.push({ line, words: 'what the balance showed is missing: label, grams, when' });
    else if (grossGrams === null) read.wrong.push({ line, words: `“${gross}”: a weight in g such as 412.6` });
    else if (at === null) read.wrong.push({ line, words: `“${when}”: a time such as 14:00, or 2026-03-04 14:00` });
    else {
      read.weighings.push({ label, grossGrams, ...(at === undefined ? {} : { at }) });
      read.lines.push(line);
    }
  }
  return read;
}
