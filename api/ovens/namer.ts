// Names of jobs, told apart and numbered by part. Pure.
import { isPlaced } from './amounts.ts';
import type { RequestRow } from './facts.ts';
import type { Wanted } from './shares.ts';

/** Names told apart: the second of a name is said to be so. */
export function namer(): (name: string) => string {
  const seen = new Map<string, number>();
  return (name) => {
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? name : `${name} [${count}]`;
  };
}

export const partWords = (part: number, parts: number): string => (parts > 1 ? ` (${part} of ${parts})` : '');

/** Parts are numbered past those that have a place already. */
export function numbered(loads: readonly Wanted[], request: RequestRow): Wanted[] {
  const placed = request.loads.filter((load) => isPlaced(load, request.containerId));
  const taken = new Set(placed.map(({ part }) => part));
  const parts = taken.size + loads.length;
  let part = 0;
  return loads.map((load) => {
    do part += 1;
    while (taken.has(part));
    return { ...load, part, parts };
  });
}
