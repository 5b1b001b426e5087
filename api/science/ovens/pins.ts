// What stands fixed in an oven's time: batches that run, are done or were pinned, and hours out of order. New batches go between.
import type { FixedBatch, Oven, OvenProblem } from './problem.ts';
import { startC, type States } from './states.ts';

export interface Pin {
  readonly start: number;
  readonly end: number;
  /** What the oven stands at when it is over. */
  readonly state: number;
  /** The batch; null while the oven is out of order: then nothing is set up, loaded or unloaded. */
  readonly batch: FixedBatch | null;
}

/** A batch that was fixed without its temperature stands at the nearest that all its jobs bear. */
function stateOf(problem: OvenProblem, states: States, oven: Oven, batch: FixedBatch): number {
  const jobs = problem.jobs.filter(({ id }) => batch.jobs.includes(id));
  if (!states.temperatureC) return states.at(jobs[0]?.family ?? oven.startFamily);
  if (batch.temperatureC !== undefined) return states.at(batch.temperatureC);
  const lowest = Math.max(
    ...jobs.flatMap(({ temperatureC }) => temperatureC?.[0] ?? []),
    oven.temperatureC?.[0] ?? -1e9,
  );
  return states.at(Number.isFinite(lowest) && lowest > -273 ? lowest : startC(oven));
}

export function pinsOf(problem: OvenProblem, states: States, oven: Oven): Pin[] {
  const batches = problem.fixed
    .filter((batch) => batch.oven === oven.id)
    .map((batch) => ({ start: batch.start, end: batch.end, state: stateOf(problem, states, oven, batch), batch }));
  const outages = oven.outOfOrder.map(([start, end]) => ({
    start,
    end,
    state: states.temperatureC ? states.at(startC(oven)) : states.count - 1,
    batch: null,
  }));
  return [...batches, ...outages].sort((a, b) => a.start - b.start || a.end - b.end);
}
