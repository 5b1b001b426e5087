// A proven lower bound: each job has a price, each oven takes what pays best, and what that comes to is never more than the
// best plan costs (Lagrangian relaxation of "each job at least once"). The prices are moved by deflected Polyak steps.
import { type Model, never } from '../model.ts';
import type { BoundCost } from './cost.ts';
import { OvenPath } from './path.ts';
import type { Grid } from './stays.ts';

export interface BoundTask {
  /** Work in stays and knapsacks that may be done in all. */
  readonly work: number;
  /** What a plan that was found costs: the steps aim at it. */
  readonly target: number;
  readonly cost: BoundCost;
  readonly starts: readonly Float64Array[];
  /** Minutes that a cell of time should have at least. */
  readonly step: number;
}

export interface BoundWatch {
  stopped: () => boolean;
  progress: (share: number) => void;
}

const [firstStep, lastStep] = [1.2, 0.02];
const patience = 15;
const slower = 0.85;
const memory = 0.4;
const mostCells = 3600;

function gridOf(model: Model, wanted: number): { grid: Grid; horizon: number } {
  const origin = Math.min(...model.ovens.map(({ freeAt }) => freeAt));
  const dues = Array.from(model.due).filter((due) => due < never);
  const ready = Math.max(0, ...model.ready);
  const longest = Math.max(1, ...model.least);
  const horizon = Math.max(ready + 2 * longest, ...dues.map((due) => due + longest), origin + longest) + 720;
  const shortest = Math.max(1, Math.min(...model.least));
  // No batch may end in the cell it starts in.
  const step = Math.max(1, Math.min(Math.max(wanted, Math.ceil((horizon - origin) / mostCells)), shortest));
  const cells = Math.ceil((horizon - origin) / step);
  return { grid: { origin, step, cells }, horizon: origin + cells * step };
}

export interface Bound {
  readonly value: number;
  readonly isWhole: boolean;
}

/** The best bound that the work allows; 0 at least where costs are never negative. */
export function lowerBound(model: Model, task: BoundTask, watch: BoundWatch): Bound {
  const { cost } = task;
  const { grid, horizon } = gridOf(model, task.step);
  if (grid.cells > mostCells || model.jobs === 0) return { value: 0, isWhole: true };
  const cap = Float64Array.from({ length: model.jobs }, (_, job) => cost.after(job, horizon));
  const paths = model.ovens.map((_, oven) => new OvenPath(model, oven, grid, cost));
  const each = Math.max(
    1,
    paths.reduce((sum, path) => sum + path.work, 0),
  );
  const rounds = Math.max(4, Math.round(task.work / each / task.starts.length));
  let best = 0;
  for (const [i, start] of task.starts.entries()) {
    const price = start.map((value, job) => Math.min(cap[job]!, value));
    const direction = new Float64Array(model.jobs);
    let bestPrice = price.slice();
    let [step, stale, own] = [firstStep, 0, -Infinity];
    for (let round = 0; round < rounds && step > lastStep; round += 1) {
      watch.progress((i + round / rounds) / task.starts.length);
      if (watch.stopped()) return { value: best, isWhole: false };
      const value = paths.reduce((sum, path) => sum + path.price(price), 0) + price.reduce((sum, one) => sum + one, 0);
      if (value > own + 1e-9) {
        own = value;
        bestPrice = price.slice();
        stale = 0;
      } else {
        stale += 1;
        if (stale >= patience) {
          step *= slower;
          stale = 0;
          price.set(bestPrice);
          direction.fill(0);
          continue;
        }
      }
      best = Math.max(best, value);
      if (best >= task.target - 1e-6) return { value: best, isWhole: true };
      const slack = new Float64Array(model.jobs).fill(1);
      for (const path of paths) path.taken(price, (job) => (slack[job]! -= 1));
      let square = 0;
      for (let job = 0; job < model.jobs; job += 1) {
        direction[job] = slack[job]! + memory * direction[job]!;
        square += direction[job]! ** 2;
      }
      if (square === 0) return { value: best, isWhole: true };
      const length = (step * Math.max(1, task.target - value)) / square;
      for (let job = 0; job < model.jobs; job += 1) {
        price[job] = Math.min(cap[job]!, Math.max(0, price[job]! + length * direction[job]!));
      }
    }
  }
  return { value: best, isWhole: true };
}
