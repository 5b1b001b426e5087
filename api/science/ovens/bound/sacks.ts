// Which jobs are worth most in one batch: small knapsacks, each solved once for a set of jobs that several batches could hold.

/** Areas in at most this many units; larger ones are floored, which only lets more in. */
const mostUnits = 64;

function gcd(a: number, b: number): number {
  return b === 0 ? a : gcd(b, a % b);
}

export class Sacks {
  readonly capacity: number;
  readonly #ofJob: (job: number, end: number) => number;
  readonly #units: Int32Array;
  readonly #sets = new Map<string, number>();
  readonly #jobs: Int32Array[] = [];
  /** What each job of a knapsack costs when its batch ends then; null: nothing, whenever it ends. */
  readonly #own: (Float64Array | null)[] = [];
  /** Jobs, what they cost and where each knapsack begins; made when prices first come. */
  #lists: readonly [Int32Array, Int32Array, Float64Array] | null = null;
  #values = new Float64Array(0);
  readonly #best: Float64Array;
  readonly #worth: Float64Array;
  readonly #size: Int32Array;

  constructor(area: Float64Array, whole: number, ofJob: (job: number, end: number) => number) {
    this.#ofJob = ofJob;
    const inside = Array.from(area).filter((one) => one <= whole);
    const isWhole = [...inside, whole].every(Number.isInteger);
    const common = isWhole ? inside.reduce(gcd, whole) : 0;
    const unit = common > 0 && whole / common <= mostUnits ? common : whole / mostUnits;
    // Flooring with a grain of safety: a unit too few only lets more in.
    this.#units = Int32Array.from(area, (one) => Math.floor(one / unit + 1e-9));
    this.capacity = Math.floor(whole / unit + 1e-9);
    this.#best = new Float64Array(this.capacity + 1);
    this.#worth = new Float64Array(area.length);
    this.#size = new Int32Array(area.length);
  }

  /** The number of the knapsack of these jobs in a batch that ends then; `null`: their costs do not depend on the end. */
  of(jobs: readonly number[], end: number | null): number {
    const key = `${end} ${jobs.join(' ')}`;
    let at = this.#sets.get(key);
    if (at === undefined) {
      at = this.#jobs.length;
      this.#sets.set(key, at);
      this.#jobs.push(Int32Array.from(jobs));
      this.#own.push(end === null ? null : Float64Array.from(jobs, (job) => this.#ofJob(job, end)));
    }
    return at;
  }

  /** All knapsacks' jobs and what these cost, one after the other, and where each begins. */
  #flat(): readonly [Int32Array, Int32Array, Float64Array] {
    if (this.#lists) return this.#lists;
    const first = new Int32Array(this.count + 1);
    this.#jobs.forEach((jobs, at) => (first[at + 1] = first[at]! + jobs.length));
    const member = new Int32Array(first[this.count]!);
    const cost = new Float64Array(first[this.count]!);
    this.#jobs.forEach((jobs, at) => {
      member.set(jobs, first[at]);
      const own = this.#own[at];
      if (own) cost.set(own, first[at]);
    });
    this.#lists = [first, member, cost];
    return this.#lists;
  }

  get count(): number {
    return this.#jobs.length;
  }

  /** The best value of each knapsack at these prices, what a job costs by its end taken off. */
  solve(price: Float64Array): Float64Array {
    if (this.#values.length !== this.count) this.#values = new Float64Array(this.count);
    const [best, units, values, worth, size, capacity] = [
      this.#best,
      this.#units,
      this.#values,
      this.#worth,
      this.#size,
      this.capacity,
    ];
    const [first, member, cost] = this.#flat();
    for (let at = 0; at < values.length; at += 1) {
      let sum = 0;
      let total = 0;
      let count = 0;
      const last = first[at + 1]!;
      for (let i = first[at]!; i < last; i += 1) {
        const job = member[i]!;
        const value = price[job]! - cost[i]!;
        if (value <= 0) continue;
        const room = units[job]!;
        sum += room;
        total += value;
        worth[count] = value;
        size[count] = room;
        count += 1;
      }
      values[at] = sum <= capacity ? total : packing(worth, size, count, best, capacity);
    }
    return values;
  }

  /** The jobs of one knapsack's best batch. */
  packed(at: number, price: Float64Array): number[] {
    const own = this.#own[at]!;
    const all = this.#jobs[at]!;
    const worth = Array.from(all, (job, i) => price[job]! - (own === null ? 0 : own[i]!));
    const jobs = Array.from(all, (job, i) => ({ job, value: worth[i]! })).filter(({ value }) => value > 0);
    const width = this.capacity + 1;
    const table = new Float64Array((jobs.length + 1) * width);
    jobs.forEach(({ job, value }, i) => {
      const size = this.#units[job]!;
      for (let room = 0; room < width; room += 1) {
        const without = table[i * width + room]!;
        const within = room >= size ? table[i * width + room - size]! + value : -1;
        table[(i + 1) * width + room] = Math.max(without, within);
      }
    });
    let room = this.capacity;
    const taken: number[] = [];
    for (let i = jobs.length; i > 0; i -= 1) {
      if (table[i * width + room] === table[(i - 1) * width + room]) continue;
      const { job } = jobs[i - 1]!;
      taken.push(job);
      room -= this.#units[job]!;
    }
    return taken;
  }
}

/** The most that items of such worth and size come to within the capacity; `best` is room to reckon in. */
function packing(worth: Float64Array, size: Int32Array, count: number, best: Float64Array, capacity: number): number {
  best[0] = 0;
  let reach = 0;
  for (let i = 0; i < count; i += 1) {
    const own = size[i]!;
    const value = worth[i]!;
    const top = reach + own < capacity ? reach + own : capacity;
    for (let room = reach + 1; room <= top; room += 1) best[room] = best[reach]!;
    reach = top;
    for (let room = top; room >= own; room -= 1) {
      const packed = best[room - own]! + value;
      if (packed > best[room]!) best[room] = packed;
    }
  }
  return best[reach]!;
}
