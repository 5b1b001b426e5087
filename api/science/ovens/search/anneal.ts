// Simulated annealing over the moves (Kirkpatrick, Gelatt & Vecchi 1983): worse plans are taken now and then, ever less often.
// It counts moves and asks no clock; whoever calls may stop it between two thousand of them.
import type { Dice } from '../dice.ts';
import { movesOf } from './moves.ts';
import type { Sum } from '../timeline.ts';
import type { Model } from '../model.ts';
import type { Objective } from '../objective.ts';
import type { Plan, Sequences } from './plan.ts';

export interface Stage {
  /** What is made small: the objective's figure, or oven minutes while the figure may not rise. */
  readonly of: 'figure' | 'hours';
  readonly moves: number;
  /** First and last temperature, in the units of what is made small. */
  readonly warm: number;
  readonly cold: number;
  /** No plan has a smaller figure: reaching it ends the stage. */
  readonly floor: number;
}

export interface Best {
  figure: number;
  hours: number;
  loads: number;
  sequences: Sequences;
}

/** Between two looks at whether to stop. */
const movesAtOnce = 2000;
/** Where figures are level, fewer oven minutes and a smaller guide lead on. */
const hoursBesideFigure = 0.02;
const guideBesideFigure = 0.001;
const minutesALoad = 0.25;
/** So large that no saving of oven minutes pays for it. */
const aboveCap = 1000;

export function totalOf(plan: Plan): Sum {
  const sum = { figure: 0, hours: 0, guide: 0 };
  plan.timeline.total(sum);
  return sum;
}

export function bestOf(plan: Plan): Best {
  const { figure, hours } = totalOf(plan);
  return { figure, hours, loads: plan.loads(), sequences: plan.sequences() };
}

export interface Cost {
  readonly of: (sum: Sum, loads: number) => number;
  /** No plan with such a figure or a larger one costs less. */
  readonly mostFigure: (cost: number) => number;
}

/** What a stage makes small. Of oven minutes only plans count whose figure is no larger than the `cap`. */
export function costOf({ of }: Stage, { isLargest }: Objective, cap: () => number): Cost {
  if (of === 'hours') {
    return {
      of: (sum, loads) => sum.hours + minutesALoad * loads + aboveCap * Math.max(0, sum.figure - cap() - 1e-9),
      mostFigure: (cost) => cap() + 1e-6 + cost / aboveCap,
    };
  }
  const beside = isLargest ? 0 : hoursBesideFigure;
  return {
    of: (sum) => sum.figure + guideBesideFigure * sum.guide + beside * sum.hours,
    mostFigure: (cost) => cost,
  };
}

/** May any two jobs share a batch? */
export const canShare = ({ apart, jobs }: Model): boolean =>
  apart.some((one, at) => one === 0 && at % (jobs + 1) !== 0);

export interface Done {
  /** False when it was stopped. */
  readonly isWhole: boolean;
  /** How many changes were tried. */
  readonly moves: number;
}

/** Anneals from where the plan stands; `best` is kept up to date. */
export function anneal(plan: Plan, dice: Dice, stage: Stage, best: Best, stopped: (done: number) => boolean): Done {
  const { model, draft, timeline } = plan;
  if (model.jobs === 0) return { isWhole: true, moves: 0 };
  const ofHours = stage.of === 'hours';
  const canWait = ofHours || timeline.kept !== null || timeline.objective.perBatchMinute > 0;
  const moves = movesOf(canShare(model), canWait);
  const cost = costOf(stage, timeline.objective, () => best.figure);
  let loads = plan.loads();
  let current = cost.of(totalOf(plan), loads);
  const cooling = Math.log(stage.cold / stage.warm) / Math.max(1, stage.moves);
  let temperature = stage.warm;
  for (let done = 0; done < stage.moves; done += 1) {
    if (done % movesAtOnce === 0) {
      if (stopped(done)) return { isWhole: false, moves: done };
      if (!ofHours && best.figure <= stage.floor) return { isWhole: true, moves: done };
      temperature = stage.warm * Math.exp(cooling * done);
    }
    plan.begin();
    if (!moves[dice.below(moves.length)]!(plan, dice)) {
      draft.reject();
      continue;
    }
    const sum = draft.value();
    const loadsThen = loads + draft.made.length - draft.dropped.length;
    const then = cost.of(sum, loadsThen);
    const isTaken =
      (!ofHours || sum.figure <= best.figure + 1e-9) &&
      (then <= current || dice.unit() < Math.exp((current - then) / temperature));
    if (!isTaken) {
      draft.reject();
      continue;
    }
    plan.accept();
    current = then;
    loads = loadsThen;
    if (isBetter(sum.figure, sum.hours, loads, best)) {
      best.figure = sum.figure;
      best.hours = sum.hours;
      best.loads = loads;
      best.sequences = plan.sequences();
    }
  }
  return { isWhole: true, moves: stage.moves };
}

export function isBetter(figure: number, hours: number, loads: number, best: Best): boolean {
  if (Math.abs(figure - best.figure) > 1e-7) return figure < best.figure;
  return hours !== best.hours ? hours < best.hours : loads < best.loads;
}
