// Amounts, times and closures as a person says them.
import type { Closure } from '../database/generated/sqlite/client.ts';

/** `25 kg`, `2500 g`, `12.4 g`, `0.35 g`: no more digits than a bench balance means. */
export function grams(value: number): string {
  if (value >= 10_000) return `${Number((value / 1000).toFixed(2))} kg`;
  const digits = value >= 100 ? 0 : value >= 1 ? 1 : 2;
  return `${Number(value.toFixed(digits))} g`;
}

/** `4.1 %` of a mass fraction. */
export const percent = (fraction: number): string => `${Number((100 * fraction).toFixed(1))} %`;

const closures: Record<Closure, string> = {
  OPEN: 'open',
  LOOSELY_COVERED: 'loosely covered',
  WELL_CLOSED: 'well closed',
  TIGHT: 'tight',
  SEALED: 'sealed',
};

/** `300 °C` and the like never appear with more than a tenth. */
const celsius = (value: number): string => `${Number(value.toFixed(1))} °C`;

const plates = (count: number): string => (count === 1 ? '1 plate' : `${count} plates`);

/** An instant to the minute, in UTC. */
const time = (at: Date): string => `${at.toISOString().slice(0, 16).replace('T', ' ')} UTC`;

function difference(book: string, shelf: string, size: string, more: boolean): string {
  return `the book said ${book}, the shelf says ${shelf}: ${size} ${more ? 'more' : 'less'}`;
}

export const words = {
  plates,
  celsius,
  time,
  closure: (closure: Closure): string => closures[closure],
  /** What a count changed, dry grams; empty when nothing a balance would show. */
  gramDifference(book: number, shelf: number): string {
    const off = shelf - book;
    if (Math.abs(off) < 0.005) return '';
    return difference(`${grams(book)} (dry)`, grams(shelf), grams(Math.abs(off)), off > 0);
  },
  plateDifference(book: number, shelf: number): string {
    if (book === shelf) return '';
    return difference(plates(book), plates(shelf), plates(Math.abs(shelf - book)), shelf > book);
  },
};
