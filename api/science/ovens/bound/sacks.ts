// Which jobs are worth most in one batch: small knapsacks, each solved once for a set of jobs that several batches could hold.

/** Areas in at most this many units; larger ones are floored, which only lets more in. */
const mostUnits = 64;

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

export class Sacks {
  readonly capacity: number;
  readonly #units: Int32Array;
  readonly #sets = new Map<string, number>();
  readonly #jobs: number[][] = [];
  readonly #ends: number[] = [];
  #values = new Float64Array(0);
  readonly #best: Float64Array;

  constructor(area: Float64Array, whole: number) {
    const inside = Array.from(area).filter((one) => one <= whole);
    const isWhole = [...inside, whole].every(Number.isInteger);
    const common = isWhole ? inside.reduce(gcd, whole) : 0;
    const unit = common > 0 && whole / common <= mostUnits ? common : whole / mostUnits;
    // Flooring with a grain of safety: a unit too few only lets more in.
    this.#units = Int32Array.from(area, (one) => Math.floor(one / unit + 1e-9));
    this.capacity = Math.floor(whole / unit + 1e-9);
    this.#best = new Float64Array(this.capacity + 1);
  }

  /** The number of the knapsack of these jobs in a batch that ends then; `null`: their costs do not depend on the end. */
  of(jobs: readonly number[], end: number | null): number {
    const key = `${end} ${jobs.join(' ')}`;
    let at = this.#sets.get(key);
    if (at === undefined) {
      at = this.#jobs.length;
      this.#sets.set(key, at);
      this.#jobs.push([...jobs]);
      this.#ends.push(end ?? -1);
    }
    return at;
  }

  get count(): number {
    return this.#jobs.length;
  }

  /** The best value of each knapsack, with what a job is worth in a batch that ends then. */
  solve(worth: (job: number, end: number) => number): Float64Array {
    if (this.#values.length !== this.count) this.#values = new Float64Array(this.count);
    const best = this.#best;
    const units = this.#units;
    for (let at = 0; at < this.count; at += 1) {
      const jobs = this.#jobs[at]!;
      const end = this.#ends[at]!;
      let [sum, total] = [0, 0];
      for (let i = 0; i < jobs.length; i += 1) {
        const value = worth(jobs[i]!, end);
        if (value <= 0) continue;
        sum += units[jobs[i]!]!;
        total += value;
      }
      if (sum <= this.capacity) {
        this.#values[at] = total;
        continue;
      }
      best.fill(0);
      for (let i = 0; i < jobs.length; i += 1) {
        const job = jobs[i]!;
        const value = worth(job, end);
        if (value <= 0) continue;
        const size = units[job]!;
        for (let room = this.capacity; room >= size; room -= 1) {
          const packed = best[room - size]! + value;
          if (packed > best[room]!) best[room] = packed;
        }
      }
      this.#values[at] = best[this.capacity]!;
    }
    return this.#values;
  }

  /** The jobs of one knapsack's best batch. */
  packed(at: number, worth: (job: number, end: number) => number): number[] {
    const end = this.#ends[at]!;
    const jobs = this.#jobs[at]!.filter((job) => worth(job, end) > 0);
    const width = this.capacity + 1;
    const table = new Float64Array((jobs.length + 1) * width);
    jobs.forEach((job, i) => {
      const size = this.#units[job]!;
      for (let room = 0; room < width; room += 1) {
        const without = table[i * width + room]!;
        const within = room >= size ? table[i * width + room - size]! + worth(job, end) : -1;
        table[(i + 1) * width + room] = Math.max(without, within);
      }
    });
    let room = this.capacity;
    const taken: number[] = [];
    for (let i = jobs.length; i > 0; i -= 1) {
      if (table[i * width + room] === table[(i - 1) * width + room]) continue;
      taken.push(jobs[i - 1]!);
      room -= this.#units[jobs[i - 1]!]!;
    }
    return taken;
  }
}
