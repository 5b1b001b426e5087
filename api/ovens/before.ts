// The runs that are planned and not fixed, as the plan before had them. Pure.
import type { KeptBatch } from '../science/ovens/keep.ts';
import type { Facts } from './facts.ts';
import type { Wanted } from './shares.ts';
import { minuteMs } from './minute.ts';

/** The runs that are planned and not fixed, as the plan before had them. */
export function keptOf(facts: Facts, wanted: ReadonlyMap<string, Wanted>, originMs: number): KeptBatch[] {
  const names = new Map([...wanted].map(([name, { request, part }]) => [`${request.id} ${part}`, name]));
  return facts.runs
    .filter(({ state, isPinned }) => state === 'PLANNED' && !isPinned)
    .map(({ oven, plannedStart, loads }) => ({
      oven: oven.name,
      start: Math.round((plannedStart.getTime() - originMs) / minuteMs),
      jobs: loads.flatMap(({ requestId, part }) => names.get(`${requestId} ${part}`) ?? []),
    }));
}
