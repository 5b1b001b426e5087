// Plans backwards from needs: each stage as late as it can be, heavier needs first, nothing taken twice. What does not
// fit says which stage and which resource stand in the way, and the first time at which it would.
import { Ledger, type Resource } from './ledger.ts';
import { placed } from './place.ts';
import type { PlannedStep, PrepNeed, PrepResources, Stage } from './stages.ts';

export interface Obstacle {
  /** The stage that does not fit. */
  readonly stage: Stage['kind'];
  /** What there is not enough of; `time` when more of anything would not help. */
  readonly lacks: Resource | 'time';
  /** When its first step would have had to begin; null where that says nothing. */
  readonly shouldHaveBegun: number | null;
}

export type Outcome =
  | { readonly needId: string; readonly steps: readonly PlannedStep[]; readonly obstacle: null }
  | {
      readonly needId: string;
      readonly steps: null;
      readonly obstacle: Obstacle;
      readonly firstPossible: number | null;
    };

/** First times are told in quarter hours. */
const quarter = 15;
const horizonMinutes = 28 * 1440;
const resources: readonly Resource[] = ['tank', 'hood', 'hands', 'oven'];

/** Waits in the desiccator wherever something is done before the next begins. */
function withKeeping(steps: readonly PlannedStep[], keepsFrom: number | null): PlannedStep[] {
  const all: PlannedStep[] = [];
  let doneAt = keepsFrom;
  const keep = (start: number, end: number) =>
    all.push({ kind: 'KEEP', load: 1, loads: 1, start, end, isAttended: false, ovenId: null });
  for (const step of steps) {
    if (doneAt !== null && step.start > doneAt) keep(doneAt, step.start);
    doneAt = step.kind === 'AIR_DRY' || step.kind === 'COOL' ? step.end : null;
    all.push(step);
  }
  return all;
}

interface Fit {
  steps: PlannedStep[] | null;
  failed: Stage['kind'];
}

/** One need by a time, on top of what the ledger holds; on failure nothing is taken. */
function fitted(ledger: Ledger, need: PrepNeed, at: number, floor: number): Fit {
  const mark = ledger.mark();
  let deadline = at;
  let steps: PlannedStep[] = [];
  for (const stage of [...need.stages].reverse()) {
    const found = placed(ledger, stage, deadline, floor);
    if (!found) {
      ledger.backTo(mark);
      return { steps: null, failed: stage.kind };
    }
    steps = [...found.steps, ...steps];
    deadline = found.from;
  }
  return { steps: withKeeping(steps, need.keepsFrom), failed: 'HAND_OVER' };
}

/** Whether it fits by a time, taking nothing. */
function couldBe(ledger: Ledger, need: PrepNeed, at: number): boolean {
  const mark = ledger.mark();
  const { steps } = fitted(ledger, need, at, need.floor);
  ledger.backTo(mark);
  return steps !== null;
}

/** The first full quarter hour in working hours by which it can be; null within four weeks. What can be by a time can be later. */
function firstOf(ledger: Ledger, need: PrepNeed): number | null {
  let impossible = Math.floor(need.floor / quarter);
  let possible = Math.ceil((need.floor + horizonMinutes) / quarter);
  if (!couldBe(ledger, need, possible * quarter)) return null;
  while (possible - impossible > 1) {
    const middle = (possible + impossible) >> 1;
    if (couldBe(ledger, need, middle * quarter)) possible = middle;
    else impossible = middle;
  }
  return possible * quarter;
}

const backWeeks = 4 * 7 * 1440;

function obstacleOf(ledger: Ledger, need: PrepNeed, failed: Stage['kind']): Obstacle {
  const lacks = resources.find((resource) =>
    ledger.without(resource, () => fitted(ledger, need, need.at, need.floor).steps !== null),
  );
  if (lacks) return { stage: failed, lacks, shouldHaveBegun: null };
  const mark = ledger.mark();
  const { steps } = fitted(ledger, need, need.at, need.floor - backWeeks);
  ledger.backTo(mark);
  // No oven that would do, whenever: then the oven it is.
  const lacksOven = failed === 'OVEN' && steps === null;
  return { stage: failed, lacks: lacksOven ? 'oven' : 'time', shouldHaveBegun: steps?.[0]?.start ?? null };
}

/** Heavier first, then earlier, then by id: the same needs give the same plan, in whatever order they are told. */
const inTurn = (a: PrepNeed, b: PrepNeed): number =>
  b.weight - a.weight || a.at - b.at || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Plans all needs together; answers in the order in which they were given. */
export function planNeeds(needs: readonly PrepNeed[], given: PrepResources): Outcome[] {
  const ledger = new Ledger(given);
  for (const { takes, stages } of needs) {
    for (const { of, from, to, amount } of takes) ledger.take(of, from, to, amount);
    // Oven runs that stand are in the ovens' busy times; nobody else may have their place.
    for (const stage of stages) {
      if (stage.kind !== 'OVEN') continue;
      for (const { ovenId, start, end } of stage.given ?? []) {
        ledger.addBatch({ ovenId, start, end, temperatureC: stage.temperatureC, amount: 0, isGiven: true });
      }
    }
  }
  const outcomes = new Map<string, Outcome>();
  for (const need of [...needs].sort(inTurn)) {
    const { id: needId } = need;
    const { steps, failed } = fitted(ledger, need, need.at, need.floor);
    if (steps) outcomes.set(needId, { needId, steps, obstacle: null });
    else {
      const obstacle = obstacleOf(ledger, need, failed);
      outcomes.set(needId, { needId, steps: null, obstacle, firstPossible: firstOf(ledger, need) });
    }
  }
  return needs.map(({ id }) => {
    const outcome = outcomes.get(id);
    if (!outcome) throw new Error(`need ${id} was not planned`);
    return outcome;
  });
}
