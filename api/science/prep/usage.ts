// How much of something is taken over time: tanks, places in the hood, hands. What was taken can be given back.

interface Taken {
  readonly from: number;
  readonly to: number;
  readonly amount: number;
}

const dayMinutes = 1440;
const dayOf = (minute: number): number => Math.floor(minute / dayMinutes);

export class Usage {
  private readonly byDay = new Map<number, Taken[]>();
  readonly capacity: number;

  constructor(capacity: number) {
    this.capacity = capacity;
  }

  /** Takes so much from an instant to another; gives back what undoes it. */
  take(from: number, to: number, amount: number): () => void {
    const taken = { from, to, amount };
    for (let day = dayOf(from); day <= dayOf(to); day += 1) {
      const there = this.byDay.get(day);
      if (there) there.push(taken);
      else this.byDay.set(day, [taken]);
    }
    return () => {
      for (let day = dayOf(from); day <= dayOf(to); day += 1) {
        const there = this.byDay.get(day) ?? [];
        there.splice(there.lastIndexOf(taken), 1);
      }
    };
  }

  /** The most that is taken at once in a stretch. */
  peak(from: number, to: number): number {
    const within = new Set<Taken>();
    for (let day = dayOf(from); day <= dayOf(to); day += 1) {
      for (const taken of this.byDay.get(day) ?? []) if (taken.from < to && from < taken.to) within.add(taken);
    }
    if (within.size === 0) return 0;
    // It rises only where something begins, or at the stretch's own start.
    let peak = 0;
    for (const { from: begins } of within) {
      const at = Math.max(begins, from);
      let sum = 0;
      for (const other of within) if (other.from <= at && at < other.to) sum += other.amount;
      peak = Math.max(peak, sum);
    }
    return peak;
  }

  fits(from: number, to: number, amount: number): boolean {
    return this.peak(from, to) + amount <= this.capacity;
  }
}
