// What a plan may take: steps of its dynamic programmes, counted, so that the same purchases always give the same plan,
// however slow the machine. The clock is only a last safety far above.
import type { Model } from './model.ts';
import type { PurchaseWatch } from './types.ts';

/** Steps that a second buys on an ordinary machine, with some to spare for what is not counted. */
const stepsPerSecond = 34_000_000;

/** So many times longer than was asked for is too long, whatever was counted. */
const patience = 6;

/** A solver's own clock, s: far above what its works take, also on a machine that does much else. */
const leastOfSolver = 30;

/** The clock's last word, s. */
export const longestSeconds = (seconds: number): number => patience * seconds;

/** What the longest of all works is told: how far it may go, and how far it went. */
export interface Allowance {
  /** False: it goes no further. */
  readonly spend: (steps: number) => boolean;
}

export const endless: Allowance = { spend: () => true };

export class Budget {
  readonly #watch: PurchaseWatch;
  readonly #all: number;
  readonly #longest: number;
  #used = 0;

  /** `share` is of the steps; the clock's last word is that of the whole. */
  constructor({ problem }: Pick<Model, 'problem'>, watch: PurchaseWatch, share = 1) {
    const { seconds } = problem.limits;
    this.#watch = watch;
    this.#all = share * seconds * stepsPerSecond;
    this.#longest = longestSeconds(seconds);
  }

  get used(): number {
    return this.#used;
  }

  /** Nobody waits any longer, or the machine is many times slower than any. */
  get isStopped(): boolean {
    return this.#watch.cancelled() || this.#watch.seconds() > this.#longest;
  }

  /** For a solver that asks nobody while it works: however late it is, so long does none of its works take. */
  get secondsOfSolver(): number {
    return Math.max(leastOfSolver, this.#longest - this.#watch.seconds());
  }

  /** Whether so many steps more stay within a share of all. */
  has(share: number, steps = 0): boolean {
    return !this.isStopped && this.#used + steps <= share * this.#all;
  }

  /** Steps are counted up to a share of all. */
  upTo(share: number): Allowance {
    return {
      spend: (steps) => {
        this.#used += steps;
        this.#watch.progress(Math.min(1, this.#used / this.#all));
        return this.has(share);
      },
    };
  }
}
