// Every batch that could start within a cell of time in one oven, made no harder than the easiest start in the cell: the
// earliest end, the shortest stay, all jobs that some start in the cell could take. What holds for these holds for every
// plan.
import type { Model, OvenModel } from '../model.ts';
import type { BoundCost } from './cost.ts';
import { type Buckets, modesOf } from './buckets.ts';
import type { Sacks } from './sacks.ts';

export interface Grid {
  readonly origin: number;
  readonly step: number;
  readonly cells: number;
}

/** The stays of one bucket between two pins, in flat lists; those that start in a cell stand at `first[cell]` up to `first[cell + 1]`. */
export interface Stays {
  readonly first: Int32Array;
  readonly sack: Int32Array;
  readonly endCell: Int32Array;
  /** Where the cell of its end and the bucket stand in a table of both. */
  readonly then: Int32Array;
  readonly cost: Float64Array;
}

interface Ends {
  end: number;
  minutes: number;
}

/** The earliest end and the shortest stay of starts from `first` to `last`, both within open hours that end at `closing`. */
function endOf(oven: OvenModel, first: number, last: number, closing: number, least: number): Ends | null {
  const end = first + least;
  if (end <= closing) return { end, minutes: least };
  if (!oven.unattended) return null;
  for (let i = 0; i < oven.openTo.length; i += 1) {
    if (oven.openTo[i]! < end) continue;
    const opening = oven.openFrom[i]!;
    return opening <= end ? { end, minutes: least } : { end: opening, minutes: Math.max(least, opening - last) };
  }
  return null;
}

/** The minutes of a cell in which someone could load, between two pins: one span for each opening that meets it. */
function loading(
  oven: OvenModel,
  from: number,
  to: number,
  visit: (first: number, last: number, closing: number) => void,
) {
  for (let i = 0; i < oven.openTo.length; i += 1) {
    const first = Math.max(from, oven.openFrom[i]!);
    const last = Math.min(to, oven.openTo[i]!);
    if (first <= last) visit(first, last, oven.openTo[i]!);
    if (oven.openFrom[i]! > to) return;
  }
}

export function staysOf(
  model: Model,
  oven: OvenModel,
  buckets: Buckets,
  bucket: number,
  between: readonly [number, number],
  grid: Grid,
  cost: BoundCost,
  sacks: Sacks,
): Stays {
  const modes = modesOf(model, buckets.all[bucket]!.jobs).map((jobs) => {
    const sorted = [...jobs].sort((a, b) => a - b);
    return { jobs: sorted, lengths: [...new Set(sorted.map((job) => model.least[job]!))].sort((a, b) => a - b) };
  });
  const first = new Int32Array(grid.cells + 1);
  const [sack, endCell, costs]: [number[], number[], number[]] = [[], [], []];
  for (let cell = 0; cell < grid.cells; cell += 1) {
    first[cell] = sack.length;
    const from = Math.max(between[0], grid.origin + cell * grid.step);
    const to = Math.min(between[1], grid.origin + (cell + 1) * grid.step - 1);
    if (from > to) continue;
    loading(oven, from, to, (earliest, latest, closing) => {
      for (const { jobs, lengths } of modes) {
        for (const least of lengths) {
          const stay = endOf(oven, earliest, latest, closing, least);
          if (stay === null || stay.end > between[1]) continue;
          const ends = Math.floor((stay.end - grid.origin) / grid.step);
          if (ends >= grid.cells) continue;
          let [isNew, isTimed] = [false, false];
          const eligible = jobs.filter((job) => {
            if (model.least[job]! > least || model.most[job]! < stay.minutes || model.ready[job]! > latest)
              return false;
            const own = cost.ofJob(job, stay.end);
            if (own === Infinity) return false;
            if (own > 0) isTimed = true;
            if (model.least[job] === least) isNew = true;
            return true;
          });
          // Without a job that needs this length a shorter stay does as well.
          if (!isNew) continue;
          sack.push(sacks.of(eligible, isTimed ? stay.end : null));
          endCell.push(ends);
          costs.push(cost.perBatchMinute * stay.minutes);
        }
      }
    });
  }
  first[grid.cells] = sack.length;
  return {
    first,
    sack: Int32Array.from(sack),
    endCell: Int32Array.from(endCell),
    then: Int32Array.from(endCell, (cell) => cell * buckets.all.length + bucket),
    cost: Float64Array.from(costs),
  };
}

/** The stays of all buckets in one list, by the cell they start in and then by bucket. */
export function joined(all: readonly Stays[], cells: number): Stays {
  const size = all.reduce((sum, { sack }) => sum + sack.length, 0);
  const [sack, endCell, then] = [new Int32Array(size), new Int32Array(size), new Int32Array(size)];
  const cost = new Float64Array(size);
  const first = new Int32Array(cells * all.length + 1);
  let to = 0;
  for (let cell = 0; cell < cells; cell += 1) {
    all.forEach((stays, bucket) => {
      const [from, last] = [stays.first[cell]!, stays.first[cell + 1]!];
      sack.set(stays.sack.subarray(from, last), to);
      endCell.set(stays.endCell.subarray(from, last), to);
      then.set(stays.then.subarray(from, last), to);
      cost.set(stays.cost.subarray(from, last), to);
      to += last - from;
      first[cell * all.length + bucket + 1] = to;
    });
  }
  return { first, sack, endCell, then, cost };
}
