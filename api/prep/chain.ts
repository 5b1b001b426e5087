// A need as the planner takes it: what is still to do, from when on, and what goes on meanwhile.
import type { PrepStepKind } from '../database/generated/sqlite/client.ts';
import type { PlannedStep, PrepNeed } from '../science/prep/stages.ts';
import type { NeedFacts, PrepFacts } from './facts.ts';
import { minuteOf } from './hours.ts';
import type { Ground } from './ground.ts';
import type { HeatOf } from './heat.ts';
import { five, type Building } from './chain-building.ts';
import { washing } from './chain-wash.ts';
import { drying } from './chain-dry.ts';
import { equilibrating, packing } from './chain-end.ts';
import { withoutBegun } from './chain-begun.ts';

const handOverMinutes = 5;

export interface Chain {
  prep: PrepNeed;
  /** Steps that were begun and end by themselves, or were done without a tick of their own. */
  running: PlannedStep[];
  /** What the timeline says was done, by kind, with when. */
  done: Map<PrepStepKind, Date>;
  /** It may not go to the oven yet. */
  isWet: boolean;
}

/** What is left to do for a need. */
export function chainOf(
  facts: NeedFacts,
  prep: PrepFacts,
  { resources, spans }: Pick<Ground, 'resources' | 'spans'>,
  heat: HeatOf,
): Chain {
  const { need, kept } = facts;
  const floor = five(minuteOf(prep.now) + 0.999);
  const of: Building = { stages: [], running: [], takes: [], done: new Map(), floor, keepsFrom: null };
  const isClean = washing(of, facts, prep, resources);
  drying(of, facts, { resources, spans, heat }, isClean);
  equilibrating(of, facts, prep);
  packing(of, facts, prep);
  of.stages.push({ kind: 'HAND_OVER', minutes: handOverMinutes, restMinutes: 0 });
  withoutBegun(of, facts, prep.now);
  // Once in the oven, it is there.
  const inOven = spans.filter(({ needId, isBegun }) => isBegun && needId === need.id);
  const begun = Math.min(of.floor, ...inOven.map(({ start }) => start));
  return {
    prep: {
      id: need.id,
      at: minuteOf(need.at),
      weight: need.weight,
      floor: inOven.length > 0 ? begun : of.floor,
      keepsFrom: of.keepsFrom,
      stages: of.stages,
      takes: of.takes,
    },
    running: of.running,
    done: of.done,
    isWet: kept.some(({ container }) => container.wettedAt !== null && container.kind === 'PLATE_BOX'),
  };
}
