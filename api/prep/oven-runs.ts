// Runs that stand, as the prep planner takes them: for which need, and how long each keeps its oven from others.
import type { DryingRun, Prisma } from '../database/generated/sqlite/client.ts';
import { endOf, startOf } from '../ovens/service.ts';
import { type Interval, overlaps } from '../science/prep/intervals.ts';
import type { LabFacts, Reader } from './facts.ts';
import { lastMinuteOf, minuteOf } from './hours.ts';

/** A load of a need that stands in a run. */
export interface OvenSpan {
  needId: string;
  load: number;
  ovenId: string;
  start: number;
  end: number;
  /** It is in the oven, or was. */
  isBegun: boolean;
}

const withLoads = {
  include: { loads: { include: { request: { select: { needId: true } } }, orderBy: { id: 'asc' } } },
} satisfies Prisma.DryingRunDefaultArgs;

type Run = Prisma.DryingRunGetPayload<typeof withLoads>;

/** Planned, in the oven, or out of it with results to come. */
export const standingRuns = (reader: Reader, lab: LabFacts): Promise<Run[]> =>
  reader.dryingRun.findMany({
    where: { labId: lab.id, state: { in: ['PLANNED', 'IN_OVEN', 'COOLING', 'COOLED'] } },
    ...withLoads,
    orderBy: { id: 'asc' },
  });

/** One that should be out and is not is there still. */
function stretchOf(run: DryingRun, now: Date): Interval {
  const to = lastMinuteOf(endOf(run));
  return { from: minuteOf(startOf(run)), to: run.state === 'IN_OVEN' ? Math.max(to, lastMinuteOf(now)) : to };
}

/** When a run keeps its oven from others, its heating up and the doors before and after it included; null once it is out. */
export function takenBy(run: DryingRun, doorMinutes: number, now: Date): Interval | null {
  if (run.state !== 'PLANNED' && run.state !== 'IN_OVEN') return null;
  const { from, to } = stretchOf(run, now);
  const before = run.state === 'PLANNED' ? Math.max(doorMinutes, run.setupMinutes) : 0;
  return { from: Math.floor(from - before), to: Math.ceil(to + doorMinutes) };
}

/** The loads of needs in a run; none of one that has not begun and for which its oven is out of order. */
export function spansOf(run: Run, outages: readonly Interval[], now: Date): OvenSpan[] {
  const stretch = stretchOf(run, now);
  const isBegun = run.state !== 'PLANNED';
  if (!isBegun && outages.some((outage) => overlaps(outage, stretch))) return [];
  return run.loads.flatMap(({ part, request: { needId } }): OvenSpan[] =>
    needId ? [{ needId, load: part, ovenId: run.ovenId, start: stretch.from, end: stretch.to, isBegun }] : [],
  );
}
