// The states that matter to one oven, in a few buckets: each alone while they are few, neighbours together when they are
// many. A bucket is easier to reach and bears more jobs than any state in it, so that a bound over buckets stays one.
import type { Model } from '../model.ts';

export interface Bucket {
  readonly lowest: number;
  readonly highest: number;
  /** The jobs that this oven can dry at some state of the bucket. */
  readonly jobs: readonly number[];
}

export interface Buckets {
  readonly all: readonly Bucket[];
  readonly of: (state: number) => number;
  /** Least minutes and cost from one bucket (row) to another. */
  readonly minutes: Int32Array;
  readonly cost: Float64Array;
}

const mostBuckets = 14;

export function bucketsOf(model: Model, oven: number): Buckets {
  const { lowest, highest, state, pins, setups } = model.ovens[oven]!;
  const clip = (at: number) => Math.min(highest, Math.max(lowest, at));
  const jobs = Array.from({ length: model.jobs }, (_, job) => job).filter((job) => (model.allowed[job]! >> oven) & 1);
  const ends = jobs.flatMap((job) => [clip(model.lowest[job]!), clip(model.highest[job]!)]);
  const states = [...new Set([...ends, state, ...pins.map((pin) => pin.state)])].sort((a, b) => a - b);
  const together = model.states.temperatureC ? Math.ceil(states.length / mostBuckets) : 1;
  const all = Array.from({ length: Math.ceil(states.length / together) }, (_, i): Bucket => {
    const low = states[i * together]!;
    const high = states[Math.min(states.length, (i + 1) * together) - 1]!;
    return {
      lowest: low,
      highest: high,
      jobs: jobs.filter(
        (job) => Math.max(low, lowest, model.lowest[job]!) <= Math.min(high, highest, model.highest[job]!),
      ),
    };
  });
  const count = all.length;
  const minutes = new Int32Array(count * count).fill(0x7fffffff);
  const cost = new Float64Array(count * count).fill(Infinity);
  all.forEach((from, a) =>
    all.forEach((to, b) => {
      for (let s = from.lowest; s <= from.highest; s += 1) {
        for (let t = to.lowest; t <= to.highest; t += 1) {
          const at = s * model.states.count + t;
          minutes[a * count + b] = Math.min(minutes[a * count + b]!, setups.minutes[at]!);
          cost[a * count + b] = Math.min(cost[a * count + b]!, setups.cost[at]!);
        }
      }
    }),
  );
  return { all, of: (at) => all.findIndex(({ highest: top }) => at <= top), minutes, cost };
}

/** Sets of jobs of which any may share a batch as far as families go, so that each batch lies in one of them. */
export function modesOf(model: Model, jobs: readonly number[]): number[][] {
  const kinds: number[][] = [];
  for (const job of jobs) {
    const alike = kinds.find(([first = job]) => rowOf(model, first) === rowOf(model, job));
    if (alike) alike.push(job);
    else kinds.push([job]);
  }
  if (kinds.length > 20) return [[...jobs]];
  const meets = kinds.map(([a = 0]) => kinds.map(([b = 0]) => model.families[a * model.jobs + b] === 0));
  const cliques: number[][] = [];
  grow(
    meets,
    [],
    kinds.map((_, i) => i),
    [],
    cliques,
  );
  return cliques.length > 12 ? [[...jobs]] : cliques.map((clique) => clique.flatMap((i) => kinds[i]!));
}

const rowOf = (model: Model, job: number): string =>
  model.families.subarray(job * model.jobs, (job + 1) * model.jobs).join('');

/** Maximal cliques (Bron & Kerbosch 1973). */
function grow(meets: boolean[][], chosen: number[], open: number[], shut: number[], out: number[][]): void {
  if (open.length === 0 && shut.length === 0 && chosen.length > 0) out.push(chosen);
  let [left, done] = [open, shut];
  for (const one of open) {
    const near = (other: number) => other !== one && meets[one]![other]!;
    grow(meets, [...chosen, one], left.filter(near), done.filter(near), out);
    left = left.filter((other) => other !== one);
    done = [...done, one];
  }
}
