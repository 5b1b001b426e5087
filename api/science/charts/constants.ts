// Chart constants by the size of a subgroup, three digits as printed in the NIST/SEMATECH e-Handbook of Statistical
// Methods, 6.3.2.1; printed limits are reached only with the printed digits. D4 of 5 is 2.115 there, by integration 2.1145.

export interface ChartConstants {
  /** Mean range of so many values, in standard deviations. */
  readonly d2: number;
  /** Limits of a mean about the grand mean, in mean ranges. */
  readonly A2: number;
  /** Lower and upper limit of a range, in mean ranges. */
  readonly D3: number;
  readonly D4: number;
}

const row = (d2: number, A2: number, D3: number, D4: number): ChartConstants => ({ d2, A2, D3, D4 });

export const chartConstants: Readonly<Record<number, ChartConstants>> = {
  2: row(1.128, 1.88, 0, 3.267),
  3: row(1.693, 1.023, 0, 2.575),
  4: row(2.059, 0.729, 0, 2.282),
  5: row(2.326, 0.577, 0, 2.115),
  6: row(2.534, 0.483, 0, 2.004),
  7: row(2.704, 0.419, 0.076, 1.924),
  8: row(2.847, 0.373, 0.136, 1.864),
  9: row(2.97, 0.337, 0.184, 1.816),
  10: row(3.078, 0.308, 0.223, 1.777),
};

/** Of a moving range, the difference of two neighbours. */
export const ofTwo: ChartConstants = row(1.128, 1.88, 0, 3.267);
