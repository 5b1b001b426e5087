// A plan as times: each oven's batches one after the other, those that were fixed among them, with what decided each start.
import { clockOf, place, wind } from './clock.ts';
import type { Kept } from './kept.ts';
import { type Model, never } from './model.ts';
import type { FixedBatch } from './problem.ts';
import type { PlannedBatch, Sequences } from './search/plan.ts';

export interface ScheduledBatch {
  readonly oven: string;
  readonly jobs: readonly string[];
  readonly start: number;
  readonly end: number;
  /** What the oven stands at; null where the set-ups go by family and the jobs bear any temperature. */
  readonly temperatureC: number | null;
  readonly setupMinutes: number;
  readonly setupCost: number;
  /** It runs, is done or was pinned. */
  readonly isFixed: boolean;
  /** The set-up before it cools the oven down. */
  readonly cools: boolean;
  /** When the oven was unloaded and set up for it. */
  readonly ovenReady: number;
  /** The door minutes before that. */
  readonly doorMinutes: number;
  /** The job that was ready last, and when. */
  readonly lastReady: { readonly job: string; readonly at: number } | null;
  readonly leastMinutes: number;
}

function temperatureOf(model: Model, state: number, jobs: readonly number[]): number | null {
  if (model.states.temperatureC) return model.states.temperatureC[state] ?? null;
  const wanted = new Set(jobs.map((job) => model.id[job]));
  const lowest = model.problem.jobs.flatMap(({ id, temperatureC }) =>
    wanted.has(id) ? (temperatureC?.[0] ?? []) : [],
  );
  return lowest.length === 0 ? null : Math.max(...lowest);
}

function fixedOf(model: Model, oven: number, from: number, gap: number): ScheduledBatch | null {
  const { pins, setups, door, freeAt } = model.ovens[oven]!;
  const { batch, state } = pins[gap]!;
  if (batch === null) return null;
  const at = from * model.states.count + state;
  return {
    oven: model.ovenId[oven]!,
    jobs: [...batch.jobs].sort(),
    start: batch.start,
    end: batch.end,
    temperatureC: batch.temperatureC ?? temperatureOf(model, state, []),
    setupMinutes: setups.minutes[at]!,
    setupCost: setups.cost[at]!,
    isFixed: true,
    cools: state < from,
    ovenReady: freeAt,
    doorMinutes: door,
    lastReady: null,
    leastMinutes: batch.end - batch.start,
  };
}

function ovenSchedule(
  model: Model,
  kept: Kept | null,
  oven: number,
  sequence: readonly PlannedBatch[],
): ScheduledBatch[] {
  const own = model.ovens[oven]!;
  const clock = clockOf(model, oven);
  wind(clock, own);
  const out: ScheduledBatch[] = [];
  let state = own.state;
  let gap = 0;
  const passed = (to: number) => {
    for (; gap < to; gap += 1) {
      const fixed = fixedOf(model, oven, state, gap);
      if (fixed) out.push(fixed);
      state = own.pins[gap]!.state;
    }
  };
  for (const { jobs, wait } of sequence) {
    const [least, most] = [
      Math.max(...jobs.map((job) => model.least[job]!)),
      Math.min(...jobs.map((job) => model.most[job]!)),
    ];
    const last = jobs.reduce((latest, job) => (model.ready[job]! > model.ready[latest]! ? job : latest), jobs[0]!);
    const lowest = Math.max(...jobs.map((job) => model.lowest[job]!));
    const highest = Math.min(...jobs.map((job) => model.highest[job]!));
    let notBefore = model.ready[last]!;
    if (wait < 0 && kept) {
      for (const job of jobs) if (kept.oven[job] === oven) notBefore = Math.max(notBefore, kept.start[job]!);
    }
    const free = () => clock.time + (clock.empty ? 0 : own.door);
    let before = free();
    const isPlaced = place(clock, model.states.count, lowest, highest, least, most, notBefore, Math.max(0, wait));
    if (clock.gap > gap) {
      passed(clock.gap);
      const pin = own.pins[gap - 1]!;
      before = pin.end + (pin.batch ? own.door : 0);
    }
    out.push({
      oven: model.ovenId[oven]!,
      jobs: jobs.map((job) => model.id[job]!),
      start: isPlaced ? clock.start : never,
      end: isPlaced ? clock.end : never,
      temperatureC: temperatureOf(model, clock.state, jobs),
      setupMinutes: clock.setup,
      setupCost: clock.setupCost,
      isFixed: false,
      cools: clock.state < state,
      ovenReady: before + clock.setup,
      doorMinutes: out.length === 0 ? 0 : own.door,
      lastReady: { job: model.id[last]!, at: model.ready[last]! },
      leastMinutes: least,
    });
    state = clock.state;
  }
  passed(own.pins.length);
  return out;
}

/** All batches of a plan, oven by oven in the order of their ids, each oven's in the order of time. */
export const scheduleOf = (model: Model, sequences: Sequences, kept: Kept | null = null): ScheduledBatch[] =>
  sequences.flatMap((sequence, oven) => ovenSchedule(model, kept, oven, sequence));

/** A batch that lies in no open hours. */
export const isUnplaced = ({ end }: { end: number }): boolean => end >= never;

/** A batch as it would be fixed. */
export const fixedFrom = ({ oven, jobs, start, end, temperatureC }: ScheduledBatch): FixedBatch => ({
  oven,
  jobs,
  start,
  end,
  ...(temperatureC === null ? {} : { temperatureC }),
});
