// Simulated annealing over the moves (Kirkpatrick, Gelatt & Vecchi 1983): worse plans are taken now and then, ever less often.
// It counts moves and asks no clock; whoever calls may stop it between two thousand of them.
import type { Dice } from '../dice.ts';
import { movesOf } from './moves.ts';
import type { Sum } from '../timeline.ts';
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

function totalOf(plan: Plan): Sum {
  const sum = { figure: 0, hours: 0, guide: 0 };
  plan.timeline.total(sum);
  return sum;
}

export function bestOf(plan: Plan): Best {
  const { figure, hours } = totalOf(plan);
  return { figure, hours, loads: plan.loads(), sequences: plan.sequences() };
}

/** Anneals from where the plan stands; `best` is kept up to date. False when it was stopped. */
export function anneal(plan: Plan, dice: Dice, stage: Stage, best: Best, stopped: (done: number) => boolean): boolean {
  const { model, draft, timeline } = plan;
  if (model.jobs === 0) return true;
  const canShare = Array.from(model.apart).some((apart, at) => apart === 0 && at % (model.jobs + 1) !== 0);
  const ofHours = stage.of === 'hours';
  const moves = movesOf(canShare, ofHours || timeline.kept !== null || timeline.objective.perBatchMinute > 0);
  const { isLargest } = timeline.objective;
  const energy = (figure: number, hours: number, guide: number, loads: number) =>
    ofHours
      ? hours + minutesALoad * loads
      : figure + guideBesideFigure * guide + (isLargest ? 0 : hoursBesideFigure * hours);
  const now = totalOf(plan);
  let loads = plan.loads();
  let current = energy(now.figure, now.hours, now.guide, loads);
  const cooling = Math.log(stage.cold / stage.warm) / Math.max(1, stage.moves);
  let temperature = stage.warm;
  for (let done = 0; done < stage.moves; done += 1) {
    if (done % movesAtOnce === 0) {
      if (stopped(done)) return false;
      if (!ofHours && best.figure <= stage.floor) return true;
      temperature = stage.warm * Math.exp(cooling * done);
    }
    plan.begin();
    if (!moves[dice.below(moves.length)]!(plan, dice)) {
      draft.reject();
      continue;
    }
    const sum = draft.value();
    const loadsThen = loads + draft.made.length - draft.dropped.length;
    const then = energy(sum.figure, sum.hours, sum.guide, loadsThen);
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
  return true;
}

export function isBetter(figure: number, hours: number, loads: number, best: Best): boolean {
  if (Math.abs(figure - best.figure) > 1e-7) return figure < best.figure;
  return hours !== best.hours ? hours < best.hours : loads < best.loads;
}
