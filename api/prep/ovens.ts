// The lab's ovens as the prep planner takes them: who can load them when, when they are out of order or taken, and which
// runs stand for which need.
import { openingsOf, outages, ownHours, type OvenWithCare } from '../ovens/service.ts';
import { type Interval, merged } from '../science/prep/intervals.ts';
import type { PrepOven } from '../science/prep/stages.ts';
import type { LabFacts, Reader } from './facts.ts';
import { dayOf, instantOf, lastMinuteOf, minuteMs, minuteOf } from './hours.ts';
import { type OvenSpan, spansOf, standingRuns, takenBy } from './oven-runs.ts';
import type { PrepSettings } from './settings.ts';

export type { OvenSpan } from './oven-runs.ts';

export interface Ovens {
  ovens: PrepOven[];
  spans: OvenSpan[];
  names: Map<string, string>;
  /** As they are described; empty where none is. */
  described: readonly OvenWithCare[];
}

/** When somebody works, between two instants. */
export interface Working {
  open: readonly Interval[];
  from: Date;
  to: Date;
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
    isUnattended: true,
  }));
}

/** When somebody can load it: as the lab works, or in hours of its own, but never on a day off. */
function openOf(
  oven: OvenWithCare,
  lab: LabFacts,
  { daysOff }: PrepSettings,
  { open, from, to }: Working,
): readonly Interval[] {
  if (!ownHours(oven)) return open;
  const off = new Set(daysOff);
  const own = openingsOf(oven, lab, from.getTime(), to.getTime())
    .map(({ fromMs, toMs }) => ({ from: Math.ceil(fromMs / minuteMs), to: Math.floor(toMs / minuteMs) }))
    .filter((opening) => !off.has(dayOf(instantOf(opening.from), lab.timeZone)));
  return merged(own);
}

const outagesOf = (oven: OvenWithCare, { to }: Working): Interval[] =>
  merged(
    outages(oven, to.getTime()).map(({ fromMs, toMs }) => ({
      from: minuteOf(new Date(fromMs)),
      to: lastMinuteOf(new Date(toMs)),
    })),
  );

export async function ovensOf(
  reader: Reader,
  lab: LabFacts,
  settings: PrepSettings,
  now: Date,
  working: Working,
): Promise<Ovens> {
  const [rows, runs] = await Promise.all([
    reader.oven.findMany({
      where: { labId: lab.id, removedAt: null },
      include: { care: { where: { takenBackAt: null } } },
      orderBy: { id: 'asc' },
    }),
    standingRuns(reader, lab),
  ]);
  if (rows.length === 0) {
    const ovens = granted(settings, working.open);
    return { ovens, spans: [], names: new Map(ovens.map(({ id }) => [id, id])), described: [] };
  }
  const all = rows.map((oven) => {
    const out = outagesOf(oven, working);
    const own = runs.filter(({ ovenId }) => ovenId === oven.id);
    const taken = own.flatMap((run) => takenBy(run, oven.doorMinutes, now) ?? []);
    const { id, kind, shelves, shelfAreaCm2, shelfHeightMm, lowestC, highestC, isUnattended } = oven;
    const prep: PrepOven = {
      id,
      open: openOf(oven, lab, settings, working),
      busy: [...taken, ...out],
      capacity: shelves * shelfAreaCm2,
      shelfHeightMm,
      temperatureC: [lowestC, highestC],
      isVacuum: kind === 'VACUUM',
      isUnattended,
    };
    return { prep, spans: own.flatMap((run) => spansOf(run, out, now)) };
  });
  return {
    ovens: all.map(({ prep }) => prep),
    spans: all.flatMap(({ spans }) => spans),
    names: new Map(rows.map(({ id, name }) => [id, name])),
    described: rows,
  };
}
