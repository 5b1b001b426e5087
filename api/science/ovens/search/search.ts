// The search for a good plan: jobs put in by urgency, then annealed, first for the objective's figure, then for oven hours.
import { diceOf } from '../dice.ts';
import type { Kept } from '../kept.ts';
import type { Model } from '../model.ts';
import type { Objective } from '../objective.ts';
import { anneal, type Best, bestOf, canShare, type Stage } from './anneal.ts';
import { byUrgency, insertJobs } from './insert.ts';
import { rebuild } from './rebuild.ts';
import { Plan, type Sequences } from './plan.ts';

export interface SearchTask {
  readonly seed: number;
  /** How many changes are tried in all. */
  readonly moves: number;
  /** No plan has a smaller figure. */
  readonly floor: number;
  /** A plan to begin with; its jobs may be fewer than all. */
  readonly from: Sequences | null;
  readonly kept: Kept | null;
}

export interface Watch {
  /** Asked now and then; true ends the search with the best plan so far. */
  stopped: () => boolean;
  /** Told the share that is done, 0 to 1. */
  progress: (share: number) => void;
  /** Told once, of a first good plan. */
  first?: (best: Best) => void;
  /** Told once, when nothing can have a smaller figure or the moves for it are used up. */
  settled?: (best: Best) => void;
}

/** First and last temperatures as a share of what the mean job is worth in its own minutes. */
const annealing = [0.15, 0.0004] as const;
/** Where jobs share batches small moves alone get stuck: they begin hotter, and rebuilding goes on from there. */
const [hotAnnealing, rebuilding] = [[1.5, 0.0004] as const, [0.5, 0.001] as const];
/** The same for oven minutes, as a share of the mean job's. */
const [hoursAnnealing, hoursRebuilding] = [[0.25, 0.004] as const, [0.3, 0.004] as const];
/** Of all moves those for the figure, and of these the ones annealed where batches are rebuilt too. */
const [figureShare, annealedShare] = [0.75, 0.4];
const mostRounds = 3;

const mean = (values: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i]!;
  return values.length === 0 ? 0 : sum / values.length;
};

/** What one step of annealing is worth in the units of the objective. */
function scaleOf(model: Model, { name, perBatchMinute }: Objective): number {
  const minutes = Math.max(1, mean(model.least));
  if (name === 'late-jobs') return 2;
  if (name === 'weighted-sum') return Math.max(1, perBatchMinute * minutes);
  return name === 'max-lateness' || name === 'makespan' ? minutes : minutes * Math.max(0.01, mean(model.weight));
}

export interface Found {
  readonly best: Best;
  /** Did it use all its moves, or end because nothing better is possible? */
  readonly isWhole: boolean;
}

export function search(model: Model, objective: Objective, task: SearchTask, watch: Watch): Found {
  const plan = new Plan(model, objective, task.kept);
  const dice = diceOf(task.seed);
  if (task.from) plan.load(task.from);
  insertJobs(
    plan,
    byUrgency(model).filter((job) => plan.slotOf[job]! < 0),
  );
  const best = bestOf(plan);
  const shares = canShare(model);
  let [before, isWhole] = [0, true];
  const stopped = (done: number) => {
    watch.progress(Math.min(1, (before + done) / task.moves));
    return watch.stopped();
  };
  const run = (way: typeof anneal, of: Stage['of'], moves: number, [warm, cold]: readonly [number, number]) => {
    const stage = { of, moves: Math.round(moves), warm, cold, floor: of === 'figure' ? task.floor : 0 };
    const done = way(plan, dice, stage, best, stopped);
    isWhole = done.isWhole;
    before += done.moves;
    plan.load(best.sequences);
  };
  const isOpen = () => isWhole && best.figure > task.floor;
  const times = ([warm, cold]: readonly [number, number], unit: number) => [warm * unit, cold * unit] as const;

  const scale = scaleOf(model, objective);
  const figureMoves = (objective.countsHours && objective.name === 'lateness' ? figureShare : 1) * task.moves;
  const isHot = shares && task.kept === null;
  const rounds = isHot ? 1 : mostRounds;
  for (let round = 0; round < rounds && isOpen(); round += 1) {
    const [warm, cold] = times(isHot ? hotAnnealing : annealing, scale);
    run(anneal, 'figure', ((shares ? annealedShare : 1) * figureMoves) / rounds, [warm / (1 + round), cold]);
    if (round === 0) watch.first?.(best);
  }
  if (before === 0) watch.first?.(best);
  const left = figureMoves - before;
  for (let round = 0; round < mostRounds && shares && isOpen(); round += 1) {
    const [warm, cold] = times(rebuilding, scale);
    run(rebuild, 'figure', left / mostRounds, [warm / 2 ** round, cold]);
  }
  watch.settled?.(best);
  if (isWhole && objective.name === 'lateness') {
    const minutes = Math.max(1, mean(model.least));
    if (shares) run(rebuild, 'hours', task.moves - before, times(hoursRebuilding, minutes));
    else run(anneal, 'hours', task.moves - before, times(hoursAnnealing, minutes));
  }
  return { best, isWhole };
}
