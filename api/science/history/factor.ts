// What was learned of a number, and how surely.

/** A number that is known only so well: `ln` its learned natural logarithm (0 when nothing was learned), `sd` one sigma of it. */
export interface Factor {
  /** `capacity`, `bed`, `open`, `closed:tight` (or another closure's name), `container`, `bias` (of φ, not a logarithm). */
  readonly factor: string;
  readonly ln: number;
  readonly sd: number;
}

/** Those that differ from the priors of `uncertainty.ts`. */
export type Factors = readonly Factor[];

/** What is held of all factors together after learning, by the names of `calibration/factors.ts`. */
export interface Held {
  readonly has: (name: string) => boolean;
  /** Of two factors that are held; of one and itself its variance. */
  readonly covariance: (one: string, other: string) => number;
}

/** What weighings taught about a container: its lot, what its lot shares with others, and how sure the factors are together. */
export interface Teaching {
  readonly lot: string;
  readonly pool: string;
  readonly held: Held;
}
