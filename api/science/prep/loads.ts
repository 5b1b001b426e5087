// So many plates, or trays, in loads of at most so many.
import type { Load } from './stages.ts';

/** Full loads, then what is left; every load in a row of numbers from 1. */
export function loadsOf(amount: number, perLoad: number): Load[] {
  const loads: Load[] = [];
  for (let left = amount; left > 0; left -= perLoad)
    loads.push({ load: loads.length + 1, amount: Math.min(left, perLoad) });
  return loads;
}
