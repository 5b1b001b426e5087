// The lab's ovens as the prep planner takes them: who can load them when, and which runs stand for which need.
import type { Interval } from '../science/prep/intervals.ts';
import type { PrepOven } from '../science/prep/stages.ts';
import type { LabFacts, Reader } from './facts.ts';
import { minuteOf } from './hours.ts';
import type { PrepSettings } from './settings.ts';

/** A load of a need that stands in a run. */
export interface OvenSpan {
  needId: string;
  load: number;
  ovenId: string;
  start: number;
  end: number;
  /** It is in the oven. */
  isBegun: boolean;
}

export interface Ovens {
  ovens: PrepOven[];
  spans: OvenSpan[];
  names: Map<string, string>;
}

/** Where no oven is described, one of each kind is taken for granted, as large as the lab says. */
function granted({ ovenPlates }: PrepSettings, open: readonly Interval[]): PrepOven[] {
  return [true, false].map((isVacuum) => ({
    id: isVacuum ? 'vacuum oven' : 'oven',
    open,
    busy: [],
    capacity: ovenPlates * 400,
    temperatureC: [30, 250] as const,
    isVacuum,
  }));
}

export async function ovensOf(
  reader: Reader,
  lab: LabFacts,
  settings: PrepSettings,
  open: readonly Interval[],
): Promise<Ovens> {
  const [rows, loads] = await Promise.all([
    reader.oven.findMany({ where: { labId: lab.id, removedAt: null }, orderBy: { id: 'asc' } }),
    reader.dryingLoad.findMany({
      where: { labId: lab.id, run: { state: { in: ['PLANNED', 'IN_OVEN'] } } },
      include: { run: true, request: true },
      orderBy: { id: 'asc' },
    }),
  ]);
  if (rows.length === 0) {
    const ovens = granted(settings, open);
    return { ovens, spans: [], names: new Map(ovens.map(({ id }) => [id, id])) };
  }
  const spans = loads.flatMap(({ run, request, part }): OvenSpan[] =>
    run && request.needId
      ? [
          {
            needId: request.needId,
            load: part,
            ovenId: run.ovenId,
            start: minuteOf(run.startedAt ?? run.plannedStart),
            end: Math.ceil((run.dueOutAt ?? run.plannedEnd).getTime() / 60_000),
            isBegun: run.state === 'IN_OVEN',
          },
        ]
      : [],
  );
  const busy = new Map<string, Interval[]>();
  for (const { run } of loads) {
    if (!run) continue;
    const interval = {
      from: minuteOf(run.startedAt ?? run.plannedStart),
      to: Math.ceil((run.dueOutAt ?? run.plannedEnd).getTime() / 60_000),
    };
    busy.set(run.ovenId, [...(busy.get(run.ovenId) ?? []), interval]);
  }
  return {
    ovens: rows.map(({ id, kind, shelves, shelfAreaCm2, lowestC, highestC }) => ({
      id,
      open,
      busy: busy.get(id) ?? [],
      capacity: shelves * shelfAreaCm2,
      temperatureC: [lowestC, highestC] as const,
      isVacuum: kind === 'VACUUM',
    })),
    spans,
    names: new Map(rows.map(({ id, name }) => [id, name])),
  };
}
