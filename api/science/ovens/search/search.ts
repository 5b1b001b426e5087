// The search for a good plan: jobs put in by urgency, then annealed, first for the objective's figure, then for oven hours.
import { diceOf } from '../dice.ts';
import type { Kept } from '../kept.ts';
import type { Model } from '../model.ts';
import type { Objective } from '../objective.ts';
import { anneal, type Best, bestOf } from './anneal.ts';
import { byUrgency, insertJobs } from './insert.ts';
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

/** Temperatures as a share of what the mean job is worth in its own minutes. */
const [warmShare, coldShare] = [0.15, 0.0004];
/** Oven minutes: a share of the mean job's. */
const [warmHours, coldHours] = [0.25, 0.004];
const figureShare = 0.6;
const rounds = 3;

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
  const figureMoves = Math.round(
    (objective.countsHours && objective.name === 'lateness' ? figureShare : 1) * task.moves,
  );
  const scale = scaleOf(model, objective);
  let before = 0;
  const stopped = (done: number) => {
    watch.progress(Math.min(1, (before + done) / task.moves));
    return watch.stopped();
  };
  let isWhole = true;
  for (let round = 0; round < rounds && isWhole && best.figure > task.floor; round += 1) {
    const moves = Math.round(figureMoves / rounds);
    const [warm, cold] = [(warmShare * scale) / (1 + round), coldShare * scale];
    isWhole = anneal(plan, dice, { of: 'figure', moves, warm, cold, floor: task.floor }, best, stopped);
    before += moves;
    plan.load(best.sequences);
    if (round === 0) watch.first?.(best);
  }
  if (before === 0) watch.first?.(best);
  watch.settled?.(best);
  before = figureMoves;
  if (isWhole && objective.name === 'lateness') {
    const minutes = Math.max(1, mean(model.least));
    const [warm, cold] = [warmHours * minutes, coldHours * minutes];
    const moves = task.moves - figureMoves;
    isWhole = anneal(plan, dice, { of: 'hours', moves, warm, cold, floor: 0 }, best, stopped);
  }
  return { best, isWhole };
}
