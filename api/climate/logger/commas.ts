/** Rows that were split at their decimal commas: 21,5 between commas, without quotes. The heading tells how many cells there are. */
import { lookOf } from './cell.ts';
import { headingScore } from './heading.ts';
import { isTimeWord } from './quantity.ts';

/** Rows above the readings in which the heading is looked for, and readings looked at. */
const LOOKED_AT = 100;

/** The same rows, numbers whole again where every row shows that they were taken apart. */
export function withWholeNumbers(rows: readonly string[][]): string[][] {
  const at = rows.slice(0, LOOKED_AT).findIndex((row) => headingScore(row) >= 2);
  const names = (rows[at] ?? []).filter((name) => name !== '');
  const below = rows.slice(at + 1, at + 1 + LOOKED_AT).filter((row) => row.length > 1);
  const width = below[0]?.length ?? 0;
  const numbers = width - names.length;
  if (at < 0 || numbers <= 0 || numbers >= names.length) return [...rows];
  const split = below.filter((row) => row.length === width);
  if (split.length < below.length * 0.8 || !split.every((row) => isSplit(row, numbers, names))) return [...rows];
  return rows.map((row, index) => (index > at && row.length === width ? joined(row, numbers) : row));
}

/** The last cells are pairs of a whole number and decimals, and all that tells the time is before them under its own name. */
function isSplit(row: readonly string[], numbers: number, names: readonly string[]): boolean {
  const start = row.length - 2 * numbers;
  const timed = row.filter((cell) => ['stamp', 'date', 'clock'].includes(lookOf(cell))).length;
  const pairs = row.slice(start).every((cell, place) => (place % 2 === 0 ? /^[+-]?\d{1,3}$/ : /^\d{1,3}$/).test(cell));
  return pairs && timed === names.filter((name) => isTimeWord(name)).length;
}

function joined(row: readonly string[], numbers: number): string[] {
  const start = row.length - 2 * numbers;
  const whole = Array.from(
    { length: numbers },
    (_, place) => `${row[start + 2 * place] ?? ''},${row[start + 2 * place + 1] ?? ''}`,
  );
  return [...row.slice(0, start), ...whole];
}
