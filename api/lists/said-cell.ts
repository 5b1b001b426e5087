// One cell in what its column is: an amount, a length, water, a day; or why not.
import { gramsOf, isPieces, lengthUnit, massUnit, mmOf, numberIn, type Mark } from './numbers.ts';
import type { Cell } from './sheet.ts';

/** A value, or what would be right. */
export type Told<T> = { value: T } | { expected: string };

export const isTold = <T>(told: Told<T>): told is { value: T } => 'value' in told;

const amountExpected = 'an amount such as 500 g or 2.5 kg';

/** Grams, or a number of pieces where the cell says so; `unit` counts where the cell has none. */
export function amountIn(
  cell: Cell,
  mark: Mark | null,
  unit: string | null,
): Told<{ grams: number } | { pieces: number }> {
  const number = numberIn(cell, mark);
  if (!number || number.value < 0) return { expected: amountExpected };
  if (number.unit === '')
    return unit === null ? { value: { pieces: number.value } } : { value: { grams: gramsOf(number.value, unit) } };
  if (isPieces(number.unit)) return { value: { pieces: number.value } };
  const own = massUnit(number.unit);
  return own === null ? { expected: amountExpected } : { value: { grams: gramsOf(number.value, own) } };
}

export function lengthIn(cell: Cell, mark: Mark | null, unit: string | null): Told<number> {
  const number = numberIn(cell, mark);
  const own = number && (number.unit === '' ? (unit ?? 'mm') : lengthUnit(number.unit));
  if (!number || !own || number.value <= 0) return { expected: 'a length such as 95 mm' };
  const mm = mmOf(number.value, own);
  return mm <= 10_000 ? { value: mm } : { expected: 'at most 10000 mm' };
}

/** Water as a dry-basis fraction. */
export function waterIn(
  cell: Cell,
  mark: Mark | null,
  { isFraction, basis }: { isFraction: boolean; basis: string },
): Told<number> {
  const number = numberIn(cell, mark);
  if (!number || !/^%?$/.test(number.unit)) return { expected: 'a percentage such as 2.5 %' };
  const fraction = isFraction && number.unit === '' ? number.value : number.value / 100;
  if (fraction < 0 || fraction > 0.9) return { expected: 'from 0 to 90 %' };
  return { value: Number((basis === 'dry' ? fraction : fraction / (1 - fraction)).toPrecision(12)) };
}

export function wholeIn(cell: Cell, mark: Mark | null, most: number): Told<number> {
  const number = numberIn(cell, mark);
  const isWhole = number !== null && Number.isInteger(number.value) && (number.unit === '' || isPieces(number.unit));
  if (!isWhole || number.value < 0) return { expected: 'a whole number' };
  return number.value <= most ? { value: number.value } : { expected: `at most ${most}` };
}

/** "20 x 20 cm", "200×100 mm", "10x20". Plates are some centimetres; a bare number below 50 is centimetres. */
export function plateSizeIn(cell: Cell, mark: Mark | null): Told<{ plateWidthMm: number; plateHeightMm: number }> {
  const parts = /^\s*([\d.,]+)\s*(mm|cm)?\s*[x×*]\s*([\d.,]+)\s*(mm|cm)?\s*$/i.exec(String(cell));
  const [width, height] = [numberIn(parts?.[1], mark)?.value, numberIn(parts?.[3], mark)?.value];
  if (!parts || !width || !height) return { expected: 'a size such as 20 x 20 cm' };
  const unit = (parts[4] ?? parts[2] ?? (Math.max(width, height) < 50 ? 'cm' : 'mm')).toLowerCase();
  return { value: { plateWidthMm: mmOf(width, unit), plateHeightMm: mmOf(height, unit) } };
}
